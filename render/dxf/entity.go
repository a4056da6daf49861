package dxf

import (
	"bufio"
	"slices"

	"standclear/geom"
)

// order sorts the entities of a space: without a table of its own the file order is the order of
// drawing, so what must stay readable comes last.
type order int

const (
	viewports order = iota
	solids
	patterns
	thin
	dashed
	outlines
	symbols
	dimensions
	leaders
	texts
)

// entity is a drawn thing before it has a handle: everything but its owner.
type entity struct {
	kind     string // "LINE"
	layer    string
	order    order
	weight   int       // line weight of the pen, 1/100 mm; 0 when it is not plotted
	island   bool      // a ring that runs clockwise
	byBlock  bool      // colour from the block's insert: inside dimension pictures
	data     tags      // from the first subclass marker after AcDbEntity
	remember []string  // extended data under the program's name
	override tags      // extended data of a dimension: how it differs from its style
	parts    []*entity // attributes and their end mark, owned by an insert
	picture  *block    // what a dimension shows
	inner    *block    // what an insert places
	box      geom.Box  // in the file's unit, empty when it has none of its own
	same     string    // equal for repeats; empty is never a repeat
	edges    []string  // of a chain: its straight pieces, so that a line along one is a repeat

	handle handle
}

// write sends the whole record to w, its parts included.
func (e *entity) write(w *bufio.Writer, owner handle, paper bool) {
	t := make(tags, 0, 16).str(0, e.kind).ref(5, e.handle).ref(330, owner).class("AcDbEntity")
	if paper {
		t = t.int(67, 1)
	}
	t = t.str(8, e.layer)
	if e.byBlock {
		t = t.int(62, 0)
	}
	t.write(w)
	e.data.write(w)
	e.override.write(w)
	if len(e.remember) > 0 {
		t = t[:0].str(1001, appName)
		for _, s := range e.remember {
			t = t.str(1000, s)
		}
		t.write(w)
	}
	for _, p := range e.parts {
		p.write(w, e.handle, paper)
	}
}

// block is a named set of entities: a symbol, the picture of a dimension, model space, a layout.
type block struct {
	name      string
	flags     int // 1 no name of its own, 2 has attributes
	paper     bool
	layout    handle // 0 when it is no space
	items     []*entity
	dropped   []string // what was left out, and why
	record    handle
	begin     handle
	end       handle
	separated bool // entities stand in their own section, not in the block
}

func (b *block) drop(what string) { b.dropped = append(b.dropped, what) }

// box returns the extent of the entities in the file's unit.
func (b *block) box() geom.Box {
	x := geom.EmptyBox()
	for _, e := range b.items {
		x = x.Union(e.box)
	}
	return x
}

// rank tells which of two repeats stays: the heavier, then the one that says what part it is, then
// the outline of a part rather than of a hole in its neighbour.
func (e *entity) rank() int {
	r := e.weight * 4
	if len(e.remember) > 0 {
		r += 2
	}
	if !e.island {
		r++
	}
	return r
}

// settle puts the entities in drawing order and drops repeats. A line that runs along a piece of a
// chain is one, unless it is the heavier of the two.
func (b *block) settle() {
	slices.SortStableFunc(b.items, func(x, y *entity) int { return int(x.order - y.order) })
	chains := map[string]int{} // weight by straight piece
	best := map[string]*entity{}
	for _, e := range b.items {
		for _, s := range e.edges {
			chains[s] = max(chains[s], e.weight)
		}
		if old := best[e.same]; e.same != "" && (old == nil || e.rank() > old.rank()) {
			best[e.same] = e
		}
	}
	b.items = slices.DeleteFunc(b.items, func(e *entity) bool {
		weight, along := chains[e.same]
		twice := e.same != "" && best[e.same] != e || along && weight >= e.weight
		if twice {
			b.drop(e.kind + " drawn twice on " + e.layer)
		}
		return twice
	})
}
