package unit

import (
	"math"
	"strings"
	"testing"
)

func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		in string
		mm float64
	}{
		{`7 1/2"`, 190.5}, {`7-1/2"`, 190.5}, {"7 1/2in", 190.5}, {"7 1/2 in", 190.5}, {"7½\"", 190.5},
		{"½in", 12.7}, {"3/8in", 9.525}, {"9/8in", 28.575}, {`14'-8"`, 4470.4}, {`14' 8"`, 4470.4},
		{`14'8"`, 4470.4}, {`14' - 8 1/2"`, 4483.1}, {"14ft 8in", 4470.4}, {"14 feet 8 inches", 4470.4},
		{`8'-0"`, 2438.4}, {"8'", 2438.4}, {`0'-0 3/8"`, 9.525}, {"5ft", 1524}, {"14.8ft", 4511.04},
		{"14′-8″", 4470.4}, {"14’-8”", 4470.4}, {"14'-8''", 4470.4}, {"3.5in", 88.9}, {".5in", 12.7},
		{"80mm", 80}, {"80 MM", 80}, {"8cm", 80}, {"1.2m", 1200}, {"1.2 metres", 1200}, {"0in", 0},
		{`-4 1/2"`, -114.3}, {"−66in", -1676.4}, {`-1'-4"`, -406.4}, {"+3in", 76.2}, {"  2in  ", 50.8},
	} {
		l, err := ParseLength(c.in)
		if err != nil || math.Abs(l.MM()-c.mm) > 1e-9 {
			t.Errorf("ParseLength(%q) = %v, %v; want %v mm", c.in, l, err, c.mm)
		}
	}
}

func TestParseLengthRefuses(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"89", `"89" has no unit; a length is written 7 1/2in, 14'-8", 80mm or 1.2m; write 89in or 89mm`},
		{"-3 1/2", `write -3 1/2in or -3 1/2mm`},
		{"", `"" is not a length`},
		{"in", "no number in it"},
		{"7 parsecs", `"parsecs" is not a unit of one`},
		{"14'-8", `"14'-8" has no inch mark; a length is written 7 1/2in, 14'-8", 80mm or 1.2m; write 14'-8"`},
		{"14.5'-8\"", "feet before inches are whole"},
		{"1/2'-8\"", "feet before inches are whole"},
		{`14'-13"`, "inches after feet are less than 12"},
		{`14'--8"`, "the inches cannot be read"},
		{"14'-8mm", `"mm" is not a unit after feet`},
		{"x'-8\"", "the feet cannot be read"},
		{"1,500mm", "a comma can be read two ways"},
		{"12,5mm", "write 1500 without a comma, 1.5 with a point"},
		{"7 9/8in", "9/8 after a whole number is not less than 1"},
		{"1/0in", "nothing or zero below the line"},
		{"1/in", "nothing or zero below the line"},
		{"1e3mm", `"e3mm" is not a unit`},
		{"NaN mm", "no number in it"},
		{"Inf mm", "no number in it"},
		{"3.in", "no number in it"},
		{"9999999999999999mm", "the number is too large"},
		{"1000000000000in", "is too large"},
		{strings.Repeat("9", 500) + "mm", "is not a length"},
		{strings.Repeat("9", 500) + "'-1in", "is not a length"},
		{`9999999999999'-1"`, "is too large"},
	} {
		l, err := ParseLength(c.in)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("ParseLength(%.60q) = %v, %v; want an error with %q", c.in, l, err, c.want)
		}
	}
}

func TestDecimalFeet(t *testing.T) {
	for _, c := range []struct {
		in       string
		mistaken string
		ok       bool
	}{
		{"14.8ft", `14'-8"`, true}, {"14.8'", `14'-8"`, true}, {"14.10 feet", `14'-10"`, true},
		{"-3.6ft", `-3'-6"`, true}, {"14.08ft", `14'-8"`, true},
		{"14.25ft", "", false}, {"14.0ft", "", false}, {"14ft", "", false}, {"14.8in", "", false},
		{"14.8", "", false}, {"4.2m", "", false},
	} {
		l, ok := DecimalFeet(c.in)
		if ok != c.ok || ok && l.FeetInches(Sixteenth) != c.mistaken {
			t.Errorf("DecimalFeet(%q) = %s, %t; want %s, %t", c.in, l.FeetInches(Sixteenth), ok, c.mistaken, c.ok)
		}
	}
}

func TestFeetInches(t *testing.T) {
	for _, c := range []struct {
		l    Length
		den  int
		want string
	}{
		{7.5 * Inch, Sixteenth, `7 1/2"`}, {16.5 * Inch, Sixteenth, `1'-4 1/2"`}, {8 * Foot, Sixteenth, `8'-0"`},
		{0.375 * Inch, Sixteenth, `3/8"`}, {-4.5 * Inch, Sixteenth, `-4 1/2"`}, {0, Sixteenth, `0"`},
		{12.375 * Inch, Sixteenth, `1'-0 3/8"`}, {-16 * Inch, Whole, `-1'-4"`},
		{11.99 * Inch, Sixteenth, `1'-0"`},            // carries over the foot
		{11.99 * Inch, SixtyFourth, `11 63/64"`},      // 11.99 x 64 = 767.36
		{0.01 * Inch, Sixteenth, `0"`},                // less than half a step
		{-0.01 * Inch, Sixteenth, `0"`},               // and never -0
		{23.2857 * Inch, Eighth, `1'-11 1/4"`},        // 0.2857 x 8 = 2.29
		{0.09375 * Inch, Sixteenth, `1/8"`},           // 3/32 goes up
		{0.09375 * Inch, ThirtySecond, `3/32"`},       //
		{2.6 * Inch, 0, `3"`},                         // no denominator: whole inches
		{Length(math.NaN()), Sixteenth, "NaN mm"},     //
		{Length(math.Inf(1)), Sixteenth, "+Inf mm"},   //
		{Length(-1e300), Sixteenth, "-1e+300 mm"},     //
		{14*Foot + 9.6*Inch, Sixteenth, `14'-9 5/8"`}, // 14.8 ft
	} {
		if got := c.l.FeetInches(c.den); got != c.want {
			t.Errorf("%v mm to 1/%d: %s; want %s", float64(c.l), c.den, got, c.want)
		}
	}
}

func TestMetric(t *testing.T) {
	for _, c := range []struct {
		l        Length
		decimals int
		want     string
	}{
		{419.1, 0, "419"}, {419.1, 1, "419.1"}, {80, 2, "80"}, {38.10, 3, "38.1"}, {-0.2, 0, "0"},
		{-118, 0, "-118"}, {1000, 0, "1000"}, {100, -1, "100"}, {0.5, 1, "0.5"},
	} {
		if got := c.l.Metric(c.decimals); got != c.want {
			t.Errorf("Length(%v).Metric(%d) = %s; want %s", float64(c.l), c.decimals, got, c.want)
		}
	}
}

func TestLengthText(t *testing.T) {
	for _, c := range []struct {
		l      Length
		ip, si string
	}{
		{1.5 * Inch, `1 1/2"`, "38.1 mm"}, {0.024 * Inch, `0.024"`, "0.61 mm"}, {0.1875 * Inch, `3/16"`, "4.8 mm"},
		{0.19 * Inch, `0.19"`, "4.8 mm"}, {30, `1 3/16"`, "30 mm"}, {0, `0"`, "0 mm"}, {-4.5 * Inch, `-4 1/2"`, "-114.3 mm"},
	} {
		if ip, si := c.l.Text(IP), c.l.Text(SI); ip != c.ip || si != c.si {
			t.Errorf("%v: %s and %s; want %s and %s", float64(c.l), ip, si, c.ip, c.si)
		}
	}
}

func TestRound(t *testing.T) {
	if got := Length(23.2857 * Inch).Round(Inch / 4); math.Abs(got.Inches()-23.25) > 1e-12 {
		t.Errorf("23.2857 in to a quarter: %v", got.Inches())
	}
	if got := Length(12.3).Round(0); got != 12.3 {
		t.Errorf("no step: %v", got)
	}
}
