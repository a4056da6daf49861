package detail

import (
	"fmt"
	"math"
	"strconv"

	"standclear/detail/spec"
	"standclear/detail/unit"
	"standclear/geom"
)

// Screws keep 5 D from each other down a column and from the ends of the block, in bored wood, and 3 D
// between columns: NDS 2018 commentary table C12.1.5.7, load across the grain (from memory, confirm).
const (
	ScrewPitch = 5.0
	screwRows  = 3.0
)

// Joint is one joint of a block that its own screws cross.
type Joint struct {
	Outer, Inner string  // marks of the piece they are driven from and of the one behind it
	Face         float64 // depth of the face they are driven from
	Screws       spec.Screws
}

// Ledger reports whether it is the joint of the ledger to the block.
func (j Joint) Ledger() bool { return j.Outer == "L1" }

// Joints lists the joints between plies, from inside, and the one to the ledger, that are screwed.
// Plies on either side of a pad are not screwed to each other.
func (a *Assembly) Joints() []Joint {
	s := a.Spec
	var out []Joint
	y := 0.0
	for k, t := range s.Blocks.Plies {
		pad := s.Blocks.Pad.Thickness > 0 && s.Blocks.Pad.After == k
		if pad {
			y += s.Blocks.Pad.Thickness.MM()
		}
		y += t.MM()
		if k > 0 && !pad && s.Blocks.PliesFastened && s.Blocks.PlyScrews.Count > 0 {
			out = append(out, Joint{Outer: fmt.Sprintf("P%d", k+1), Inner: fmt.Sprintf("P%d", k), Face: y, Screws: s.Blocks.PlyScrews})
		}
	}
	if s.Blocks.LedgerScrews.Count > 0 {
		out = append(out, Joint{Outer: "L1", Inner: fmt.Sprintf("P%d", len(s.Blocks.Plies)), Face: a.Frame.LedgerFront, Screws: s.Blocks.LedgerScrews})
	}
	return out
}

// screws sets the screws of every joint of block i, driven inward from the face of the outer piece.
//
//	|o .  . o|    o every joint; columns clear of the bolts, two or four
func (a *Assembly) screws(i int) {
	b := &a.Blocks[i]
	joints := a.Joints()
	for j, joint := range joints {
		mark, name := "PS1", "PLY SCREW"
		if joint.Ledger() {
			mark, name = "LS1", "LEDGER SCREW"
		}
		w := joint.Screws
		prefix := b.Mark + "/" + mark + "-" + strconv.Itoa(j+1) + "-"
		for k, at := range a.screwSpots(i, j, w.Count, w.Diameter.MM()) {
			p := a.add(Part{ID: prefix + strconv.Itoa(k+1), Mark: mark, Name: name, Role: PlyScrew, Material: "steel", Block: i,
				Size: [3]unit.Length{w.Diameter, w.Diameter, w.Length}, Note: "hot-dip galvanized",
				Solids: []geom.Solid{a.rod(at.X, at.Y, w.Diameter.MM()/2, joint.Face-w.Length.MM(), joint.Face)}})
			b.Parts = append(b.Parts, p)
		}
	}
}

// ScrewSpots returns where the n screws of the j-th joint of block i stand, in x and z: across in turn, from
// the foot up, in as few columns as keep their pitch. Every second joint stands half a step higher, so that
// no screw meets one of the next joint.
func (a *Assembly) ScrewSpots(i, j, n int) []geom.Vec {
	return a.screwSpots(i, j, n, a.Joints()[j].Screws.Diameter.MM())
}

// screwSpots is ScrewSpots for screws of diameter d.
func (a *Assembly) screwSpots(i, j, n int, d float64) []geom.Vec {
	b := a.Blocks[i].Box
	edge := math.Max(ScrewPitch*d, a.Spec.Pick(19.05, 20))
	z0, z1 := b.Min.Z+edge, a.blockTop(i, a.Frame.BlockOut)-edge
	cols := a.screwColumns(i, edge, d)
	if rows := (n + 1) / 2; (z1-z0)/float64(max(1, rows)) >= ScrewPitch*d || len(cols) < 4 {
		cols = []float64{cols[0], cols[len(cols)-1]}
	}
	rows := (n + len(cols) - 1) / len(cols)
	step := (z1 - z0) / float64(max(1, rows))
	out := make([]geom.Vec, n)
	for k := range out {
		out[k] = geom.Vec{X: cols[k%len(cols)], Y: z0 + step*(float64(k/len(cols))+0.25+0.5*float64(j%2))}
	}
	return out
}

// screwColumns returns the axes for screws across block i: one near each end and, where the bolts leave
// room, two between.
func (a *Assembly) screwColumns(i int, edge, d float64) []float64 {
	b := a.Blocks[i].Box
	outer := []float64{b.Min.X + edge, b.Max.X - edge}
	holes := a.holes(i)
	free := func(x float64) bool {
		for _, h := range holes {
			if math.Abs(h.X-x) < h.Dia/2+d/2+screwClear {
				return false
			}
		}
		return true
	}
	for in := edge + screwRows*d; in < a.Spec.Blocks.Width.MM()/2-screwRows*d/2; in += 0.5 {
		if l, r := b.Min.X+in, b.Max.X-in; free(l) && free(r) {
			return []float64{outer[0], l, r, outer[1]}
		}
	}
	return outer
}

// screwClear is the wood left between a screw and a bolt hole, 1/8 in (a judgement).
const screwClear = 3.175
