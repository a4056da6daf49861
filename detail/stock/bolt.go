package stock

import (
	"math"
	"slices"
	"sync"

	"standclear/detail/unit"
)

// Bolt is a hex bolt with its hex nut.
type Bolt struct {
	Name     string // "1/2", "M12"
	D        unit.Length
	Metric   bool
	Flats    unit.Length // head, across flats
	Head     unit.Length // height of the head
	NutFlats unit.Length
	Nut      unit.Length // height of the nut
	Pitch    unit.Length // of the thread, crest to crest
	Source   string
}

// Bolts returns the bolts this tool draws, inch then metric, thin to thick.
func Bolts() []Bolt { return slices.Clone(bolts()) }

// bolts is made once and never changed.
var bolts = sync.OnceValue(func() []Bolt { return append(inchBolts(), metricBolts()...) })

// BoltOf finds the bolt of diameter d to within 0.05 mm: 12 mm is M12, 12.7 mm is 1/2 in.
func BoltOf(d unit.Length) (Bolt, bool) {
	for _, b := range bolts() {
		if math.Abs(float64(b.D-d)) < 0.05 {
			return b, true
		}
	}
	return Bolt{}, false
}

// inchBolts: hex bolts ASME B18.2.1, basic head height; hex nuts ASME B18.2.2; coarse thread. Widths
// across flats of 1/2, 5/8 and 3/4 were read, the rest is from memory.
func inchBolts() []Bolt {
	const source = "ASME B18.2.1 and B18.2.2, coarse thread; " + memory
	var all []Bolt
	for _, r := range []struct {
		name                           string
		d, flats, head, nutFlats, high float64 // in
		perInch                        float64
	}{
		{"1/4", 0.25, 7.0 / 16, 11.0 / 64, 7.0 / 16, 7.0 / 32, 20},
		{"5/16", 0.3125, 0.5, 7.0 / 32, 0.5, 17.0 / 64, 18},
		{"3/8", 0.375, 9.0 / 16, 0.25, 9.0 / 16, 21.0 / 64, 16},
		{"7/16", 0.4375, 0.625, 19.0 / 64, 11.0 / 16, 0.375, 14},
		{"1/2", 0.5, 0.75, 11.0 / 32, 0.75, 7.0 / 16, 13},
		{"5/8", 0.625, 15.0 / 16, 27.0 / 64, 15.0 / 16, 35.0 / 64, 11},
		{"3/4", 0.75, 1.125, 0.5, 1.125, 41.0 / 64, 10},
		{"7/8", 0.875, 21.0 / 16, 37.0 / 64, 21.0 / 16, 0.75, 9},
		{"1", 1, 1.5, 43.0 / 64, 1.5, 55.0 / 64, 8},
	} {
		all = append(all, Bolt{
			Name: r.name, D: in(r.d), Flats: in(r.flats), Head: in(r.head), NutFlats: in(r.nutFlats), Nut: in(r.high),
			Pitch: in(1 / r.perInch), Source: source,
		})
	}
	return all
}

// metricBolts: hex bolts ISO 4014, hex nuts ISO 4032, coarse thread.
func metricBolts() []Bolt {
	const source = "ISO 4014 and ISO 4032, coarse thread; " + memory
	var all []Bolt
	for _, r := range []struct {
		name                          string
		d, flats, head, high, perTurn unit.Length // mm
	}{
		{"M10", 10, 16, 6.4, 8.4, 1.5},
		{"M12", 12, 18, 7.5, 10.8, 1.75},
		{"M16", 16, 24, 10, 14.8, 2},
		{"M20", 20, 30, 12.5, 18, 2.5},
		{"M24", 24, 36, 15, 21.5, 3},
	} {
		all = append(all, Bolt{
			Name: r.name, D: r.d, Metric: true, Flats: r.flats, Head: r.head, NutFlats: r.flats, Nut: r.high,
			Pitch: r.perTurn, Source: source,
		})
	}
	return all
}

// Thread returns the nominal length of thread on a bolt of the given length, never more than that:
// 2D + 1/4 in, 2D + 1/2 in past 6 in (ASME B18.2.1); 2d + 6, + 12 past 125, + 25 past 200 mm (ISO 4014).
// Both from memory, confirm.
func (b Bolt) Thread(length unit.Length) unit.Length {
	extra := 0.25 * unit.Inch
	switch {
	case b.Metric && length > 200:
		extra = 25
	case b.Metric && length > 125:
		extra = 12
	case b.Metric:
		extra = 6
	case length > 6*unit.Inch:
		extra = 0.5 * unit.Inch
	}
	return min(2*b.D+extra, max(length, 0))
}

// Hole returns the least and the greatest clearance hole for the bolt: D + 1/32 to D + 1/16 in (read; NDS
// 2018 12.1.3.2, clause from memory, confirm), or d + 1 to d + 2 mm (common practice, no source).
func (b Bolt) Hole() (least, most unit.Length) {
	if b.Metric {
		return b.D + 1, b.D + 2
	}
	return b.D + unit.Inch/32, b.D + unit.Inch/16
}

// Lengths returns the lengths the bolt is commonly stocked in, short to long: by 1/2 in to 8 in, then
// by the inch to 16 in; by 10 mm to 160 mm, then by 20 mm to 400 mm (common practice, no source).
func (b Bolt) Lengths() []unit.Length {
	if b.Metric {
		return append(steps(30, 160, 10), steps(180, 400, 20)...)
	}
	return append(steps(1*unit.Inch, 8*unit.Inch, unit.Inch/2), steps(9*unit.Inch, 16*unit.Inch, unit.Inch)...)
}

// steps returns from, from+step, ... up to and with to.
func steps(from, to, step unit.Length) []unit.Length {
	var all []unit.Length
	for i := 0; ; i++ {
		l := from + unit.Length(i)*step
		if l > to+step/1000 {
			return all
		}
		all = append(all, l)
	}
}

func in(v float64) unit.Length { return unit.Length(v) * unit.Inch }
