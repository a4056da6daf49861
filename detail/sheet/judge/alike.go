package judge

import (
	"fmt"
	"math"
	"strings"

	"standclear/render"
)

var wordsAlone = pattern(`[A-Z]{3,}`)

// general are words that say nothing of what is measured.
var general = map[string]bool{"TYP": true, "REF": true, "OVERALL": true, "MIN": true, "MAX": true, "WALL": true}

// sameWords is C1: dimensions of the same words, printed alike wherever they stand.
func sameWords(g *set) {
	first := map[string]string{}
	on := map[string]string{}
	for _, p := range g.pages {
		for _, v := range p.views {
			for _, d := range dimsOf(v.view.Items) {
				w := wordsAlone().FindString(d.Text)
				if w == "" || general[w] {
					continue
				}
				label := d.Label(p.number())
				if was, ok := first[d.Text]; ok && was != label {
					p.fail("C1", paper(v.view, d.Line), []string{label, was}, "%s prints it otherwise", on[d.Text])
				} else if !ok {
					first[d.Text], on[d.Text] = label, p.sheet.ID
				}
			}
		}
	}
}

// pointers is C2: a mark with the number of a view and of a sheet points at a view that there is, and every
// view carries its own number.
func pointers(g *set) {
	there := map[[2]string]bool{}
	for _, p := range g.pages {
		for _, v := range p.sheet.Views {
			if k := [2]string{p.sheet.ID, v.ID}; there[k] {
				p.fail("C2", v.At, nil, "two views are numbered %s", v.ID)
			} else {
				there[k] = true
			}
		}
	}
	for _, p := range g.pages {
		for i := range p.sheet.Views {
			v := &p.sheet.Views[i]
			for _, in := range insertsOf(v.Items) {
				no, sheet := field(in, "VIEW_NO"), field(in, "SHEET_NO")
				switch {
				case sheet != "" && no != "" && !there[[2]string{sheet, no}]:
					p.fail("C2", paper(v, in.At), []string{no, sheet}, "a mark points at a view that is not in the set")
				case sheet == "" && no != "" && no != v.ID:
					p.fail("C2", paper(v, in.At), []string{no}, "view %s is numbered otherwise", v.ID)
				}
			}
		}
	}
}

func field(in render.Insert, name string) string {
	for _, f := range in.Fields {
		if f.Name == name {
			return f.Value
		}
	}
	return ""
}

// strips is C3: hash, datum and status stand on every sheet, and are the same.
func strips(g *set) {
	datum, parameters := "", g.a.Spec.Hash()
	for i, p := range g.pages {
		if p.slim() {
			p.slimStrip(parameters)
			continue
		}
		here, hash := "", false
		for _, in := range insertsOf(p.sheet.Items) {
			for _, f := range in.Fields {
				if strings.HasPrefix(f.Name, "DATUM") {
					here += f.Value + " "
				}
				hash = hash || strings.HasPrefix(f.Name, "HASH") && strings.Contains(f.Value, parameters)
			}
		}
		if !hash {
			p.fail("C3", p.frame.Max, []string{parameters}, "the title strip does not name the parameters")
		}
		here = strings.TrimSpace(here)
		if i == 0 {
			datum = here
		}
		if here == "" || here != datum {
			p.fail("C3", p.frame.Max, []string{here, datum}, "the datum is not stated, or not as on the first sheet")
		}
		if !p.status() {
			p.fail("C3", p.frame.Max, nil, "the sheet does not carry its review status")
		}
	}
}

// slim reports whether the sheet has no title block: a page for an office printer with a strip of words.
func (p *page) slim() bool {
	for _, in := range insertsOf(p.sheet.Items) {
		if field(in, "SHEET_NO") != "" {
			return false
		}
	}
	return true
}

// slimStrip is C3 for a page without a title block: parameters and status in words.
func (p *page) slimStrip(hash string) {
	if !p.says(own, hash) {
		p.fail("C3", p.frame.Max, []string{hash}, "the strip does not name the parameters")
	}
	if !p.status() {
		p.fail("C3", p.frame.Max, nil, "the sheet does not carry its review status")
	}
}

// status reports whether the review status is stamped.
func (p *page) status() bool {
	for _, t := range p.texts {
		if t.Pen == render.Status && (strings.HasPrefix(t.Text, "NOT FOR CONSTRUCTION") || strings.HasPrefix(t.Text, "REVIEWED:")) {
			return true
		}
	}
	return false
}

// numbering is C4.
func numbering(g *set) {
	seen := map[string]bool{}
	for i, p := range g.pages {
		want := fmt.Sprintf("%d OF %d", i+1, len(g.pages))
		no, id := "", ""
		for _, in := range insertsOf(p.sheet.Items) {
			if v := field(in, "SHEET_N"); v != "" {
				no, id = v, field(in, "SHEET_NO")
			}
		}
		if p.slim() && p.says(own, "SHEET "+want) && p.says(own, p.sheet.ID) {
			no, id = want, p.sheet.ID
		}
		if no != want || id != p.sheet.ID || seen[id] {
			p.fail("C4", p.frame.Max, []string{id, no}, "the sheet is %s, %s", p.sheet.ID, want)
		}
		seen[id] = true
	}
}

// sameStyle is C5: every dimension of the set has text of one height, and sheets have one unit.
func sameStyle(g *set) {
	if len(g.pages) == 0 {
		return
	}
	want := g.pages[0].sheet.Unit
	for _, p := range g.pages {
		if p.sheet.Unit != want {
			p.fail("C5", p.frame.Max, nil, "the sheet is in another unit than the first")
		}
		h := p.sheet.Unit.Style().Text
		for _, t := range p.texts {
			if t.Pen == render.Dimension && math.Abs(t.Height-h) > 1e-6 {
				p.fail("C5", t.middle(), []string{t.Text}, "dimension text is %.2f mm high, elsewhere %.2f mm", t.Height, h)
				break
			}
		}
	}
}
