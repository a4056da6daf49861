package stock

import (
	"math"
	"slices"
	"sync"

	"standclear/detail/unit"
)

// Lag is a hex lag screw.
type Lag struct {
	Name   string
	D      unit.Length   // nominal, of the shank
	Root   unit.Length   // of the thread
	Tip    unit.Length   // length of the tapered tip E, which does not count as penetration
	Flats  unit.Length   // across flats
	Yield  unit.Pressure // bending yield Fyb
	Source string
}

// Lags returns the lag screws of NDS 2018 Appendix L, thin to thick: roots of 3/8 and the tip of 1/2
// were read, the rest is from memory. Bending yield: NDS 2018 Table 12K notes, from memory.
func Lags() []Lag { return slices.Clone(lags()) }

// lags is made once and never changed.
var lags = sync.OnceValue(func() []Lag {
	const source = "NDS 2018 Appendix L, Table L2; " + memory
	var all []Lag
	for _, r := range []struct {
		name         string
		d, root, tip float64 // in
		fyb          float64 // psi
	}{
		{"1/4", 0.25, 0.173, 5.0 / 32, 70000},
		{"5/16", 0.3125, 0.227, 3.0 / 16, 60000},
		{"3/8", 0.375, 0.265, 7.0 / 32, 45000},
		{"7/16", 0.4375, 0.328, 9.0 / 32, 45000},
		{"1/2", 0.5, 0.371, 5.0 / 16, 45000},
		{"5/8", 0.625, 0.471, 13.0 / 32, 45000},
		{"3/4", 0.75, 0.579, 0.5, 45000},
		{"7/8", 0.875, 0.683, 19.0 / 32, 45000},
		{"1", 1, 0.780, 11.0 / 16, 45000},
	} {
		b, _ := BoltOf(in(r.d))
		all = append(all, Lag{r.name, in(r.d), in(r.root), in(r.tip), b.Flats, psi(r.fyb), source})
	}
	return all
})

// LagOf finds the lag screw of diameter d to within 0.05 mm.
func LagOf(d unit.Length) (Lag, bool) {
	for _, l := range lags() {
		if math.Abs(float64(l.D-d)) < 0.05 {
			return l, true
		}
	}
	return Lag{}, false
}

// Thread returns the length of thread of a lag screw of the given length, tip included: half the
// length and 1/2 in, at most 6 in, and the whole of it up to 1 in (NDS 2018 Appendix L; from memory,
// confirm).
func (l Lag) Thread(length unit.Length) unit.Length {
	if length <= 1*unit.Inch {
		return max(length, 0)
	}
	return min(length/2+unit.Inch/2, 6*unit.Inch, length)
}

// BoltYield is the bending yield Fyb of a plain carbon-steel bolt: 45 000 psi, NDS 2018 Table 12A
// notes; from memory, confirm.
func BoltYield() unit.Pressure { return psi(45000) }
