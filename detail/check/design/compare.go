package design

import (
	"fmt"
	"strings"

	"standclear/detail/check"
	"standclear/detail/spec"
	"standclear/detail/stock"
	"standclear/detail/unit"
)

// plainLedger says beside the report what the prescriptive table would ask of a ledger tight to the
// sheathing. It is a comparison, no check: this ledger stands off and is outside that table.
func plainLedger(s *spec.Spec, r *check.Report) {
	if s.Loads.Live == nil || *s.Loads.Live > 40*unit.PSF+1e-9 || s.Deck.Kind != "deck" {
		return // the table is for decks at 40 psf
	}
	load := *s.Loads.Live
	for _, p := range []*unit.Pressure{s.Loads.Snow, s.Site.GroundSnow} {
		if p != nil {
			load = max(load, *p)
		}
	}
	cells := stock.PlainLedger(load, s.Deck.Span)
	if len(cells) == 0 {
		return
	}
	var text []string
	for _, c := range cells {
		text = append(text, fmt.Sprintf("%s at %s", c.Connection, c.Spacing.Text(s.Project.System)))
	}
	r.Add(check.Step{
		ID: "plain_ledger", Group: check.Scope, Name: "a plain ledger tight to the sheathing, for comparison only",
		With:  []check.Arg{{Symbol: "greater of live load and ground snow", Value: load.AreaLoad()}, {Symbol: "joist span", Value: s.Deck.Span.Q()}},
		Value: cells[1].Spacing.Q(), Clause: "IRC 2021 table R507.9.1.3(1), 40 psf read, snow rows from memory, confirm",
		Note: strings.Join(text, "; ") + ". Those values were found by tests with the ledger tight; they do not hold at a stand-off, and nothing here rests on them",
	})
}
