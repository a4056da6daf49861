package design

import (
	"fmt"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/moisture"
	"standclear/detail/check/thermal"
	"standclear/detail/unit"
)

// Heat adds what the attachment costs in heat, what the usual other ways would, and whether the wall stays
// dry. When h is nil the lines say that they were not checked, and why.
func Heat(a *detail.Assembly, h *thermal.Result, why string, r *check.Report) {
	if h == nil {
		r.Add(check.Step{ID: "heat_loss", Group: check.Heat, Name: "heat loss of the attachment and of other ways", Clause: clauseHeat, Verdict: check.NotChecked, Reason: why})
		moisture.Run(a.Spec, nil, r)
		return
	}
	heatSteps(a, h, r)
	for _, t := range h.Assumed {
		r.Assumptions = append(r.Assumptions, check.Assumption{Text: "heat: " + t, Source: "judgement"})
	}
	moisture.Run(a.Spec, solved(h), r)
}

const clauseHeat = "ISO 10211:2017, solved in three dimensions"

// heatSteps states the heat of the drawn attachment and of the ways compared with it.
func heatSteps(a *detail.Assembly, h *thermal.Result, r *check.Report) {
	sys := a.Spec.Words()
	add := func(s check.Step) {
		s.Group = check.Heat
		if s.Clause == "" {
			s.Clause = clauseHeat
		}
		r.Add(s)
	}
	err := check.Step{ID: "heat_error", Symbol: "e", Name: "error that the grid leaves in the heat flow", Value: unit.Percent(h.Error).Q(), Limit: check.Limit(unit.Percent(h.Asked).Q()),
		Note: fmt.Sprintf("heat missing %.0e of the flow at most; finest grid %d cells", h.Balance, h.Cells)}
	if h.Error > h.Asked {
		err.Verdict, err.Reason = check.NotChecked, "the grid would have grown too large for the error asked for"
	}
	add(err)
	add(check.Step{ID: "wall_u", Symbol: "U", Name: "clear wall, studs counted", Where: "wall above", Value: unit.Transmittance(h.Wall.V).Q(), Note: within(unit.Transmittance(h.Wall.Err).Q(), h.Wall, sys)})
	w := h.Drawn()
	add(check.Step{ID: "block_chi", Symbol: "chi", Name: "heat that one block adds, with its bolts, ledger and joists", Where: h.Block, Formula: "(Q with - Q without)/(Ti - Te)", Value: unit.Conductance(w.Bay.V).Q(),
		With: []check.Arg{{Symbol: "fasteners alone", Value: unit.Conductance(h.Bolts.V).Q()}}, Note: within(unit.Conductance(w.Bay.Err).Q(), w.Bay, sys) + "; one bay solved with and without, same planes"})
	add(check.Step{ID: "run_heat", Symbol: "H", Name: "heat that the whole attachment adds", Where: "ledger", Formula: "n chi", Value: unit.Conductance(w.Run.V).Q(),
		With: []check.Arg{{Symbol: "n", Value: unit.Number(h.Blocks)}, {Symbol: "chi", Value: unit.Conductance(w.Bay.V).Q()}, {Symbol: "a metre", Value: unit.LineConductance(h.PerMetre(w).V).Q()}}, Note: within(unit.Conductance(w.Run.Err).Q(), w.Run, sys)})
	if tight := h.Way("tight"); tight != nil {
		add(check.Step{ID: "heat_saved", Symbol: "s", Name: "part of a tight ledger's extra heat that is saved", Where: "ledger", Formula: "1 - H/H tight", Value: unit.Percent(h.Saved(w)).Q(),
			With: []check.Arg{{Symbol: "H", Value: unit.Conductance(w.Run.V).Q()}, {Symbol: "H tight", Value: unit.Conductance(tight.Run.V).Q()}, {Symbol: "psi tight", Value: unit.LineConductance(h.PerMetre(tight).V).Q()}},
			Note: "short blocks 5 to 6 ft apart are said to save a quarter at least (common practice, no source)"})
	}
	season(a, h, add)
	effective := h.Effective(w)
	add(check.Step{ID: "effective_r", Symbol: "R", Name: "resistance of the wall with the deck on it", Where: "wall above", Formula: "1/(U + H/A)", Value: unit.Resistance(1 / effective.V).Q(),
		With: []check.Arg{{Symbol: "U", Value: unit.Transmittance(h.Wall.V).Q()}, {Symbol: "H", Value: unit.Conductance(w.Run.V).Q()}}, Note: fmt.Sprintf("A: ledger by one storey of 8 ft (2.44 m), %s; the wall alone %s", areaText(h.Area(), sys), unit.Resistance(1/h.Wall.V).Q().Text(sys))})
	add(check.Step{ID: "f_rsi", Symbol: "f", Name: "lowest temperature factor that room air touches", Where: h.Block, Formula: "(T - Te)/(Ti - Te)", Value: unit.Ratio(w.Low.V),
		With: []check.Arg{{Symbol: "without a deck", Value: unit.Ratio(h.Low.V)}}, Note: fmt.Sprintf("within %.2f; Rsi 0.13 m2K/W", max(w.Low.Err, 0))})
	for i := range h.Ways {
		if o := &h.Ways[i]; !o.Drawn {
			add(check.Step{ID: "heat_" + o.Key, Symbol: "H", Name: strings.ToLower(o.Name), Where: "instead", Value: unit.Conductance(o.Run.V).Q(),
				With: []check.Arg{{Symbol: "lowest f", Value: unit.Ratio(o.Low.V)}, {Symbol: "saved", Value: unit.Percent(h.Saved(o)).Q()}}, Note: within(unit.Conductance(o.Run.Err).Q(), o.Run, sys) + "; " + o.Note})
		}
	}
}

// season states the heat of a heating season.
func season(a *detail.Assembly, h *thermal.Result, add func(check.Step)) {
	s := check.Step{ID: "season_heat", Symbol: "E", Name: "heat that it adds in a heating season", Where: "ledger", Formula: "24 h H HDD"}
	days := a.Spec.Site.DegreeDays
	if days == nil {
		s.Verdict, s.Reason = check.NotChecked, "site.degree_days not stated"
		add(s)
		return
	}
	w := h.Drawn()
	s.Value = unit.Energy(w.Season(float64(*days)).V).Q()
	s.With = []check.Arg{{Symbol: "H", Value: unit.Conductance(w.Run.V).Q()}}
	s.Note = fmt.Sprintf("HDD %.0f K d; with a tight ledger %s", float64(*days), unit.Energy(h.Way("tight").Season(float64(*days)).V).Q().Text(a.Spec.Words()))
	add(s)
}

// within prints the error of a value.
func within(err unit.Quantity, v thermal.Value, sys unit.System) string {
	if v.Err < 0 {
		return "error unknown"
	}
	return "within " + err.Text(sys)
}

func areaText(m2 float64, sys unit.System) string {
	if sys == unit.SI {
		return fmt.Sprintf("%.1f m2", m2)
	}
	return fmt.Sprintf("%.0f ft2", m2/0.3048/0.3048)
}

// solved hands the temperatures that heat found to moisture.
func solved(h *thermal.Result) *moisture.Solved {
	out := &moisture.Solved{Places: places(h.Spots)}
	for _, w := range h.Ways {
		if w.Pad > 0 && !w.Drawn && w.Key != "stainless" {
			out.Pads = append(out.Pads, moisture.Padded{Thickness: unit.Length(w.Pad), Places: places(w.Spots)})
		}
	}
	return out
}

func places(spots []thermal.Spot) []moisture.Place {
	var out []moisture.Place
	for _, s := range spots {
		p := moisture.Place{Key: s.Key, Name: s.Name, Where: s.Where, F: s.F.V, Err: s.F.Err, Room: s.Room, Bolt: s.Bolt}
		switch s.Key {
		case "sheathing_outside_cavity":
			p.Behind = moisture.Cavity
		case "sheathing_behind_block":
			p.Behind, p.AtBlock = moisture.Rim, true
		case "sheathing_between":
			p.Behind = moisture.Rim
		}
		out = append(out, p)
	}
	return out
}
