package judge

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// Score says how well a sheet reads: of each soft rule, the share of places that keep it, 1 where there is
// nothing to judge. No sheet fails by it; it shows where the next hour of drafting is best spent.
//
//	S1   texts stand half their height off other texts and 1 mm off lines
//	S2   dimension texts stand in the middle of their lines
//	S3   the notes of one side of a view start on one line
//	S4   leaders are at most 60 mm long
//	S5   leaders rise at 30, 45 or 60 degrees, or run level
//	S6   views of one origin and scale stand level, or one over the other
//	S7   ink fills 45 to 70 % of the field and no quarter is empty
//	S8   parallel dimension lines keep one step
//	S9   a view has three to five line weights
//	S10  the hatches of neighbours differ
//	S11  no lines run side by side closer than 0.7 mm
//	S12  a view has fewer than twelve notes
//	S13  no text ends in a lone word
//	S14  titles stand under their views, at the left
//	S15  dimensions stand outside of what they measure
//	S16  no dimension is less than 3 mm long
type Score struct {
	Sheet string
	Rules [16]float64
}

// Mean is the mean of the rules.
func (s Score) Mean() float64 {
	sum := 0.0
	for _, v := range s.Rules {
		sum += v
	}
	return sum / float64(len(s.Rules))
}

// String is one line of percentages.
func (s Score) String() string {
	b := fmt.Sprintf("%-6s%4.0f ", s.Sheet, 100*s.Mean())
	for i, v := range s.Rules {
		b += fmt.Sprintf(" S%d %.0f", i+1, 100*v)
	}
	return b
}

// Soft scores a sheet. The error is that of render.Sheet.Flatten.
func Soft(s *render.Sheet) (Score, error) {
	p, err := read(s)
	if err != nil {
		return Score{}, err
	}
	out := Score{Sheet: s.ID}
	for i, rule := range [16]func(*page) tally{
		clearSpace, centred, inColumn, shortLeaders, leaderAngles, inLine, filled, oneStep, weights, hatchesDiffer,
		sideBySide, fewNotes, loneWords, titlesUnder, dimsOutside, longEnough,
	} {
		out.Rules[i] = rule(p).share()
	}
	return out, nil
}

// tally counts places that keep a rule among those it applies to.
type tally struct{ good, all float64 }

func (t *tally) count(good bool) {
	t.all++
	if good {
		t.good++
	}
}

func (t tally) share() float64 {
	if t.all == 0 {
		return 1
	}
	return t.good / t.all
}

func clearSpace(p *page) tally {
	var t tally
	const off = 1.0
	x := indexed(p)
	near := make([]bool, len(p.texts))
	for _, l := range p.lines {
		x.along(l, func(i int) {
			a := p.texts[i]
			in := geom.Box{Min: geom.Vec{X: -off + 0.01, Y: -off + 0.01}, Max: geom.Vec{X: a.width + off - 0.01, Y: a.Height + off - 0.01}}
			if _, _, ok := clip(a.own(l.a), a.own(l.b), in); ok {
				near[i] = true
			}
		})
	}
	for i, a := range p.texts {
		for _, b := range p.texts[i+1:] {
			if a.box.Grow(a.Height/2-0.01).Overlaps(b.box) && overlap(a, b) > -a.Height/2+0.01 {
				near[i] = true
			}
		}
		t.count(!near[i])
	}
	return t
}

func centred(p *page) (t tally) {
	p.eachDim(func(_ shown, d render.Dim) {
		if d.Kind == render.Linear || d.Kind == render.Aligned {
			t.count(d.TextAt == nil)
		}
	})
	return t
}

func (p *page) eachDim(see func(v shown, d render.Dim)) {
	for _, v := range p.views {
		for _, d := range dimsOf(v.view.Items) {
			see(v, d)
		}
	}
}

// eachLeader calls see with the points of every leader on paper, those that name something.
func (p *page) eachLeader(see func(v shown, pts []geom.Vec)) {
	for _, v := range p.views {
		for _, it := range v.view.Items {
			if l, ok := it.(render.Leader); ok && l.Pen == render.Note && len(l.Points) > 2 {
				pts := make([]geom.Vec, len(l.Points))
				for i, q := range l.Points {
					pts[i] = paper(v.view, q)
				}
				see(v, pts)
			}
		}
	}
}

func inColumn(p *page) (t tally) {
	ends := map[string][]float64{}
	var keys []string
	p.eachLeader(func(v shown, pts []geom.Vec) {
		end := pts[len(pts)-1]
		k := fmt.Sprint(v.view.ID, end.X > pts[0].X)
		if ends[k] == nil {
			keys = append(keys, k)
		}
		ends[k] = append(ends[k], end.X)
	})
	for _, k := range keys {
		most := commonest(ends[k], 0.2)
		for _, x := range ends[k] {
			t.count(math.Abs(x-most) <= 0.2)
		}
	}
	return t
}

// commonest is the value that most of the others stand within off of.
func commonest(vs []float64, off float64) float64 {
	best, n := 0.0, -1
	for _, v := range vs {
		m := 0
		for _, w := range vs {
			if math.Abs(v-w) <= off {
				m++
			}
		}
		if m > n {
			best, n = v, m
		}
	}
	return best
}

func shortLeaders(p *page) (t tally) {
	p.eachLeader(func(_ shown, pts []geom.Vec) {
		long := 0.0
		for i := 1; i < len(pts); i++ {
			long += pts[i].Dist(pts[i-1])
		}
		t.count(long <= 60 && len(pts) <= 3)
	})
	return t
}

func leaderAngles(p *page) (t tally) {
	p.eachLeader(func(_ shown, pts []geom.Vec) {
		d := pts[1].Sub(pts[0])
		a := math.Atan2(math.Abs(d.Y), math.Abs(d.X)) * 180 / math.Pi
		t.count(slices.ContainsFunc([]float64{0, 30, 45, 60}, func(v float64) bool { return math.Abs(a-v) < 2 }))
	})
	return t
}

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
