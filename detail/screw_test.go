package detail_test

import (
	"fmt"
	"math"
	"testing"

	"standclear/detail"
	"standclear/detail/detailtest"
	"standclear/geom"
)

const ledgerScrews = "blocks.ledger_screws={count: 4, diameter: 0.19in, length: 2 3/4in}"

// Depths by hand from plies of 1 1/2, 1 1/2 and 3/4 in, a ledger of 1 1/2, a pad or spacer where given.
func TestJointsByHand(t *testing.T) {
	const in = 25.4
	type joint struct {
		outer, inner string
		face         float64 // in
	}
	for _, c := range []struct {
		name string
		sets []string
		want []joint
	}{
		{"three plies", nil, []joint{{"P2", "P1", 3}, {"P3", "P2", 3.75}}},
		{"and the ledger", []string{ledgerScrews}, []joint{{"P2", "P1", 3}, {"P3", "P2", 3.75}, {"L1", "P3", 5.25}}},
		{"with a spacer", []string{ledgerScrews, "blocks.spacer=1/2in"}, []joint{{"P2", "P1", 3}, {"P3", "P2", 3.75}, {"L1", "P3", 5.75}}},
		{"a pad after the first", []string{"blocks.pad={thickness: 1/2in, after: 1}"}, []joint{{"P3", "P2", 4.25}}},
		{"a pad on the wall", []string{"blocks.pad={thickness: 1/2in, after: 0}"}, []joint{{"P2", "P1", 3.5}, {"P3", "P2", 4.25}}},
		{"a pad outside", []string{"blocks.pad={thickness: 1/2in, after: 3}"}, []joint{{"P2", "P1", 3}, {"P3", "P2", 3.75}}},
		{"plies loose", []string{"blocks.plies_fastened=no", ledgerScrews}, []joint{{"L1", "P3", 5.25}}},
		{"no screws stated", []string{"blocks.ply_screws="}, nil},
		{"one ply", []string{"blocks.plies=[3 1/2in]"}, nil},
	} {
		a := detailtest.Demo(t, "deck", c.sets...)
		got := a.Joints()
		if len(got) != len(c.want) {
			t.Errorf("%s: %+v", c.name, got)
			continue
		}
		for i, j := range got {
			if w := c.want[i]; j.Outer != w.outer || j.Inner != w.inner || math.Abs(j.Face-w.face*in) > 1e-6 || j.Ledger() != (w.outer == "L1") {
				t.Errorf("%s: joint %d is %s to %s at %.3f in, want %+v", c.name, i+1, j.Outer, j.Inner, j.Face/in, w)
			}
		}
	}
}

// The twelve screws of the first joint of B1, by hand: 5 D = 0.95 in from the ends of a block from 8 1/8 to
// 16 7/8 in; six rows between 0.95 in over the foot at -13 1/2 and 0.95 in under the top's outer edge, which falls
// 3 3/4 / 12 = 5/16 from -4 1/4: from -12.55 to -5.5125 are 7.0375, a step of 1.17292, more than 5 D; the first a
// quarter of it up. The second joint stands half a step higher in the same columns.
func TestScrewSpotsByHand(t *testing.T) {
	const in = 25.4
	a := detailtest.Demo(t, "deck")
	step := 7.0375 / 6
	for j, z0 := range []float64{-12.55 + step/4, -12.55 + 0.75*step} {
		spots := a.ScrewSpots(0, j, 12)
		if len(spots) != 12 {
			t.Fatalf("joint %d: %d spots", j+1, len(spots))
		}
		for k, p := range spots {
			want := geom.Vec{X: []float64{9.075, 15.925}[k%2] * in, Y: (z0 + step*float64(k/2)) * in}
			if p.Dist(want) > 1e-6 {
				t.Errorf("joint %d, screw %d at %.4f, %.4f in, want %.4f, %.4f", j+1, k+1, p.X/in, p.Y/in, want.X/in, want.Y/in)
			}
		}
	}
	// Twenty in two columns would stand 0.704 in apart; in four, five rows of 1.4075 in. The inner columns are 3 D
	// = 0.57 in from the outer ones, at 9.645 in, and 1.23 in from the bolts' axes at 10 7/8.
	spots := a.ScrewSpots(0, 0, 20)
	for k, want := range []float64{9.075, 9.645, 15.355, 15.925, 9.075} {
		if math.Abs(spots[k].X-want*in) > 0.51 { // the search steps half a millimetre
			t.Errorf("screw %d of twenty at %.3f in, want %.3f", k+1, spots[k].X/in, want)
		}
	}
	if up := (spots[4].Y - spots[0].Y) / in; math.Abs(up-1.4075) > 1e-6 {
		t.Errorf("rows %.4f in apart, want 1.4075", up)
	}
	if got := len(a.ScrewSpots(0, 0, 5)); got != 5 {
		t.Errorf("%d spots for five screws", got)
	}
}

// In every block of every demo the screws stand 3/4 in or more inside its outline, at least 3 mm of wood
// clear of the bolt holes and of each other across all joints.
func TestScrewsStandClear(t *testing.T) {
	const wood, inset = 3.0, 19.05
	eachDemo(t, func(t *testing.T, a *detail.Assembly) {
		type screw struct {
			at geom.Vec
			r  float64
		}
		for i, b := range a.Blocks {
			var all []screw
			for j, joint := range a.Joints() {
				for _, p := range a.ScrewSpots(i, j, joint.Screws.Count) {
					all = append(all, screw{p, joint.Screws.Diameter.MM() / 2})
				}
			}
			top := b.Box.Max.Z - float64(a.Spec.Blocks.TopSlope)*b.Box.Max.Y
			for n, s := range all {
				if s.at.X < b.Box.Min.X+inset-1e-6 || s.at.X > b.Box.Max.X-inset+1e-6 || s.at.Y < b.Box.Min.Z+inset || s.at.Y > top-inset {
					t.Errorf("%s: a screw at %.1f, %.1f", b.Mark, s.at.X, s.at.Y)
				}
				for _, h := range a.Holes(i) {
					if d := math.Hypot(s.at.X-h.X, s.at.Y-h.Z); d < h.Dia/2+s.r+wood {
						t.Errorf("%s: a screw %.1f from the axis of a hole of %.1f", b.Mark, d, h.Dia)
					}
				}
				for _, o := range all[:n] {
					if s.at.Dist(o.at) < s.r+o.r+wood {
						t.Errorf("%s: two screws %.1f apart", b.Mark, s.at.Dist(o.at))
					}
				}
			}
		}
	})
}

// Each screw starts at the face of the outer piece, crosses its joint and ends inside the block: its point
// does not come out of the innermost ply.
func TestScrewsCrossTheirJoint(t *testing.T) {
	eachDemo(t, func(t *testing.T, a *detail.Assembly) {
		for _, j := range a.Joints() {
			found := 0
			for _, p := range a.Find(detail.PlyScrew) {
				b := p.Bounds()
				if math.Abs(b.Max.Y-j.Face) > 1e-6 {
					continue
				}
				found++
				var outer, inner geom.Box3
				for _, q := range a.Blocks[p.Block].Parts {
					switch q.Mark {
					case j.Outer:
						outer = q.Bounds()
					case j.Inner:
						inner = q.Bounds()
					}
				}
				if math.Abs(outer.Max.Y-b.Max.Y) > 1e-6 || b.Min.Y >= inner.Max.Y || b.Min.Y <= 0 {
					t.Errorf("%s runs from %.2f to %.2f; %s ends at %.2f, %s at %.2f", p.ID, b.Max.Y, b.Min.Y, j.Outer, outer.Max.Y, j.Inner, inner.Max.Y)
				}
			}
			if want := len(a.Blocks) * j.Screws.Count; found != want {
				t.Errorf("%d screws from %s, want %d", found, j.Outer, want)
			}
		}
	})
}

// Nine blocks with twenty screws in each of two joints are 360, with four to the ledger 36; six blocks
// with eight in two joints are 96.
func TestScheduleCountsScrews(t *testing.T) {
	for _, c := range []struct {
		name string
		sets []string
		want map[string]int
	}{
		{"deck", []string{ledgerScrews}, map[string]int{"PS1": 360, "LS1": 36}},
		{"balcony", nil, map[string]int{"PS1": 96}},
		{"deck", []string{"blocks.plies_fastened=no"}, map[string]int{}},
	} {
		a := detailtest.Demo(t, c.name, c.sets...)
		got := map[string]int{}
		for _, l := range a.Schedule() {
			if l.Mark == "PS1" || l.Mark == "LS1" {
				got[l.Mark] += l.Qty
				if math.Abs(l.Size[2].Inches()-2.75) > 1e-9 || math.Abs(l.Size[0].Inches()-0.19) > 1e-9 {
					t.Errorf("%s %v: %s is %v", c.name, c.sets, l.Mark, l.Size)
				}
			}
		}
		if fmt.Sprint(got) != fmt.Sprint(c.want) || a.Count(detail.PlyScrew) != c.want["PS1"]+c.want["LS1"] {
			t.Errorf("%s %v: schedule %v of %d parts, want %v", c.name, c.sets, got, a.Count(detail.PlyScrew), c.want)
		}
	}
}
