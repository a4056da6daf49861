package explain

import (
	"fmt"
	"math"
	"strings"
)

// beam draws the ledger: joists that load it, blocks that hold it, their loads and spaces, and the line of moment,
// shear or deflection that the check is about.
func (j *Job) beam(id string) []string {
	a := j.Assembly
	length := a.Spec.Ledger.Length.MM()
	r := ruler{0, length, wide}
	c := newCanvas(wide, 3)
	for _, x := range a.DeckJoists {
		c.put(r.at(x), 0, "v")
	}
	c.across(0, wide-1, 1, '=')
	for _, x := range a.Spec.Ledger.Splices {
		c.put(r.at(x.MM()), 1, "|")
	}
	var names, loads, spaces []label
	for i, b := range a.Blocks {
		x := r.at(b.X)
		c.put(x, 2, "^")
		names = append(names, label{x, b.Mark})
		if i < len(j.Results.Reactions) {
			loads = append(loads, label{x, j.Results.Reactions[i].Design.Q().Text(j.sys())})
		}
		if i > 0 {
			spaces = append(spaces, label{r.at((b.X + a.Blocks[i-1].X) / 2), j.text(math.Round((b.X-a.Blocks[i-1].X)*100) / 100)})
		}
	}
	out := []string{fmt.Sprintf("w %s; a joist (v) brings %s", j.value("ledger_line_load"), j.value("joist_reaction"))}
	out = append(out, c.lines()...)
	out = append(out, labels(wide, names)...)
	out = append(out, labels(wide, loads)...)
	out = append(out, "spaces of the blocks:")
	out = append(out, labels(wide, spaces)...)
	return append(out, j.diagram(id)...)
}

// diagram plots what the beam does under load on all spans.
func (j *Job) diagram(id string) []string {
	d := j.Results.Diagram
	if len(d) < 2 {
		return nil
	}
	what, pick := "moment", func(i int) float64 { return float64(d[i].Moment) }
	print := func(i int) string { return d[i].Moment.Q().Text(j.sys()) }
	switch {
	case strings.Contains(id, "defl"):
		what, pick = "deflection, upward positive,", func(i int) float64 { return -d[i].Deflection.MM() }
		print = func(i int) string {
			v, in := (-d[i].Deflection).Q().In(j.sys())
			return fmt.Sprintf("%.2g %s", v, in)
		}
	case strings.Contains(id, "fv") || strings.Contains(id, "_v_"):
		what, pick = "shear", func(i int) float64 { return float64(d[i].Shear) }
		print = func(i int) string { return d[i].Shear.Q().Text(j.sys()) }
	}
	lo, hi := 0, 0
	for i := range d {
		if pick(i) < pick(lo) {
			lo = i
		}
		if pick(i) > pick(hi) {
			hi = i
		}
	}
	first, last := d[0].X.MM(), d[len(d)-1].X.MM()
	at := func(share float64) float64 {
		x := first + share*(last-first)
		for i := 1; i < len(d); i++ {
			if a, b := d[i-1].X.MM(), d[i].X.MM(); x <= b && b > a {
				return pick(i-1) + (pick(i)-pick(i-1))*(x-a)/(b-a)
			}
		}
		return pick(len(d) - 1)
	}
	head := fmt.Sprintf("%s with load on all spans, greatest %s at %s, least %s at %s:", what, print(hi), j.text(math.Round(d[hi].X.MM())), print(lo), j.text(math.Round(d[lo].X.MM())))
	return append(folded(head), plot(wide, 7, at, min(0, pick(lo)), max(0, pick(hi)), '*')...)
}
