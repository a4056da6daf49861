package spec

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"standclear/detail/stock"
	"standclear/detail/unit"
)

// leastCourse is the lowest course of cladding that is drawn board by board: a judgement, no siding has lower ones.
const leastCourse = unit.Inch / 2

// crossCheck finds what no single key shows: values that contradict each other so that the thing
// cannot be drawn. Whether it would stand is for the checks.
func (r *reader) crossCheck() {
	r.checkFasteners()
	r.checkLayers()
	r.checkOrder()
	r.checkOnLedger()
	r.checkGrades()
	r.checkMonths()
	s := r.spec
	if n := len(s.Blocks.Plies); s.Blocks.Pad.After > n && r.good("blocks.pad.after", "blocks.plies") {
		r.fail(r.at("blocks.pad.after"), "blocks.pad.after", fmt.Sprintf("the pad stands after ply %d", s.Blocks.Pad.After), fmt.Sprintf("there are %d plies", n), "")
	}
	if e := s.Wall.Cladding.Exposure; e > 0 && e < leastCourse && r.good("wall.cladding.exposure") {
		r.fail(r.at("wall.cladding.exposure"), "wall.cladding.exposure", fmt.Sprintf("courses of %.3g mm (%.3g in)", e.MM(), e.Inches()), "0 for flat cladding, or at least "+leastCourse.Text(r.sys()), "look at the figure and its unit")
	}
	reach := s.Standoff() + s.Ledger.Thickness + s.Deck.Span
	if s.Deck.Projection < reach-0.5 && r.good("deck.projection", "deck.span", "ledger.thickness", "blocks.plies", "blocks.pad.thickness") {
		r.fail(r.at("deck.projection"), "deck.projection", "the deck ends before its beam",
			"stand-off, ledger and span come to "+reach.Text(r.sys()), "measure the projection from the sheathing, the span from the ledger")
	}
}

// good reports whether none of the keys, nor any key below or above them, is bad.
func (r *reader) good(keys ...string) bool {
	for _, k := range keys {
		if r.around[k] || r.bad[k] {
			return false
		}
		for i := strings.LastIndexByte(k, '.'); i > 0; i = strings.LastIndexByte(k[:i], '.') {
			if r.bad[k[:i]] {
				return false
			}
		}
	}
	return true
}

// at returns the place of a key, or of the nearest thing around it that was given.
func (r *reader) at(path string) place {
	for path != "" {
		if p, ok := r.placeOf(path); ok {
			return p
		}
		path = path[:max(strings.LastIndexByte(path, '.'), 0)]
	}
	return r.top
}

// checkFasteners asks for one set through everything, or for two.
func (r *reader) checkFasteners() {
	f := r.spec.Fasteners
	const allowed = "give through, or to_rim and to_block"
	switch {
	case r.bad["fasteners"]:
	case f.Through != nil && f.ToRim != nil:
		r.fail(r.at("fasteners.to_rim"), "fasteners", "through and to_rim are both given", allowed, "take one out")
	case f.Through != nil && f.ToBlock != nil:
		r.fail(r.at("fasteners.to_block"), "fasteners", "through and to_block are both given", allowed, "take one out")
	case f.Through == nil && f.ToRim == nil && f.ToBlock == nil:
		r.fail(r.at("fasteners"), "fasteners", "no fasteners are given", allowed, "")
	case f.Through == nil && f.ToRim == nil:
		r.fail(r.at("fasteners.to_block"), "fasteners", "to_block is given without to_rim", allowed, "")
	case f.Through == nil && f.ToBlock == nil:
		r.fail(r.at("fasteners.to_rim"), "fasteners", "to_rim is given without to_block", allowed, "")
	}
}

// checkLayers asks for one sheathing, whose outer face is y = 0, and at most one cladding.
func (r *reader) checkLayers() {
	count := map[string]int{}
	for i, l := range r.spec.Wall.Layers {
		path := "wall.layers." + strconv.Itoa(i) + ".role"
		if !r.good(path) {
			return
		}
		count[l.Role]++
		if at := "wall.layers." + strconv.Itoa(i) + ".thickness"; l.Role == "sheathing" && l.Thickness <= 0 && r.good(at) {
			r.fail(r.at(at), at, "the sheathing is 0 thick", "more than 0", "write the thickness of the panel")
		}
		if count[l.Role] > 1 && (l.Role == "sheathing" || l.Role == "cladding" || l.Role == "wrb") {
			r.fail(r.at(path), path, "a second layer is called "+l.Role, "one layer is", "call the other one other")
		}
	}
	if count["sheathing"] == 0 && len(count) > 0 {
		r.fail(r.at("wall.layers"), "wall.layers", "no layer is the sheathing", "its outer face is where everything is measured from", "give one layer role: sheathing")
	}
}

// checkOrder holds what must rise: rows, splices, positions, from and to, least and greatest.
func (r *reader) checkOrder() {
	s := r.spec
	for _, f := range []struct {
		name string
		set  *Set
	}{{"through", s.Fasteners.Through}, {"to_rim", s.Fasteners.ToRim}, {"to_block", s.Fasteners.ToBlock}} {
		if f.set != nil {
			r.rising("fasteners."+f.name+".rows", f.set.Rows)
		}
	}
	r.rising("ledger.splices", s.Ledger.Splices)
	r.rising("blocks.positions", s.Blocks.Positions)
	r.rising("deck.joists.positions", s.Deck.Joists.Positions)
	if half := s.Ledger.Length / 2; s.Deck.Joists.First > half && r.good("ledger.length") && r.good("deck.joists.first") {
		given := fmt.Sprintf("%s is past the middle of the ledger", s.Deck.Joists.First.Text(r.sys()))
		r.fail(r.at("deck.joists.first"), "deck.joists.first", given, "at most half its length, "+half.Text(r.sys()), "the last joist stands as far from the other end")
	}
	r.above("blocks.end_min", s.Blocks.EndMin, "blocks.end_max", s.Blocks.EndMax, true)
	for i, d := range s.Doors {
		at := "doors." + strconv.Itoa(i)
		r.above(at+".from", d.From, at+".to", d.To, false)
	}
	r.doorsApart()
	for i, o := range s.Obstacles {
		at := "obstacles." + strconv.Itoa(i)
		r.above(at+".from", o.From, at+".to", o.To, false)
	}
	if f := s.Foundation; f.Grade != nil && f.GradeHigh != nil {
		r.above("foundation.grade", *f.Grade, "foundation.grade_high", *f.GradeHigh, true)
	}
}

// doorsApart fails every door that begins within another.
func (r *reader) doorsApart() {
	doors := r.spec.Doors
	order := make([]int, 0, len(doors))
	for i := range doors {
		if at := "doors." + strconv.Itoa(i); r.good(at+".from", at+".to") {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(doors[i].From, doors[j].From) })
	for k := 1; k < len(order); k++ {
		i, j := order[k-1], order[k]
		if doors[j].From < doors[i].To {
			at := "doors." + strconv.Itoa(j) + ".from"
			given := fmt.Sprintf("%s lies within the door from %s to %s", doors[j].From.Text(r.sys()), doors[i].From.Text(r.sys()), doors[i].To.Text(r.sys()))
			r.fail(r.at(at), at, given, "doors stand beside each other", "look at the jambs of both")
			if doors[j].To < doors[i].To {
				order[k] = i // which goes on
			}
		}
	}
}

// rising fails the first item of a list that does not pass the one before it.
func (r *reader) rising(path string, all []unit.Length) {
	if !r.good(path) {
		return
	}
	for i := 1; i < len(all); i++ {
		if all[i] <= all[i-1] {
			item := path + "." + strconv.Itoa(i)
			given := fmt.Sprintf("%s does not pass the %s before it", all[i].Text(r.sys()), all[i-1].Text(r.sys()))
			r.fail(r.at(item), item, given, "", "write the list from small to large")
			return
		}
	}
}

// above fails hi when it is not above lo; equal lets them be the same.
func (r *reader) above(loKey string, lo unit.Length, hiKey string, hi unit.Length, equal bool) {
	if hi > lo || equal && hi == lo || !r.good(loKey, hiKey) {
		return
	}
	name := loKey[strings.LastIndexByte(loKey, '.')+1:]
	given := fmt.Sprintf("%s is not beyond %s, %s", hi.Text(r.sys()), name, lo.Text(r.sys()))
	r.fail(r.at(hiKey), hiKey, given, "", "look whether the two are the wrong way round")
}

// checkOnLedger fails every x that is off the ledger.
func (r *reader) checkOnLedger() {
	s := r.spec
	if !r.good("ledger.length") {
		return
	}
	for _, l := range []struct {
		path string
		x    []unit.Length
	}{
		{"ledger.splices", s.Ledger.Splices}, {"blocks.positions", s.Blocks.Positions}, {"deck.joists.positions", s.Deck.Joists.Positions}, {"deck.guard_posts", s.Deck.GuardPosts},
	} {
		for i, x := range l.x {
			r.onLedger(l.path+"."+strconv.Itoa(i), x)
		}
	}
	for i, x := range s.Ledger.Splices {
		if path := "ledger.splices." + strconv.Itoa(i); (x <= 0 || x == s.Ledger.Length) && r.good(path) {
			r.fail(r.at(path), path, x.Text(r.sys())+" is an end of the ledger: a piece would have no length", "between 0 and "+s.Ledger.Length.Text(r.sys()), "")
		}
	}
	for i, p := range s.Deck.PointLoads {
		r.onLedger("deck.point_loads."+strconv.Itoa(i)+".x", p.X)
	}
}

func (r *reader) onLedger(path string, x unit.Length) {
	if x > r.spec.Ledger.Length && r.good(path) {
		given := fmt.Sprintf("%s is past the end of the ledger", x.Text(r.sys()))
		r.fail(r.at(path), path, given, "the ledger is "+r.spec.Ledger.Length.Text(r.sys())+" long", "measure x from its left end, seen from outside")
	}
}

// checkGrades reads the grades, which depend on the species.
func (r *reader) checkGrades() {
	s := r.spec
	r.grade("ledger", s.Ledger.Species, &s.Ledger.Grade)
	r.grade("blocks", s.Blocks.Species, &s.Blocks.Grade)
}

func (r *reader) grade(path, species string, grade *string) {
	sp, ok := stock.SpeciesOf(species)
	if !ok || !r.good(path+".species", path+".grade") {
		return
	}
	g, ok := sp.Grade(*grade)
	if !ok {
		given := fmt.Sprintf("%q is not a grade of %s this tool has values for", cut(*grade), sp.Key)
		r.fail(r.at(path+".grade"), path+".grade", given, "one of "+strings.Join(sp.Grades, ", "), "")
		return
	}
	*grade = g
}
