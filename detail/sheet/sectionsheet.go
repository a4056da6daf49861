package sheet

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/sheet/judge"
	"standclear/detail/together"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// sectionSheet draws the section at a block and the section between blocks, side by side on one
// floor line.
func (w *writer) sectionSheet(s *render.Sheet, l layoutOf) (string, bool) {
	if sizes := w.setSizes(); w.tight > 1 && l.size.Name != sizes[len(sizes)-1] {
		return "", false // keys would stand far off: a larger sheet first
	}
	b := w.sectionBlock()
	at := w.once(fmt.Sprint("section at a block, ", w.tight), func() view.Picture { return view.Cut(w.a, view.AcrossWall(w.cutAtBlock(b)), w.sectionOptions()) })
	between := w.sectionOptions()
	between.Leave[detail.Wrap], between.Leave[detail.Patch] = true, true // of the block beyond
	mid := w.once(fmt.Sprint("section between, ", w.tight), func() view.Picture { return view.Cut(w.a, view.AcrossWall(w.cutBetween()), between) })
	room := w.room(l)
	holds := func(c *composer) bool { return c.extent.W() <= room.W()*c.k && c.extent.H() <= room.H()*c.k }
	larger := func(k float64) []*composer { // with the block once more, larger, where there is room for it
		for _, a := range []arrangement{{2, false}, {2, true}, {1, false}, {1, true}} {
			if of := w.sections(at, mid, b, k, a); len(of) > 2 && holds(row(of)) && w.sound(s, of[2]) {
				return of
			}
		}
		return nil
	}
	var views []*composer
	asked := w.a.Spec.Sheets.Section
	given := asked != 0 && !w.free
	if given {
		views = larger(asked)
	}
	fits := views != nil // then without it too
	if !fits {
		_, fits = w.choose(asked, 2, 8, geom.Vec{X: room.W(), Y: room.H()}, func(k float64) (c *composer) {
			for _, a := range []arrangement{{0, false}, {0, true}} {
				views = w.sections(at, mid, b, k, a)
				if c = row(views); holds(c) {
					return c
				}
			}
			return c
		})
		if fits && !given {
			if more := larger(views[0].k); more != nil {
				views = more
			}
		}
	}
	w.beside(s, room, views, []string{"1", "2", "3"}, []string{w.blockTitle(b), "SECTION BETWEEN BLOCKS", headTitle})
	return w.scale(views[0].k).Text, fits
}

// sound reports whether a view keeps the hard rules by itself: what is only shown once more is left out before it
// spoils a sheet.
func (w *writer) sound(s *render.Sheet, c *composer) bool {
	alone := *s
	p := c.paper()
	alone.Views, alone.Items = nil, nil
	alone.Size = render.Size{Name: "view", W: p.W() + 40, H: p.H() + 40}
	w.place(&alone, c, "3", headTitle, origin, pt(20-p.Min.X, 20-p.Min.Y))
	found, err := judge.Layout(&alone)
	return err == nil && len(found) == 0
}

const headTitle = "BLOCK AND FLASHING, ENLARGED"

// arrangement is how the sheet of sections is laid out.
type arrangement struct {
	head  int  // the enlarged view: 2 of the whole block, 1 of its head, 0 of nothing
	below bool // keynotes under the sections, not beside them
}

// sections composes the two sections at one scale and, where asked for, the head of the first larger.
func (w *writer) sections(at, mid view.Picture, b int, k float64, a arrangement) []*composer {
	large := w.larger(k)
	if large == 0 || b < 0 {
		a.head = 0
	}
	var win *geom.Box
	if a.head > 0 {
		h := w.headWindow(b, a.head == 2)
		win = &h
	}
	var one, two, three *composer
	w.airPath() // found before it is asked for at the same time
	together.Each(3, func(i int) {
		switch {
		case i == 0:
			one = w.composed(fmt.Sprint("at a block", k, w.tight, a.head), func() *composer { return w.sectionAt(at, b, k, win) })
		case i == 1:
			two = w.composed(fmt.Sprint("between", k, w.tight), func() *composer { return w.sectionBetween(mid, k) })
		case a.head > 0:
			o := w.sectionOptions()
			o.Window = *win
			head := w.once(fmt.Sprint("block enlarged ", a.head), func() view.Picture { return view.Cut(w.a, view.AcrossWall(w.cutAtBlock(b)), o) })
			three = w.composed(fmt.Sprint("enlarged", large, w.tight, a.head), func() *composer { return w.headView(head, b, large) })
		}
	})
	views := []*composer{one, two}
	titles := []string{w.blockTitle(b), "SECTION BETWEEN BLOCKS"}
	low := math.Min(one.extent.Min.Y, two.extent.Min.Y)
	for i, c := range views {
		if !a.below {
			c.legendBeside()
		}
		c.extent.Min.Y = math.Min(low, c.extent.Min.Y) // titles in line
		c.title(fmt.Sprint(i+1), titles[i], w.scale(k).Text)
		if a.below {
			c.legendBelow()
		}
	}
	if a.head == 0 {
		return views
	}
	three.title("3", headTitle, w.scale(large).Text)
	return append(views, three)
}

// row is the room of views beside each other, the first two on one line.
func row(cs []*composer) *composer {
	out := *cs[0]
	box := geom.Box{}
	lo, hi := math.Inf(1), math.Inf(-1)
	for i, c := range cs {
		p := c.paper()
		box.Max.X += p.W() + either(i > 0, 12.0, 0)
		if i < 2 {
			lo, hi = math.Min(lo, p.Min.Y), math.Max(hi, p.Max.Y)
		}
	}
	box.Max.Y = hi - lo
	for _, c := range cs[2:] {
		box.Max.Y = math.Max(box.Max.Y, c.paper().H())
	}
	out.extent = geom.Box{Max: box.Max.Mul(out.k)}
	return &out
}
