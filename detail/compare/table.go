package compare

import (
	"fmt"
	"math"
	"strings"

	"standclear/detail/check"
	"standclear/detail/check/air"
	"standclear/detail/check/thermal"
	"standclear/detail/unit"
)

// Table is the comparison as data: a row for each thing compared, a cell in it for each design.
type Table struct {
	Designs []*Design
	Rows    []Row
	System  unit.System
}

// Row is one thing compared.
type Row struct {
	Key, Group, Name string
	Unit             string // of its figures, "" for words
	Cells            []Cell
}

// Cell is what one design has in a row.
type Cell struct {
	Text  string         // as printed
	Q     *unit.Quantity // nil for words
	Err   *float64       // the error of Q, in its base unit; nil when there is none
	Open  string         // why it is NOT CHECKED
	Quiet bool           // the reason stands in another cell of the design
}

// notChecked is the text of a cell that is open.
const notChecked = "NOT CHECKED"

func open(why string) Cell { return Cell{Text: notChecked, Open: why} }

func words(s string) Cell { return Cell{Text: s} }

// rowKind is how one row is filled.
type rowKind struct {
	key, group, name string
	cell             func(d *Design) Cell
}

// TableOf compares designs; the first is the one the others are measured against.
func TableOf(all []*Design) *Table {
	t := &Table{Designs: all}
	if len(all) == 0 {
		return t
	}
	t.System = all[0].sys
	for _, k := range rowKinds(all) {
		r := Row{Key: k.key, Group: k.group, Name: k.name}
		for _, d := range all {
			c := k.cell(d)
			if r.Unit == "" && c.Q != nil {
				_, r.Unit = c.Q.In(t.System)
			}
			r.Cells = append(r.Cells, c)
		}
		if k.group == groupCost && strings.HasPrefix(k.key, "cost_") && k.key != "cost_ratio" && all[0].Rates != nil {
			r.Unit = all[0].Rates.Currency
		}
		t.Rows = append(t.Rows, r)
	}
	return t
}

const (
	groupStructure = "structure"
	groupHeat      = "heat"
	groupDrying    = "drying"
	groupParts     = "parts"
	groupCuts      = "cuts"
	groupCost      = "cost"
	groupAccess    = "access"
)

func rowKinds(all []*Design) []rowKind {
	least := math.Inf(1)
	for _, d := range all {
		if c := d.cost(); c.Sum != nil {
			least = math.Min(least, *c.Sum)
		}
	}
	return []rowKind{
		{"governs", groupStructure, "check that governs", (*Design).governs},
		{"used", groupStructure, "ratio of the check that governs", (*Design).used},
		{"fails", groupStructure, "checks that fail", counts(check.Fails)},
		{"engineer", groupStructure, "checks for the engineer", counts(check.Engineer)},
		{"not_checked", groupStructure, "checks not checked", counts(check.NotChecked)},
		{"ok", groupStructure, "checks that hold", counts(check.OK)},
		{"block_heat", groupHeat, "heat at one block", (*Design).blockHeat},
		{"run_heat", groupHeat, "heat of the whole run", heatOf(func(d *Design) (thermal.Value, unit.Quantity) { return d.Way.Run, unit.Conductance(d.Way.Run.V).Q() })},
		{"season_heat", groupHeat, "heat of a season", (*Design).season},
		{"heat_saved", groupHeat, "saved against a tight ledger", (*Design).saved},
		{"lowest_f", groupHeat, "lowest factor f inside", heatOf(func(d *Design) (thermal.Value, unit.Quantity) { return d.Way.Low, unit.Ratio(d.Way.Low.V) })},
		{"gap", groupDrying, "open gap behind the ledger", lengths(func(d *Design) float64 { g, _, _ := d.path(); return g })},
		{"throat", groupDrying, "least throat of the air", lengths(func(d *Design) float64 { _, t, _ := d.path(); return t })},
		{"air_path", groupDrying, "air path", func(d *Design) Cell { _, _, p := d.path(); return words(p) }},
		{"water", groupDrying, "water and air, worst verdict", worst(check.Water)},
		{"moisture", groupDrying, "damp and mould, worst verdict", worst(check.Moisture)},
		{"blocks", groupParts, "blocks", counted(func(p Parts) int { return p.Blocks })},
		{"spacing", groupParts, "greatest spacing", sizes(func(p Parts) unit.Length { return p.Spacing })},
		{"standoff", groupParts, "stand-off, sheathing to ledger", sizes(func(p Parts) unit.Length { return p.Standoff })},
		{"fasteners", groupParts, "fasteners", bolts(func(p Parts) int { return p.Fasteners })},
		{"washers", groupParts, "washers", bolts(func(p Parts) int { return p.Washers })},
		{"screws", groupParts, "screws of the blocks", counted(func(p Parts) int { return p.Screws })},
		{"lumber_bought", groupParts, "lumber bought", totals(func(p Parts) unit.Length { return p.Bought })},
		{"lumber_cut", groupParts, "lumber in pieces", totals(func(p Parts) unit.Length { return p.Cut })},
		{"holes", groupCuts, "holes through the barrier", bolts(func(p Parts) int { return p.Holes })},
		{"pieces", groupCuts, "pieces to cut", counted(func(p Parts) int { return p.Pieces })},
		{"cost_wood", groupCost, "lumber", money(func(c Cost) *float64 { return c.Wood })},
		{"cost_blocks", groupCost, "blocks beside their wood", money(func(c Cost) *float64 { return c.Blocks })},
		{"cost_fasteners", groupCost, "fasteners", money(func(c Cost) *float64 { return c.Fasteners })},
		{"cost_work", groupCost, "work", money(func(c Cost) *float64 { return c.Work })},
		{"cost_sum", groupCost, "sum", money(func(c Cost) *float64 { return c.Sum })},
		{"cost_ratio", groupCost, "times the least", func(d *Design) Cell {
			c := d.cost()
			if c.Sum == nil || least <= 0 {
				return d.noSum(c)
			}
			q := unit.Ratio(*c.Sum / least)
			return Cell{Text: fmt.Sprintf("%.2f", q.V), Q: &q}
		}},
		{"nuts_inside", groupAccess, "nuts to reach from inside", bolts(func(p Parts) int { return p.Inside })},
		{"bays_inside", groupAccess, "bays behind the rim to work in", counted(func(p Parts) int { return p.Bays })},
		{"access", groupAccess, "access as stated", func(d *Design) Cell {
			if !d.Parts.Counted {
				return words("-")
			}
			return words(d.site.Floor.Access)
		}},
	}
}

func (d *Design) governs() Cell {
	switch g := d.Report.Governs(); {
	case d.Trial == nil:
		return open(d.Why)
	case g == nil:
		return open("no check of strength could be done")
	default:
		return words(g.ID)
	}
}

func (d *Design) used() Cell {
	g := d.Report.Governs()
	if d.Trial == nil || g == nil {
		return d.governs().quiet()
	}
	q := unit.Ratio(g.Ratio)
	return Cell{Text: g.RatioText() + g.CapText(), Q: &q}
}

func (c Cell) quiet() Cell { c.Quiet = true; return c }

func counts(v check.Verdict) func(d *Design) Cell {
	return func(d *Design) Cell {
		if d.Trial == nil {
			return open(d.Why).quiet()
		}
		return number(d.Report.Count(v))
	}
}

func number(n int) Cell {
	q := unit.Number(n)
	return Cell{Text: fmt.Sprint(n), Q: &q}
}

func heatOf(pick func(d *Design) (thermal.Value, unit.Quantity)) func(d *Design) Cell {
	return func(d *Design) Cell {
		if d.Way == nil {
			return open(d.NoHeat).quiet()
		}
		v, q := pick(d)
		return d.figure(v, q)
	}
}

// figure is a value with its error, to three figures.
func (d *Design) figure(v thermal.Value, q unit.Quantity) Cell {
	x, _ := q.In(d.sys)
	k := 1.0
	if q.V != 0 {
		k = x / q.V
	}
	c := Cell{Q: &q}
	places := 3
	if x != 0 {
		places = min(max(2-int(math.Floor(math.Log10(math.Abs(x)))), 0), 4)
	}
	c.Text = fmt.Sprintf("%.*f", places, x+0)
	switch {
	case v.Err < 0:
		c.Text += " ±?"
	case v.Err > 0:
		e := v.Err
		c.Err = &e
		scale := math.Pow(10, float64(places))
		c.Text += fmt.Sprintf(" ±%.*f", places, math.Ceil(v.Err*k*scale-1e-9)/scale)
	}
	return c
}

func (d *Design) blockHeat() Cell {
	switch {
	case d.Way == nil:
		return open(d.NoHeat)
	case !d.Way.Blocks:
		return words("-")
	}
	return d.figure(d.Way.Bay, unit.Conductance(d.Way.Bay.V).Q())
}

func (d *Design) season() Cell {
	days := d.site.Site.DegreeDays
	switch {
	case d.Way == nil:
		return open(d.NoHeat).quiet()
	case days == nil:
		return open("site.degree_days is not stated")
	}
	v := d.Way.Season(float64(*days))
	return d.figure(v, unit.Energy(v.V).Q())
}

func (d *Design) saved() Cell {
	if d.Way == nil || d.Heat.Way("tight") == nil {
		return open(d.NoHeat).quiet()
	}
	q := unit.Percent(d.Heat.Saved(d.Way)).Q()
	return Cell{Text: fmt.Sprintf("%.0f %%", 100*q.V+0), Q: &q}
}

// path is the gap behind the ledger, its least throat, mm, and in words whether air passes.
func (d *Design) path() (gap, throat float64, words string) {
	if d.Trial == nil {
		return d.gap, d.throat, d.air
	}
	p := air.PathOf(d.Trial.Assembly)
	if p.Closed != "" {
		return p.Gap, p.Throat(), "CLOSED: " + p.Closed
	}
	return p.Gap, p.Throat(), "OPEN"
}

func lengths(pick func(d *Design) float64) func(d *Design) Cell {
	return func(d *Design) Cell {
		mm := pick(d)
		if mm < 0 && d.Trial == nil {
			return words("-")
		}
		return size(unit.Length(mm), d.sys)
	}
}

func size(l unit.Length, sys unit.System) Cell {
	q := l.Q()
	return Cell{Text: q.Text(sys), Q: &q}
}

// worst is the severest verdict of a group with how many checks have it.
func worst(g check.Group) func(d *Design) Cell {
	return func(d *Design) Cell {
		if d.Trial == nil {
			if g == check.Water && d.gap == 0 || d.Key == "spacers" && g == check.Water {
				return words("FAILS, cannot dry")
			}
			return open("no parts are built, and no temperatures inside the wall are known for it").quiet()
		}
		bad, n := check.Info, 0
		for _, s := range d.Report.Steps {
			switch {
			case s.Group != g || s.Verdict < bad:
			case s.Verdict > bad:
				bad, n = s.Verdict, 1
			default:
				n++
			}
		}
		if bad <= check.OK {
			return words("OK")
		}
		return words(fmt.Sprintf("%s, %d", bad, n))
	}
}

func counted(pick func(p Parts) int) func(d *Design) Cell {
	return func(d *Design) Cell {
		if !d.Parts.Counted {
			return words("-")
		}
		return number(pick(d.Parts))
	}
}

// bolts is counted for what hangs on the number of fasteners.
func bolts(pick func(p Parts) int) func(d *Design) Cell {
	return func(d *Design) Cell {
		if d.Parts.NoBolts != "" {
			return open(d.Parts.NoBolts)
		}
		return counted(pick)(d)
	}
}

func sizes(pick func(p Parts) unit.Length) func(d *Design) Cell {
	return func(d *Design) Cell {
		if l := pick(d.Parts); d.Parts.Counted && l > 0 {
			return size(l, d.sys)
		}
		return words("-")
	}
}

// totals are sizes to a sixteenth or a millimetre.
func totals(pick func(p Parts) unit.Length) func(d *Design) Cell {
	return func(d *Design) Cell {
		return sizes(func(p Parts) unit.Length { return pick(p).Round(unit.Length(d.site.Pick(unit.Inch.MM()/16, 1))) })(d)
	}
}

// cost is Cost, or nothing where the way cannot be counted.
func (d *Design) cost() Cost {
	if d.noCost != "" {
		return Cost{}
	}
	return d.Cost()
}

func money(pick func(c Cost) *float64) func(d *Design) Cell {
	return func(d *Design) Cell {
		c := d.cost()
		v := pick(c)
		if v == nil {
			return d.noSum(c)
		}
		q := unit.Ratio(*v)
		return Cell{Text: fmt.Sprintf("%.2f", *v), Q: &q}
	}
}

// noSum says why a cost is not known.
func (d *Design) noSum(c Cost) Cell {
	switch {
	case d.noCost != "" && d.Rates != nil:
		return open(d.noCost)
	case d.Rates == nil:
		return open("no rates given (rates: in the project file)")
	}
	return open("not given: " + strings.Join(c.Lacks, ", "))
}
