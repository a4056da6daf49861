package sheet

import (
	"fmt"
	"standclear/detail"
	"standclear/detail/unit"
	"strings"
)

// blockTable lists every block: where it stands, how far its bolts keep from the house joists, what it
// carries.
func (w *writer) blockTable() *table {
	t := &table{title: strings.TrimSuffix("BLOCKS, FROM THE LEFT END OF THE LEDGER; LOADS BY "+w.results.Combination, "; LOADS BY "), head: []string{"MARK", "CENTRE", "LEFT EDGE AT", "BOLT TO HOUSE JOIST", "LOAD", "PULL BEHIND RIM"},
		width: []float64{18, 28, 30, 46, 30, 38}}
	sys := w.a.Spec.Project.System
	rules := w.a.Rules()
	for i, b := range w.a.Blocks {
		joist := "-"
		if k, ok := rules.Closest("house joist", b.X); ok {
			joist = w.text(k.Distance)
		}
		re, pull := "NOT CHECKED", "NOT CHECKED"
		if i < len(w.results.Reactions) {
			re = w.results.Reactions[i].Design.Text(sys)
			pull = w.pull(i).Text(sys)
		}
		t.rows = append(t.rows, []string{b.Mark, w.text(b.X), w.text(b.Box.Min.X), joist, re, pull})
	}
	return t
}

// zoneTable lists what stands in the way behind the rim or on the wall.
func (w *writer) zoneTable() *table {
	t := &table{title: "OBSTRUCTIONS, POSTS AND POINT LOADS", head: []string{"MARK", "WHAT", "FROM", "TO", "NOTE"}, width: []float64{18, 52, 28, 28, 64}}
	for i, o := range w.a.Find(detail.Obstacle, detail.Outside) {
		keep := "KEEP OFF WITH BLOCKS"
		if w.a.Spec.Obstacles[i].Inside {
			keep = "KEEP OFF WITH BOLTS, NUTS, WASHERS"
		}
		b := o.Bounds()
		t.rows = append(t.rows, []string{o.Mark, caps(o.Name), w.text(b.Min.X), w.text(b.Max.X), keep})
	}
	for i, x := range w.a.Spec.Deck.GuardPosts {
		t.rows = append(t.rows, []string{fmt.Sprintf("GP%d", i+1), "GUARD POST ON THE LEDGER", w.text(x.MM()), "", "BY ITS DESIGNER"})
	}
	for i, p := range w.a.Spec.Deck.PointLoads {
		t.rows = append(t.rows, []string{fmt.Sprintf("PL%d", i+1), caps(p.Name) + " " + p.Load.Text(w.a.Spec.Project.System), w.text(p.X.MM()), "", "POINT LOAD"})
	}
	return t
}

// pull is the pull behind the rim at block i: in proportion to its reaction.
func (w *writer) pull(i int) unit.Force {
	r := w.results
	if i >= len(r.Reactions) || r.Worst >= len(r.Reactions) || r.Reactions[r.Worst].Design <= 0 {
		return 0
	}
	return r.Tension * r.Reactions[i].Design / r.Reactions[r.Worst].Design
}
