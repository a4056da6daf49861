package layout

import (
	"math/rand"
	"testing"
)

// A duct from 60 to 70 with 1 of room: no bolt axis between 59 and 71, the two edges themselves are free. A
// block of width 7 may stand over it; one that may not stand on a lamp from 60 to 70 keeps half its width off.
func TestZonesByHand(t *testing.T) {
	duct := Rules{Width: 7, Columns: []float64{0}, Inside: []Zone{{Name: "duct", From: 60, To: 70, Room: 1}}}
	bare := duct
	bare.Inside = []Zone{{Name: "duct", From: 60, To: 70}}
	pair := duct
	pair.Columns = []float64{-2, 2}
	lamp := Rules{Width: 7, Columns: []float64{0}, Outside: []Zone{{Name: "lamp", From: 60, To: 70}}}
	for _, c := range []struct {
		name    string
		r       Rules
		at      float64
		clashes int
	}{
		{"at the edge of the room", duct, 59, 0}, {"in the room", duct, 59.01, 1}, {"in the duct", duct, 65, 1},
		{"in the room past it", duct, 70.99, 1}, {"at the far edge of the room", duct, 71, 0},
		{"no room asked, at the edge", bare, 60, 0}, {"no room asked, inside", bare, 60.01, 1}, {"no room asked, past it", bare, 70.5, 0},
		{"right column at the edge", pair, 57, 0}, {"right column in the room", pair, 57.5, 1},
		{"left column in the room", pair, 72.5, 1}, {"left column at the edge", pair, 73, 0},
		{"both columns in it, told once", pair, 65, 1},
		{"block beside the lamp", lamp, 56.5, 0}, {"block on the lamp's edge", lamp, 56.6, 1}, {"block past it", lamp, 73.5, 0}, {"block on the far edge", lamp, 73.4, 1},
	} {
		got := c.r.clashes(4, c.at)
		if len(got) != c.clashes {
			t.Errorf("%s: %d clashes, want %d: %+v", c.name, len(got), c.clashes, got)
		}
		for _, k := range got {
			if k.Block != 4 || k.At != 60 || k.Need != 70 || k.X != c.at {
				t.Errorf("%s: told as %+v", c.name, k)
			}
		}
	}
}

// Two columns take the nearer of them to the nearer joist: a block at 100 with columns at 98 and 102 is 1 from the
// joist at 103, 7 from the one at 91.
func TestClosest(t *testing.T) {
	r := Rules{Columns: []float64{-2, 2}, Avoid: []Axes{{Kind: "house joist", At: []float64{91, 103}, Clear: 3}}}
	k, ok := r.Closest("house joist", 100)
	if !ok || k.Distance != 1 || k.At != 103 || k.Name != "house joist 2" || k.Need != 3 {
		t.Errorf("%+v %v", k, ok)
	}
	if _, ok := r.Closest("deck joist", 100); ok {
		t.Error("a row of joists nobody gave was found")
	}
}

// Whatever stands in the way, a row that was found keeps every bolt out of the zones and their room,
// every block off the wall's, and more room never needs fewer blocks.
func TestFoundRowsMissTheZones(t *testing.T) {
	rnd := rand.New(rand.NewSource(3))
	found := 0
	for n := range 60 {
		r := deck()
		r.Columns, r.EndMax = []float64{-40, 40}, 12.5*in
		at, wide := rnd.Float64()*r.Length, 100+rnd.Float64()*300
		r.Inside = []Zone{{Name: "duct", From: at, To: at + wide}}
		at = rnd.Float64() * r.Length
		r.Outside = []Zone{{Name: "lamp", From: at, To: at + 120}}
		loose := Find(r)
		r.Inside[0].Room = 40
		tight := Find(r)
		if !tight.Feasible {
			continue
		}
		found++
		if !loose.Feasible || len(tight.X) < len(loose.X) {
			t.Errorf("%d: %d blocks with room, %d without (feasible %v)", n, len(tight.X), len(loose.X), loose.Feasible)
		}
		z, o := r.Inside[0], r.Outside[0]
		for _, x := range tight.X {
			for _, c := range r.Columns {
				if x+c > z.From-z.Room+slack && x+c < z.To+z.Room-slack {
					t.Errorf("%d: a bolt at %.1f in %+v", n, x+c, z)
				}
			}
			if x+r.Width/2 > o.From+slack && x-r.Width/2 < o.To-slack {
				t.Errorf("%d: the block at %.1f on %+v", n, x, o)
			}
		}
	}
	if found < 15 {
		t.Errorf("only %d rows found: the law is hardly tried", found)
	}
}

// Given positions are judged as they stand, sorted, and never moved.
func TestForce(t *testing.T) {
	r := Rules{Length: 100, Width: 7, Columns: []float64{0}, MaxSpacing: 40, EndMin: 5, EndMax: 20, Inside: []Zone{{Name: "duct", From: 45, To: 55}}}
	given := []float64{90, 3, 50}
	got := Force(r, given)
	if got.X[0] != 3 || got.X[1] != 50 || got.X[2] != 90 || given[0] != 90 || got.Feasible || !got.Forced {
		t.Fatalf("%+v of %v", got, given)
	}
	// 3 is under 5 from the end, 50 - 3 = 47 is over 40, 50 is in the duct; 90 keeps 10 from its end and 40 from 50.
	want := map[string]float64{"end": 3, "spacing": 47, "inside": 0}
	for _, k := range got.Clashes {
		d, ok := want[k.Kind]
		if !ok || k.Distance != d {
			t.Errorf("told of %+v", k)
		}
		delete(want, k.Kind)
	}
	if len(want) > 0 {
		t.Errorf("not told of %v", want)
	}
}
