// Package fit checks whether the attachment can be built as drawn: clearances, levels, lengths,
// access, and the order of the layers that shed water. Every number is read off the assembly.
//
//	fit.Run(assembly, &report)
package fit

import (
	"fmt"
	"math"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/spec"
	"standclear/detail/unit"
	"standclear/geom"
)

// fitter is one run: the assembly and the report it fills.
type fitter struct {
	a   *detail.Assembly
	r   *check.Report
	sys unit.System // limits go by it

	words unit.System          // reasons are worded in it
	cuts  map[level][]geom.Box // found so far
}

// Run adds the steps of groups Fit and Water to the report.
func Run(a *detail.Assembly, r *check.Report) {
	Row(a, r)
	Parts(a, r)
}

// Row adds the steps of Run that ask whether the blocks stand as the project wants them.
func Row(a *detail.Assembly, r *check.Report) {
	c := newFitter(a, r)
	c.layout()
}

// Parts adds all the other steps of Run, which go by the parts.
func Parts(a *detail.Assembly, r *check.Report) {
	c := newFitter(a, r)
	c.deckJoists()
	c.seats()
	c.levels()
	c.bolts()
	c.clashes()
	c.durable()
	c.hazards()
	c.access()
	c.doors()
	c.ground()
	c.flashing()
	c.membrane()
	c.layers()
}

func newFitter(a *detail.Assembly, r *check.Report) fitter {
	return fitter{a: a, r: r, sys: a.Spec.Project.System, words: a.Spec.Words()}
}

// lower writes a name of the drawings in running text.
func lower(name string) string { return strings.ToLower(name) }

// text prints a length as a drafter writes it.
func (c *fitter) text(mm float64) string { return unit.Length(mm).Text(c.words) }

// fine prints a length to the hundredth of an inch or the tenth of a millimetre, for values that do
// not fall on a drafting step.
func (c *fitter) fine(mm float64) string {
	if c.words == unit.IP {
		return fmt.Sprintf("%.2f in", mm/25.4)
	}
	return fmt.Sprintf("%.1f mm", mm)
}

// round returns a limit as each system of units states it.
func (c *fitter) round(inches, mm float64) float64 {
	if c.sys == unit.IP {
		return inches * 25.4
	}
	return mm
}

// up and down round a length to what a tape shows, 1/16 in or 1 mm.
func (c *fitter) up(mm float64) float64   { return math.Ceil(mm/c.tape()) * c.tape() }
func (c *fitter) down(mm float64) float64 { return math.Floor(mm/c.tape()) * c.tape() }
func (c *fitter) tape() float64           { return c.round(0.0625, 1) }

func length(mm float64) unit.Quantity { return unit.Length(mm).Q() }

// atLeast adds a check of a clearance: value must not be under limit.
func (c *fitter) atLeast(s check.Step, value, limit float64) {
	c.r.Add(s.NotUnder(length(value), length(limit)))
}

// atMost adds a check of a distance that must not be over limit.
func (c *fitter) atMost(s check.Step, value, limit float64) {
	c.r.Add(s.NotOver(length(value), length(limit)))
}

// holds adds a check that is either kept or not.
func (c *fitter) holds(s check.Step, good bool) { c.r.Add(s.Holds(good)) }

func (c *fitter) mark(i int) string {
	if i >= 0 && i < len(c.a.Blocks) {
		return c.a.Blocks[i].Mark
	}
	return fmt.Sprintf("B%d", i+1)
}

// key is where a set of fasteners stands in the project file.
func (c *fitter) key(set *spec.Set) string {
	f := c.a.Spec.Fasteners
	switch set {
	case f.ToRim:
		return "fasteners.to_rim"
	case f.ToBlock:
		return "fasteners.to_block"
	}
	return "fasteners.through"
}

func list(items []string) string { return strings.Join(items, ", ") }
