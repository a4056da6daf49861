// Package sheet composes the drawing set: views of the assembly with dimensions measured from its
// parts, notes filled from the report, schedules counted from it, on titled sheets.
//
//	sheets, err := sheet.Compose(assembly, report, results, sheet.Options{Version: "0.1.0"})
package sheet

import (
	"math"
	"slices"
	"sort"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/air"
	"standclear/detail/check/strength"
	"standclear/detail/check/thermal"
	"standclear/detail/sheet/judge"
	"standclear/detail/stock"
	"standclear/detail/unit"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// Options of a set; the zero value works.
type Options struct {
	Version string          // of the program, printed in the title strip
	Heat    *thermal.Result // what heat does at the attachment; nil leaves out what shows it
	Short   bool            // the five sheets that nobody can do without
	Sheet   string          // ID of the only sheet to draw, as it is in the set; "" is all
}

// shortSet are the sheets of the short set.
var shortSet = []string{"G-001", "A-201", "A-301", "A-401", "S-501"}

// Names lists the IDs of the sheets that Compose draws of a set, in order.
func Names(o Options) []string {
	var out []string
	for _, p := range (&writer{heat: o.Heat, short: o.Short}).index() {
		out = append(out, p.id)
	}
	return out
}

// Entry names one page of a set.
type Entry struct{ ID, Title string }

// writer composes one set.
type writer struct {
	a        *detail.Assembly
	report   *check.Report
	results  strength.Results
	version  string
	hash     string // of the parameters, for sheets of the set
	tight    int    // 0 wide notes and views, to 3 narrow
	free     bool   // of the scales asked for: no sheet holds them
	sparse   bool   // leaves out what other sheets say too: nothing else keeps the rules
	short    bool
	leaf     bool                // composes shop pages
	keyed    bool                // with keynotes where a view could have words
	page     int                 // of a sheet that takes several pages, from 0
	counting bool                // asks only whether a page fits
	paging   map[string]paging   // of the sheets that go on over pages, once they have counted them
	seen     *kept[view.Picture] // of the whole set: its sheets are drawn at the same time
	made     kept[*composer]
	air      *air.Path // nil until it is asked for

	heat     *thermal.Result
	heatSeen map[int][2]*heatCut                  // by tight
	steps    *sequence                            // of membranes and flashings, once asked for
	exploded *exploded                            // drawn once for every size
	bored    map[*detail.Part][]detail.LedgerHole // of the pieces of the ledger
}

func newWriter(a *detail.Assembly, r *check.Report, res strength.Results, o Options) *writer {
	return &writer{a: a, report: r, results: res, version: o.Version, heat: o.Heat, short: o.Short, seen: &kept[view.Picture]{}}
}

// twin returns a writer of the same set that can draw at the same time.
func (w *writer) twin() *writer {
	return &writer{a: w.a, report: w.report, results: w.results, version: w.version, hash: w.hash, heat: w.heat, short: w.short, seen: w.seen, paging: w.paging}
}

// once returns the picture of that name, cut or projected the first time it is asked for: it is the same on
// every size of sheet. What depends on more has more in its name.
func (w *writer) once(name string, draw func() view.Picture) view.Picture {
	return w.seen.of(name, draw)
}

// composed returns a copy of the view of that name, composed the first time it is asked for: what is added to the
// copy is not there the next time.
func (w *writer) composed(name string, compose func() *composer) *composer {
	c := *w.made.of(either(w.sparse, name+", sparse", name), compose)
	c.items, c.legend = slices.Clone(c.items), slices.Clone(c.legend)
	return &c
}

// planned is one sheet: how it is named, what draws it, and the sizes it may take, smallest first.
// Draw reports the main scale and whether everything fits the size.
type planned struct {
	id, title, desc string
	draw            func(w *writer, s *render.Sheet, l layoutOf) (scale string, fits bool)
	sizes           func(w *writer) []string
	heat            bool // shows what heat does, and is left out where that is not known
}

// paged are the sheets that take pages: how many, what a size leaves on each where their frame is their own, and
// what the pages after the first are called where the first keeps the name of the sheet.
var paged = map[string]struct {
	count  func(w *writer) int
	layout func(w *writer, size string) layoutOf
	then   string
}{
	"G-001": {(*writer).dataPages, nil, "DESIGN CHECKS, CONTINUED"},
	"G-003": {(*writer).surveyPages, nil, "SURVEY, CONTINUED"},
	"S-501": {(*writer).blockPages, nil, "BLOCK ASSEMBLY: PIECES, STEPS"},
	"S-502": {(*writer).templatePages, (*writer).templateLayout, ""},
	"S-503": {(*writer).ledgerPages, nil, "LEDGER: AT A BLOCK, JOISTS"},
	"S-701": {(*writer).materialPages, nil, "CUTTING PLAN, TOOLS, OTHER PARTS"},
	"S-702": {(*writer).checkPages, (*writer).checkLayout, ""},
}

// index lists the sheets of the set in order.
func (w *writer) index() []planned {
	all := []planned{
		{"G-001", "DATA AND DESIGN CHECKS", "Project data, wall build-up, loads, every design check with demand, capacity and verdict.", (*writer).dataSheet, (*writer).setSizes, false},
		{"G-002", "COMPARISON OF WAYS TO HANG THE DECK", "Table and bars of the heat that each way to hang the deck costs, and of the lowest inside temperature.", (*writer).compareSheet, (*writer).shopSizes, true},
		{"G-003", "SURVEY", "What must be measured on site before the project file can be trusted, the value in the file beside an empty box.", (*writer).surveySheet, (*writer).setSizes, false},
		{"A-101", "PLAN AT LEDGER", "Plan cut at the upper bolt row: blocks, gap, ledger, joists, and the backing and ties behind the rim.", (*writer).planSheet, (*writer).setSizes, false},
		{"A-201", "EXTERIOR ELEVATION AND BLOCK LAYOUT", "Elevation from outside with the ledger transparent: blocks, bolts, levels, running dimensions.", (*writer).elevationSheet, (*writer).setSizes, false},
		{"A-301", "SECTIONS AT BLOCK AND BETWEEN BLOCKS", "Two vertical sections at one floor line: through the bolts of a block, and between blocks.", (*writer).sectionSheet, (*writer).setSizes, false},
		{"A-303", "DETAILS AT DOOR, ENDS AND SPLICE", "Section at a door sill, an end of the ledger from outside and from its side, splices, guard posts, with their checks.", (*writer).endSheet, (*writer).setSizes, false},
		{"A-311", "HEAT FLOW: TEMPERATURES AT BLOCK AND BETWEEN BLOCKS", "The two sections with bands of equal temperature, isotherms, the dew-point line of the room air, and a table of named places.", (*writer).heatSheet, (*writer).setSizes, true},
		{"A-401", "FLASHING AND MEMBRANE SEQUENCE", "Eight steps at one block: what goes on when, the laps measured, lap check and pieces.", (*writer).sequenceSheet, (*writer).setSizes, false},
		{"A-402", "FLASHING PROFILES AND FLAT PATTERNS", "Every bent piece of metal and membrane: profile, flat pattern with bends and cuts, lengths, laps.", (*writer).flashingSheet, (*writer).shopOrSet, false},
		{"A-601", "EXPLODED AXONOMETRIC", "The parts at one block drawn apart along the wall's normal in building order, and assembled.", (*writer).explodedSheet, (*writer).setSizes, false},
		{"S-501", "BLOCK ASSEMBLY", "Shop drawing of one block: front, side and top, hole table, quantities.", (*writer).blockSheet, (*writer).shopSizes, false},
		{"S-502", "DRILL TEMPLATE, FULL SIZE", "Outside face of the block at full size to drill through, in pages of letter or A4 size.", (*writer).templateSheet, (*writer).pageSizes, false},
		{"S-503", "LEDGER", "Shop drawing of every piece of the ledger: holes from the datum end, joists and hangers, ends, bevel.", (*writer).ledgerSheet, (*writer).shopSizes, false},
		{"S-504", "TENSION AND LATERAL LOAD PATH", "How a pull away from the house goes from a deck joist through a rod into a house joist: section, plan, positions, checks.", (*writer).tensionSheet, (*writer).tensionSizes, false},
		{"S-701", "MATERIAL, CUT AND FASTENER SCHEDULE", "Parts by mark, lumber with its cutting plan, fasteners with spares, sheet goods, flashing, connectors by load, tools.", (*writer).materialSheet, (*writer).shopSizes, false},
		{"S-702", "INSPECTION AND ASSEMBLY CHECK SHEET", "Steps with hold points, counts, drawn values and limits beside empty boxes, photographs, moisture, retightening.", (*writer).checkSheet, (*writer).pageSizes, false},
	}
	return slices.DeleteFunc(all, func(p planned) bool {
		return p.heat && w.heat == nil || w.short && !slices.Contains(shortSet, p.id)
	})
}

// draw draws sheet n of so many. Where no size and no width of notes keeps every hard rule, the sheet that breaks
// the fewest is taken.
func (w *writer) draw(p page, n, of int) *render.Sheet {
	var last, best *render.Sheet
	least := math.MaxInt
	asked := w.a.Spec.Sheets.Section+w.a.Spec.Sheets.Elevation+w.a.Spec.Sheets.Plan+w.a.Spec.Sheets.Shop != 0
	for pass := range 3 {
		if w.free, w.sparse = pass > 0, pass > 1; pass == 1 && !asked {
			continue
		}
		for _, size := range p.sizes(w) {
			l := sheetOf(size)
			if paged[p.of].layout != nil {
				l = paged[p.of].layout(w, size)
			}
			for w.tight = range 4 {
				s := &render.Sheet{ID: p.id, Title: p.title, Desc: p.desc, Size: l.size, Unit: w.unit(), Number: number(w.a.Spec.Project.System)}
				scale, fits := p.draw(w, s, l)
				w.border(s, l, n, of, scale)
				last = s
				if !fits {
					continue
				}
				found, err := judge.Layout(s)
				if err != nil || len(found) == 0 {
					return s // an error comes up again when the sheet is written
				}
				if len(found) < least {
					best, least = s, len(found)
				}
			}
		}
	}
	if best == nil {
		return last
	}
	return best
}

func (w *writer) unit() render.Unit {
	if w.a.Spec.Project.System == unit.SI {
		return render.Millimetre
	}
	return render.Inch
}

// setSizes are the size asked for and the larger ones of its family.
func (w *writer) setSizes() []string { return sizesFrom(w.a.Spec.Sheets.Size) }

// pageSizes are the one size that an office printer takes.
func (w *writer) pageSizes() []string {
	if w.unit() == render.Millimetre {
		return []string{"A4"}
	}
	return []string{"ANSI A"}
}

// shopSizes are what a site office prints and then the sizes of the set: no third one between them.
func (w *writer) shopSizes() []string {
	first, _ := stock.SheetSizeOf(either(w.unit() == render.Millimetre, "A3", "ANSI B"))
	return append([]string{first.Name}, slices.DeleteFunc(w.setSizes(), func(name string) bool {
		s, _ := stock.SheetSizeOf(name)
		return s.Width <= first.Width || s.Height <= first.Height
	})...)
}

// shopOrSet are the size of a site office and those of the set, so that a set comes in no third size.
func (w *writer) shopOrSet() []string { return append(w.shopSizes()[:1], w.setSizes()...) }

func sizesFrom(name string) []string {
	first, ok := stock.SheetSizeOf(name)
	if !ok {
		first, _ = stock.SheetSizeOf("ARCH D")
	}
	family, _, _ := strings.Cut(first.Name, " ")
	if first.Name[0] == 'A' && len(first.Name) == 2 {
		family = "A"
	}
	out := []string{first.Name}
	for _, s := range stock.SheetSizes() {
		same := strings.HasPrefix(s.Name, family+" ") || family == "A" && len(s.Name) == 2
		if same && s.Width > first.Width {
			out = append(out, s.Name)
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		a, _ := stock.SheetSizeOf(out[i])
		b, _ := stock.SheetSizeOf(out[j])
		return a.Width < b.Width
	})
	return out
}

// text prints a length in the project's system.
func (w *writer) text(mm float64) string { return number(w.a.Spec.Project.System)(mm) }

// scale turns a denominator into a render.Scale.
func (w *writer) scale(k float64) render.Scale {
	return render.Scale{K: k, Text: unit.ScaleText(k, w.a.Spec.Project.System)}
}

// choose returns the view built by try at the scale asked for, or, when none was asked, at the
// largest usual scale from largest to least at which it fits the room; fits says whether it does.
func (w *writer) choose(asked, largest, least float64, room geom.Vec, try func(k float64) *composer) (c *composer, fits bool) {
	within := func(c *composer) bool { // but for rounding: panels are made as wide as their room
		return c.extent.W() <= room.X*c.k+geom.Tol && c.extent.H() <= room.Y*c.k+geom.Tol
	}
	if asked != 0 && !w.free {
		c = try(asked)
		return c, within(c)
	}
	for _, d := range unit.Scales(w.a.Spec.Project.System) {
		if d < largest || c != nil && d > least {
			continue
		}
		if c != nil && d < least && (c.object.W() > room.X*d || c.object.H() > room.Y*d) {
			continue // the linework alone is too large
		}
		if c = try(d); within(c) {
			return c, true
		}
	}
	return c, false
}

// place adds a composed view to the sheet with the view's origin at a paper point.
func (w *writer) place(s *render.Sheet, c *composer, id, title, origin string, at geom.Vec) {
	v := render.View{ID: id, Title: title, Origin: origin, Scale: w.scale(c.k), At: at, Window: c.extent.Grow(c.mm(1)), Items: c.items}
	if n := len(s.Views); n > 0 {
		v.Place = nextPlace(s.Views[n-1], v, s)
	}
	s.Views = append(s.Views, v)
}

// nextPlace sets views apart in model space by whole steps of 10 ft or 3 m, far enough that none
// reaches into the sheet of another even where a program does not clip.
func nextPlace(prev, v render.View, s *render.Sheet) geom.Vec {
	grid := 3048.0
	if s.Unit == render.Millimetre {
		grid = 3000
	}
	apart := math.Max(prev.Window.W(), v.Window.W()) + s.Size.W*math.Max(prev.Scale.K, v.Scale.K)
	return geom.Vec{X: prev.Place.X + math.Ceil(apart/grid)*grid}
}

// room is where views of a sheet may go: the banner of a failing design takes its top.
func (w *writer) room(l layoutOf) geom.Box {
	b := l.field
	if w.verdict() != "" {
		b.Max.Y -= 14
	}
	return b
}

// paper returns the plotted box of a composed view about its origin.
func (c *composer) paper() geom.Box {
	return geom.Box{Min: c.extent.Min.Mul(1 / c.k), Max: c.extent.Max.Mul(1 / c.k)}
}
