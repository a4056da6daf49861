package sheet

import (
	"fmt"
	"slices"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/strength"
	"standclear/detail/together"
	"standclear/render"
)

// Set is the set of one project, of which no more is drawn than is asked for. What several of its sheets show is cut
// and projected once. Its methods may be called at the same time.
type Set struct {
	w    *writer
	all  []page
	only string // ID of the only sheet to draw, "" for all
}

// Compose returns the sheets of the set in order. Each takes the smallest of its sizes that holds it and keeps
// the hard rules of drafting on it, first with wide notes and views, then with narrower ones. Where no size
// holds a scale asked for, the scale gives way.
func Compose(a *detail.Assembly, r *check.Report, res strength.Results, o Options) []*render.Sheet {
	return Plan(a, r, res, o).Sheets()
}

// Plan counts the pages of the set and draws none.
func Plan(a *detail.Assembly, r *check.Report, res strength.Results, o Options) *Set {
	w := newWriter(a, r, res, o)
	w.hash = a.Spec.Hash()
	return &Set{w, w.pages(), o.Sheet}
}

// Index lists the pages of the whole set in order.
func (s *Set) Index() []Entry {
	var out []Entry
	for _, p := range s.all {
		out = append(out, Entry{p.id, p.title})
	}
	return out
}

// Sheets draws the set as Compose does.
func (s *Set) Sheets() []*render.Sheet {
	sheets := make([]*render.Sheet, len(s.all))
	var groups [][]int // the pages of one sheet share what they hold
	for i, p := range s.all {
		switch {
		case s.only != "" && p.id != s.only && p.of != s.only:
		case len(groups) > 0 && s.all[groups[len(groups)-1][0]].of == p.of:
			groups[len(groups)-1] = append(groups[len(groups)-1], i)
		default:
			groups = append(groups, []int{i})
		}
	}
	together.Each(len(groups), func(n int) {
		own := s.w.twin()
		for _, i := range groups[n] {
			sheets[i] = s.page(own, i)
		}
	})
	return slices.DeleteFunc(sheets, func(s *render.Sheet) bool { return s == nil })
}

// Page draws the page of that ID in the index; nil when there is none.
func (s *Set) Page(id string) *render.Sheet {
	i := slices.IndexFunc(s.all, func(p page) bool { return p.id == id })
	if i < 0 {
		return nil
	}
	return s.page(s.w.twin(), i)
}

func (s *Set) page(own *writer, i int) *render.Sheet {
	p := s.all[i]
	own.page = p.no
	out := own.draw(p, i+1, len(s.all))
	out.Props = [][2]string{{"project", own.a.Spec.Project.Name}, {"sheet", p.id}, {"parameters", own.hash}, {"program", "standclear " + own.version}}
	return out
}

// page is one page of a planned sheet, the first being 0.
type page struct {
	planned
	of string // id of the planned sheet
	no int
}

// pages lists the pages of the set in order; those of one sheet are numbered from 1 where there are several, from
// 2 where the first keeps the name of the sheet.
func (w *writer) pages() []page {
	sheets := w.index()
	counts, counted := make([]int, len(sheets)), make([]*writer, len(sheets))
	together.Each(len(sheets), func(i int) {
		counts[i] = 1
		if count := paged[sheets[i].id].count; count != nil {
			counted[i] = w.twin()
			counts[i] = count(counted[i])
		}
	})
	w.paging = map[string]paging{}
	var out []page
	for i, p := range sheets {
		if c := counted[i]; c != nil && c.paging != nil {
			w.paging[p.id] = c.paging[p.id]
		}
		n, then := counts[i], paged[p.id].then
		for i := range n {
			pg := page{p, p.id, i}
			if n > 1 && (i > 0 || then == "") {
				pg.id = fmt.Sprintf("%s-%d", p.id, i+1)
			}
			if i > 0 && then != "" {
				pg.title = then
			}
			out = append(out, pg)
		}
	}
	return out
}
