package judge

import (
	"math"
	"strconv"

	"standclear/geom"
)

const (
	least   = 2.0  // mm, lowest text: L4
	touch   = 0.05 // mm two texts may run into each other: what rounding in a file may do
	sideRun = 0.01 // share of a text's width at either end that a line may graze
	capRun  = 0.05 // share of its height at cap line and baseline

	readable = 3.0 // least contrast of text on its ground: WCAG 2.1 for large text, from memory, confirm
)

// textOverText is L1.
func textOverText(p *page) {
	for i, a := range p.texts {
		for _, b := range p.texts[i+1:] {
			if a.box.Overlaps(b.box) && overlap(a, b) > touch {
				p.fail("L1", a.middle(), []string{a.Text, b.Text}, "one text lies over another")
			}
		}
	}
}

// overlap is how deep two turned boxes run into each other, negative where they are apart.
func overlap(a, b lettering) float64 {
	deep := math.Inf(1)
	for _, n := range [4]geom.Vec{a.along, a.along.Perp(), b.along, b.along.Perp()} {
		a0, a1 := shadow(a, n)
		b0, b1 := shadow(b, n)
		deep = math.Min(deep, math.Min(a1-b0, b1-a0))
	}
	return deep
}

// shadow is what a text covers of an axis.
func shadow(t lettering, n geom.Vec) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, c := range t.corners() {
		v := c.Dot(n)
		lo, hi = math.Min(lo, v), math.Max(hi, v)
	}
	return lo, hi
}

// lineThroughText is the part of L2 that lines break: half the line's weight counts. A text is named once.
func lineThroughText(p *page) {
	x := indexed(p)
	named := make([]bool, len(p.texts))
	for _, l := range p.lines {
		x.along(l, func(i int) {
			t := p.texts[i]
			if named[i] {
				return
			}
			if at, ok := p.runsThrough(l, t); ok {
				named[i] = true
				kind := "a line"
				if hatchLike(l) {
					kind = "hatch"
				}
				p.fail("L2", at, []string{t.Text}, "%s on %s runs through a text", kind, l.line.Pen.Def().Layer)
			}
		})
	}
}

// runsThrough returns a point of the line inside the text that no white ground clears.
func (p *page) runsThrough(l stroke, t lettering) (geom.Vec, bool) {
	half := float64(l.line.Weight) / 200
	px, py := math.Min(sideRun*t.width, 0.1)-half, capRun*t.Height-half
	a, b, ok := clip(t.own(l.a), t.own(l.b), geom.Box{Min: geom.Vec{X: px, Y: py}, Max: geom.Vec{X: t.width - px, Y: t.Height - py}})
	if !ok {
		return geom.Vec{}, false
	}
	white := p.grounds(l.order, t.order)
	for _, f := range []float64{0.5, 0.02, 0.98, 0.25, 0.75} {
		at := t.onPaper(a.Lerp(b, f))
		if !covered(white, at) {
			return at, true
		}
	}
	return geom.Vec{}, false
}

func covered(by []fill, at geom.Vec) bool {
	for _, f := range by {
		if f.holds(at) {
			return true
		}
	}
	return false
}

// fillAtText is the part of L2 that fills break: ink under a text of nearly its colour, anything over it.
func fillAtText(p *page) {
	const across, up = 15, 3 // points looked at
	for _, t := range p.texts {
		var under, over []fill
		for _, f := range p.fills {
			if !f.box.Overlaps(t.box) {
				continue
			}
			if f.order > t.order {
				over = append(over, f)
			} else {
				under = append(under, f)
			}
		}
		if len(under)+len(over) == 0 {
			continue
		}
		dark, hidden := 0, 0
		for i := 1; i <= across; i++ {
			for j := 1; j <= up; j++ {
				at := t.onPaper(geom.Vec{X: t.width * float64(i) / (across + 1), Y: t.Height * float64(j) / (up + 1)})
				if covered(over, at) {
					hidden++
				}
				if n := top(under, at); n >= 0 && !under[n].area.White && contrast(t.Pen.Def().RGB, under[n].area.Pen.Def().RGB) < readable {
					dark++
				}
			}
		}
		if dark > 1 {
			p.fail("L2", t.middle(), []string{t.Text}, "a fill under a text leaves it unreadable")
		}
		if hidden > 1 {
			p.fail("L2", t.middle(), []string{t.Text}, "a fill covers a text")
		}
	}
}

// contrast is the ratio of the luminances of two colours "#rrggbb", each plus 0.05: WCAG 2.1, from memory,
// confirm.
func contrast(a, b string) float64 {
	x, y := luminance(a)+0.05, luminance(b)+0.05
	return math.Max(x, y) / math.Min(x, y)
}

func luminance(colour string) float64 {
	sum := 0.0
	for i, share := range []float64{0.2126, 0.7152, 0.0722} {
		v, err := strconv.ParseUint(colour[1+2*i:3+2*i], 16, 8)
		if err != nil {
			return 0
		}
		c := float64(v) / 255
		if c <= 0.03928 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += share * c
	}
	return sum
}

// top is the index of the last fill at a point, -1 for none.
func top(fills []fill, at geom.Vec) int {
	for i := len(fills) - 1; i >= 0; i-- {
		if fills[i].holds(at) {
			return i
		}
	}
	return -1
}

// outside is L3.
func outside(p *page) {
	const spare = 0.02
	frame := p.frame.Grow(spare)
	for _, t := range p.texts {
		if !within(t.box, frame) {
			p.fail("L3", t.middle(), []string{t.Text}, "a text leaves the frame")
		}
		if t.in != own && !within(t.box, p.views[t.in].open.Grow(spare)) {
			p.fail("L3", t.middle(), []string{t.Text}, "a text is cut off by the opening of view %s", p.views[t.in].view.ID)
		}
	}
	for _, v := range p.views {
		if !v.ink.Empty() && !within(v.ink, frame) {
			p.fail("L3", v.ink.Center(), nil, "view %s leaves the frame", v.view.ID)
		}
	}
	for _, l := range p.lines {
		if l.in == own && !(frame.Holds(l.a) && frame.Holds(l.b)) {
			p.fail("L3", l.a, nil, "a line on %s leaves the frame", l.line.Pen.Def().Layer)
		}
	}
	for _, f := range p.fills {
		if f.in == own && !within(f.box, frame) {
			p.fail("L3", f.box.Center(), nil, "a fill on %s leaves the frame", f.area.Pen.Def().Layer)
		}
	}
}

func within(b, in geom.Box) bool { return in.Holds(b.Min) && in.Holds(b.Max) }

// tooSmall is L4.
func tooSmall(p *page) {
	for _, t := range p.texts {
		if t.Height < least-1e-6 {
			p.fail("L4", t.middle(), []string{t.Text}, "a text is %.2f mm high, at least %.1f", t.Height, least)
		}
	}
}
