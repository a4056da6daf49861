package design

import (
	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/stock"
	"standclear/detail/unit"
)

// Gravity and the weight of wet treated softwood, for parts whose material has no density of its own
// (common practice, no source).
const (
	gravity     = 9.80665 // m/s2
	treatedWood = 600.0   // kg/m3
)

// deadLoad compares the dead load that was stated with the weight of what is drawn: decking and joists over
// the deck's area, and the ledger over the width it carries.
func deadLoad(a *detail.Assembly, r *check.Report) {
	s := a.Spec
	area := s.Ledger.Length.MM() * (s.Deck.Projection.MM() - a.Frame.LedgerBack)
	width := s.Deck.Span.MM() / 2
	if s.Loads.Dead == nil || area <= 0 || width <= 0 {
		return // said elsewhere
	}
	decking, joists := pressure(a, area, detail.Decking), pressure(a, area, detail.DeckJoist)
	ledger := pressure(a, s.Ledger.Length.MM()*width, detail.Ledger)
	step := check.Step{
		ID: "dead_buildup", Group: check.Loads, Symbol: "D", Name: "weight of the parts drawn, against the dead load stated", Formula: "decking + joists + ledger / (L/2)",
		With:  []check.Arg{{Symbol: "decking", Value: decking.AreaLoad()}, {Symbol: "joists", Value: joists.AreaLoad()}, {Symbol: "ledger", Value: ledger.AreaLoad()}},
		Value: (decking + joists + ledger).AreaLoad(), Limit: check.Limit(s.Loads.Dead.AreaLoad()),
		Clause: "volumes of the parts; judgement: wet treated softwood 600 kg/m3 (37 lb/ft3)",
		Note:   "guards, stairs, benches and what hangs below the deck are to be added by whoever states the dead load",
	}
	if step.Value.V > step.Limit.V {
		step.Reason = "the parts drawn weigh " + step.Value.Text(s.Words()) + " of deck, more than the " + step.Limit.Text(s.Words()) + " that every other check rests on"
		step.Fix = "loads.dead: " + unit.Pressure(step.Value.V).AreaLoad().Text(s.Words()) + " or more"
	}
	r.Add(step)
}

// pressure is the weight of the parts of a role over an area in square millimetres.
func pressure(a *detail.Assembly, area float64, role detail.Role) unit.Pressure {
	newtons := 0.0
	for _, p := range a.Find(role) {
		density := treatedWood
		if m, ok := stock.MaterialOf(p.Material); ok && m.Density > density {
			density = m.Density
		}
		for _, solid := range p.Solids {
			newtons += solid.Volume() * 1e-9 * density * gravity
		}
	}
	return unit.Pressure(newtons/area) * unit.Megapascal
}
