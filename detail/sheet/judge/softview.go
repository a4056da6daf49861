package judge

import (
	"math"
	"slices"
	"strings"

	"standclear/geom"
	"standclear/render"
)

func inLine(p *page) (t tally) {
	for i, a := range p.views {
		for _, b := range p.views[i+1:] {
			if a.view.Origin == b.view.Origin && a.view.Scale.K == b.view.Scale.K {
				t.count(math.Abs(a.view.At.X-b.view.At.X) < 0.01 || math.Abs(a.view.At.Y-b.view.At.Y) < 0.01)
			}
		}
	}
	return t
}

// filled looks at the field in cells of 20 mm, those with ink in them; the share between the bounds is full
// marks, and falls off to either side. An empty quarter takes half.
func filled(p *page) tally {
	const cell, least, most = 20.0, 0.45, 0.70
	nx, ny := max(2, int(p.frame.W()/cell)), max(2, int(p.frame.H()/cell))
	ink := make([]bool, nx*ny)
	touch := func(b geom.Box) {
		b = b.Intersect(p.frame.Grow(-1))
		if b.Empty() {
			return
		}
		for x := int((b.Min.X - p.frame.Min.X) / cell); x <= int((b.Max.X-p.frame.Min.X)/cell) && x < nx; x++ {
			for y := int((b.Min.Y - p.frame.Min.Y) / cell); y <= int((b.Max.Y-p.frame.Min.Y)/cell) && y < ny; y++ {
				ink[y*nx+x] = true
			}
		}
	}
	for _, t := range p.texts {
		touch(t.box)
	}
	for _, l := range p.lines {
		if l.line.Pen != render.Border && l.line.Pen != render.Heading {
			touch(geom.BoxOf(l.a, l.b))
		}
	}
	n, quarter := 0.0, [4]bool{}
	for i, on := range ink {
		if on {
			n++
			quarter[i%nx*2/nx+2*(i/nx*2/ny)] = true
		}
	}
	share := n / float64(nx*ny)
	good := 1 - math.Max(0, math.Max(least-share, share-most))*2
	for _, q := range quarter {
		if !q {
			good -= 0.5
		}
	}
	return tally{math.Max(0, good), 1}
}

func oneStep(p *page) (t tally) {
	var steps []float64
	dims := p.of(render.DimensionLine)
	for i, a := range dims {
		u := a.b.Sub(a.a).Unit()
		near := math.Inf(1)
		for j, b := range dims {
			if i == j || a.in != b.in || math.Abs(b.b.Sub(b.a).Unit().Cross(u)) > 1e-6 {
				continue
			}
			if d := math.Abs(b.a.Sub(a.a).Cross(u)); d > 1 && d < 25 && d < near {
				near = d
			}
		}
		if !math.IsInf(near, 1) {
			steps = append(steps, near)
		}
	}
	most := commonest(steps, 0.1)
	for _, s := range steps {
		t.count(math.Abs(s-most) <= 0.1)
	}
	return t
}

func weights(p *page) (t tally) {
	for i := range p.views {
		seen := map[int]bool{}
		for _, l := range p.lines {
			if l.in == i {
				seen[l.line.Weight] = true
			}
		}
		t.count(len(seen) >= 3 && len(seen) <= 6) // the five of linework, and the hatch
	}
	return t
}

// hatchesDiffer compares fills that lie against each other with the same pattern at the same angle.
func hatchesDiffer(p *page) (t tally) {
	for _, v := range p.views {
		var fs []render.Fill
		for _, it := range v.view.Items {
			if f, ok := it.(render.Fill); ok && f.Pattern != nil {
				fs = append(fs, f)
			}
		}
		for i, a := range fs {
			for _, b := range fs[i+1:] {
				if a.Region.Bounds().Grow(0.1).Overlaps(b.Region.Bounds()) {
					t.count(a.Pattern.Name != b.Pattern.Name || a.Turn != b.Turn || a.Origin != b.Origin)
				}
			}
		}
	}
	return t
}

// sideBySide looks at straight linework at least 3 mm long, level or upright.
func sideBySide(p *page) (t tally) {
	const long, close, same = 3.0, 0.7, 0.05
	var ls []stroke
	for _, l := range p.lines {
		d := l.b.Sub(l.a)
		if !hatchLike(l) && l.line.Pen != render.Membrane && l.line.Pen != render.ThinCut && d.Len() >= long && (math.Abs(d.X) < 1e-6 || math.Abs(d.Y) < 1e-6) {
			ls = append(ls, l)
		}
	}
	level := func(l stroke) bool { return math.Abs(l.b.Y-l.a.Y) < 1e-6 }
	at := func(l stroke) float64 {
		if level(l) {
			return l.a.Y
		}
		return l.a.X
	}
	slices.SortStableFunc(ls, func(a, b stroke) int { return milli(at(a)) - milli(at(b)) })
	for i, a := range ls {
		ok := true
		for j := i + 1; j < len(ls) && at(ls[j])-at(a) < close-0.01; j++ {
			if b := ls[j]; level(a) == level(b) && at(b)-at(a) > same && shared(a, b) > long {
				ok = false
			}
		}
		t.count(ok)
	}
	return t
}

// shared is how long two parallel lines run beside each other.
func shared(a, b stroke) float64 {
	u := a.b.Sub(a.a).Unit()
	b0, b1 := b.a.Sub(a.a).Dot(u), b.b.Sub(a.a).Dot(u)
	return math.Min(a.a.Dist(a.b), math.Max(b0, b1)) - math.Max(0, math.Min(b0, b1))
}

func fewNotes(p *page) (t tally) {
	n := map[string]int{}
	p.eachLeader(func(v shown, _ []geom.Vec) { n[v.view.ID]++ })
	for _, v := range p.views {
		for _, in := range insertsOf(v.view.Items) {
			if field(in, "KEY") != "" {
				n[v.view.ID]-- // a keynote: its words stand in the legend
			}
		}
		t.count(n[v.view.ID] < 12)
	}
	return t
}

func loneWords(p *page) (t tally) {
	look := func(items []render.Item) {
		for _, it := range items {
			if x, ok := it.(render.Text); ok && len(x.Lines) > 1 {
				last := strings.TrimSpace(x.Lines[len(x.Lines)-1])
				t.count(strings.Contains(last, " ") || len(last) > 12)
			}
		}
	}
	look(p.sheet.Items)
	for _, v := range p.views {
		look(v.view.Items)
	}
	return t
}

func titlesUnder(p *page) (t tally) {
	for i, v := range p.views {
		low, title := math.Inf(1), geom.Box{}
		found := false
		for _, l := range p.lines {
			if l.in == i && l.line.Tag != nil {
				low = math.Min(low, math.Min(l.a.Y, l.b.Y))
			}
		}
		for _, x := range p.texts {
			if x.in == i && x.Pen == render.Heading {
				title, found = x.box, true
			}
		}
		t.count(found && title.Max.Y < low && title.Min.X < v.ink.Min.X+v.ink.W()/3)
	}
	return t
}

func dimsOutside(p *page) (t tally) {
	for i, v := range p.views {
		object := geom.EmptyBox()
		for _, l := range p.lines {
			if l.in == i && l.line.Tag != nil {
				object = object.Include(l.a).Include(l.b)
			}
		}
		for _, d := range dimsOf(v.view.Items) {
			u := d.Direction()
			mid := d.Line.Add(u.Mul(d.P.Lerp(d.Q, 0.5).Sub(d.Line).Dot(u)))
			t.count(object.Empty() || !object.Grow(-0.5).Holds(paper(v.view, mid)))
		}
	}
	return t
}

func longEnough(p *page) (t tally) {
	p.eachDim(func(v shown, d render.Dim) {
		if d.Kind == render.Linear || d.Kind == render.Aligned {
			t.count(d.Value()/v.view.Scale.K >= 3)
		}
	})
	return t
}
