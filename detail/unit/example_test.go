package unit_test

import (
	"fmt"

	"standclear/detail/unit"
)

func ExampleParseLength() {
	l, _ := unit.ParseLength(`1'-2 3/4"`)
	fmt.Printf("%.2f mm is %s\n", l.MM(), l.FeetInches(unit.Sixteenth))
	_, err := unit.ParseLength("89")
	fmt.Println(err)
	// Output:
	// 374.65 mm is 1'-2 3/4"
	// "89" has no unit; a length is written 7 1/2in, 14'-8", 80mm or 1.2m; write 89in or 89mm
}

func ExampleLength_Text() {
	cover := 1.5 * unit.Inch
	fmt.Println(cover.Text(unit.IP), cover.Text(unit.SI))
	// Output: 1 1/2" 38.1 mm
}

func ExampleLength_FeetInches() {
	for _, l := range []unit.Length{0.375 * unit.Inch, 8 * unit.Foot, -4.5 * unit.Inch} {
		fmt.Println(l.FeetInches(unit.Sixteenth))
	}
	// Output:
	// 3/8"
	// 8'-0"
	// -4 1/2"
}

func ExampleLength_Metric() {
	fmt.Println(unit.Length(419.1).Metric(0), unit.Length(419.1).Metric(1))
	// Output: 419 419.1
}

func ExampleDecimalFeet() {
	l, _ := unit.ParseLength("14.8ft")
	mistaken, ok := unit.DecimalFeet("14.8ft")
	fmt.Println(l.FeetInches(unit.Sixteenth), mistaken.FeetInches(unit.Sixteenth), ok)
	// Output: 14'-9 5/8" 14'-8" true
}

func ExampleParseForce() {
	f, _ := unit.ParseForce("1,500 lb")
	fmt.Println(f.Text(unit.IP), f.Text(unit.SI))
	// Output: 1,500 lb 6.67 kN
}

func ExampleParsePressure() {
	p, _ := unit.ParsePressure("45psf")
	fmt.Println(p.AreaLoad().Text(unit.IP), p.AreaLoad().Text(unit.SI))
	// Output: 45 psf 2.15 kPa
}

func ExampleParseLineLoad() {
	w, _ := unit.ParseLineLoad("250plf")
	fmt.Println(w.Text(unit.IP), w.Text(unit.SI))
	// Output: 250 plf 3.65 kN/m
}

func ExampleParseTemp() {
	t, _ := unit.ParseTemp("-18C")
	fmt.Println(t.Text(unit.SI), t.Text(unit.IP))
	// Output: -18 C -0.4 F
}

func ExampleParseDegreeDays() {
	d, _ := unit.ParseDegreeDays("6900 F.d")
	fmt.Println(d.Text(unit.IP), d.Text(unit.SI))
	// Output: 6900 F.d 3833 K.d
}

func ExampleParseSpeed() {
	v, _ := unit.ParseSpeed("115mph")
	fmt.Println(v.Text(unit.IP), v.Text(unit.SI))
	// Output: 115 mph 51.4 m/s
}

func ExampleParseSlope() {
	s, _ := unit.ParseSlope("12.5%")
	fmt.Printf("%s %.1f deg\n", s.Text(unit.IP), s.Angle())
	// Output: 1:8 7.1 deg
}

func ExampleParsePercent() {
	p, _ := unit.ParsePercent("60%")
	fmt.Println(float64(p), p.Text(unit.SI))
	// Output: 0.6 60 %
}

func ExampleParseScale() {
	den, _ := unit.ParseScale(`3" = 1'-0"`)
	fmt.Println(den, unit.ScaleText(den, unit.IP))
	// Output: 4 3" = 1'-0"
}

func ExampleQuantity_Text() {
	fmt.Println((1150.97 * unit.Pound).Q().Text(unit.IP), unit.Ratio(1.004).Text(unit.IP))
	// Output: 1,151 lb 1.004
}

func ExampleQuantity_In() {
	v, name := (25.4 * unit.MM).Q().In(unit.IP)
	fmt.Println(v, name)
	// Output: 1 in
}
