package compare

import (
	"fmt"
	"math"
	"strings"

	"standclear/detail/check/design"
	"standclear/detail/check/thermal"
	"standclear/detail/spec"
	"standclear/detail/stock"
	"standclear/detail/unit"
)

// Usual returns the usual other ways beside the drawn one: a ledger tight to the sheathing, one on thin spacers,
// blocks of solid wood and with foam pads, stainless fasteners, a deck on posts of its own. Their heat is in the
// result of the drawn one. Blocks with another sandwich are built and checked as the drawn ones are; of the others
// the program says what it cannot check.
func (j Job) Usual(drawn *Design) []*Design {
	out := []*Design{j.tight(drawn), j.spacers(drawn)}
	pad := drawn.Trial.Spec.Blocks.Pad.Thickness.MM()
	if pad > 0 {
		out = append(out, j.sandwich(drawn, "solid", "BLOCKS OF SOLID WOOD", 0))
	}
	for _, t := range thermal.Pads(drawn.Trial.Assembly) {
		out = append(out, j.sandwich(drawn, fmt.Sprintf("pad_%.0f", t), "BLOCKS WITH A PAD OF "+unit.Length(t).Text(drawn.sys), t))
	}
	if w := drawn.way("stainless"); w != nil {
		d := drawn.other("stainless", w.Name)
		d.Parts = drawn.Parts
		d.gap, d.throat, d.air = drawn.path()
		d.Why = "the strength of stainless fasteners depends on their grade: state it with fasteners.*.grade and fasteners.*.yield"
		d.costs = "stainless fasteners cost more than galvanized ones, and their strength is not checked here"
		d.noCost = "the rate is for the fasteners drawn, not for stainless ones"
		out = append(out, d)
	}
	d := drawn.other("freestanding", "FREESTANDING ON POSTS AT THE WALL")
	d.Why = "its posts, footings and bracing are a design of their own"
	d.costs = "nothing passes the wall, but the deck needs posts, footings and bracing at the house too, which are not checked here"
	d.noCost = "posts, footings and bracing are not counted here"
	d.air = "OPEN"
	return append(out, d)
}

// other returns a way that is not built, with the heat the drawn design's result has for it.
func (d *Design) other(key, name string) *Design {
	o := &Design{Key: key, Name: name, File: d.File, site: d.site, sys: d.sys, Rates: d.Rates, NoHeat: d.NoHeat, gap: -1, throat: -1}
	o.Heat, o.Way = d.Heat, d.way(key)
	if o.Way == nil && o.NoHeat == "" {
		o.NoHeat = "the heat of this way was not solved"
	}
	return o
}

func (d *Design) way(key string) *thermal.Way {
	if d.Heat == nil {
		return nil
	}
	return d.Heat.Way(key)
}

// tight is the ledger on the sheathing, insulation stopped at it.
func (j Job) tight(drawn *Design) *Design {
	d := drawn.other("tight", "LEDGER TIGHT TO THE SHEATHING")
	d.gap, d.throat, d.air = 0, 0, "NONE: wood on the barrier"
	d.costs = "cuts the insulation open along the whole ledger, and water between ledger and wall cannot dry"
	d.Why = "a ledger on the sheathing is for the prescriptive table, not for this program"
	d.plain()
	return d
}

// spacers is the ledger on thin spacers inside the insulation.
func (j Job) spacers(drawn *Design) *Design {
	d := drawn.other("spacers", "LEDGER ON THIN SPACERS IN THE INSULATION")
	d.gap, d.throat, d.air = drawn.site.Pick(12.7, 12), 0, "CLOSED: a pocket in the insulation"
	d.costs = "the pocket behind the ledger is closed by the insulation: it cannot dry or be inspected"
	d.Why = "a ledger off the sheathing is outside the prescriptive table, and spacers without blocks are not checked here"
	d.plain()
	return d
}

// plain counts the parts of a ledger without blocks: its bolts by the prescriptive table, one beyond the last space.
func (d *Design) plain() {
	s := d.site
	d.Parts = Parts{Counted: true, Ledger: s.Ledger.Length, Bought: s.Ledger.Length, Cut: s.Ledger.Length, Pieces: len(s.Ledger.Splices) + 1}
	rows, why := plainRows(s)
	if why != "" {
		d.Parts.NoBolts, d.noCost = why, why
		return
	}
	n := int(math.Ceil(float64(s.Ledger.Length/rows[1].Spacing)-1e-9)) + 1
	d.Parts.Fasteners, d.Parts.Washers, d.Parts.Holes, d.Parts.Inside = n, 2*n, n, n
	if d.Key == "tight" {
		d.Why += fmt.Sprintf("; that asks for a %s at %s (IRC 2021 table R507.9.1.3(1), for comparison only)", rows[1].Connection, rows[1].Spacing.Text(d.sys))
	}
}

// plainRows are what the prescriptive table asks of this deck, or why it does not say.
func plainRows(s *spec.Spec) (rows []stock.PlainSpacing, why string) {
	l := s.Loads
	switch {
	case l.Live == nil || l.Snow == nil && s.Site.GroundSnow == nil:
		return nil, "the prescriptive table goes by live load and snow, which are not both stated"
	case s.Deck.Kind != "deck" || *l.Live > 40*unit.PSF+1e-9:
		return nil, "the prescriptive table is for decks at 40 psf (1.9 kPa) of live load"
	}
	load := *l.Live
	for _, p := range []*unit.Pressure{l.Snow, s.Site.GroundSnow} {
		if p != nil {
			load = max(load, *p)
		}
	}
	if rows = stock.PlainLedger(load, s.Deck.Span); len(rows) < 2 {
		return nil, "the prescriptive table ends before this load and span"
	}
	return rows, ""
}

// sandwich is the drawn design with a foam pad of t mm behind the outermost ply of its blocks, or none, and the same
// stand-off. Where the drawn result has the heat of it, that is taken.
func (j Job) sandwich(drawn *Design, key, name string, t float64) *Design {
	changes := padded(drawn.Trial.Spec, t)
	tr, err := j.Base.Try(changes...)
	if err != nil {
		d := drawn.other(key, name)
		d.Changes, d.Why = changes, "it cannot be built so: "+strings.ReplaceAll(err.Error(), "\n", "; ")
		d.noCost = "it cannot be built so"
		return d
	}
	d := drawn.other(key, name)
	d.Changes = changes
	d.take(tr)
	if d.Way == nil {
		design.Heat(tr.Assembly, nil, d.NoHeat, &d.Report)
		return d
	}
	design.Heat(tr.Assembly, as(d.Heat, key), "", &d.Report)
	return d
}

// as returns the result as if the way of that key were the drawn one.
func as(r *thermal.Result, key string) *thermal.Result {
	out := *r
	out.Ways = nil
	for _, w := range r.Ways {
		w.Drawn = w.Key == key
		if w.Drawn {
			out.Spots = w.Spots
		}
		out.Ways = append(out.Ways, w)
	}
	return &out
}

// padded are the changes that put a pad of t mm behind the outermost ply, in place of wood; with 0 they put wood in
// place of the pad.
func padded(s *spec.Spec, t float64) []string {
	type ply struct {
		mm  float64
		mat string
	}
	var all []ply
	pad := s.Blocks.Pad
	for i, p := range s.Blocks.Plies {
		if pad.Thickness > 0 && pad.After == i {
			all = append(all, ply{pad.Thickness.MM(), "lumber"})
		}
		all = append(all, ply{p.MM(), s.Blocks.Material[i]})
	}
	if pad.Thickness > 0 && pad.After >= len(s.Blocks.Plies) {
		all = append(all, ply{pad.Thickness.MM(), "lumber"})
	}
	if t <= 0 {
		t = 0
	}
	inner, last := all[:len(all)-1], all[len(all)-1]
	for rest := t; rest > 1e-9 && len(inner) > 0; {
		end := &inner[len(inner)-1]
		if end.mm-rest >= thinnest {
			end.mm, rest = end.mm-rest, 0
			continue
		}
		rest -= end.mm
		inner = inner[:len(inner)-1]
		if rest < 0 && len(inner) > 0 { // a sliver goes to the ply behind it
			inner[len(inner)-1].mm -= rest
			rest = 0
		}
	}
	var plies []string
	for _, p := range append(inner, last) {
		plies = append(plies, fmt.Sprintf("{thickness: %s, material: %s}", typed(s, p.mm), p.mat))
	}
	out := []string{"blocks.plies=[" + strings.Join(plies, ", ") + "]", "blocks.pad.thickness=" + typed(s, t)}
	if t > 0 {
		out = append(out, fmt.Sprintf("blocks.pad.after=%d", len(inner)))
	}
	return out
}

// typed writes a length as a project file has it.
func typed(s *spec.Spec, mm float64) string {
	if s.Project.System == unit.SI {
		return fmt.Sprintf("%.6gmm", mm)
	}
	return fmt.Sprintf("%.6gin", unit.Length(mm).Inches())
}

// thinnest is the least ply a project file may have, mm.
const thinnest = 0.2 * 25.4
