package strength

import (
	"fmt"
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// threadShare is the share of a member's bearing up to which threads in it leave the full diameter of a
// bolt to count. NDS 2018 12.3.7.2 (from memory, confirm).
const threadShare = 0.25

// BoltRoot returns the root diameter of the coarse thread of a bolt of nominal diameter d: d less 1.2269
// pitches, ASME B1.1 and ISO 262 (from memory, confirm). ok is false for a size without a listed thread.
func BoltRoot(d unit.Length) (root unit.Length, ok bool) {
	n, ok := nutOf(d)
	return d - 1.2269*unit.Length(n.pitch)*unit.MM, ok
}

// threads finds how much of a bolt's thread bears in the member next to the nut. Where it is more than a
// quarter of that member the whole bolt is taken at its root.
//
//	head                                   nut
//	 |===================shank======|######thread#####
//	 | washer, ledger, block, void  | main member |
func (c *calc) threads(g *group) {
	if g.Kind != Bolt {
		return
	}
	step := check.Step{ID: "threads" + g.id, Group: check.Connection, Symbol: "lt", Name: "thread bearing in the member next to the nut",
		Formula: "washer + grip - (L - thread)", Clause: "NDS 2018 12.3.7.2 (from memory, confirm)", Where: "all blocks"}
	root, ok := BoltRoot(g.Diameter)
	switch {
	case g.Length <= 0 || g.Thread <= 0:
		c.notChecked(step, "length of the bolts or of their thread not stated: whether threads bear in the wood is not known, and the full diameter is used")
		return
	case !ok:
		c.notChecked(step, "no thread is listed for a bolt of "+c.say(g.Diameter.Q())+": the full diameter is used")
		return
	}
	main := g.parts[0].thick
	bearing := g.threadIn(g.Thread.Inches())
	step.Value = inch(bearing)
	step.With = []check.Arg{arg("L", g.Length.Q()), arg("thread", g.Thread.Q()), arg("member", inch(main)), arg("share", num(bearing/main))}
	step.Note = fmt.Sprintf("no more than a quarter of the main member (%s): the full diameter counts", c.mainMember(g))
	if bearing > threadShare*main*(1+1e-9) {
		g.dowel.Root = root
		step.With = append(step.With, arg("Dr", g.dowel.Root.Q()))
		step.Note = fmt.Sprintf("more than a quarter of the main member (%s): the whole bolt is taken at the root of its thread", c.mainMember(g))
	}
	c.add(step)
}

// threadIn is how much of a thread lies in the main member, in, measured from under the head.
func (g *group) threadIn(thread float64) float64 {
	shank := g.Length.Inches() - thread
	inner := g.tip + g.parts[0].thick // inner face of the main member
	return math.Max(0, math.Min(g.parts[0].thick, inner-shank))
}

// mainMember names the main member of a set as printed.
func (c *calc) mainMember(g *group) string {
	if g.rim && c.counted() {
		return "rim and backing"
	}
	return said(g.parts[0].name)
}
