package stock

import (
	"math"
	"testing"

	"standclear/detail/unit"
)

func TestBoltOf(t *testing.T) {
	for _, c := range []struct {
		d                      unit.Length
		name                   string
		flats, head, nut, more unit.Length // more: next stock length above 6 in or 150 mm
	}{
		{0.5 * unit.Inch, "1/2", 0.75 * unit.Inch, 11.0 / 32 * unit.Inch, 7.0 / 16 * unit.Inch, 6.5 * unit.Inch},
		{0.625 * unit.Inch, "5/8", 15.0 / 16 * unit.Inch, 27.0 / 64 * unit.Inch, 35.0 / 64 * unit.Inch, 6.5 * unit.Inch},
		{0.75 * unit.Inch, "3/4", 1.125 * unit.Inch, 0.5 * unit.Inch, 41.0 / 64 * unit.Inch, 6.5 * unit.Inch},
		{12, "M12", 18, 7.5, 10.8, 160},
		{16, "M16", 24, 10, 14.8, 160},
	} {
		b, ok := BoltOf(c.d)
		if !ok || b.Name != c.name || !alike(b.Flats, c.flats) || !alike(b.Head, c.head) || !alike(b.Nut, c.nut) {
			t.Errorf("%v: %+v, %t", float64(c.d), b, ok)
		}
		for _, l := range b.Lengths() {
			if l > 6*unit.Inch+1 {
				if !alike(l, c.more) {
					t.Errorf("%s: stock length %v past 6 in; want %v", b.Name, float64(l), float64(c.more))
				}
				break
			}
		}
	}
	if b, ok := BoltOf(13); ok {
		t.Errorf("13 mm is %+v", b)
	}
}

// 1/2 in: 2 x 1/2 + 1/4 = 1 1/4 in, 1 1/2 in past 6 in. M12: 24 + 6 = 30, 36, 49 mm.
func TestBoltThread(t *testing.T) {
	half, _ := BoltOf(0.5 * unit.Inch)
	m12, _ := BoltOf(12)
	for _, c := range []struct {
		b            Bolt
		length, want unit.Length
	}{
		{half, 6 * unit.Inch, 1.25 * unit.Inch}, {half, 8 * unit.Inch, 1.5 * unit.Inch}, {half, 1 * unit.Inch, 1 * unit.Inch},
		{half, 0, 0}, {m12, 120, 30}, {m12, 160, 36}, {m12, 240, 49},
	} {
		if got := c.b.Thread(c.length); !alike(got, c.want) {
			t.Errorf("%s x %v: %v; want %v", c.b.Name, float64(c.length), float64(got), float64(c.want))
		}
	}
}

func TestBoltHole(t *testing.T) {
	half, _ := BoltOf(0.5 * unit.Inch)
	if least, most := half.Hole(); !alike(least, 17.0/32*unit.Inch) || !alike(most, 9.0/16*unit.Inch) {
		t.Errorf("1/2 in: %v to %v", least.Inches(), most.Inches())
	}
	m12, _ := BoltOf(12)
	if least, most := m12.Hole(); least != 13 || most != 14 {
		t.Errorf("M12: %v to %v", float64(least), float64(most))
	}
}

// Every bolt has two washers that go over it and rest on more than the nut, lengths that rise, and a
// head and nut of a size with it.
func TestBoltLaws(t *testing.T) {
	for _, b := range Bolts() {
		washers := b.Washers()
		if len(washers) != 2 || washers[0].Outside > washers[1].Outside {
			t.Errorf("%s: washers %+v", b.Name, washers)
		}
		for _, w := range washers {
			if w.Hole <= b.D || w.Outside <= b.NutFlats || w.Thickness <= 0 {
				t.Errorf("%s: %+v", b.Name, w)
			}
		}
		for i, l := range b.Lengths()[1:] {
			if l <= b.Lengths()[i] {
				t.Errorf("%s: lengths do not rise at %v", b.Name, float64(l))
			}
		}
		if b.Flats < 1.4*b.D || b.Flats > 1.9*b.D || b.Head < 0.6*b.D || b.Nut < 0.8*b.D || b.Nut > 1.01*b.D || b.Pitch > b.D/4 {
			t.Errorf("%s out of proportion: %+v", b.Name, b)
		}
		if size, thk := b.PlateWasher(); size < 76 || thk < 6 || size > 80 {
			t.Errorf("%s: plate %v x %v", b.Name, float64(size), float64(thk))
		}
	}
}

func TestLags(t *testing.T) {
	l, ok := LagOf(0.5 * unit.Inch)
	if !ok || !alike(l.Root, 0.371*unit.Inch) || !alike(l.Tip, 0.3125*unit.Inch) || !alike(l.Flats, 0.75*unit.Inch) {
		t.Errorf("1/2 in lag: %+v, %t", l, ok)
	}
	// Half the length and 1/2 in: 4 in has 2 1/2, 12 in would have 6 1/2 and has 6, 1 in is all thread.
	for _, c := range []struct{ length, want unit.Length }{{4, 2.5}, {12, 6}, {1, 1}, {0, 0}} {
		if got := l.Thread(c.length * unit.Inch); !alike(got, c.want*unit.Inch) {
			t.Errorf("thread of %v in: %v in", float64(c.length), got.Inches())
		}
	}
	last := Lag{}
	for _, l := range Lags() {
		if l.Root >= l.D || l.D <= last.D || l.Root <= last.Root || l.Tip <= last.Tip || l.Yield < BoltYield() {
			t.Errorf("%+v after %+v", l, last)
		}
		last = l
	}
	if _, ok := LagOf(12); ok {
		t.Error("a 12 mm lag screw was found")
	}
}

func TestSheetSizes(t *testing.T) {
	for _, c := range []struct {
		name string
		w, h float64 // mm
	}{
		{"arch d", 914.4, 609.6}, {"ARCHD", 914.4, 609.6}, {"A2", 594, 420}, {"ANSI B", 431.8, 279.4},
	} {
		s, ok := SheetSizeOf(c.name)
		if !ok || math.Abs(s.Width.MM()-c.w) > 1e-9 || math.Abs(s.Height.MM()-c.h) > 1e-9 {
			t.Errorf("%s: %+v, %t", c.name, s, ok)
		}
	}
	if s, ok := SheetSizeOf("napkin"); ok {
		t.Errorf("napkin: %+v", s)
	}
	if names := SheetNames(); len(names) != len(SheetSizes()) || names[0] != "ARCH A" {
		t.Errorf("names: %v", names)
	}
	for _, s := range SheetSizes() {
		if s.Width < s.Height {
			t.Errorf("%s stands upright", s.Name)
		}
	}
}

func TestScales(t *testing.T) {
	inch, metric := Scales(unit.IP), Scales(unit.SI)
	if inch[2].Text != `3" = 1'-0"` || metric[2].Text != "1:5" || inch[2].Use != metric[2].Use {
		t.Errorf("section scales: %+v and %+v", inch[2], metric[2])
	}
}

func TestFoam(t *testing.T) {
	// C578 Type IV, 25 psi: 8 1/3 psi dead, 5 psi repeated.
	dead, repeated := FoamSustained(psi(25))
	if math.Abs(dead.PSI()-25.0/3) > 1e-9 || math.Abs(repeated.PSI()-5) > 1e-9 {
		t.Errorf("25 psi foam: %v dead, %v repeated", dead.PSI(), repeated.PSI())
	}
	if c := FoamClasses(); c[1].Name != "C578 Type IV" || math.Abs(c[1].Strength.PSI()-25) > 1e-9 {
		t.Errorf("Type IV: %+v", c[1])
	}
}

func TestMaterials(t *testing.T) {
	hatches := map[string]bool{
		"lumber": true, "plywood": true, "osb": true, "foam": true, "fibre": true, "batt": true, "gypsum": true, "concrete": true,
		"masonry": true, "air": true, "membrane": true, "steel": true, "earth": true, "cladding": true,
	}
	seen := map[string]bool{}
	for _, m := range Materials() {
		if seen[m.Key] || !hatches[m.Hatch] || m.Across <= 0 || m.Along < m.Across || m.Density <= 0 || m.Vapour == "" || m.Source == "" {
			t.Errorf("%+v", m)
		}
		seen[m.Key] = true
	}
	for _, c := range []struct {
		key           string
		across, along float64
	}{
		{"softwood", 0.13, 0.23}, {"Wood Fibre", 0.043, 0.043}, {"xps", 0.035, 0.035}, {"steel", 50, 50}, {"gypsum", 0.25, 0.25},
	} {
		m, ok := MaterialOf(c.key)
		if !ok || float64(m.Across) != c.across || float64(m.Along) != c.along {
			t.Errorf("%s: %+v, %t", c.key, m, ok)
		}
	}
	if m, ok := MaterialOf("cheese"); ok {
		t.Errorf("cheese: %+v", m)
	}
	if keys := MaterialKeys(); len(keys) != len(Materials()) || keys[0] != "softwood" {
		t.Errorf("keys: %v", keys)
	}
}

func alike(a, b unit.Length) bool { return math.Abs(float64(a-b)) < 1e-9 }
