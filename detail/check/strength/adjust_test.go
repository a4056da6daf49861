package strength

import (
	"math"
	"testing"

	"standclear/detail/unit"
)

// NDS 2018 table 11.3.6A (from memory): D = 1 in, s = 4 in, E = 1,400,000 psi, 2 to 12 fasteners.
func TestGroupActionTable(t *testing.T) {
	for _, c := range []struct {
		name   string
		as, am float64 // in2
		cells  []float64
	}{
		{"As/Am 0.5, As 5", 5, 10, []float64{.98, .92, .84, .75, .68, .61, .55, .50, .45, .41, .38}},
		{"As/Am 1, As 5", 5, 5, []float64{1.00, .97, .91, .85, .78, .71, .64, .59, .54, .49, .45}},
		{"As/Am 1, As 64", 64, 64, []float64{1.00, 1.00, .99, .98, .97, .96, .95, .93, .91, .90, .88}},
	} {
		t.Run(c.name, func(t *testing.T) {
			for i, want := range c.cells {
				if got := GroupAction(i+2, 4*unit.Inch, unit.Inch, 1.4e6*c.am, 1.4e6*c.as); math.Abs(got-want) > 0.0101 {
					t.Errorf("%d fasteners: %.4f, want %.2f", i+2, got, want)
				}
			}
		})
	}
}

func TestGroupActionLimits(t *testing.T) {
	one := GroupAction(1, 4*unit.Inch, unit.Inch, 1e6, 1e6)
	thin := GroupAction(8, 4*unit.Inch, 0.19*unit.Inch, 1e6, 1e6)
	stiff := GroupAction(8, 4*unit.Inch, unit.Inch, 1e30, 1e30)
	if one != 1 || thin != 1 || stiff != 1 {
		t.Errorf("one fastener %v, thin %v, stiff members %v: all want 1", one, thin, stiff)
	}
	if a, b := GroupAction(4, 3*unit.Inch, 0.75*unit.Inch, 2e7, 1e7), GroupAction(4, 3*unit.Inch, 0.75*unit.Inch, 1e7, 2e7); a != b {
		t.Errorf("swapping the members changes Cg from %v to %v", a, b)
	}
}

// NDS 2018 table 11.3.3 with its note on rows.
func TestWetFastener(t *testing.T) {
	for _, c := range []struct {
		name string
		m    Moisture
		rows int
		d    float64
		want float64
	}{
		{"dry throughout", Moisture{Dry, Dry}, 2, 0.5, 1},
		{"dry, wet in service", Moisture{Dry, Wet}, 2, 0.5, 0.7},
		{"wet, dries, two rows", Moisture{Wet, Dry}, 2, 0.5, 0.4},
		{"wet, dries, one row", Moisture{Wet, Dry}, 1, 0.5, 1},
		{"wet throughout, two rows", Moisture{Wet, Wet}, 2, 0.5, 0.4}, // outdoors it dries at times
		{"wet throughout, one row", Moisture{Wet, Wet}, 1, 0.5, 0.7},
		{"unknown at assembly, wet", Moisture{Unknown, Wet}, 2, 0.5, 0.4},
		{"unknown at assembly, dry", Moisture{Unknown, Dry}, 2, 0.5, 0.4},
		{"nothing known", Moisture{}, 2, 0.5, 0.4},
		{"unknown service", Moisture{Dry, Unknown}, 2, 0.5, 0.7},
		{"screw, wet at assembly", Moisture{Wet, Dry}, 3, 0.19, 0.7},
		{"screw, dry", Moisture{Dry, Dry}, 3, 0.19, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := wetFastener(c.m, c.rows, unit.Length(c.d)*unit.Inch); got != c.want {
				t.Errorf("CM %.2f, want %.2f", got, c.want)
			}
		})
	}
}

// l/D 2: 2.5 D; 4: (5x4 + 10)/8 = 3.75 D; 6 and more: 5 D.
func TestRowSpacing(t *testing.T) {
	for _, c := range []struct{ l, d, want float64 }{{1.5, 0.75, 1.875}, {2, 0.5, 1.875}, {3, 0.5, 2.5}, {9, 0.5, 2.5}} {
		if got := rowSpacing(c.l, c.d); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("l %.2f, D %.2f: %.4f in, want %.4f", c.l, c.d, got, c.want)
		}
	}
}

func TestLumberFactors(t *testing.T) {
	incised := Lumber{Fb: 900 * unit.PSI, Fv: 180 * unit.PSI, E: 1.6e6 * unit.PSI, CF: 1.3, Incised: true}
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"SP 2x10 wet, Fb CF under 1150", pine(800).bending(true), 800},
		{"DF 2x6 wet and incised, 900 x 1.3 x 0.85 x 0.8", incised.bending(true), 795.6},
		{"DF 2x6 dry and incised, 900 x 1.3 x 0.8", incised.bending(false), 936},
		{"SP shear wet, 175 x 0.97", pine(800).shear(true), 169.75},
		{"DF shear wet and incised, 180 x 0.97 x 0.8", incised.shear(true), 139.68},
		{"DF modulus wet and incised, 1.6e6 x 0.9 x 0.95", incised.elastic(true), 1.368e6},
		{"Fc-perp wet, 565 x 0.67", across(565*unit.PSI, true), 378.55},
		{"flat 2x10", flatUse(9.25), 1.2},
		{"flat 2x8", flatUse(7.25), 1.15},
		{"flat 2x4", flatUse(3.5), 1.1},
		{"plate washer 3 in far from an end", bearingArea(3, 3), 1.125},
		{"plate washer near an end", bearingArea(3, 2.9), 1},
		{"plate of 6 in", bearingArea(6, 9), 1},
		{"half the full distance", geometryFactor(2, 4), 0.5},
		{"more than the full distance", geometryFactor(5, 4), 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			if math.Abs(c.got-c.want) > 1e-9*c.want {
				t.Errorf("%v, want %v", c.got, c.want)
			}
		})
	}
}

// 1.5 x 9.25 with two 13/16 holes 1.625 in either side of mid-height:
// I = 98.93 - 2(1.5 x 0.8125^3/12 + 1.5 x 0.8125 x 1.625^2) = 98.93 - 2(0.0670 + 3.2183) = 92.36 in4.
func TestNetSection(t *testing.T) {
	i, s := section{1.5, 9.25}.net([]float64{3, 6.25}, 13./16)
	if math.Abs(i-92.361) > 0.001 || math.Abs(s-i/4.625) > 1e-9 {
		t.Errorf("I %.3f in4, S %.3f in3, want 92.361 and I/4.625", i, s)
	}
	// One hole below mid-height moves the centroid up: the modulus is to the farther edge.
	i, s = section{1.5, 9.25}.net([]float64{2}, 1)
	area := 1.5*9.25 - 1.5
	centroid := (1.5*9.25*4.625 - 1.5*2) / area
	if s >= i/4.625 || math.Abs(s-i/centroid) > 1e-9 {
		t.Errorf("S %.4f in3, want I/%.4f = %.4f", s, centroid, i/centroid)
	}
}

// Saying that wood is wet, or saying nothing, never gives more than saying that it is dry; wet never more than
// nothing said.
func TestWetterIsNeverBetter(t *testing.T) {
	for _, rows := range []int{1, 2, 3} {
		for _, d := range []unit.Length{0.19 * unit.Inch, 0.5 * unit.Inch} {
			for _, other := range []State{Dry, Unknown, Wet} {
				cm := func(a, s State) float64 { return wetFastener(Moisture{a, s}, rows, d) }
				if cm(Wet, other) > cm(Unknown, other) || cm(Unknown, other) > cm(Dry, other) {
					t.Errorf("%d rows, service %v: assembly wet %g, unknown %g, dry %g", rows, other, cm(Wet, other), cm(Unknown, other), cm(Dry, other))
				}
				if cm(other, Wet) > cm(other, Unknown) || cm(other, Unknown) > cm(other, Dry) {
					t.Errorf("%d rows, assembly %v: service wet %g, unknown %g, dry %g", rows, other, cm(other, Wet), cm(other, Unknown), cm(other, Dry))
				}
			}
		}
	}
}
