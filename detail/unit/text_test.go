package unit

import (
	"math"
	"testing"
)

func TestQuantityText(t *testing.T) {
	for _, c := range []struct {
		name   string
		q      Quantity
		ip, si string
	}{
		{"exact length", (7.5 * Inch).Q(), `7 1/2"`, "190.5 mm"},
		{"worked length", Length(139.17).Q(), "5.479 in", "139.2 mm"},
		{"slip", Length(0.0833).Q(), "0.003 in", "0.08 mm"},
		{"area", Quantity{8951.6, KArea}, "13.88 in2", "8952 mm2"},
		{"section", Quantity{350528, KSection}, "21.39 in3", "350.5e3 mm3"},
		{"inertia", Quantity{4.11784e7, KInertia}, "98.93 in4", "41.18e6 mm4"},
		{"small inertia", Quantity{1200, KInertia}, "0.002883 in4", "1200 mm4"},
		{"force", (1150.97 * Pound).Q(), "1,151 lb", "5.12 kN"},
		{"small force", (213 * Pound).Q(), "213 lb", "0.947 kN"},
		{"million", (1234567 * Pound).Q(), "1,234,567 lb", "5490 kN"},
		{"moment", (7481.28 * PoundInch).Q(), "7,481 lb-in", "0.845 kN m"},
		{"stress", (800 * PSI).Stress(), "800 psi", "5.52 MPa"},
		{"foam stress", (8.333 * PSI).Stress(), "8.3 psi", "0.06 MPa"},
		{"tiny stress", Pressure(2000).Stress(), "0.3 psi", "0.0020 MPa"},
		{"E", (1.4e6 * PSI).Stress(), "1,400,000 psi", "9652.66 MPa"},
		{"area load", (12 * PSF).AreaLoad(), "12 psf", "0.57 kPa"},
		{"line load", (313.5 * PLF).Q(), "314 plf", "4.58 kN/m"},
		{"temp", Temp(9.3).Q(), "48.7 F", "9.3 C"},
		{"angle", Quantity{7.125, KAngle}, "7.1 deg", "7.1 deg"},
		{"slope", Slope(0.125).Q(), "1:8", "1:8"},
		{"percent", Percent(0.605).Q(), "60.5 %", "60.5 %"},
		{"withdrawal", Quantity{52.9, KForcePerLength}, "302 lb/in", "52.9 N/mm"},
		{"resistance", Resistance(1.403).Q(), "7.97 h ft2 F/Btu", "1.40 m2 K/W"},
		{"vents", Quantity{1500, KFreeArea}, "0.709 in2/ft", "1500 mm2/m"}, // 1500 x 0.3048 / 645.16
		{"wide vents", Quantity{20955, KFreeArea}, "9.90 in2/ft", "21000 mm2/m"},
		{"drying", Quantity{33, KDayMassPerLength}, "0.35 oz/(ft day)", "33 g/(m day)"},
		{"drying of a run", Quantity{148, KDayMass}, "5.2 oz/day", "150 g/day"},
		{"count", Number(9), "9", "9"},
		{"good ratio", Ratio(0.902), "0.902", "0.902"},
		{"ratio just over", Ratio(1.004), "1.004", "1.004"},
		{"bad ratio", Ratio(10.1219), "10.12", "10.12"},
		{"hopeless ratio", Ratio(999), "999", "999"},
		{"no ratio", Ratio(-0.0001), "0", "0"},
		{"not a number", Ratio(math.NaN()), "NaN", "NaN"},
	} {
		if ip, si := c.q.Text(IP), c.q.Text(SI); ip != c.ip || si != c.si {
			t.Errorf("%s: %q and %q; want %q and %q", c.name, ip, si, c.ip, c.si)
		}
	}
}

func TestIn(t *testing.T) {
	for _, c := range []struct {
		q      Quantity
		ip     float64
		ipUnit string
		si     float64
		siUnit string
	}{
		{Length(254).Q(), 10, "in", 254, "mm"},
		{Quantity{645.16, KArea}, 1, "in2", 645.16, "mm2"},
		{Quantity{16387.064, KSection}, 1, "in3", 16387.064, "mm3"},
		{Quantity{416231.4256, KInertia}, 1, "in4", 416231.4256, "mm4"},
		{(2 * Pound).Q(), 2, "lb", 0.00889644323, "kN"},
		{PoundInch.Q(), 1, "lb-in", 1.12984829e-4, "kN m"},
		{PSI.Stress(), 1, "psi", 0.00689475729, "MPa"},
		{PSF.AreaLoad(), 1, "psf", 0.0478802590, "kPa"},
		{PLF.Q(), 1, "plf", 0.0145939029, "kN/m"},
		{Temp(20).Q(), 68, "F", 20, "C"},
		{Quantity{45, KAngle}, 45, "deg", 45, "deg"},
		{Slope(0.125).Q(), 0.125, "", 0.125, ""},
		{Percent(0.5).Q(), 50, "%", 50, "%"},
		{Quantity{1, KForcePerLength}, 5.71014716, "lb/in", 1, "N/mm"},
		{Quantity{1000, KFreeArea}, 0.47244094, "in2/ft", 1000, "mm2/m"}, // 304.8 / 645.16
		{Quantity{28.349523125, KDayMass}, 1, "oz/day", 28.349523125, "g/day"},
		{Quantity{28.349523125, KDayMassPerLength}, 0.3048, "oz/(ft day)", 28.349523125, "g/(m day)"},
		{Ratio(0.7), 0.7, "", 0.7, ""},
		{Number(3), 3, "", 3, ""},
	} {
		ip, ipUnit := c.q.In(IP)
		si, siUnit := c.q.In(SI)
		if math.Abs(ip-c.ip) > 1e-7*c.ip || math.Abs(si-c.si) > 1e-7*c.si || ipUnit != c.ipUnit || siUnit != c.siUnit {
			t.Errorf("%v: %v %s and %v %s; want %v %s and %v %s", c.q, ip, ipUnit, si, siUnit, c.ip, c.ipUnit, c.si, c.siUnit)
		}
	}
}

func TestText(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want string
	}{
		{"load", Pressure(2150).Text(SI), "2.15 kPa"}, {"load, inch", (45 * PSF).Text(IP), "45 psf"},
		{"stress", Pressure(3e5).Text(SI), "0.30 MPa"}, {"stress, inch", (25 * PSI).Text(IP), "25 psi"},
		{"degree days", DegreeDays(3830).Text(SI), "3830 K.d"}, {"degree days, inch", DegreeDays(3830).Text(IP), "6894 F.d"},
		{"speed", Speed(51).Text(SI), "51 m/s"}, {"speed, inch", (115 * MPH).Text(IP), "115 mph"},
		{"conductivity", Conductivity(0.13).Text(SI), "0.130 W/(m K)"},
		{"conductivity, inch", Conductivity(0.13).Text(IP), "0.901 Btu in/(h ft2 F)"},
		{"line load", LineLoad(5.04).Text(SI), "5.04 kN/m"}, {"temp", Temp(20).Text(IP), "68 F"},
		{"force", Force(6700).Text(SI), "6.70 kN"}, {"moment", Moment(417e3).Text(SI), "0.417 kN m"},
		{"slope level", Slope(0).Text(IP), "0"}, {"slope in", Slope(-0.125).Text(IP), "-1:8"},
		{"slope odd", Slope(0.12).Text(SI), "1:8.33"}, {"systems", IP.String() + SI.String(), "inchmetric"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q; want %q", c.name, c.got, c.want)
		}
	}
	if a := Slope(0.125).Angle(); math.Abs(a-7.125) > 0.001 { // arctan 1/8 = 7.125 degrees
		t.Errorf("1:8 is %v degrees", a)
	}
}

// The constants of unit.go against their definitions: lb = 4.4482216152605 N exactly.
func TestUnits(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"pound", Pound.Newtons(), 4.4482216152605},
		{"psi", float64(PSI), 6894.757293168},
		{"psf", float64(PSF), 47.88025898},
		{"one psf in psf", PSF.PSF(), 1}, {"one psi in psi", PSI.PSI(), 1}, {"MPa", (2 * Megapascal).MPa(), 2},
		{"kN", (2 * Kilonewton).Newtons(), 2000}, {"pounds", Kilonewton.Pounds(), 224.8089431},
		{"feet", (1 * Metre).Feet(), 3.280839895}, {"lb-in", Moment(112984.8290276).PoundInches(), 1000},
		{"plf", LineLoad(1).PLF(), 68.52176586}, {"kPa", float64(Kilopascal / Pascal), 1000},
		{"mm", Metre.MM(), 1000}, {"F.d", DegreeDays(5).FahrenheitDays(), 9},
	} {
		if math.Abs(c.got-c.want) > 1e-9*c.want {
			t.Errorf("%s: %v; want %v", c.name, c.got, c.want)
		}
	}
}

// 1 W/(m2 K) is 0.17611 Btu/(h ft2 F), 1 W/K 1.8956 Btu/(h F), 1 m2 K/W 5.678 h ft2 F/Btu: the international Btu of
// 1055.056 J over the foot, the hour and 5/9 K.
func TestHeatQuantities(t *testing.T) {
	const btu, ft, f = 1055.05585262, 0.3048, 5.0 / 9
	for _, tt := range []struct {
		q    Quantity
		ip   float64
		text [2]string
	}{
		{Transmittance(0.2).Q(), 0.2 * 3600 * ft * ft * f / btu, [2]string{"0.0352 Btu/(h ft2 F)", "0.200 W/(m2 K)"}},
		{Conductance(0.5).Q(), 0.5 * 3600 * f / btu, [2]string{"0.948 Btu/(h F)", "0.500 W/K"}},
		{LineConductance(0.1).Q(), 0.1 * 3600 * ft * f / btu, [2]string{"0.0578 Btu/(h ft F)", "0.100 W/(m K)"}},
		{Resistance(4).Q(), 4 * btu / 3600 / ft / ft / f, [2]string{"22.7 h ft2 F/Btu", "4.00 m2 K/W"}},
		{Energy(55).Q(), 55, [2]string{"55.0 kWh", "55.0 kWh"}},
	} {
		if v, _ := tt.q.In(IP); math.Abs(v-tt.ip) > 2e-6*tt.ip {
			t.Errorf("%v: %g in inch-pound units, want %g", tt.q, v, tt.ip)
		}
		for sys, want := range tt.text {
			if got := tt.q.Text(System(sys)); got != want {
				t.Errorf("%q, want %q", got, want)
			}
		}
	}
}
