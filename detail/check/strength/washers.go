package strength

import (
	"math"

	"standclear/detail/check"
)

// washers checks that plates lie whole on the rim and clear of one another.
func (c *calc) washers(g *group) {
	size := g.Washer.Size.Inches()
	if size < 1e-3 {
		if g.Kind == Bolt {
			c.notChecked(check.Step{ID: "washer_clear" + g.id, Group: check.Connection, Name: "washers"},
				"size of the washers not stated")
		}
		return
	}
	if pace := math.Min(closest(g.rows), closest(g.cols)); !math.IsInf(pace, 1) {
		c.add(check.Step{ID: "washer_clear" + g.id, Group: check.Connection, Name: "washers clear of one another",
			Value: inch(size), Limit: check.Limit(inch(pace)), Symbol: "size",
			Formula: "washer <= least spacing of fasteners", Clause: "fit", Where: "all blocks"})
	}
	if g.rim && (g.Kind == Bolt || g.Kind == Evaluated && g.id == "") {
		room := math.Min(c.m.Rim.Top.Inches()-g.top(), g.low()-c.m.Rim.Bottom.Inches())
		c.add(check.Step{ID: "washer_on_" + c.nutWood() + g.id, Group: check.Connection, Name: "washers lie whole on the " + c.nutWood(),
			Formula: "edge distance >= washer size/2", Symbol: "a",
			Value: inch(room), Limit: check.Limit(inch(size / 2)), Sense: check.AtLeast, Clause: "judgement",
			Where: "all blocks"})
	}
}

// nutWood is what the nuts inside sit on: the backing, or the rim where there is none.
func (c *calc) nutWood() string {
	if c.backed() {
		return "backing"
	}
	return "rim"
}

// washerArea is the bearing area of one washer in in2, cut where it would overlap its neighbours.
func (g *group) washerArea() float64 {
	size := g.Washer.Size.Inches()
	hole := math.Pi / 4 * g.hole() * g.hole()
	if g.Washer.Round {
		size = math.Min(size, math.Min(closest(g.rows), closest(g.cols)))
		return math.Max(0, math.Pi/4*size*size-hole)
	}
	return math.Max(0, math.Min(size, closest(g.rows))*math.Min(size, closest(g.cols))-hole)
}

// headFlats is the width across flats of head and nut, in: one and a half diameters, as in ASME B18.2.1 and
// ISO 4014 from 1/2 in and 10 mm up (from memory, confirm).
func (g *group) headFlats() float64 { return 1.5 * g.d() }

// headArea is what the hexagon of a head bears on round its shank, in2.
func (g *group) headArea() float64 {
	f := g.headFlats()
	return math.Max(0, math.Sqrt(3)/2*f*f-math.Pi/4*math.Pow(math.Max(g.d(), g.hole()), 2))
}

// plateSteel is the bending stress a washer may have, psi: yield 36 ksi over 1.67, AISC 360-16 F11 (from
// memory, confirm), on the elastic section.
const plateSteel = 36_000 / 1.67

// overhang is how far a washer stands out beyond the flat of nut or head, in.
func (g *group) overhang() float64 { return math.Max(0, (g.Washer.Size.Inches()-g.headFlats())/2) }

// plateHolds is the pull at which the washer bends to its limit, lb. It is a judgement: the plate is a strip
// held under the flat of the nut and pressed evenly by the wood,
//
//	M = fc a^2/2 per inch, fb = 3 fc a^2/t^2
func (g *group) plateHolds() float64 {
	a, t := g.overhang(), g.Washer.Thickness.Inches()
	if a < 1e-6 {
		return math.Inf(1)
	}
	return plateSteel * t * t / (3 * a * a) * g.washerArea()
}

// washerBends checks the stiffness of the plates under the top fasteners.
func (c *calc) washerBends(f face) {
	g := f.g
	a, t, area := g.overhang(), g.Washer.Thickness.Inches(), g.washerArea()
	step := check.Step{ID: "washer_bending" + f.suffix(), Group: check.Block, Symbol: "fb",
		Name: "bending of the washer beyond the nut", Formula: "3 (T1/A) a^2/t^2 <= 36 ksi/1.67", Cap: c.a.Cap,
		Clause: "judgement: a strip held under the flat of the nut, pressed evenly; AISC 360-16 F11 (from memory, confirm)"}
	if lack := missing(given{"size of the washers", g.Washer.Size.Inches()}, given{"thickness of the washers", t},
		given{"washer of a size and spacing that bears", area}); lack != "" {
		c.notChecked(step, lack)
		return
	}
	c.worstDuty(g, func(d duty) check.Step {
		s, pull := step, c.couple(f, d).bolt
		fb := 3 * pull / area * a * a / (t * t)
		s.Value, s.Limit = psi(fb), check.Limit(psi(plateSteel))
		s.With = []check.Arg{arg("T1", lb(pull)), arg("A", square(area)), arg("a", inch(a)), arg("t", inch(t))}
		if s.Settled().Verdict == check.Fails {
			need := inch(t * math.Sqrt(fb/(plateSteel*c.a.Cap)))
			s.Reason = "washers " + c.say(inch(t)) + " thick bend before they spread the pull; " + c.say(need) + " needed"
			s.Fix = "washers " + c.say(need) + " thick or more"
		}
		return s
	})
}
