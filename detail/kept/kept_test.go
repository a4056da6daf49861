package kept

import (
	"testing"

	"standclear/detail/same"
)

// What was asked for last is kept as far as there is room, the oldest is made again; one thing is always kept.
func TestStore(t *testing.T) {
	const most = 10
	s := New(most*100, func(v int) int { return max(v, 100) })
	made := 0
	get := func(i int) int { return s.Get(same.Of(i), func() int { made++; return i }) }
	for i := range most {
		get(i)
	}
	if get(0); made != most || s.taken != most*100 {
		t.Fatalf("%d made of %d, %d bytes", made, most, s.taken)
	}
	if get(most); made != most+1 || len(s.by) != most || len(s.last) != most {
		t.Fatalf("%d made, %d and %d kept; want %d and %d", made, len(s.by), len(s.last), most+1, most)
	}
	if v := get(0); v != 0 || made != most+1 {
		t.Error("what was asked for again was forgotten")
	}
	if v := get(1); v != 1 || made != most+2 {
		t.Errorf("the oldest is %d and %d were made; want 1 and %d", v, made, most+2)
	}
	if get(450); len(s.by) != 6 || s.taken != 950 {
		t.Errorf("%d kept, %d bytes beside one of 450; want 6 and 950", len(s.by), s.taken)
	}
	if get(5000); len(s.by) != 1 || s.taken != 5000 {
		t.Errorf("%d kept, %d bytes with one that fills more than the room", len(s.by), s.taken)
	}
	before := made
	if get(5000); made != before {
		t.Error("the one thing that is kept was made again")
	}
}
