package unit

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// parsers gives every parser one shape, so that one table and one fuzz target serve them all.
func parsers() map[string]func(string) (float64, error) {
	return map[string]func(string) (float64, error){
		"length":   func(s string) (float64, error) { v, err := ParseLength(s); return float64(v), err },
		"force":    func(s string) (float64, error) { v, err := ParseForce(s); return float64(v), err },
		"pressure": func(s string) (float64, error) { v, err := ParsePressure(s); return float64(v), err },
		"line":     func(s string) (float64, error) { v, err := ParseLineLoad(s); return float64(v), err },
		"temp":     func(s string) (float64, error) { v, err := ParseTemp(s); return float64(v), err },
		"days":     func(s string) (float64, error) { v, err := ParseDegreeDays(s); return float64(v), err },
		"speed":    func(s string) (float64, error) { v, err := ParseSpeed(s); return float64(v), err },
		"slope":    func(s string) (float64, error) { v, err := ParseSlope(s); return float64(v), err },
		"percent":  func(s string) (float64, error) { v, err := ParsePercent(s); return float64(v), err },
		"scale":    ParseScale,
	}
}

func TestParse(t *testing.T) {
	for _, c := range []struct {
		kind, in string
		want     float64
	}{
		{"force", "1500lb", 6672.333}, // 1500 x 4.4482216
		{"force", "1,500 lbf", 6672.333}, {"force", "1.5 kip", 6672.333}, {"force", "800N", 800}, {"force", "6.7kN", 6700},
		{"force", "-2 kN", -2000},
		{"pressure", "45psf", 2154.6117}, // 45 x 47.88025898
		{"pressure", "25psi", 172368.9},  // 25 x 6894.757
		{"pressure", "2.15kPa", 2150}, {"pressure", "2.15 kN/m2", 2150}, {"pressure", "2.15kN/m²", 2150},
		{"pressure", "0.3MPa", 3e5}, {"pressure", "0.3 N/mm^2", 3e5}, {"pressure", "300 pa", 300}, {"pressure", "45ksi", 310264078},
		{"line", "250plf", 3.648475}, // 250 x 4.4482216 / 304.8
		{"line", "250 lb/ft", 3.648475}, {"line", "5.04kN/m", 5.04}, {"line", "500N/m", 0.5},
		{"temp", "20C", 20}, {"temp", "-18 C", -18}, {"temp", "68F", 20}, {"temp", "-40 °F", -40}, {"temp", "20°C", 20},
		{"temp", "0F", -17.77778},
		{"days", "3830 K.d", 3830}, {"days", "6900 F.d", 3833.333}, {"days", "3,830F d", 2127.778}, {"days", "3830Kd", 3830},
		{"days", "3830 K·d", 3830},
		{"speed", "115mph", 51.4096}, {"speed", "51 m/s", 51}, {"speed", "36km/h", 10},
		{"slope", "1:8", 0.125}, {"slope", "12%", 0.12}, {"slope", "0", 0}, {"slope", "1/4:12", 0.0208333},
		{"slope", "45deg", 1}, {"slope", "7.125°", 0.125}, {"slope", "-1:8", -0.125}, {"slope", "0%", 0},
		{"percent", "60%", 0.6}, {"percent", "12.5 %", 0.125},
		{"scale", `3" = 1'-0"`, 4}, {"scale", `1 1/2"=1'-0"`, 8}, {"scale", "1:5", 5}, {"scale", `12" = 1'-0"`, 1},
		{"scale", "1 : 20", 20}, {"scale", `1/8in = 1ft`, 96},
	} {
		got, err := parsers()[c.kind](c.in)
		if err != nil || math.Abs(got-c.want) > 1e-6*math.Max(1, math.Abs(c.want)) {
			t.Errorf("%s %q = %v, %v; want %v", c.kind, c.in, got, err, c.want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct{ kind, in, want string }{
		{"force", "1500", `"1500" has no unit; a force is written 1500lb, 1.5kip, 800N or 6.7kN; write 1500lb or 1500kN`},
		{"force", "1,500N", "a comma can be read two ways"},
		{"force", "15,00lb", "a comma can be read two ways"},
		{"force", "1500,000lb", "a comma can be read two ways"},
		{"force", "9e9lb", `"e9lb" is not a unit`},
		{"pressure", "45", "write 45psf or 45kPa"},
		{"pressure", "0.3mPa", `"mPa" is not a unit`},
		{"pressure", "45lb", `"lb" is not a unit`},
		{"temp", "20", "write 20C or 20F"},
		{"temp", "20K", `"K" is not a unit`},
		{"days", "3830", "write 3830 K.d or 3830 F.d"},
		{"speed", "115", "write 115mph or 115m/s"},
		{"slope", "8", `"8" has no unit; a slope is written 1:8, 12%, 7deg or 0; write 1:8 or 8%`},
		{"slope", "1:0", "is not a slope"}, {"slope", "1:", "is not a slope"}, {"slope", "90deg", "is too steep"},
		{"slope", "1:2:3", "is not a slope"}, {"slope", "1 in 8", "is not a slope"}, {"slope", "", "is not a slope"},
		{"percent", "0.6", "write 60%"}, {"percent", "60", "write 60%"}, {"percent", "-5", "write -5%"},
		{"force", "1,500", "write 1500lb or 1500kN"},
		{"scale", "1:4", `"1:4" is not a usual scale; a scale is one of 12" = 1'-0", 6" = 1'-0"`},
		{"scale", "1:4", "the nearest is 1:5"},
		{"scale", `2" = 1'-0"`, `the nearest is 1 1/2" = 1'-0"`},
		{"scale", "5", "is not a scale"}, {"scale", "0:5", "is not a scale"}, {"scale", `0" = 1'`, "is not a scale"},
		{"scale", "big", "is not a scale"}, {"scale", "1:" + strings.Repeat("9", 400), "is not a scale"},
	} {
		got, err := parsers()[c.kind](c.in)
		var syntax *SyntaxError
		if !errors.As(err, &syntax) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s %.40q = %v, %v; want an error with %q", c.kind, c.in, got, err, c.want)
		}
	}
}

func TestParseLongTextIsCutInTheMessage(t *testing.T) {
	_, err := ParseForce(strings.Repeat("lb", 1000))
	if err == nil || len(err.Error()) > 200 {
		t.Errorf("message of %d bytes", len(err.Error()))
	}
}

func TestScales(t *testing.T) {
	for _, sys := range []System{IP, SI} {
		for _, d := range Scales(sys) {
			text := ScaleText(d, sys)
			if got, err := ParseScale(text); err != nil || got != d {
				t.Errorf("%s: %v, %v; want %v", text, got, err, d)
			}
		}
	}
	for _, c := range []struct {
		den  float64
		sys  System
		want string
	}{
		{4, IP, `3" = 1'-0"`}, {1, IP, `12" = 1'-0"`}, {24, IP, `1/2" = 1'-0"`}, {5, IP, `2.4" = 1'-0"`}, {5, SI, "1:5"},
		{0, IP, "NTS"}, {-1, SI, "NTS"}, {math.NaN(), SI, "NTS"}, {math.Inf(1), SI, "NTS"},
	} {
		if got := ScaleText(c.den, c.sys); got != c.want {
			t.Errorf("ScaleText(%v, %v) = %s; want %s", c.den, c.sys, got, c.want)
		}
	}
}
