package heat

import (
	"fmt"
	"math"
)

// Limits of a case; past them a figure is a slip of the pen, or no grid can hold it.
const (
	thinnest  = 1e-3 // mm: planes nearer than this are one
	farthest  = 1e6  // mm, of any coordinate from 0
	mostK     = 1e5  // W/(m K)
	leastK    = 1e-6 // W/(m K)
	mostRs    = 1e4  // m2 K/W
	hottest   = 1e4  // degrees C, either way
	mostBoxes = 5000
)

// valid lists what is wrong with the parts of c one by one, before they are put together.
func (c *Case) valid() Faults {
	var fs Faults
	if c.Dim != 2 && c.Dim != 3 {
		fs.add(InCase, 0, fmt.Sprintf("%d dimensions", c.Dim), "2 or 3 are allowed", "")
		return fs
	}
	if len(c.Boxes) > mostBoxes {
		fs.add(InCase, 0, fmt.Sprintf("%d boxes", len(c.Boxes)), fmt.Sprintf("at most %d are read", mostBoxes), "")
		return fs
	}
	names := map[string]string{}
	c.validMaterials(&fs, names)
	c.validEnvs(&fs, names)
	for i, b := range c.Boxes {
		c.validBox(&fs, i, b, names)
	}
	for _, cut := range c.Cuts {
		if cut.Axis < X || int(cut.Axis) >= c.Dim || !within(cut.At, -farthest, farthest) {
			fs.add(InCase, 0, fmt.Sprintf("a cut square to axis %d at %g mm", int(cut.Axis), cut.At), fmt.Sprintf("axis 0 to %d, at most %g mm from 0, is allowed", c.Dim-1, farthest), "")
		}
	}
	for i, p := range c.Probes {
		for a := range c.Dim {
			if !within(p.At[a], -farthest, farthest) {
				fs.add(InProbe, i, fmt.Sprintf("%s is %g mm", Axis(a), p.At[a]), fmt.Sprintf("at most %g mm from 0 is allowed", farthest), "")
			}
		}
	}
	return fs
}

func within(v, lo, hi float64) bool { return v >= lo && v <= hi } // false for NaN

func (c *Case) validMaterials(fs *Faults, names map[string]string) {
	for i, m := range c.Materials {
		named(fs, names, InMaterial, i, m.Name)
		for a := range c.Dim {
			if k := m.K[a]; !within(k, leastK, mostK) {
				fs.add(InMaterial, i, fmt.Sprintf("the conductivity of %q along %s is %g W/(m K)", m.Name, Axis(a), k),
					fmt.Sprintf("%g to %g is allowed", leastK, float64(mostK)), "every material lets some heat pass; leave a part out with a void box")
				break
			}
		}
	}
}

func (c *Case) validEnvs(fs *Faults, names map[string]string) {
	for i, e := range c.Envs {
		named(fs, names, InEnv, i, e.Name)
		if !within(e.T, -hottest, hottest) {
			fs.add(InEnv, i, fmt.Sprintf("the temperature of %q is %g C", e.Name, e.T), fmt.Sprintf("%g to %g C is allowed", -hottest, hottest), "")
		}
		if !within(e.Rs, 0, mostRs) {
			fs.add(InEnv, i, fmt.Sprintf("the surface resistance of %q is %g m2K/W", e.Name, e.Rs), fmt.Sprintf("0 to %g is allowed", mostRs), "")
		}
	}
	switch {
	case len(c.Envs) == 0:
		fs.add(InCase, 0, "there is no environment", "two of different temperature are needed", "name the room and the outside, and give each a box")
	case c.span() == 0:
		fs.add(InCase, 0, fmt.Sprintf("every environment is at %g C", c.Envs[0].T), "two different temperatures are needed", "no heat flows otherwise")
	}
}

// span is the difference of the highest and lowest temperature, K.
func (c *Case) span() float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, e := range c.Envs {
		lo, hi = min(lo, e.T), max(hi, e.T)
	}
	return hi - lo
}

// named notes a name, which may be given once among materials and environments.
func named(fs *Faults, names map[string]string, p Part, i int, name string) {
	first, twice := names[name]
	switch {
	case name == "":
		fs.add(p, i, "it has no name", "", "")
	case twice:
		fs.add(p, i, fmt.Sprintf("%q is already the name of %s", name, first), "", "take another name")
	}
	names[name] = fmt.Sprintf("%s %d", p, i+1)
}

func (c *Case) validBox(fs *Faults, i int, b Box, names map[string]string) {
	for a := range c.Dim {
		lo, hi := b.Lo[a], b.Hi[a]
		switch {
		case !within(lo, -farthest, farthest) || !within(hi, -farthest, farthest):
			fs.add(InBox, i, fmt.Sprintf("%s runs from %g to %g mm", Axis(a), lo, hi), fmt.Sprintf("at most %g mm from 0 is allowed", farthest), "")
		case hi-lo < thinnest:
			fs.add(InBox, i, fmt.Sprintf("%s runs from %g to %g mm", Axis(a), lo, hi), fmt.Sprintf("the second must be at least %g mm more than the first", thinnest), "")
		}
	}
	filled := 0
	for _, is := range []bool{b.Material != "", b.Env != "", b.Void} {
		if is {
			filled++
		}
	}
	if filled != 1 {
		fs.add(InBox, i, fmt.Sprintf("it is filled with %d things", filled), "one of a material, an environment or void is needed", "")
		return
	}
	if b.Material != "" && c.material(b.Material) < 0 {
		fs.add(InBox, i, fmt.Sprintf("%q is no material of the case", b.Material), "", instead(names, b.Material, InEnv))
	}
	if b.Env != "" && c.env(b.Env) < 0 {
		fs.add(InBox, i, fmt.Sprintf("%q is no environment of the case", b.Env), "", instead(names, b.Env, InMaterial))
	}
	if !within(b.Rs, 0, mostRs) || b.Rs > 0 && b.Env == "" {
		fs.add(InBox, i, fmt.Sprintf("its surface resistance is %g m2K/W", b.Rs), fmt.Sprintf("0 to %g is allowed, in a box of an environment", mostRs), "")
	}
}

// instead says that a name belongs to the other kind of thing, when it does.
func instead(names map[string]string, name string, other Part) string {
	if _, ok := names[name]; ok {
		return fmt.Sprintf("it is one as %s", other)
	}
	return "list it there or correct the name"
}

// material returns the place of the named material, -1 when there is none.
func (c *Case) material(name string) int {
	for i, m := range c.Materials {
		if m.Name == name {
			return i
		}
	}
	return -1
}

// env returns the place of the named environment, -1 when there is none.
func (c *Case) env(name string) int {
	for i, e := range c.Envs {
		if e.Name == name {
			return i
		}
	}
	return -1
}
