package moisture

import (
	"fmt"
	"strings"

	"standclear/detail/stock"
	"standclear/detail/unit"
)

// count writes in how many of the months judged.
func (c *checker) count(n int) string {
	switch all := len(c.climate.months); {
	case all == 1:
		return "in the 1 month stated"
	case n == all:
		return fmt.Sprintf("in all %d months", all)
	default:
		return fmt.Sprintf("in %d of %d months", n, all)
	}
}

// kelvins writes a difference of temperature.
func (c *checker) kelvins(d float64) string {
	if c.sys == unit.IP {
		return fmt.Sprintf("%.1f F", d*9/5)
	}
	return fmt.Sprintf("%.1f K", d)
}

func (c *checker) temp(t float64) string { return unit.Temp(t).Text(c.sys) }

// join puts one sentence after another.
func join(a, b string) string {
	if a == "" {
		return b
	}
	return a + ". " + b
}

// list joins reasons.
func list(all []string) string { return strings.Join(all, "; ") }

// or joins offers.
func or(all []string) string { return strings.Join(all, "; or ") }

// behind says what keeps the vapour of the room from a place, and where it goes from there.
func (c *checker) behind(p Place) string {
	var in string
	switch p.Behind {
	case RoomAir:
		in = "Room air reaches it; no retarder of the wall is in its way. Sealed board or closed-cell foam over it keeps the air away and makes the wood behind colder"
	case Rim:
		in = "The wood of the rim" + either(c.backed(p), " and its backing", "") + " slows vapour; open joints in it let room air past"
	default:
		in = "Between it and the room: " + c.inner() + "; air that leaks past carries more than passes through"
	}
	return in + ". " + c.outward(p)
}

// inner names the layers on the room side and the retarder.
func (c *checker) inner() string {
	var all []string
	for i, l := range c.layers {
		if i < c.sheathing() {
			all = append(all, lower(l.Name))
		}
	}
	switch c.retarder {
	case "none":
		all = append(all, "no vapour retarder")
	case "class-1", "class-2", "class-3":
		all = append(all, "a retarder of "+class(c.retarder))
	default:
		all = append(all, "a retarder of unknown class, counted as none")
	}
	return strings.Join(all, ", ")
}

// outward says through what a place dries to the outside.
func (c *checker) outward(p Place) string {
	if p.AtBlock {
		s := "It does not dry outward: the membrane patch under the block"
		if pad := c.s.Blocks.Pad; pad.Thickness > 0 {
			m, _ := stock.MaterialOf(pad.Material)
			s += " and its pad, " + m.Vapour + ","
		}
		return s + " stops vapour"
	}
	var all []string
	for _, l := range c.outside() {
		m, _ := stock.MaterialOf(l.Material)
		all = append(all, lower(l.Name)+" ("+m.Vapour+")")
	}
	return "It dries outward through " + strings.Join(all, ", ")
}

// class writes a class of retarder as the code does.
func class(retarder string) string {
	n := strings.TrimPrefix(retarder, "class-")
	return "class " + map[string]string{"1": "I", "2": "II", "3": "III"}[n]
}

func lower(s string) string { return strings.ToLower(s) }

func either(cond bool, yes, no string) string {
	if cond {
		return yes
	}
	return no
}
