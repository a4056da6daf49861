package stock

import (
	"math"
	"strings"
	"testing"

	"standclear/detail/unit"
)

// Values of NDS 2018 Supplement, Tables 4A and 4B, row by row, in psi; E in 10^6 psi.
func TestLumber(t *testing.T) {
	for _, c := range []struct {
		species, grade                string
		depth                         float64 // in
		fb, fbCF, ft, fv, fcp, e, min float64
		g                             float64
	}{
		{"southern pine", "No.2", 5.5, 1000, 1000, 600, 175, 565, 1.4, 0.51, 0.55},
		{"southern pine", "No.2", 7.25, 925, 925, 550, 175, 565, 1.4, 0.51, 0.55},
		{"southern pine", "No.2", 9.25, 800, 800, 475, 175, 565, 1.4, 0.51, 0.55},
		{"southern pine", "No.2", 11.25, 750, 750, 450, 175, 565, 1.4, 0.51, 0.55},
		{"SYP", "#1", 5.5, 1350, 1350, 875, 175, 565, 1.6, 0.58, 0.55},
		{"southern pine", "No.1", 7.25, 1250, 1250, 800, 175, 565, 1.6, 0.58, 0.55},
		{"southern pine", "No.1", 9.25, 1050, 1050, 700, 175, 565, 1.6, 0.58, 0.55},
		{"southern pine", "No.1", 11.25, 1000, 1000, 650, 175, 565, 1.6, 0.58, 0.55},
		{"hem-fir", "No.1", 5.5, 975, 1267.5, 625, 150, 405, 1.5, 0.55, 0.43},
		{"HF", "No.2", 9.25, 850, 935, 525, 150, 405, 1.3, 0.47, 0.43},
		{"douglas fir-larch", "No.1", 7.25, 1000, 1200, 675, 180, 625, 1.7, 0.62, 0.50},
		{"Douglas Fir", "no 2", 11.25, 900, 900, 575, 180, 625, 1.6, 0.58, 0.50},
		{"spruce-pine-fir", "No.1", 9.25, 875, 962.5, 450, 135, 425, 1.4, 0.51, 0.42},
		{"SPF", "No.1/No.2", 11.25, 875, 875, 450, 135, 425, 1.4, 0.51, 0.42},
		{"hem-fir", "No.2", 3.5, 850, 1105, 525, 150, 405, 1.3, 0.47, 0.43},       // as 5 1/2
		{"southern pine", "No.2", 7.68, 800, 800, 475, 175, 565, 1.4, 0.51, 0.55}, // 195 mm: as 9 1/4
	} {
		v, ok := Lumber(c.species, c.grade, unit.Length(c.depth)*unit.Inch)
		got := []float64{v.Fb.PSI(), v.FbCF().PSI(), v.Ft.PSI(), v.Fv.PSI(), v.FcPerp.PSI(), v.E.PSI() / 1e6, v.Emin.PSI() / 1e6, v.G}
		want := []float64{c.fb, c.fbCF, c.ft, c.fv, c.fcp, c.e, c.min, c.g}
		for i := range want {
			if !ok || math.Abs(got[i]-want[i]) > 1e-9*want[i] {
				t.Errorf("%s %s %v in: %v, %t; want %v", c.species, c.grade, c.depth, got, ok, want)
				break
			}
		}
	}
}

func TestLumberUnknown(t *testing.T) {
	for _, c := range []struct {
		species, grade string
		depth          unit.Length
	}{
		{"balsa", "No.2", 100}, {"southern pine", "No.3", 100}, {"southern pine", "No.2", 0}, {"southern pine", "No.2", -1},
		{"southern pine", "No.2", 11.5 * unit.Inch}, {"southern pine", "", 100}, {"", "No.2", 100}, {"southern pine", "C24", 100},
		{"european softwood", "No.2", 100}, {"southern pine", "No.2", unit.Length(math.NaN())},
	} {
		if v, ok := Lumber(c.species, c.grade, c.depth); ok {
			t.Errorf("%s %s %v mm is %+v; want none", c.species, c.grade, float64(c.depth), v)
		}
	}
}

// C24 must stay on the low side of its own standard, each value by its own factor (see c24).
func TestC24IsLow(t *testing.T) {
	char := CharacteristicC24()
	for _, depth := range []unit.Length{95, 145, 195, 220, 285} {
		v, ok := Lumber("C24", "C24", depth)
		if !ok {
			t.Fatalf("no values at %v mm", float64(depth))
		}
		for _, c := range []struct {
			name      string
			got, most unit.Pressure
		}{
			{"bending", v.FbCF(), char.Fm / 2.1}, {"tension", unit.Pressure(v.CF) * v.Ft, char.Ft / 2.1},
			{"shear", v.Fv, char.Fv * 0.67 / 2.1}, {"bearing", v.FcPerp, char.FcPerp / 1.67},
			{"E", v.E, char.E}, {"Emin", v.Emin, char.E05 * 1.03 / 1.66},
		} {
			if c.got > c.most || c.got <= 0 {
				t.Errorf("%s at %v mm: %v MPa; want at most %v", c.name, float64(depth), c.got.MPa(), c.most.MPa())
			}
		}
		if v.G != 0.39 || !strings.Contains(v.Source, judged) {
			t.Errorf("G %v, source %q", v.G, v.Source)
		}
	}
}

// Deeper lumber of a grade is never worth more, and every value says where it is from.
func TestLumberLaws(t *testing.T) {
	for _, s := range SpeciesList() {
		for _, grade := range s.Grades {
			last := LumberValues{Fb: 1e12, CF: 1, Ft: 1e12}
			for _, size := range Sizes() {
				v, ok := Lumber(s.Key, grade, size.Depth)
				if !ok || v.Species != s.Key || v.Grade != grade || v.Source == "" {
					t.Fatalf("%s %s %s: %+v, %t", s.Key, grade, size.Name, v, ok)
				}
				if v.FbCF() > last.FbCF() || v.Ft > last.Ft {
					t.Errorf("%s %s: %s is worth more than the size before", s.Key, grade, size.Name)
				}
				last = v
			}
		}
	}
}

func TestSpeciesOf(t *testing.T) {
	for _, c := range []struct{ in, key string }{
		{"SOUTHERN PINE", "southern pine"}, {"southern-pine", "southern pine"}, {"SP", "southern pine"}, {"Hem Fir", "hem-fir"},
		{"DF-L", "douglas fir-larch"}, {"dfl", "douglas fir-larch"}, {"S-P-F", "spruce-pine-fir"}, {"c24", "european softwood"},
		{"oak", ""}, {"", ""},
	} {
		if s, _ := SpeciesOf(c.in); s.Key != c.key {
			t.Errorf("SpeciesOf(%q) = %q; want %q", c.in, s.Key, c.key)
		}
	}
}

func TestSizes(t *testing.T) {
	for _, c := range []struct {
		name  string
		depth float64 // in
	}{
		{"2x4", 3.5}, {"2 x 6", 5.5}, {"2X8", 7.25}, {"2×10", 9.25}, {"2x12", 11.25},
	} {
		s, ok := SizeOf(c.name)
		if !ok || !alike(s.Thickness, 38.1) || math.Abs(s.Depth.Inches()-c.depth) > 1e-12 {
			t.Errorf("%s: %+v, %t", c.name, s, ok)
		}
		if n, ok := NominalOf(s.Thickness, s.Depth); !ok || n != s {
			t.Errorf("NominalOf %s: %+v, %t", c.name, n, ok)
		}
	}
	if s, ok := SizeOf("2x9"); ok {
		t.Errorf("2x9 is %+v", s)
	}
	if s, ok := NominalOf(45, 220); ok {
		t.Errorf("45 x 220 mm is %+v", s)
	}
	if s, ok := TakenForActual(2*unit.Inch, 10*unit.Inch); !ok || s.Name != "2x10" {
		t.Errorf("2 in x 10 in: %+v, %t", s, ok)
	}
	if s, ok := TakenForActual(1.5*unit.Inch, 9.25*unit.Inch); ok {
		t.Errorf("1 1/2 x 9 1/4 in: %+v", s)
	}
}

func TestRims(t *testing.T) {
	for _, c := range []struct {
		key        string
		attachable bool
		g, fcPerp  float64
	}{
		{"southern pine", true, 0.55, 565}, {"hem-fir", true, 0.43, 405}, {"SPF", true, 0.42, 425}, {"LSL", true, 0.50, 425},
		{"lvl", true, 0.50, 425}, {"osb", true, 0.42, 360}, {"i-joist closure", false, 0, 0}, {"plywood strip", false, 0, 0},
		{"brick veneer", false, 0, 0}, {"unknown", false, 0, 0},
	} {
		b, ok := Rim(c.key, 9.25*unit.Inch)
		if !ok || b.Attachable != c.attachable || b.Values.G != c.g || math.Abs(b.Values.FcPerp.PSI()-c.fcPerp) > 1e-6 || b.Reason == "" {
			t.Errorf("%s: %+v, %t", c.key, b, ok)
		}
	}
	if b, ok := Rim("cheese", 9.25*unit.Inch); ok {
		t.Errorf("cheese: %+v", b)
	}
	if b, ok := Rim("hem-fir", 16*unit.Inch); !ok || b.Values.G != 0 {
		t.Errorf("a rim deeper than the table: %+v, %t", b, ok)
	}
}

// The value of a sawn rim follows its depth; every attachable rim has values with a source, and its
// material is on the list.
func TestRimLaws(t *testing.T) {
	shallow, _ := Rim("southern pine", 5.5*unit.Inch)
	if shallow.Values.Fb.PSI() < 999 {
		t.Errorf("2x6 southern pine rim: Fb %v psi", shallow.Values.Fb.PSI())
	}
	for _, b := range Rims() {
		if _, ok := MaterialOf(b.Material); !ok {
			t.Errorf("%s: no material %q", b.Key, b.Material)
		}
		if b.Attachable && (b.Values.Source == "" || b.Values.Fb <= 0 || b.Values.CF < 1) {
			t.Errorf("%s: %+v", b.Key, b.Values)
		}
	}
}

func TestPanels(t *testing.T) {
	for _, p := range Panels() {
		if _, ok := MaterialOf(p.Key); !ok || p.Source == "" || p.Bears != (p.FcPerp > 0) || p.FcWet > p.FcPerp {
			t.Errorf("%+v", p)
		}
	}
	if p, ok := PanelOf("Plywood"); !ok || math.Abs(p.FcWet.PSI()-210) > 1e-9 || p.G != 0.42 {
		t.Errorf("plywood: %+v, %t", p, ok)
	}
	if p, ok := PanelOf("softwood"); ok {
		t.Errorf("softwood is no panel: %+v", p)
	}
}
