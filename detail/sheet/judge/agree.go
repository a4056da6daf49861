package judge

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"standclear/detail"
	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
)

// Set judges a whole set: the hard rules on every sheet and on the pages of the calculation, then what the
// sheets must say alike.
func Set(sheets, pages []*render.Sheet, a *detail.Assembly) ([]Violation, error) {
	all, err := Agree(sheets, a)
	if err != nil {
		return nil, err
	}
	for _, s := range slices.Concat(sheets, pages) {
		v, err := Layout(s)
		if err != nil {
			return nil, err
		}
		all = append(all, v...)
	}
	sorted(all)
	return all, nil
}

// Agree returns where the sheets of one set contradict each other or the assembly they show:
//
//	L9   a mark on a view that nothing bears, a new part that no view names
//	L10  a count that is not the assembly's: of blocks, of fasteners, in any table with MARK and QTY
//	C1   a dimension of the same words that prints another value on another sheet
//	C2   a section mark that points at no view; a view whose number is not the one under it
//	C3   the hash of the parameters, the datum or the status missing or not the same
//	C4   a sheet that is not numbered in its place of the set
//	C5   steps between dimension lines or heights of dimension text that differ from sheet to sheet
func Agree(sheets []*render.Sheet, a *detail.Assembly) ([]Violation, error) {
	g := &set{a: a, marks: markList(a)}
	for _, s := range sheets {
		p, err := read(s)
		if err != nil {
			return nil, err
		}
		g.pages = append(g.pages, p)
	}
	for _, rule := range []func(*set){strangeMarks, missingMarks, counts, tables, sameWords, pointers, strips, numbering, sameStyle} {
		rule(g)
	}
	var all []Violation
	for _, p := range g.pages {
		all = append(all, p.found...)
	}
	all = append(all, g.found...)
	sorted(all)
	return all, nil
}

// set is a set of sheets under judgement.
type set struct {
	a     *detail.Assembly
	pages []*page
	marks marks
	found []Violation // of the set as a whole
}

// marks are what may be called by a mark: parts with their counts, blocks, places.
type marks struct {
	parts  map[string]int  // schedule: quantity by mark
	new    []string        // those of this work, in schedule order
	others map[string]bool // blocks, obstacles, posts, point loads, sizes that look like marks
}

func markList(a *detail.Assembly) marks {
	m := marks{parts: map[string]int{}, others: map[string]bool{}}
	for _, l := range a.Schedule() {
		if m.parts[l.Mark] == 0 && !l.Existing {
			m.new = append(m.new, l.Mark)
		}
		m.parts[l.Mark] += l.Qty
	}
	for _, b := range a.Blocks {
		m.others[b.Mark] = true
	}
	for _, p := range a.Parts {
		m.others[p.Mark] = true // obstacles and earth are drawn and not scheduled
		if p.Role == detail.TensionRod {
			m.others[p.ID] = true // one of several of a mark
			m.others["M"+unit.Length(p.Bounds().Size().Z).Metric(1)] = true
		}
	}
	for i := range a.Spec.Deck.GuardPosts {
		m.others[fmt.Sprintf("GP%d", i+1)] = true
	}
	for i := range a.Spec.Deck.PointLoads {
		m.others[fmt.Sprintf("PL%d", i+1)] = true
	}
	for _, f := range a.Spec.Fasteners.Sets() {
		m.others["M"+f.Diameter.Metric(1)] = true // a bolt's size, no mark
	}
	for _, l := range a.Spec.Wall.Layers {
		for _, w := range marksIn(strings.ToUpper(l.Name)) {
			m.others[w] = true // the user's own words
		}
	}
	return m
}

var markLike = pattern(`^[A-Z]{1,2}[0-9]{1,2}$`)

// marksIn are the words of a text that look like marks: M2 is one, M9.5 and A-301 are none.
func marksIn(text string) []string {
	var out []string
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return !(r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' || r == '.' || r == '-') }) {
		if w = strings.TrimRight(w, ".-"); markLike().MatchString(w) {
			out = append(out, w)
		}
	}
	return out
}

// strangeMarks is L9 one way. Only words that open with the letters of a scheduled mark are looked at.
func strangeMarks(g *set) {
	letters := map[string]bool{}
	for m := range g.marks.parts {
		letters[strings.TrimRight(m, "0123456789")] = true
	}
	for _, b := range g.a.Blocks {
		letters[strings.TrimRight(b.Mark, "0123456789")] = true
	}
	for _, p := range g.pages {
		for _, t := range p.texts {
			if t.in == own {
				continue
			}
			for _, m := range marksIn(t.Text) {
				if _, part := g.marks.parts[m]; !part && !g.marks.others[m] && letters[strings.TrimRight(m, "0123456789")] {
					p.fail("L9", t.middle(), []string{t.Text}, "%s is in no schedule", m)
				}
			}
		}
	}
}

// missingMarks is L9 the other way: every part of this work is named on a view.
func missingMarks(g *set) {
	seen := map[string]bool{}
	for _, p := range g.pages {
		for _, t := range p.texts {
			if t.in != own {
				for _, m := range marksIn(t.Text) {
					seen[m] = true
				}
			}
		}
		for _, v := range p.views {
			for _, l := range p.lines {
				if l.line.Tag != nil && l.in != own && p.views[l.in].view == v.view {
					seen[l.line.Tag.Mark] = true
				}
			}
		}
	}
	for _, m := range g.marks.new {
		if !seen[m] {
			g.found = append(g.found, Violation{Rule: "L9", Texts: []string{m}, What: "a scheduled part is named on no view"})
		}
	}
}

// pattern compiles a regular expression when it is first asked for.
func pattern(text string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })
}

// counted are the ways a count is put into words: the pattern and what it counts.
var counted = []struct {
	words func() *regexp.Regexp
	what  func(a *detail.Assembly) int
}{
	{pattern(`\bCOUNT: (\d+) BLOCKS?\b`), func(a *detail.Assembly) int { return len(a.Blocks) }},
	{pattern(`\bBLOCK \S+ TO \S+, (\d+) REQUIRED\b`), func(a *detail.Assembly) int { return len(a.Blocks) }},
	{pattern(`\b(\d+) DECK JOISTS\b`), func(a *detail.Assembly) int { return len(a.DeckJoists) }},
	{pattern(`\bWASHERS: (\d+)`), func(a *detail.Assembly) int { return a.Count(detail.Washer) }},
}

// counts is L10 in words, which may run over the lines of a note.
func counts(g *set) {
	for _, p := range g.pages {
		for _, b := range p.blocks() {
			for _, c := range counted {
				for _, m := range c.words().FindAllStringSubmatch(b.text, -1) {
					if want := fmt.Sprint(c.what(g.a)); m[1] != want {
						p.fail("L10", b.at, []string{m[0]}, "the assembly counts %s", want)
					}
				}
			}
		}
	}
}

// paragraph is a block of text on one line.
type paragraph struct {
	text string
	at   geom.Vec
}

// blocks joins lines of the same kind that follow each other as they were painted.
func (p *page) blocks() []paragraph {
	var out []paragraph
	for i, t := range p.texts {
		if i > 0 {
			q := p.texts[i-1]
			if t.order == q.order+1 && t.in == q.in && t.Pen == q.Pen && t.Height == q.Height && t.Side == q.Side && t.Rot == q.Rot && t.At.Dist(q.At) < 1.01*render.LinePitch*t.Height {
				out[len(out)-1].text += " " + t.Text
				continue
			}
		}
		out = append(out, paragraph{t.Text, t.middle()})
	}
	return out
}

var layerMark = pattern(`^W[0-9]+$`)

// tables is L10 in tables: where a column is headed MARK and one to its right QTY, each row that names a
// scheduled mark counts what the assembly holds of it, or of one size of it.
func tables(g *set) {
	sizes := map[string][]int{}
	for _, l := range g.a.Schedule() {
		sizes[l.Mark] = append(sizes[l.Mark], l.Qty)
	}
	for _, p := range g.pages {
		for _, h := range p.texts {
			if h.Text != "MARK" || !h.Bold {
				continue
			}
			qty, ok := p.headed(h, "QTY")
			if !ok {
				continue
			}
			for _, row := range p.column(h) {
				n, ok := p.at(qty.from.X, row.from.Y)
				if layerMark().MatchString(row.Text) || n.Text == "-" {
					continue // a layer is cut into pieces as the work goes; not counted
				}
				if q, part := g.marks.parts[row.Text]; ok && part && n.Text != fmt.Sprint(q) && !slices.ContainsFunc(sizes[row.Text], func(q int) bool { return n.Text == fmt.Sprint(q) }) {
					p.fail("L10", n.middle(), []string{row.Text, n.Text}, "the assembly counts %d", q)
				}
			}
		}
	}
}

// headed is the head of that name in the row of another head, nearest to its right.
func (p *page) headed(h lettering, name string) (best lettering, ok bool) {
	for _, t := range p.texts {
		if t.in == h.in && t.Bold && t.Text == name && milli(t.from.Y) == milli(h.from.Y) && t.from.X > h.from.X && (!ok || t.from.X < best.from.X) {
			best, ok = t, true
		}
	}
	return best, ok
}

// column are the texts that stand under a head, down to the next head or title.
func (p *page) column(h lettering) []lettering {
	var out []lettering
	foot := -1.0
	for _, t := range p.texts {
		if t.in == h.in && t.Bold && t.from.Y < h.from.Y-1 && t.from.Y > foot && t.box.Min.X < h.box.Max.X && t.box.Max.X > h.box.Min.X {
			foot = t.from.Y
		}
	}
	for _, t := range p.texts {
		if t.in == h.in && !t.Bold && milli(t.from.X) == milli(h.from.X) && t.from.Y < h.from.Y && t.from.Y > foot {
			out = append(out, t)
		}
	}
	return out
}

// at is the text that starts at a point.
func (p *page) at(x, y float64) (lettering, bool) {
	for _, t := range p.texts {
		if t.in == own && milli(t.from.X) == milli(x) && milli(t.from.Y) == milli(y) {
			return t, true
		}
	}
	return lettering{}, false
}
