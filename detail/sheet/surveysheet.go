package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"standclear/detail"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// surveyPages are as few as hold the tables on the size asked for.
func (w *writer) surveyPages() int { return w.fewest("G-003", w.setSizes()[0], w.surveySheet) }

// surveySheet asks for what must be measured on site before the project file can be trusted: by place, the
// value in the file beside an empty box, and a section and an elevation that show by number where.
func (w *writer) surveySheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	const gap, least = 6, 138
	side := math.Max(132, (room.W()-2*gap)*0.3)
	list := w.surveyList()
	half := (room.H() - gap) / 2
	one, fitsOne := w.choose(0, 8, 48, geom.Vec{X: side, Y: room.H() - half*0.7}, func(k float64) *composer {
		return w.composed(fmt.Sprint("survey section", k, w.tight), func() *composer { return w.surveySection(list, k) })
	})
	two, fitsTwo := w.choose(0, 12, 96, geom.Vec{X: side, Y: half * 0.7}, func(k float64) *composer {
		return w.composed(fmt.Sprint("survey elevation", k, w.tight, w.paging["G-003"].pages), func() *composer { return w.surveyElevation(list, k) })
	})
	a, b := one.paper(), two.paper()
	x := room.Max.X - side
	spare := math.Max(0, room.H()-a.H()-b.H()-16)
	both := w.paging["G-003"].pages < 2 // else the elevation stands on the second page
	if w.page == 0 {
		w.place(s, one, "1", "SECTION", origin, pt(x+(side-a.W())/2-a.Min.X, room.Max.Y-spare/3-a.Max.Y))
	}
	if w.page == 1 || both {
		w.place(s, two, either(both, "2", "1"), "ELEVATION", elevationOrigin, pt(x+(side-b.W())/2-b.Min.X, either(both, room.Min.Y+spare/3-b.Min.Y, room.Max.Y-spare/3-b.Max.Y)))
	}
	fits := fitsOne && fitsTwo && a.H()+b.H()+16 <= room.H()
	n := max(1, int((x-room.Min.X)/(least+gap)))
	width := (x-room.Min.X)/float64(n) - gap
	pages := make([]*render.Sheet, max(1, w.paging["G-003"].pages))
	var of []columnAt
	for i := range pages {
		pages[i] = &render.Sheet{}
		for at := room.Min.X; at+width <= either(i < 2, x-gap, room.Max.X)+0.1; at += width + gap {
			of = append(of, columnAt{pt(at, room.Max.Y), pages[i], room.Min.Y + either(i < 2, 0, underView)})
		}
	}
	fits = w.fillSurvey(pages, of, width, list) && fits
	s.Items = append(s.Items, pages[min(w.page, len(pages)-1)].Items...)
	if w.page > 1 {
		w.asView(s, "SURVEY")
		return "NTS", fits
	}
	return w.scale(either(w.page == 0, one.k, two.k)).Text, fits
}

// fillSurvey sets the tables in columns, their rows as tall to write in as the room allows.
func (w *writer) fillSurvey(pages []*render.Sheet, of []columnAt, width float64, list [][]surveyed) bool {
	for row := either(w.counting, w.surveyRow(), 11); ; row = math.Max(row-0.5, w.surveyRow()) {
		fits := level(of, pages, len(pages) > 1 && !w.counting, func(of []columnAt) bool {
			f := columnsFrom(of)
			for _, t := range w.surveyTables(list, width, row) {
				if h := t.height(); h > f.y-f.foot && h <= f.top-f.foot {
					f.next() // whole rather than parted
				}
				f.add(t)
			}
			return f.ok()
		})
		if fits || row <= w.surveyRow() {
			return fits
		}
		for _, p := range pages {
			p.Items = nil
		}
	}
}

const elevationOrigin = "left end of ledger x finished floor"

// surveyTables are a table for every place, then what else is to be found out, and who measured.
func (w *writer) surveyTables(list [][]surveyed, width, row float64) []*table {
	var out []*table
	for i, p := range places() {
		t := &table{title: fmt.Sprintf("%d  %s", i+1, p.title), head: []string{"NO.", "MEASURE OR FIND OUT", "IN THE FILE", "ON SITE"}, width: shares(width, 10, 64, 31, 33), least: row, text: w.surveyText()}
		for _, l := range list[i] {
			t.rows = append(t.rows, []string{l.no, l.what, l.value, ""})
		}
		out = append(out, t)
	}
	look := &table{title: "LOOK FOR, AND PHOTOGRAPH", head: []string{"WHAT STOPS THE WORK", "FOUND"}, width: shares(width, 105, 33), least: row, text: w.surveyText()}
	for _, t := range []string{
		"DECAY, WET STAINS OR INSECTS IN RIM, PLATE, SHEATHING, JOIST ENDS: PROBE; MOISTURE ABOVE 19 % IN WOOD",
		"RIM THAT IS A CLOSURE STRIP, A THIN PANEL, THE END OF A TRUSS, OR STANDS BEHIND MASONRY VENEER",
		"JOISTS NOTCHED, BORED OR REPAIRED WHERE BACKING AND TIES GO",
		"PIPES, CABLES, DUCTS, METERS, VENTS NOT LISTED ABOVE, INSIDE AND OUTSIDE, TO 2 FT (600 mm) BEYOND THE LEDGER",
		"ROOF OR WALL THAT SHEDS SNOW OR WATER ONTO THE DECK; GROUND THAT FALLS TOWARDS THE HOUSE",
	} {
		look.rows = append(look.rows, []string{t, ""})
	}
	who := &table{title: "MEASURED BY", head: []string{"NAME", "DATE", "WEATHER", "TAPE AND LEVEL CHECKED"}, width: shares(width, 44, 26, 30, 38), least: 9, rows: [][]string{{"", "", "", ""}}, text: w.surveyText()}
	return append(tables(out...), look, who, w.surveyNotes(width))
}

// surveyRow is the least height of a row to write in, plotted.
func (w *writer) surveyRow() float64 { return []float64{7.2, 6.8, 6.4, 6.2}[w.paging["G-003"].tight] }

func (w *writer) surveyText() float64 { return []float64{2.5, 2.4, 2.2, 2.2}[w.paging["G-003"].tight] }

func (w *writer) surveyNotes(width float64) *table {
	t := &table{title: "HOW TO MEASURE", width: []float64{width}, text: w.surveyText()}
	for _, n := range []string{
		"X RUNS RIGHT FROM THE LEFT END OF THE LEDGER SEEN FROM OUTSIDE; HEIGHTS FROM THE FINISHED FLOOR, DOWN IS MINUS. MARK BOTH ZEROS ON THE WALL AND CARRY THEM INSIDE THROUGH A DRILLED HOLE.",
		"MEASURE WOOD AS IT IS, NOT AS IT IS CALLED; A LAYER AT TWO OPENINGS; AN AXIS FROM BOTH FACES. TO " + either(w.unit() == render.Inch, `1/16"`, "1 mm") + ".",
		"(DEFAULT): THE FILE DOES NOT GIVE IT AND THE PROGRAM CHOSE. WHERE A BOX DIFFERS FROM THE FILE, CHANGE THE FILE AND DRAW THE SET ANEW; CUT NOTHING FROM THIS ONE.",
	} {
		t.rows = append(t.rows, []string{n})
	}
	return t
}

// numberOf returns the number of a key on the survey sheet.
func numberOf(list [][]surveyed, key string) (string, bool) {
	for _, lines := range list {
		for _, l := range lines {
			if l.key == key {
				return l.no, true
			}
		}
	}
	return "", false
}

// surveySection shows by number what is measured across the wall.
func (w *writer) surveySection(list [][]surveyed, k float64) *composer {
	f := w.a.Frame
	o := w.sectionOptions()
	o.Window = geom.Box{Min: geom.Vec{X: math.Min(f.FinishIn, f.BackingIn) - 240, Y: math.Min(f.RimBottom, f.LedgerBottom) - 420}, Max: geom.Vec{X: f.LedgerFront + 160, Y: 420}}
	for _, r := range []detail.Role{detail.Wrap, detail.Patch, detail.Bolt, detail.Nut, detail.Washer, detail.Hanger, detail.Flashing, detail.Screen, detail.TieStrap} {
		o.Leave[r] = true
	}
	p := w.once("survey section", func() view.Picture { return view.Cut(w.a, view.AcrossWall(w.cutBetween()), o) })
	c := w.composer(k)
	c.add(p.Draw(k, w.a.Spec.Project.System), p.Window)
	c.breaks(p)
	at := func(key string, role detail.Role, fx, fy float64, match func(view.Piece) bool) {
		no, ok := numberOf(list, key)
		if v, _, found := spot(p, role, fx, fy, match); ok && found && p.Window.Holds(v) {
			c.call(either(v.X < f.SheathIn+1, left, right), v, render.Dot, no)
		}
	}
	at("floor.finish", detail.FloorBoard, 0.2, 0.5, nil)
	at("floor.subfloor", detail.Subfloor, 0.35, 0.5, nil)
	at("floor.rim.thickness", detail.Rim, 0.5, 0.35, nil)
	at("floor.joists.depth", detail.HouseJoist, 0.3, 0.6, nil)
	at("floor.backing.thickness", detail.Backing, 0.5, 0.7, nil)
	at("floor.plate", detail.Plate, 0.4, 0.5, func(q view.Piece) bool { return q.Region.Bounds().Max.Y < f.RimBottom+1 })
	at("foundation.thickness", detail.Footing, 0.5, 0.5, nil)
	at("foundation.insulation.thickness", detail.GroundIns, 0.5, 0.4, nil)
	at("ledger.thickness", detail.Ledger, 0.5, 0.3, nil)
	up := 0.9
	for i, l := range w.a.Spec.Wall.Layers {
		up -= 0.06
		for _, r := range []detail.Role{detail.Finish, detail.Stud, detail.Cavity, detail.Sheathing, detail.OuterInsul, detail.Furring, detail.Cladding} {
			at(fmt.Sprintf("wall.layers.%d.thickness", i), r, 0.5, up, func(q view.Piece) bool {
				return q.Part.Mark == detail.LayerMark(i) && q.Region.Bounds().Max.Y > 0 && l.Role != "wrb"
			})
		}
	}
	w.surveyLevels(c, list, p)
	c.finish()
	c.title("1", "SECTION, BY NUMBER", w.scale(k).Text)
	return c
}

// surveyLevels marks the finished floor and the deck below it.
func (w *writer) surveyLevels(c *composer, list [][]surveyed, p view.Picture) {
	c.level(right, geom.Vec{X: p.Window.Max.X, Y: 0}, "FIN. FLOOR, Z 0")
	if no, ok := numberOf(list, "deck.below_floor"); ok {
		c.level(right, geom.Vec{X: p.Window.Max.X, Y: w.a.Frame.DeckTop}, no)
	}
	if no, ok := numberOf(list, "floor.rim.depth"); ok {
		c.call(left, geom.Vec{X: (w.a.Frame.RimIn + w.a.Frame.RimOut) / 2, Y: w.a.Frame.RimBottom}, render.Arrow, no)
	}
}

// bubble is a number and the point it belongs to.
type bubble struct {
	no string
	at geom.Vec
}

// surveyElevation shows by number what is measured along the wall.
func (w *writer) surveyElevation(list [][]surveyed, k float64) *composer {
	o := w.elevationOptions()
	show := map[detail.Role]bool{detail.Cladding: true, detail.Threshold: true, detail.Earth: true, detail.Base: true, detail.Footing: true, detail.Ledger: true, detail.Rim: true, detail.HouseJoist: true, detail.Obstacle: true, detail.Outside: true}
	o.Only = func(p *detail.Part) bool { return show[p.Role] }
	p := w.once("survey elevation", func() view.Picture { return view.Look(w.a, view.FromOutside(0), o) })
	c := w.composer(k)
	c.add(p.Draw(k, w.a.Spec.Project.System), p.Window)
	w.elevationBreaks(c, p)
	above, below := w.surveyPoints(list)
	c.bubbles(above, p.Window.Max.Y+c.mm(9), 1)
	c.bubbles(below, p.Window.Min.Y-c.mm(9), -1)
	c.finish()
	c.title(either(w.paging["G-003"].pages < 2, "2", "1"), "ELEVATION, BY NUMBER", w.scale(k).Text)
	return c
}

// surveyPoints are the points along the wall: from above what stands at a place along x, from below the ground
// and the end of the ledger.
func (w *writer) surveyPoints(list [][]surveyed) (above, below []bubble) {
	s, f := w.a.Spec, w.a.Frame
	add := func(to *[]bubble, key string, x, z float64) {
		if no, ok := numberOf(list, key); ok {
			*to = append(*to, bubble{no, geom.Vec{X: x, Y: z}})
		}
	}
	if len(w.a.HouseJoists) > 0 {
		x := s.Floor.Joists.First.MM()
		add(&above, "floor.joists.first", x, (f.RimTop+f.RimBottom)/2)
		add(&above, "floor.joists.spacing", x+s.Floor.Joists.Spacing.MM()/2, (f.RimTop+f.RimBottom)/2)
	}
	for i, d := range s.Doors {
		add(&above, fmt.Sprintf("doors.%d.from", i), d.From.MM(), 250)
		add(&above, fmt.Sprintf("doors.%d.threshold", i), (d.From+d.To).MM()/2, d.Threshold.MM())
		add(&above, fmt.Sprintf("doors.%d.to", i), d.To.MM(), 250)
	}
	for i, b := range w.a.Find(detail.Obstacle, detail.Outside) {
		box := b.Bounds()
		add(&above, fmt.Sprintf("obstacles.%d.from", i), box.Min.X, box.Center().Z)
		add(&above, fmt.Sprintf("obstacles.%d.to", i), box.Max.X, box.Center().Z)
	}
	add(&below, "ledger.length", s.Ledger.Length.MM(), f.LedgerBottom)
	if s.Foundation.Kind != "wall" {
		if g := s.Foundation.GradeHigh; g != nil {
			add(&below, "foundation.grade_high", f.Left+300, g.MM())
		}
		if g := s.Foundation.Grade; g != nil {
			add(&below, "foundation.grade", f.Right-300, g.MM())
		}
	}
	return above, below
}

// bubbles sets numbers in a row at height y, each with a line to its point; dir is 1 for a row above them. Where
// straight lines would cross, each runs upright through the object and slants beyond it: ordered alike at both ends
// of the slant, they cannot.
func (c *composer) bubbles(of []bubble, y, dir float64) {
	slices.SortStableFunc(of, func(a, b bubble) int { return cmp.Compare(a.at.X, b.at.X) })
	slots := make([]slot, len(of))
	for i, b := range of {
		slots[i] = slot{want: b.at.X / c.k, before: 4.5, after: 4.5}
	}
	spread(slots)
	lines := make([][]geom.Vec, len(of))
	line := func(i int) { lines[i] = []geom.Vec{of[i].at, {X: slots[i].at * c.k, Y: y - dir*c.mm(4)}} }
	for i := range of {
		line(i)
		if a, b := max(0, i-1), i; math.Abs(of[a].at.X-of[b].at.X) < c.mm(1) && anyCross([][]geom.Vec{lines[a], lines[b]}) {
			of[a], of[b] = of[b], of[a] // one over the other
			line(a)
			line(b)
		}
	}
	if anyCross(lines) {
		for i, l := range lines {
			lines[i] = []geom.Vec{l[0], {X: l[0].X, Y: y - dir*c.mm(8)}, l[1]}
		}
	}
	for i, b := range of {
		at := geom.Vec{X: slots[i].at * c.k, Y: y}
		c.put(render.Leader{Pen: render.Note, Points: lines[i], End: render.Dot},
			render.Insert{Pen: render.Mark, Symbol: partMark, At: at, Scale: c.k, Fields: []render.Field{{Name: "MARK", Value: b.no}}})
		c.grow(at.Add(geom.Vec{X: -c.mm(4), Y: c.mm(4)}), at.Sub(geom.Vec{X: -c.mm(4), Y: c.mm(4)}))
	}
}

// anyCross reports whether two of straight lines cross.
func anyCross(lines [][]geom.Vec) bool {
	for i, a := range lines {
		for _, b := range lines[:i] {
			if cross(a[0], a[1], b[0], b[1]) {
				return true
			}
		}
	}
	return false
}
