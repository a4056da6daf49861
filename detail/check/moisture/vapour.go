package moisture

import (
	"math"

	"standclear/detail/spec"
	"standclear/detail/stock"
	"standclear/detail/unit"
)

// paths are what resists vapour on the way to a place and from it to the outside, as metres of still air.
type paths struct {
	in, out float64 // out is +Inf where nothing passes
	known   bool    // all layers outside are known
	sheath  float64 // kg/m2 of the sheathing
}

// retarderResistance is the resistance of a class at the most it may pass, 0.1, 1 and 10 perm: IRC R202
// (from memory, confirm).
func retarderResistance(class string) float64 {
	switch class {
	case "class-1":
		return resists(0.1)
	case "class-2":
		return resists(1)
	case "class-3":
		return resists(10)
	}
	return 0
}

// resists returns the metres of still air that pass so many perm.
func resists(perms float64) float64 { return vapourInAir / (perms * perm) }

// barrierPerms is the least a water barrier passes: ASTM E2556 (from memory, confirm).
const barrierPerms = 5

// pathsOf returns the way of vapour to the inner face of the sheathing at a place, and on from it.
func (c *checker) pathsOf(p Place) paths {
	w := paths{known: true}
	at := c.sheathing()
	for i, l := range c.layers {
		t := l.Thickness.MM() / 1e3
		mu, ok := stock.VapourFactor(l.Material)
		switch {
		case i < at && p.Behind == Cavity && ok:
			w.in += mu * t
		case i < at:
		case l.Role == "cavity":
			return c.finish(w, p)
		case l.Role == "wrb" && l.Material == "membrane":
			w.out += resists(barrierPerms)
		case !ok:
			w.known = false
		default:
			w.out += mu * t
		}
		if i == at {
			m, _ := stock.MaterialOf(l.Material)
			w.sheath = m.Density * t
		}
	}
	return c.finish(w, p)
}

func (c *checker) finish(w paths, p Place) paths {
	switch p.Behind {
	case Cavity:
		w.in += retarderResistance(c.retarder)
	case Rim:
		floor := c.s.Floor
		w.in += ofBoard(floor.Rim.Material, floor.Rim.Thickness)
		if c.backed(p) {
			w.in += ofBoard(floor.Backing.Material, floor.Backing.Thickness)
		}
	}
	if p.AtBlock {
		w.out, w.known = math.Inf(1), true
	}
	return w
}

// backed reports whether backing is bolted tight behind the rim at a place: at a block.
func (c *checker) backed(p Place) bool { return p.AtBlock && c.s.Floor.Backing.Kind != "none" }

// ofBoard returns the resistance to vapour of a rim or a backing, 0 when it is not known.
func ofBoard(material string, t unit.Length) float64 {
	b, _ := stock.Rim(material, 0)
	mu, _ := stock.VapourFactor(b.Material)
	return mu * t.MM() / 1e3
}

// sheathing returns the place of the sheathing among the layers.
func (c *checker) sheathing() int {
	for i, l := range c.layers {
		if l.Role == "sheathing" {
			return i
		}
	}
	return len(c.layers)
}

// outside returns the layers from the sheathing to the ventilated cavity, or to the outside.
func (c *checker) outside() (out []spec.Layer) {
	for i, l := range c.layers {
		if i > c.sheathing() && l.Role == "cavity" {
			break
		}
		if i >= c.sheathing() {
			out = append(out, l)
		}
	}
	return out
}

// balance returns the vapour pressure at a place as diffusion settles it, Pa.
func (w paths) balance(m month) float64 {
	switch {
	case w.in == 0:
		return m.p
	case math.IsInf(w.out, 1):
		return m.p
	}
	return (m.p/w.in + m.pOut/w.out) / (1/w.in + 1/w.out)
}

// uptake follows a year of the face held at rh and returns the most water it has taken up, kg/m2, and
// whether all has left before the year is round: the method of ISO 13788:2012 clause 6 (from memory,
// confirm). It starts with the first month that brings water.
func (w paths) uptake(c climate, f, rh float64) (most float64, leaves bool) {
	n := len(c.months)
	gain := func(i int) float64 {
		m := c.months[i%n]
		face := rh * saturation(m.at(f))
		g := vapourInAir * (m.p - face) / w.in
		if !math.IsInf(w.out, 1) {
			g -= vapourInAir * (face - m.pOut) / w.out
		}
		return g * secondsPerMonth
	}
	start := 0
	for start < n && !(gain(start) > 0 && gain(start+n-1) <= 0) {
		start++
	}
	if start == n { // every month brings water, or none
		if gain(0) <= 0 {
			return 0, true
		}
		start = 0
	}
	stock := 0.0
	for i := start; i < start+n; i++ {
		stock = math.Max(0, stock+gain(i))
		most = math.Max(most, stock)
	}
	return most, stock < 1e-9
}
