package judge

import (
	"math"
	"sort"
	"strings"

	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
)

// measured is a straight dimension of a view by its printed value; an ordinate runs from its datum.
type measured struct {
	line    int // thousandths across: equal for the dimensions of one line
	turn    int // thousandths of a degree
	lo, hi  int // thousandths along
	printed float64
	label   string
	at      geom.Vec // paper
	single  bool     // an ordinate: never part of a chain
}

// chainsAddUp is L7: a dimension from one tick of a chain to another prints what the segments between print
// together, and every dimension shows its own value.
func chainsAddUp(p *page) {
	for _, v := range p.views {
		var all []measured
		for _, d := range dimsOf(v.view.Items) {
			if d.Text != "" && !strings.Contains(d.Text, "<>") {
				p.fail("L7", paper(v.view, d.Line), []string{d.Text}, "a dimension prints words in place of its value")
				continue
			}
			if m, ok := p.measure(v.view, d); ok {
				all = append(all, m)
			}
		}
		p.sums(all)
	}
}

func paper(v *render.View, q geom.Vec) geom.Vec { return q.Mul(1 / v.Scale.K).Add(v.At) }

func dimsOf(items []render.Item) []render.Dim {
	var out []render.Dim
	for _, it := range items {
		if d, ok := it.(render.Dim); ok {
			out = append(out, d)
		}
	}
	return out
}

// measure takes a dimension along its own direction; kinds that make no chain are left out.
func (p *page) measure(v *render.View, d render.Dim) (measured, bool) {
	angle, single := d.Angle, false
	switch d.Kind {
	case render.Linear:
	case render.OrdinateX:
		angle, single = 0, true
	case render.OrdinateY:
		angle, single = 90, true
	default:
		return measured{}, false
	}
	value, ok := p.printed(d)
	if !ok {
		return measured{}, false
	}
	u := geom.Polar(geom.Vec{}, 1, angle*math.Pi/180)
	a, b := d.P.Dot(u), d.Q.Dot(u)
	m := measured{line: milli(d.Line.Cross(u)), turn: milli(angle), lo: milli(math.Min(a, b)), hi: milli(math.Max(a, b)), printed: value, single: single}
	m.label, m.at = d.Label(p.number()), paper(v, d.Line)
	return m, true
}

func (p *page) number() func(float64) string {
	if p.sheet.Number != nil {
		return p.sheet.Number
	}
	return func(mm float64) string { return unit.Length(mm).Metric(3) }
}

// printed reads the value of a dimension back from what it prints.
func (p *page) printed(d render.Dim) (float64, bool) {
	d.Text = ""
	return readLength(d.Label(p.number()))
}

// readLength reads a printed length; one without a unit is in millimetres.
func readLength(s string) (float64, bool) {
	for _, t := range []string{s, s + "mm"} {
		if l, err := unit.ParseLength(t); err == nil {
			return l.MM(), true
		}
	}
	return 0, false
}

// sums compares every dimension with the chains that lead from its one end to the other.
func (p *page) sums(all []measured) {
	rows := map[[2]int][]measured{}
	var keys [][2]int
	for _, m := range all {
		if m.single {
			continue
		}
		k := [2]int{m.turn, m.line}
		if rows[k] == nil {
			keys = append(keys, k)
		}
		rows[k] = append(rows[k], m)
	}
	for _, k := range keys {
		row := rows[k]
		sort.SliceStable(row, func(i, j int) bool { return row[i].lo < row[j].lo })
		for _, m := range all {
			if m.turn != k[0] {
				continue
			}
			sum, n := walk(row, m)
			if n > 1 && math.Abs(sum-m.printed) > 0.02 {
				p.fail("L7", m.at, []string{m.label}, "%d segments add up to %s as printed", n, p.number()(sum))
			}
		}
	}
}

// walk adds up the segments that lead end to end from one end of m to the other; n is 0 where none do.
func walk(row []measured, m measured) (sum float64, n int) {
	at := m.lo
	for _, s := range row {
		if s.lo < at || s.hi > m.hi || s == m {
			continue
		}
		if s.lo > at {
			return 0, 0
		}
		sum, at, n = sum+s.printed, s.hi, n+1
	}
	if at != m.hi {
		return 0, 0
	}
	return sum, n
}

// pictorial is what a picture that must not be measured prints for its scale.
const pictorial = "NOT TO SCALE"

// scales is L8: what stands under a view is its scale, and the title strip names a scale of the sheet.
func scales(p *page) {
	const spare = 0.002
	texts := map[string]bool{"AS SHOWN": true, "NTS": true, "NONE": true, "": true}
	for i, v := range p.views {
		s := v.view.Scale
		texts[s.Text] = true
		if k, ok := readScale(s.Text); ok && math.Abs(k/s.K-1) > spare {
			p.fail("L8", v.open.Center(), []string{s.Text}, "view %s is drawn at 1 to %.4g", v.view.ID, s.K)
		} else if !ok && s.Text != "NTS" && s.Text != pictorial {
			p.fail("L8", v.open.Center(), []string{s.Text}, "view %s has no scale", v.view.ID)
		}
		if !p.says(i, s.Text) && !(p.slim() && p.says(own, s.Text)) {
			p.fail("L8", v.open.Center(), []string{s.Text}, "view %s does not print its scale", v.view.ID)
		}
	}
	for _, in := range insertsOf(p.sheet.Items) {
		for _, f := range in.Fields {
			if f.Name == "SCALE" && !texts[f.Value] {
				p.fail("L8", in.At, []string{f.Value}, "the title strip names a scale that no view has")
			}
		}
	}
}

// readScale reads a printed scale: 3" = 1'-0" is 4, 1:5 is 5.
func readScale(s string) (float64, bool) {
	left, right, inch := strings.Cut(s, " = ")
	if !inch {
		left, right, _ = strings.Cut(s, ":")
	}
	a, ok1 := readLength(left)
	b, ok2 := readLength(right)
	return b / a, ok1 && ok2 && a > 0
}

// says reports whether a text stands in a view.
func (p *page) says(view int, text string) bool {
	for _, t := range p.texts {
		if t.in == view && strings.Contains(t.Text, text) {
			return true
		}
	}
	return false
}

func insertsOf(items []render.Item) []render.Insert {
	var out []render.Insert
	for _, it := range items {
		if in, ok := it.(render.Insert); ok {
			out = append(out, in)
		}
	}
	return out
}
