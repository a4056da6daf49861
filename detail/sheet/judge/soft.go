package judge

import (
	"fmt"
	"math"
	"slices"

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
