// Package cloud marks on a set of sheets what differs from an earlier set: a revision cloud round each change
// and a triangle beside it with the mark of the revision.
//
//	changes, err := cloud.Draw(sheets, old, "2") // adds to the sheets, leaves the old ones alone
//
// Views are compared in model millimetres, so a view that only moved on its sheet, or was drawn at another scale,
// is unchanged: linework of parts by what of each line is not there in the other set, dimensions by value and
// measured points, words by what they say. Tables are compared row by row, wherever a row has moved to. What is
// not compared: the title strip, textures other than the pattern of a part, arrows, and the colours of a
// temperature, whose values stand in texts.
//
// Clouds stand on paper, not in the views: a detail inserted elsewhere has none.
package cloud

import (
	"slices"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// Change is what differs on one sheet.
type Change struct {
	Sheet  string
	New    bool     // the old set had no such sheet
	Gone   bool     // the new set has none
	Clouds int      // drawn on it
	Marks  []string // of cut parts whose outline differs, sorted
	Lost   []string // views and words that are gone, a row of a table with | between its cells
}

// own is the group of what stands on paper outside any table.
const own = -1

// want is something that differs: its box on paper, before the cloud goes round it.
type want struct {
	box   geom.Box
	group int  // index of its view, own, or a table's
	row   bool // of a table: the cloud keeps near to it
}

// Draw clouds on the sheets what differs from the old ones, each cloud with the mark in a triangle. It returns a
// Change for every sheet that differs, in the order of the set, sheets that are gone last. The error is that of
// render.Sheet.Flatten.
func Draw(sheets, old []*render.Sheet, mark string) ([]Change, error) {
	var out []Change
	for _, s := range sheets {
		was := find(old, s.ID)
		if was == nil {
			out = append(out, Change{Sheet: s.ID, New: true})
			continue
		}
		c := compare(s, was, family(sheets, s.ID), family(old, s.ID))
		if len(c.wants) > 0 {
			p, err := read(s)
			if err != nil {
				return nil, err
			}
			c.change.Clouds = p.draw(c.wants, mark)
		}
		if c.change.Clouds > 0 || len(c.change.Lost) > 0 {
			out = append(out, c.change)
		}
	}
	for _, s := range old {
		if find(sheets, s.ID) == nil {
			out = append(out, Change{Sheet: s.ID, Gone: true})
		}
	}
	return out, nil
}

func find(sheets []*render.Sheet, id string) *render.Sheet {
	i := slices.IndexFunc(sheets, func(s *render.Sheet) bool { return s.ID == id })
	if i < 0 {
		return nil
	}
	return sheets[i]
}

// family are the pages of the sheet that one of them belongs to: rows flow from page to page.
func family(sheets []*render.Sheet, id string) []*render.Sheet {
	base := func(id string) string {
		if p := strings.SplitN(id, "-", 3); len(p) == 3 {
			return p[0] + "-" + p[1]
		}
		return id
	}
	var out []*render.Sheet
	for _, s := range sheets {
		if base(s.ID) == base(id) {
			out = append(out, s)
		}
	}
	return out
}

// distance is the clear distance of two boxes, 0 where they touch.
func distance(a, b geom.Box) float64 {
	dx := max(0, b.Min.X-a.Max.X, a.Min.X-b.Max.X)
	dy := max(0, b.Min.Y-a.Max.Y, a.Min.Y-b.Max.Y)
	return geom.Vec{X: dx, Y: dy}.Len()
}

// merge unites the boxes of a group that lie nearer than apart, until none do.
func merge(all []want, apart func(row bool) float64) []want {
	var out []want
	for _, w := range all {
		for i := 0; i < len(out); i++ {
			if o := out[i]; o.group == w.group && distance(o.box, w.box) < apart(o.row) {
				w.box = w.box.Union(o.box)
				out = slices.Delete(out, i, i+1)
				i = -1 // the larger box may reach others
			}
		}
		out = append(out, w)
	}
	return out
}

// gather merges what lies near each other, and in a group of very many clouds also what lies farther apart: twenty
// small clouds tell less than a few.
func gather(all []want) []want {
	const (
		many    = 6    // clouds of a group: a judgement
		longest = 24.0 // mm between what becomes one cloud then
	)
	all = merge(all, between)
	for more := 2.0; more <= longest; more += 2 {
		n := map[int]int{}
		for _, w := range all {
			n[w.group]++
		}
		var crowd, rest []want
		for _, w := range all {
			if n[w.group] > many {
				crowd = append(crowd, w)
			} else {
				rest = append(rest, w)
			}
		}
		all = append(rest, merge(crowd, func(row bool) float64 { return between(row) + more })...)
	}
	return all
}
