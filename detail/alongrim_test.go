package detail_test

import (
	"math"
	"testing"

	"standclear/detail"
	"standclear/detail/detailtest"
)

const alongRim = "floor.joists.direction=parallel"

// House joists along the rim end no bays. The eight blocks of the inch deck are 8 3/4 in wide, their bolts 3 1/4 in
// apart: 1 5/8 + 4 x 5/8 = 4 1/8 in is less than half a block, so a piece is as wide as its block, 8 3/4 in, from
// -1 3/4 to -5 1/4 in deep and as high as the rim, -1 1/2 to -13 3/8. What is left of one with its four holes of
// 11/16 in: (8 3/4 x 11 7/8 - 4 x 0.371223) x 3 1/2 = 358.4748 in3.
func TestBackingAlongTheRimByHand(t *testing.T) {
	const in = 25.4
	a := detailtest.Demo(t, "deck", alongRim)
	pieces := a.Find(detail.Backing)
	if len(a.Blocks) != 8 || len(pieces) != 8 || a.Count(detail.TieStrap) != 0 {
		t.Fatalf("%d blocks, %d pieces, %d ties", len(a.Blocks), len(pieces), a.Count(detail.TieStrap))
	}
	for i, p := range pieces {
		b, left := p.Bounds(), 0.0
		for _, s := range p.Bored() {
			left += s.Volume() / (in * in * in)
		}
		for _, c := range []struct {
			name      string
			got, want float64
		}{
			{"left end", b.Min.X / in, a.Blocks[i].X/in - 4.375}, {"right end", b.Max.X / in, a.Blocks[i].X/in + 4.375}, {"length", p.Size[2].Inches(), 8.75},
			{"inner face", b.Min.Y / in, -5.25}, {"outer face", b.Max.Y / in, -1.75}, {"top", b.Max.Z / in, -1.5}, {"foot", b.Min.Z / in, -13.375},
			{"what the holes leave", left, 358.4748},
		} {
			if math.Abs(c.got-c.want) > 1e-4 {
				t.Errorf("%s: %s %.5f, want %.5f", p.ID, c.name, c.got, c.want)
			}
		}
		if p.Block != i || p.Mark != "BK1" || p.Material != "lsl" || p.Note != "carried" {
			t.Errorf("%s of block %d: %s, %s, %s", p.ID, p.Block, p.Mark, p.Material, p.Note)
		}
	}
	for _, l := range a.Schedule() {
		if l.Mark == "BK1" && (l.Qty != 8 || math.Abs(l.Size[2].Inches()-8.75) > 1e-9) {
			t.Errorf("schedule: %+v", l)
		}
	}
	cut := 0
	for _, l := range a.CutList() {
		for _, s := range l.Sticks {
			for _, c := range s.Cuts {
				if c.Mark == "BK1" {
					cut += len(c.IDs)
				}
			}
		}
	}
	if cut != 8 {
		t.Errorf("%d pieces in the cutting list", cut)
	}
}

// A piece is longer than its block where the bolts need their 4 D: 1 5/8 + 2 1/2 = 4 1/8 in either side of a block 6 in
// wide. Pieces that meet or overlap are one, of the first block. None goes past the drawn wall, 600 mm past the ledger.
func TestBackingAlongTheRimPieces(t *testing.T) {
	const in, far = 25.4, 600 / 25.4
	const five = "blocks.positions=[20in, "
	for _, c := range []struct {
		name string
		sets []string
		want [][2]float64 // of the first pieces, in
		n    int
	}{
		{"narrow block", []string{"blocks.width=6in", five + "60in, 100in]"}, [][2]float64{{15.875, 24.125}, {55.875, 64.125}}, 3},
		{"just apart", []string{five + "28.8in, 100in]"}, [][2]float64{{15.625, 24.375}, {24.425, 33.175}}, 3},
		{"meet", []string{five + "28.75in, 100in]"}, [][2]float64{{15.625, 33.125}, {95.625, 104.375}}, 2},
		{"overlap", []string{five + "26in, 33in, 100in]"}, [][2]float64{{15.625, 37.375}, {95.625, 104.375}}, 2},
		{"columns far apart", []string{"blocks.positions=[40in, 100in, 150in]", "fasteners.through.columns=3", "fasteners.through.column_spacing=24in"}, [][2]float64{{13.5, 66.5}, {73.5, 176.5}}, 2},
		{"past the wall drawn", []string{"blocks.positions=[2in, 88in, 174in]", "fasteners.through.columns=3", "fasteners.through.column_spacing=24in"},
			[][2]float64{{-far, 28.5}, {61.5, 114.5}, {147.5, 176 + far}}, 3},
		{"loose", []string{"floor.backing.kind=loose", five + "60in, 100in]"}, [][2]float64{{15.625, 24.375}}, 3},
		{"none", []string{"floor.backing={kind: none}"}, nil, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			a := detailtest.Demo(t, "deck", append([]string{alongRim}, c.sets...)...)
			pieces := a.Find(detail.Backing)
			if len(pieces) != c.n || a.Count(detail.TieStrap) != 0 {
				t.Fatalf("%d pieces and %d ties, want %d and none", len(pieces), a.Count(detail.TieStrap), c.n)
			}
			for i, want := range c.want {
				b := pieces[i].Bounds()
				if math.Abs(b.Min.X/in-want[0]) > 1e-6 || math.Abs(b.Max.X/in-want[1]) > 1e-6 {
					t.Errorf("%s from %.4f to %.4f in, want %.4f to %.4f", pieces[i].ID, b.Min.X/in, b.Max.X/in, want[0], want[1])
				}
			}
			for i, p := range pieces {
				if i == 0 && p.Block != 0 {
					t.Errorf("the first piece is of block %d", p.Block)
				}
				if x := a.Blocks[p.Block].X; p.Bounds().Min.X > x || p.Bounds().Max.X < x {
					t.Errorf("%s does not stand behind %s", p.ID, a.Blocks[p.Block].Mark)
				}
			}
		})
	}
}

// In every demo each bolt into the rim stands 4 D or more inside one piece, whose holes are where the bolts are.
func TestBackingAlongTheRimHoldsEveryBolt(t *testing.T) {
	for _, name := range []string{"deck", "balcony", "deck-metric", "balcony-metric"} {
		a := detailtest.Demo(t, name, alongRim)
		d := a.Spec.Fasteners.Sets()[0].Diameter.MM()
		for _, b := range a.Blocks {
			for _, bolt := range b.Bolts {
				held := 0
				for _, p := range a.Find(detail.Backing) {
					box, bored := p.Bounds(), false
					for _, h := range p.Bores {
						at := h.Bounds().Center()
						bored = bored || math.Hypot(at.X-bolt.X, at.Z-bolt.Y) < 1e-6
					}
					if bolt.X-box.Min.X > 4*d-1e-6 && box.Max.X-bolt.X > 4*d-1e-6 && bored {
						held++
					}
				}
				if held != 1 {
					t.Errorf("%s: the bolt of %s at %.1f stands in %d pieces", name, b.Mark, bolt.X, held)
				}
			}
		}
	}
}
