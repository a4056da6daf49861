package sheet_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"standclear/detail/demo"
	"standclear/geom"
	"standclear/render"
)

// Every mark in a balloon is in the list beside it and in the schedule, and the reverse; each once.
func TestBalloonsAreTheSchedule(t *testing.T) {
	for _, d := range demo.Names() {
		s := compose(t, d)
		sh := sheetOf(t, s, "A-601")
		var balloons []string
		for _, it := range sh.Views[0].Items {
			if in, ok := it.(render.Insert); ok && in.Symbol.Name == "SC-MARK" {
				balloons = append(balloons, in.Fields[0].Value)
			}
		}
		var listed []string
		mark := regexp.MustCompile(`^[A-Z]{1,2}\d*$`)
		inList := false
		for _, it := range sh.Items {
			if tx, ok := it.(render.Text); ok {
				inList = inList || strings.HasPrefix(tx.Lines[0], "PARTS IN BUILDING ORDER")
				if inList && tx.Align == render.MiddleLeft && !tx.Bold && mark.MatchString(tx.Lines[0]) {
					listed = append(listed, tx.Lines[0])
				}
			}
		}
		var scheduled []string
		for _, l := range s.a.Schedule() {
			scheduled = append(scheduled, l.Mark)
		}
		if len(balloons) < 20 {
			t.Errorf("%s: only %d balloons", d, len(balloons))
		}
		for _, m := range balloons {
			if !slices.Contains(scheduled, m) {
				t.Errorf("%s: %s is not in the schedule", d, m)
			}
		}
		slices.Sort(balloons)
		slices.Sort(listed)
		if !slices.Equal(balloons, listed) {
			t.Errorf("%s: balloons %v, list %v", d, balloons, listed)
		}
	}
}

// No line of a balloon crosses that of another (L5), none runs into a circle, and none is longer than 90 mm.
func TestBalloonLinesDoNotCross(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		sh := sheetOf(t, s, "A-601")
		if len(sh.Views) == 0 {
			return
		}
		v := sh.Views[0]
		var lines []render.Leader
		var rounds []geom.Vec
		for _, it := range v.Items {
			switch it := it.(type) {
			case render.Leader:
				lines = append(lines, it)
			case render.Insert:
				if it.Symbol.Name == "SC-MARK" {
					rounds = append(rounds, it.At)
				}
			}
		}
		for i, l := range lines {
			if long := geom.Polyline(l.Points...).Length() / v.Scale.K; long > 90 {
				t.Errorf("line %d is %.0f mm long", i, long)
			}
			for _, o := range lines[:i] {
				if meet(l.Points, o.Points) {
					t.Errorf("two balloon lines cross at %v", l.Points[0])
				}
			}
			for j, r := range rounds {
				disc := geom.Circle(r, 3.9*v.Scale.K)
				if in := geom.ClipPath(geom.Polyline(l.Points...), disc, true); len(in) > 0 {
					t.Errorf("line %d runs into circle %d", i, j)
				}
			}
		}
	})
}

func meet(p, q []geom.Vec) bool {
	for i := 1; i < len(p); i++ {
		for j := 1; j < len(q); j++ {
			d, e := p[i].Sub(p[i-1]), q[j].Sub(q[j-1])
			det := d.Cross(e)
			if det == 0 {
				continue
			}
			t, u := q[j-1].Sub(p[i-1]).Cross(e)/det, q[j-1].Sub(p[i-1]).Cross(d)/det
			if t > 0 && t < 1 && u > 0 && u < 1 {
				return true
			}
		}
	}
	return false
}
