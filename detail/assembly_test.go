package detail_test

import (
	"math"
	"testing"

	"standclear/detail"
	"standclear/detail/demo"
	"standclear/detail/detailtest"
	"standclear/geom"
)

func eachDemo(t *testing.T, f func(t *testing.T, a *detail.Assembly)) {
	for _, n := range demo.Names() {
		t.Run(n, func(t *testing.T) { f(t, detailtest.Demo(t, n)) })
	}
}

func TestEveryPartIsThereOnce(t *testing.T) {
	eachDemo(t, func(t *testing.T, a *detail.Assembly) {
		seen := map[string]bool{}
		for _, p := range a.Parts {
			if seen[p.ID] {
				t.Errorf("part %s twice", p.ID)
			}
			seen[p.ID] = true
			if len(p.Solids) == 0 || p.Mark == "" || p.Name == "" || p.Material == "" {
				t.Errorf("part %s lacks a solid, mark, name or material", p.ID)
			}
			if b := p.Bounds(); b.Empty() || math.IsNaN(b.Min.X+b.Max.Z) {
				t.Errorf("part %s has no extent", p.ID)
			}
		}
	})
}

// bulk are the roles that fill space for themselves: no two of them may overlap. Fasteners stand in
// their holes, membranes lie on faces.
var bulk = map[detail.Role]bool{
	detail.Finish: true, detail.FloorBoard: true, detail.Subfloor: true, detail.Plate: true, detail.Stud: true, detail.Cavity: true, detail.HouseJoist: true, detail.Rim: true,
	detail.Backing: true, detail.Sheathing: true, detail.OuterInsul: true, detail.Furring: true, detail.Cladding: true, detail.Footing: true, detail.GroundIns: true,
	detail.DrainBoard: true, detail.BlockPly: true, detail.BlockPad: true, detail.FootPiece: true, detail.Ledger: true, detail.DeckJoist: true, detail.Decking: true,
}

func TestNoTwoPartsFillTheSamePlace(t *testing.T) {
	eachDemo(t, func(t *testing.T, a *detail.Assembly) {
		l := a.Spec.Ledger.Length.MM()
		for _, x := range []float64{-200, 1, a.Blocks[0].X + 1, a.Blocks[1].X - 2, (a.Blocks[1].X + a.Blocks[2].X) / 2, a.HouseJoists[2], a.DeckJoists[1], l / 2, l + 150} {
			v := geom.View{O: geom.Vec3{X: x}, U: geom.Vec3{Y: 1}, V: geom.Vec3{Z: 1}, N: geom.Vec3{X: -1}}
			type cut struct {
				id string
				r  geom.Region
			}
			var cuts []cut
			for _, p := range a.Parts {
				if !bulk[p.Role] {
					continue
				}
				for _, s := range p.Solids {
					if r := s.Cut(v); len(r) > 0 {
						cuts = append(cuts, cut{p.ID, r})
					}
				}
			}
			for i := range cuts {
				for j := range i {
					if !cuts[i].r.Bounds().Overlaps(cuts[j].r.Bounds()) {
						continue
					}
					if area := geom.Intersect(cuts[i].r, cuts[j].r).Area(); area > 0.5 {
						t.Errorf("x = %.1f: %s and %s share %.1f mm2", x, cuts[i].id, cuts[j].id, area)
					}
				}
			}
		}
	})
}

// The depths and heights of the inch deck, worked by hand from its parameters.
func TestFrameByHand(t *testing.T) {
	const in = 25.4
	a := detailtest.Demo(t, "deck")
	f := a.Frame
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"insulation 2 x 1 3/16", f.InsulOut, 2.375 * in},
		{"cavity 3/4 on it", f.CavityOut, 3.125 * in},
		{"siding 5/8 on it", f.CladOut, 3.75 * in},
		{"rim top: 3/4 finish, 3/4 subfloor", f.RimTop, -1.5 * in},
		{"rim bottom: 11 7/8 lower", f.RimBottom, -13.375 * in},
		{"gap: stand-off less insulation", f.Gap(), f.Standoff() - 2.375*in},
		{"room face: 1/2 sheathing, 5 1/2 studs, 1/2 board", f.FinishIn, -6.5 * in},
		{"ledger top: 1 in decking under the deck", f.LedgerTop, f.DeckTop - in},
		{"ledger bottom: 9 1/4 lower", f.LedgerBottom, f.LedgerTop - 9.25*in},
		{"load line: half the hanger seat outside", f.LoadLine, f.LedgerFront + a.Spec.Deck.Joists.Seat.MM()/2},
	} {
		if math.Abs(c.got-c.want) > 1e-6 {
			t.Errorf("%s: %.4f in, want %.4f in", c.name, c.got/in, c.want/in)
		}
	}
}

func TestBoltLengthByHand(t *testing.T) {
	// Listed base case of the deck: ledger 1 1/2, block 3 1/2, sheathing 1/2, rim 1 1/4: grip 6 3/4.
	// 1/2 in bolt: two washers 0.12, nut 7/16, three threads of 1/13 in: 6.75 + 0.24 + 0.4375 + 0.2308 = 7.658 in,
	// so an 8 in bolt on a 1/2 in step.
	const in = 25.4
	a := detailtest.Demo(t, "deck", "floor.backing.kind=none", "fasteners.through.diameter=1/2in", "fasteners.through.hole=9/16in",
		"fasteners.through.washer.kind=round", "fasteners.through.washer.size=1 3/8in", "fasteners.through.washer.thickness=0.12in")
	set := a.Spec.Fasteners.Through
	standoff := a.Frame.Standoff() / in
	grip := 1.5 + standoff + 0.5 + 1.25
	if got := a.Grip(set).Length().Inches(); math.Abs(got-grip) > 1e-9 {
		t.Errorf("grip %.4f, want %.4f", got, grip)
	}
	want := grip + 0.24 + 7.0/16 + 3.0/13
	if got := a.BoltNeeds(set).Inches(); math.Abs(got-want) > 1e-6 {
		t.Errorf("needs %.4f in, want %.4f", got, want)
	}
	if got := a.BoltLength(set).Inches(); math.Abs(got-math.Ceil(want*2)/2) > 1e-9 {
		t.Errorf("length %.3f in, want the next half inch over %.3f", got, want)
	}
}

func TestScheduleCountsEveryPart(t *testing.T) {
	eachDemo(t, func(t *testing.T, a *detail.Assembly) {
		sum := 0
		for _, l := range a.Schedule() {
			sum += l.Qty
		}
		want := 0
		for _, p := range a.Parts {
			if p.Role != detail.Earth && p.Role != detail.Obstacle {
				want++
			}
		}
		if sum != want {
			t.Errorf("schedule counts %d parts, the assembly has %d", sum, want)
		}
		n := 0
		for _, b := range a.Blocks {
			n += len(b.Bolts)
		}
		if got := a.Count(detail.Bolt); a.Spec.Fasteners.Through != nil && got != n {
			t.Errorf("%d bolts built, the blocks have %d holes", got, n)
		}
		if a.Spec.Fasteners.Through != nil && a.Count(detail.Washer) != 2*n {
			t.Errorf("%d washers for %d bolts", a.Count(detail.Washer), n)
		}
	})
}
