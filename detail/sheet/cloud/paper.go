package cloud

import (
	"cmp"
	"math"
	"slices"

	"standclear/geom"
	"standclear/render"
)

// field returns the part of the sheet left by its title strip. The strip is what a heavy rule from edge to edge of
// the frame parts off at the right or at the foot.
func field(s *render.Sheet) (frame, field geom.Box) {
	frame = geom.Box{Max: geom.Vec{X: s.Size.W, Y: s.Size.H}}
	for _, it := range s.Items {
		if t, ok := it.(render.Stroke); ok && t.Pen == render.Border && t.Path.Closed {
			frame = frame.Intersect(t.Path.Bounds())
		}
	}
	field = frame
	for _, it := range s.Items {
		t, ok := it.(render.Stroke)
		if !ok || t.Pen != render.Heading {
			continue
		}
		b := t.Path.Bounds()
		switch {
		case b.H() > 0.95*frame.H():
			field.Max.X = math.Min(field.Max.X, b.Min.X)
		case b.W() > 0.95*frame.W():
			field.Min.Y = math.Max(field.Min.Y, b.Max.Y)
		}
	}
	return frame, field
}

// row is a row of a table, or words outside any.
type row struct {
	words
	left, right float64 // of the table; equal outside any
}

// cell is a text and the rules of its row.
type cell struct {
	words
	above, below int // index of a rule, -1 for none
}

// rowsOf reads the tables of a sheet back from their rules: texts between two rules of one length are a row. Words
// outside any table come first.
func rowsOf(s *render.Sheet) []row {
	_, field := field(s)
	var rules []geom.Box
	for _, it := range s.Items {
		if t, ok := it.(render.Stroke); ok && len(t.Path.V) == 2 && t.Path.Bounds().H() < geom.Tol && field.Holds(t.Path.V[0].Vec) {
			rules = append(rules, t.Path.Bounds())
		}
	}
	slices.SortStableFunc(rules, func(a, b geom.Box) int { return cmp.Compare(a.Min.Y, b.Min.Y) })
	var out []row
	var cells []cell
	for _, it := range s.Items {
		for _, w := range textsOf([]render.Item{it}, 1) {
			if !field.Holds(w.box.Min) || !field.Holds(w.box.Max) {
				continue
			}
			c := cellOf(w, rules)
			t, plain := it.(render.Text)
			switch {
			case c.above >= 0:
				cells = append(cells, c)
			case plain && t.Pen == render.Status: // the banner counts the checks, which are rows of their own
			default:
				out = append(out, row{words: w})
			}
		}
	}
	slices.SortStableFunc(cells, func(a, b cell) int {
		return cmp.Or(-cmp.Compare(a.above, b.above), cmp.Compare(a.box.Min.X, b.box.Min.X))
	})
	for i, c := range cells {
		if n := len(out); i > 0 && c.above == cells[i-1].above {
			out[n-1].text += cellMark + c.text
			out[n-1].box = out[n-1].box.Union(c.box)
			continue
		}
		out = append(out, row{c.words, rules[c.above].Min.X, rules[c.above].Max.X})
	}
	return out
}

// cellOf finds the rules of a text's row among all, which are sorted upward.
func cellOf(w words, rules []geom.Box) cell {
	c := cell{w, -1, -1}
	for i, r := range rules {
		switch {
		case r.Min.X > w.box.Min.X || r.Max.X < w.box.Max.X:
		case r.Min.Y <= w.box.Min.Y:
			c.below = i
		case c.below >= 0 && math.Abs(r.Min.X-rules[c.below].Min.X)+math.Abs(r.Max.X-rules[c.below].Max.X) < tol:
			c.above = i
			return c
		}
	}
	return c
}

// paper compares what stands on the paper of the sheet with all that its pages had.
func (c *comparison) paper(pages, old []*render.Sheet) {
	all := func(of []*render.Sheet) []words {
		var out []words
		for _, s := range of {
			for _, r := range rowsOf(s) {
				out = append(out, r.words)
			}
		}
		return out
	}
	now, was := rowsOf(c.now), rowsOf(c.was)
	is, had := all(pages), all(old)
	added := missing(is, had)
	fresh := count(added)
	lost := count(missing(had, is))
	for _, r := range now {
		if fresh[r.text]--; fresh[r.text] < 0 {
			continue
		}
		w := want{box: r.box, group: own}
		if r.right > r.left {
			w.box.Min.X, w.box.Max.X, w.row = r.left, r.right, true
			w.group = -2 - int(math.Round(r.left*10)) // tables side by side stay apart
		}
		c.wants = append(c.wants, w)
	}
	var gone []words
	for _, r := range was {
		if lost[r.text]--; lost[r.text] >= 0 {
			gone = append(gone, r.words)
		}
	}
	c.lost(gone, added, is)
}

func count(of []words) map[string]int {
	out := map[string]int{}
	for _, w := range of {
		out[w.text]++
	}
	return out
}
