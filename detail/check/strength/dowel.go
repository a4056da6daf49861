package strength

import (
	"math"

	"standclear/detail/unit"
)

// Dowel is the steel of one bolt, lag screw or wood screw.
type Dowel struct {
	Kind    Kind
	Nominal unit.Length   // shank diameter D
	Root    unit.Length   // diameter that bears and bends: D of a bolt, the thread root of a screw
	Fyb     unit.Pressure // bending yield strength
}

// Member is the wood on one side of a shear plane.
type Member struct {
	Bearing unit.Length   // length of dowel bearing in it
	Fe      unit.Pressure // dowel bearing strength in the direction of the load
	Angle   float64       // degrees from load to grain, 0 to 90
}

// Mode is one way a dowel joint gives way.
type Mode struct {
	Name string
	P    unit.Force // load at yield
	Rd   float64    // reduction term
	Z    unit.Force // reference design value, P/Rd
}

// Least returns the mode with the smallest design value; the zero Mode when there is none.
func Least(modes []Mode) Mode {
	var least Mode
	for i, m := range modes {
		if i == 0 || m.Z < least.Z {
			least = m
		}
	}
	return least
}

// Yield returns the six modes of a joint in single shear, with a gap between the members over which
// nothing bears on the dowel. AWC Technical Report 12-2015, table 1-1 (from memory, confirm; checked
// against 78 published cells and against the free body of every mode in the tests).
//
//	    side      gap    main
//	  |-------|        |-------|
//	==|=======|========|=======|==  dowel
//	  |  qs   |        |  qm   |
//
// The members have positive bearing and strength; the gap is not negative.
func (d Dowel) Yield(side, main Member, gap unit.Length) []Mode {
	j := d.joint(side, main, gap)
	crush, rigid, hinge := d.reductions(max(side.Angle, main.Angle))
	mode := func(name string, p, rd float64) Mode {
		return Mode{name, unit.Force(p) * unit.Pound, rd, unit.Force(p/rd) * unit.Pound}
	}
	return []Mode{
		mode("Im", j.qm*j.lm, crush),
		mode("Is", j.qs*j.ls, crush),
		mode("II", j.rotate(), rigid),
		mode("IIIm", j.hingeInSide(), hinge),
		mode("IIIs", j.hingeInMain(), hinge),
		mode("IV", j.twoHinges(), hinge),
	}
}

// DoubleShear returns the four modes of a main member between two equal side members, with the same
// gap at both planes; the values are for both planes together.
func (d Dowel) DoubleShear(side, main Member, gap unit.Length) []Mode {
	single := d.Yield(side, main, gap)
	twice := func(m Mode) Mode { return Mode{m.Name, 2 * m.P, m.Rd, 2 * m.Z} }
	return []Mode{single[0], twice(single[1]), twice(single[4]), twice(single[5])}
}

// joint is the numbers of one shear plane: q in lb per in of dowel, lengths in in, the yield moment
// of the dowel in lb-in.
type joint struct{ qs, qm, ls, lm, gap, my float64 }

func (d Dowel) joint(side, main Member, gap unit.Length) joint {
	root := d.Root.Inches()
	return joint{
		qs: side.Fe.PSI() * root, ls: side.Bearing.Inches(),
		qm: main.Fe.PSI() * root, lm: main.Bearing.Inches(),
		gap: gap.Inches(), my: d.Plastic().PoundInches(),
	}
}

// Plastic returns the moment at which the dowel forms a hinge, Fyb D^3/6.
func (d Dowel) Plastic() unit.Moment {
	return unit.Moment(d.Fyb.PSI()*math.Pow(d.Root.Inches(), 3)/6) * unit.PoundInch
}

// rotate is mode II: the dowel turns as a stiff bar in both members.
func (j joint) rotate() float64 {
	return root(1/(4*j.qs)+1/(4*j.qm), j.ls/2+j.gap+j.lm/2,
		-j.qs*j.ls*j.ls/4-j.qm*j.lm*j.lm/4)
}

// hingeInSide is mode IIIm: a hinge in the side member, the dowel stiff in the main member.
func (j joint) hingeInSide() float64 {
	return root(1/(2*j.qs)+1/(4*j.qm), j.gap+j.lm/2, -j.my-j.qm*j.lm*j.lm/4)
}

// hingeInMain is mode IIIs: a hinge in the main member, the dowel stiff in the side member.
func (j joint) hingeInMain() float64 {
	return root(1/(4*j.qs)+1/(2*j.qm), j.ls/2+j.gap, -j.qs*j.ls*j.ls/4-j.my)
}

// twoHinges is mode IV: a hinge in each member.
func (j joint) twoHinges() float64 {
	return root(1/(2*j.qs)+1/(2*j.qm), j.gap, -2*j.my)
}

// root returns the positive root of a x^2 + b x + c = 0 for a > 0, b >= 0, c < 0, in the form that
// does not lose digits when b is large.
func root(a, b, c float64) float64 {
	return -2 * c / (b + math.Sqrt(b*b-4*a*c))
}

// reductions returns Rd for crushing, for turning without a hinge and for hinges, at the greatest
// angle to grain in degrees. NDS 2018 table 12.3.1B (from memory, confirm).
func (d Dowel) reductions(angle float64) (crush, rigid, hinge float64) {
	kt := 1 + 0.25*angle/90
	bearing := d.Root.Inches()
	if bearing >= quarter {
		return 4 * kt, 3.6 * kt, 3.2 * kt
	}
	kd := 10*bearing + 0.5
	if bearing <= 0.17 {
		kd = 2.2
	}
	if d.Nominal.Inches() >= quarter {
		kd *= kt
	}
	return kd, kd, kd
}

// quarter is the diameter in inches from which wood bears differently along and across the grain,
// with room for rounding.
const quarter = 0.25 - 1e-9
