package design

import (
	"testing"

	"standclear/detail/same"
)

// What was asked for last is kept, the oldest is made again.
func TestKept(t *testing.T) {
	var k kept[int]
	made := 0
	get := func(i int) int { return k.get(same.Of(i), func() int { made++; return 10 * i }) }
	for i := range most {
		get(i)
	}
	if get(0); made != most {
		t.Fatalf("%d made of %d", made, most)
	}
	if get(most); made != most+1 || len(k.by) != most || len(k.last) != most {
		t.Fatalf("%d made, %d and %d kept; want %d and %d", made, len(k.by), len(k.last), most+1, most)
	}
	if v := get(0); v != 0 || made != most+1 {
		t.Error("what was asked for again was forgotten")
	}
	if v := get(1); v != 10 || made != most+2 {
		t.Errorf("the oldest is %d and %d were made; want 10 and %d", v, made, most+2)
	}
}
