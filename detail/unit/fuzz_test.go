package unit

import (
	"math"
	"testing"
)

func FuzzParseLength(f *testing.F) {
	for _, s := range []string{
		`7 1/2"`, `14'-8"`, "80mm", "1.2m", "½in", "14.8ft", "89", "-4 1/2\"", "1/0in", "7 9/8in", "14'-8", "9'''", "−0in",
		"1,5mm", "'\"", "1'-1'-1\"", "\xff1in",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		l, err := ParseLength(s)
		if err != nil {
			return
		}
		if v := float64(l); math.IsNaN(v) || math.Abs(v) > 1e12 {
			t.Fatalf("%q reads as %v mm", s, v)
		}
		if math.Abs(float64(l)) > 1e12-Foot.MM() {
			return // so near the most that is read that it may be printed past it
		}
		for _, den := range []int{1, 8, 16, 64} {
			text := l.FeetInches(den)
			again, err := ParseLength(text)
			step := Inch.MM() / float64(den)
			if err != nil || math.Abs(float64(again-l)) > step/2+1e-12*math.Abs(float64(l))+1e-9 {
				t.Fatalf("%q is %v mm, prints %s, reads back %v, %v", s, float64(l), text, float64(again), err)
			}
		}
		again, err := ParseLength(l.Metric(1) + "mm")
		if err != nil || math.Abs(float64(again-l)) > 0.05+1e-9 {
			t.Fatalf("%q is %v mm, prints %s, reads back %v, %v", s, float64(l), l.Metric(1), float64(again), err)
		}
	})
}

// FuzzParse sends any text to every other parser; what is read must be finite, and what is printed of
// it must read back within the digits printed.
func FuzzParse(f *testing.F) {
	for _, s := range []string{
		"1500lb", "1,500 lb", "45psf", "0.3MPa", "250plf", "20C", "-18 C", "68°F", "3830 K.d", "115mph", "1:8", "12%", "7.1deg",
		"0", `3" = 1'-0"`, "1:5", "1:0", "0=0", "=", ":", "99999999999999psi", "1e308N",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for name, parse := range parsers() {
			v, err := parse(s)
			if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
				t.Fatalf("%s %q = %v", name, s, v)
			}
		}
		if v, err := ParseForce(s); err == nil {
			back, err := ParseForce(v.Text(IP))
			near(t, s, v.Text(IP), float64(v), float64(back), float64(Pound)/2, err)
			back, err = ParseForce(v.Text(SI))
			near(t, s, v.Text(SI), float64(v), float64(back), 0.005*math.Abs(float64(v))+1e-9, err)
		}
		if v, err := ParsePressure(s); err == nil {
			text := v.AreaLoad().Text(IP)
			back, err := ParsePressure(text)
			near(t, s, text, float64(v), float64(back), 0.05*float64(PSF)+0.005*math.Abs(float64(v)), err)
		}
		if v, err := ParseTemp(s); err == nil && math.Abs(float64(v)) < 1e6 {
			back, err := ParseTemp(v.Text(IP))
			near(t, s, v.Text(IP), float64(v), float64(back), 0.05, err)
		}
		if v, err := ParseSlope(s); err == nil && math.Abs(float64(v)) > 1e-3 && math.Abs(float64(v)) < 2 {
			back, err := ParseSlope(v.Text(IP)) // 1:n to 0.01 of n
			near(t, s, v.Text(IP), 1/float64(v), 1/float64(back), 0.0051, err)
		}
	})
}

func near(t *testing.T, given, text string, v, back, within float64, err error) {
	t.Helper()
	if err != nil || math.Abs(v-back) > within+1e-12*math.Abs(v) {
		t.Fatalf("%q is %v, prints %s, reads back %v, %v", given, v, text, back, err)
	}
}
