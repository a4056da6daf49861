package detail

import (
	"fmt"

	"standclear/detail/spec"
	"standclear/detail/unit"
	"standclear/geom"
)

// screwInset is the distance of the first screw columns from the ends and edges of a block, mm (3/4 in);
// every further joint stands one inset farther in, so that no screw meets another.
const screwInset = 19.05

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

// screws sets the screws of every joint of block i: two columns near the ends, driven inward from the
// face of the outer piece.
//
//	|o . |  |. o|    o joint 1, . joint 2
func (a *Assembly) screws(i int) {
	b := &a.Blocks[i]
	for j, joint := range a.Joints() {
		mark, name := "PS1", "PLY SCREW"
		if joint.Ledger() {
			mark, name = "LS1", "LEDGER SCREW"
		}
		w := joint.Screws
		for k, at := range a.ScrewSpots(i, j, w.Count) {
			p := a.add(Part{ID: fmt.Sprintf("%s/%s-%d-%d", b.Mark, mark, j+1, k+1), Mark: mark, Name: name, Role: PlyScrew, Material: "steel", Block: i,
				Size: [3]unit.Length{w.Diameter, w.Diameter, w.Length}, Note: "hot-dip galvanized",
				Solids: []geom.Solid{geom.Cylinder(geom.Vec3{X: at.X, Y: joint.Face - w.Length.MM(), Z: at.Y}, geom.Y, w.Diameter.MM()/2, w.Length.MM())}})
			b.Parts = append(b.Parts, p)
		}
	}
}

// ScrewSpots returns where the n screws of the j-th joint of block i stand, in x and z: left and right
// in turn, from the foot up. Every second joint stands half a step higher.
func (a *Assembly) ScrewSpots(i, j, n int) []geom.Vec {
	b := a.Blocks[i].Box
	rows := (n + 1) / 2
	inset := screwInset * float64(j+1)
	z0, z1 := b.Min.Z+screwInset, a.blockTop(i, a.Frame.BlockOut)-screwInset
	step := (z1 - z0) / float64(max(1, rows))
	out := make([]geom.Vec, n)
	for k := range out {
		x := b.Min.X + inset
		if k%2 == 1 {
			x = b.Max.X - inset
		}
		out[k] = geom.Vec{X: x, Y: z0 + step*(float64(k/2)+0.25+0.5*float64(j%2))}
	}
	return out
}
