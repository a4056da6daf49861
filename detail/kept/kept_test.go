package kept

import (
	"testing"

	"standclear/detail/same"
)

// What was asked for last is kept, the oldest is made again.
func TestStore(t *testing.T) {
	var s Store[int]
	made := 0
	get := func(i int) int { return s.Get(same.Of(i), func() int { made++; return 10 * i }) }
	for i := range Most {
		get(i)
	}
	if get(0); made != Most {
		t.Fatalf("%d made of %d", made, Most)
	}
	if get(Most); made != Most+1 || len(s.by) != Most || len(s.last) != Most {
		t.Fatalf("%d made, %d and %d kept; want %d and %d", made, len(s.by), len(s.last), Most+1, Most)
	}
	if v := get(0); v != 0 || made != Most+1 {
		t.Error("what was asked for again was forgotten")
	}
	if v := get(1); v != 10 || made != Most+2 {
		t.Errorf("the oldest is %d and %d were made; want 10 and %d", v, made, Most+2)
	}
}
