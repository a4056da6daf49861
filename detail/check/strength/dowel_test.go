package strength

import (
	"encoding/csv"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"standclear/detail/unit"
)

// rows reads a csv of testdata with its header as keys.
func rows(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, line := range all[1:] {
		m := map[string]string{}
		for i, key := range all[0] {
			m[key] = line[i]
		}
		out = append(out, m)
	}
	return out
}

func number(t *testing.T, row map[string]string, key string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(row[key], 64)
	if err != nil {
		t.Fatalf("%s of %v: %v", key, row, err)
	}
	return v
}

// member builds one side of a table row; concrete has its own bearing strength.
func member(t *testing.T, row map[string]string, side string, d unit.Length) Member {
	t.Helper()
	angle, l := number(t, row, "angle_"+side), unit.Length(number(t, row, "l_"+side))*unit.Inch
	if row["g_"+side] == "concrete" {
		return Member{l, ConcreteBearing, angle}
	}
	return Member{l, DowelBearing(number(t, row, "g_"+side), d, angle), angle}
}

func TestYieldAgainstPublishedValues(t *testing.T) {
	kinds := map[string]Kind{"lag": Lag, "bolt": Bolt}
	within := map[string]float64{"cell": 5.1, "slip": 300, "loose": 5.1}
	n := 0
	for _, row := range rows(t, "dowel_values.csv") {
		d := unit.Length(number(t, row, "d")) * unit.Inch
		dowel, ok := DowelOf(kinds[row["kind"]], d, 0)
		if !ok {
			t.Fatalf("no dowel for %v", row)
		}
		least := Least(dowel.Yield(member(t, row, "side", d), member(t, row, "main", d), unit.Length(number(t, row, "gap"))*unit.Inch))
		if got, want := least.Z.Pounds(), number(t, row, "computed"); math.Abs(got-want) > 0.06 || least.Name != row["mode"] {
			t.Errorf("%v: Z = %.2f in mode %s, computed elsewhere %.1f in mode %s", row, got, least.Name, want, row["mode"])
		}
		if limit, ok := within[row["rule"]]; ok {
			if got, want := least.Z.Pounds(), number(t, row, "published"); math.Abs(got-want) > limit {
				t.Errorf("%v: Z = %.2f, published %.0f", row, got, want)
			}
			n++
		}
	}
	if n < 75 {
		t.Errorf("compared with %d published values, want 75 and more", n)
	}
}

// TR12-2015 example 3.1 at zero gap prints all six modes: 900, 900, 414, 550, 550, 663 lb.
func TestYieldPrintsEveryMode(t *testing.T) {
	d, _ := DowelOf(Bolt, 0.5*unit.Inch, 45_000*unit.PSI)
	m := Member{1.5 * unit.Inch, DowelBearing(0.43, d.Nominal, 0), 0}
	for i, want := range []struct {
		name string
		z    float64
	}{{"Im", 900}, {"Is", 900}, {"II", 414}, {"IIIm", 550}, {"IIIs", 550}, {"IV", 663}} {
		if got := d.Yield(m, m, 0)[i]; got.Name != want.name || math.Abs(got.Z.Pounds()-want.z) > 0.5 {
			t.Errorf("mode %d is %s with Z = %.1f, want %s with %.0f", i, got.Name, got.Z.Pounds(), want.name, want.z)
		}
	}
}

// A dowel in random members and its joint.
func randomJoint(r *rand.Rand) (d Dowel, side, main Member) {
	d, _ = DowelOf(Bolt, unit.Length(0.25+0.75*r.Float64())*unit.Inch, 0)
	piece := func() Member {
		angle := 90 * float64(r.IntN(2))
		return Member{unit.Length(0.75+4*r.Float64()) * unit.Inch, DowelBearing(0.35+0.3*r.Float64(), d.Nominal, angle), angle}
	}
	return d, piece(), piece()
}

func TestYieldLaws(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		d, side, main := randomJoint(r)
		gap := unit.Length(4*r.Float64()) * unit.Inch
		near, far := d.Yield(side, main, gap), d.Yield(side, main, gap+unit.Length(r.Float64())*unit.Inch)
		for i := range near {
			if far[i].Z > near[i].Z*(1+1e-12) {
				t.Fatalf("mode %s rises with the gap: %v to %v", near[i].Name, near[i].Z, far[i].Z)
			}
			if i < 2 && far[i].Z != near[i].Z {
				t.Fatalf("mode %s depends on the gap", near[i].Name)
			}
		}
		if a, b := Least(near).Z, Least(d.Yield(main, side, gap)).Z; math.Abs(float64(a/b)-1) > 1e-12 {
			t.Fatalf("swapping side and main changes Z from %v to %v", a, b)
		}
	}
}

// Far apart, the load times the gap tends to the couple the members can hold, the lesser of a hinge and
// of bearing up and down in each: min(M, q l^2/4).
func TestYieldFarApart(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		d, side, main := randomJoint(r)
		gap := 1e6 * unit.Inch
		least := math.Inf(1)
		for _, m := range d.Yield(side, main, gap) {
			least = math.Min(least, float64(m.P)*float64(gap))
		}
		couple := func(m Member) float64 {
			q := m.Fe.PSI() * d.Root.Inches()
			return math.Min(d.Plastic().PoundInches(), q*m.Bearing.Inches()*m.Bearing.Inches()/4)
		}
		want := couple(side) + couple(main)
		if got := least / float64(unit.PoundInch); math.Abs(got/want-1) > 1e-3 {
			t.Fatalf("P gap = %.1f lb-in, want %.1f", got, want)
		}
	}
}

// Every mode is a free body in balance: shear and moment along the dowel, from the assumed bearing, must
// close, and the moment may not pass the plastic one at a hinge.
//
//	mode II in a member: bearing q over a one way and l-a the other, net P:        a = (P/q + l)/2
//	a hinge in a member: bearing q over P/q from the shear plane, shear 0 there:    M = P^2/(2q) + ...
func TestYieldFreeBody(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 300 {
		d, side, main := randomJoint(r)
		gap := 3 * r.Float64()
		q := func(m Member) float64 { return m.Fe.PSI() * d.Root.Inches() }
		my := d.Plastic().PoundInches()
		modes := d.Yield(side, main, unit.Length(gap)*unit.Inch)
		// The moment of a member's bearing about the face it turns to the other, for a net force P:
		// a stiff bar bears up to a one way and past it the other; a hinge gives its moment less the bearing up to it.
		stiff := func(m Member, p float64) float64 {
			l := m.Bearing.Inches()
			a := (p/q(m) + l) / 2
			return q(m) * ((l*l-a*a)/2 - a*a/2)
		}
		hinge := func(m Member, p float64) float64 { return my - p*p/(2*q(m)) }
		for i, arms := range map[int][2]func(Member, float64) float64{2: {stiff, stiff}, 3: {hinge, stiff}, 4: {stiff, hinge}, 5: {hinge, hinge}} {
			p := modes[i].P.Pounds()
			// Balance of the dowel about any point: the couple of P over the gap equals the moments the members put on it.
			if left, right := p*gap, arms[0](side, p)+arms[1](main, p); math.Abs(left-right) > 1e-6*(1+math.Abs(left)+my) {
				t.Fatalf("mode %s is out of balance: P gap = %.6f, members hold %.6f", modes[i].Name, left, right)
			}
		}
	}
}

// With nothing between, two shear planes hold twice one in the modes that bend in or crush the side
// members, and the main member is crushed by both.
func TestDoubleShear(t *testing.T) {
	// 1/2 in bolt, 1.5 in main between 1.5 in sides of G = 0.50, parallel. NDS 2018 table 12F prints 1,050 lb (from memory).
	d, _ := DowelOf(Bolt, 0.5*unit.Inch, 0)
	m := Member{1.5 * unit.Inch, DowelBearing(0.50, d.Nominal, 0), 0}
	if got := Least(d.DoubleShear(m, m, 0)); math.Abs(got.Z.Pounds()-1050) > 5 || got.Name != "Im" {
		t.Errorf("double shear Z = %.0f lb in mode %s, want 1050 in Im", got.Z.Pounds(), got.Name)
	}
}

func TestDowelOf(t *testing.T) {
	for _, c := range []struct {
		name string
		kind Kind
		d    float64
		root float64
		fyb  float64
		ok   bool
	}{
		{"half-inch bolt", Bolt, 0.5, 0.5, 45_000, true},
		{"one-inch bolt", Bolt, 1, 1, 45_000, true},
		{"bolt over an inch", Bolt, 1.125, 1.125, 45_000, false},
		{"quarter-inch lag", Lag, 0.25, 0.173, 70_000, true},
		{"5/16 lag", Lag, 0.3125, 0.227, 60_000, true},
		{"half-inch lag", Lag, 0.5, 0.371, 45_000, true},
		{"lag between sizes", Lag, 0.45, 0, 45_000, false},
		{"number 10 screw", Screw, 0.19, 0.152, 80_000, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, ok := DowelOf(c.kind, unit.Length(c.d)*unit.Inch, 0)
			if ok != c.ok || math.Abs(d.Root.Inches()-c.root) > 1e-9 || math.Abs(d.Fyb.PSI()-c.fyb) > 1e-6 {
				t.Errorf("got root %.3f in, Fyb %.0f psi, %v", d.Root.Inches(), d.Fyb.PSI(), ok)
			}
		})
	}
}

// NDS 2018 table 12.3.3 rows: G 0.55 along 6150, across 1/2 in 3650, 3/4 in 2950; G 0.43 along 4800, across 3/4 in
// 2050; below 1/4 in 5550 and 3500 either way.
func TestDowelBearing(t *testing.T) {
	for _, c := range []struct {
		g, d, angle, want float64
	}{{0.55, 0.5, 0, 6150}, {0.55, 0.5, 90, 3650}, {0.43, 0.75, 0, 4800}, {0.43, 0.75, 90, 2050}, {0.55, 0.75, 90, 2950}, {0.55, 0.19, 90, 5550}, {0.43, 0.19, 0, 3500}} {
		if got := DowelBearing(c.g, unit.Length(c.d)*unit.Inch, c.angle).PSI(); math.Abs(got-c.want) > 1e-6 {
			t.Errorf("G %.2f, D %.2f in, %.0f degrees: %.0f psi, want %.0f", c.g, c.d, c.angle, got, c.want)
		}
		if got := ExactDowelBearing(c.g, unit.Length(c.d)*unit.Inch, c.angle).PSI(); !(math.Abs(got-c.want) <= 25) {
			t.Errorf("exact value %.1f psi is not within half a step of %.0f", got, c.want)
		}
	}
	// Hankinson at 45 degrees is twice the product over the sum: 2 x 6150 x 3650/9800 = 4581.1.
	if got := DowelBearing(0.55, 0.5*unit.Inch, 45).PSI(); math.Abs(got-4581.1) > 0.1 {
		t.Errorf("at 45 degrees %.1f psi, want 4581.1", got)
	}
}
