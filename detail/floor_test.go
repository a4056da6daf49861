package detail_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/detailtest"
)

// twoSets hangs the ledger on the block by lag screws and the block on the rim by its own bolts.
const twoSets = "fasteners={to_rim: {diameter: 5/8in, rows: [3in, 6 1/2in], columns: 2, column_spacing: 3 1/4in}, to_block: {kind: lag, diameter: 1/2in, length: 4in, rows: [4 5/8in]}}"

// The bay of B1 in the inch deck, by hand: house joists at 7.2 and 26.4 in with flanges of 2 5/16; the backing fills
// 7.2 + 1.15625 = 8.35625 to 26.4 - 1.15625 = 25.24375 in, 16.8875 long, 3 1/2 thick behind a rim of 1 1/4 in and 1/2 in of
// sheathing, as deep as the rim, from -1 1/2 to -13 3/8.
func TestBackingByHand(t *testing.T) {
	const in = 25.4
	a := detailtest.Demo(t, "deck")
	p := a.Find(detail.Backing)[0]
	b := p.Bounds()
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"left end", b.Min.X, 8.35625}, {"right end", b.Max.X, 25.24375}, {"length", p.Size[2].MM(), 16.8875},
		{"inner face", b.Min.Y, -5.25}, {"outer face", b.Max.Y, -1.75}, {"top", b.Max.Z, -1.5}, {"foot", b.Min.Z, -13.375},
	} {
		if math.Abs(c.got-c.want*in) > 1e-6 {
			t.Errorf("%s: %.5f in, want %.5f", c.name, c.got/in, c.want)
		}
	}
	if p.ID != "BK/2" || p.Block != 0 || len(p.Bores) == 0 {
		t.Errorf("%s of block %d with %d holes", p.ID, p.Block, len(p.Bores))
	}
}

// Every bolt into the rim passes through one backing, well inside it; no bay without a bolt has one; each
// reaches from joist face to joist face and is held by two ties, one to each joist.
func TestBackingInEveryBay(t *testing.T) {
	for _, c := range []struct {
		name string
		sets []string
	}{
		{"deck", nil}, {"balcony", nil}, {"deck-metric", nil}, {"balcony-metric", nil},
		{"deck", []string{"floor.joists.spacing=12in"}}, {"deck", []string{"floor.joists.spacing=24in"}}, {"deck", []string{"blocks.max_spacing=12in"}},
		{"deck", []string{twoSets, "blocks.spacer=1in"}}, {"deck", []string{"blocks.equal=yes"}},
		{"deck", []string{"floor.joists={kind: sawn, first: 5in, spacing: 16in, depth: 11 7/8in}"}},
	} {
		t.Run(fmt.Sprint(c.name, c.sets), func(t *testing.T) {
			a := detailtest.Demo(t, c.name, c.sets...)
			entered := map[*detail.Part]bool{}
			for _, b := range a.Blocks {
				for _, bolt := range b.Bolts {
					n := 0
					for _, p := range a.Find(detail.Backing) {
						if box := p.Bounds(); bolt.X > box.Min.X-a.Spec.Floor.Joists.Flange.MM()/2 && bolt.X < box.Max.X+a.Spec.Floor.Joists.Flange.MM()/2 {
							n++
							entered[p] = true
						}
					}
					if n != 1 {
						t.Errorf("%s: the bolt at %.1f meets %d backings", b.Mark, bolt.X, n)
					}
				}
			}
			backings := a.Find(detail.Backing)
			if len(entered) != len(backings) {
				t.Errorf("%d backings, bolts enter %d", len(backings), len(entered))
			}
			half := a.Spec.Floor.Joists.Flange.MM() / 2
			for _, p := range backings {
				box := p.Bounds()
				if !among(box.Min.X-half, a.HouseJoists) || !among(box.Max.X+half, a.HouseJoists) {
					t.Errorf("%s from %.1f to %.1f ends off a joist", p.ID, box.Min.X, box.Max.X)
				}
				bayHasTies(t, a, p)
			}
			if got := a.Count(detail.TieStrap); got != 2*len(backings) {
				t.Errorf("%d ties in %d bays", got, len(backings))
			}
		})
	}
}

// bayHasTies looks for the two ties of the bay of a backing: on the joists' faces, from its inner face inward
// as long as stated, over 32 mm of height below the subfloor.
func bayHasTies(t *testing.T, a *detail.Assembly, backing *detail.Part) {
	t.Helper()
	box := backing.Bounds()
	bay := strings.TrimPrefix(backing.ID, "BK/")
	for k, want := range []float64{box.Min.X, box.Max.X} {
		id := fmt.Sprintf("TS/%s-%d", bay, k+1)
		found := false
		for _, p := range a.Find(detail.TieStrap) {
			if p.ID != id {
				continue
			}
			found = true
			b := p.Bounds()
			edge := b.Min.X
			if k == 1 {
				edge = b.Max.X
			}
			if math.Abs(edge-want) > 1e-6 || b.Min.X < box.Min.X-1e-6 || b.Max.X > box.Max.X+1e-6 {
				t.Errorf("%s stands %.2f to %.2f, the bay's joist face is at %.2f", id, b.Min.X, b.Max.X, want)
			}
			if math.Abs(b.Max.Y-box.Min.Y) > 1.6 || math.Abs(b.Size().Y-a.Spec.Tie.Length.MM()) > 1.6 {
				t.Errorf("%s runs from %.1f to %.1f behind a backing at %.1f", id, b.Min.Y, b.Max.Y, box.Min.Y)
			}
			if b.Max.Z > a.Frame.RimTop || math.Abs(b.Size().Z-32) > 1e-6 {
				t.Errorf("%s from %.1f to %.1f high", id, b.Min.Z, b.Max.Z)
			}
		}
		if !found {
			t.Errorf("no %s", id)
		}
	}
}

// Nothing is built that was not asked for: no backing or no ties; no ties where the joists run along the rim.
func TestNoBackingNoTies(t *testing.T) {
	for _, c := range []struct {
		set            string
		backings, ties int
	}{
		{"floor.backing.kind=none", 0, 18}, {"tie.kind=none", 9, 0}, {"floor.joists.direction=parallel", 8, 0},
	} {
		a := detailtest.Demo(t, "deck", c.set)
		if b, s := a.Count(detail.Backing), a.Count(detail.TieStrap); b != c.backings || s != c.ties {
			t.Errorf("%s: %d backings and %d ties, want %d and %d", c.set, b, s, c.backings, c.ties)
		}
	}
}

// A joist of the house is one piece of wood or three of an i-joist, hung under the subfloor: 11 7/8 in deep
// from -1 1/2 in, flanges 2 5/16 by 1 1/2 and a web of 3/8 in: 2 x 3.46875 + 8 7/8 x 3/8 = 10.265625 in2 of section.
func TestHouseJoistsByHand(t *testing.T) {
	const in = 25.4
	for _, c := range []struct {
		set     string
		solids  int
		section float64 // in2
	}{
		{"floor.joists.web=3/8in", 3, 10.265625}, {"floor.joists={kind: sawn, first: 5in, spacing: 16in, flange: 1 1/2in, depth: 11 1/4in}", 1, 16.875},
	} {
		a := detailtest.Demo(t, "deck", c.set)
		for _, p := range a.Find(detail.HouseJoist) {
			b, volume := p.Bounds(), 0.0
			for _, s := range p.Solids {
				volume += s.Volume()
			}
			if len(p.Solids) != c.solids || math.Abs(volume/b.Size().Y-c.section*in*in) > 1e-3 || math.Abs(b.Max.Z+1.5*in) > 1e-6 {
				t.Errorf("%s: %s of %d solids has a section of %.4f in2, top at %.3f in", c.set, p.ID, len(p.Solids), volume/b.Size().Y/in/in, b.Max.Z/in)
			}
		}
	}
}
