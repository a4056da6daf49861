package geom

import "math"

// chainTurn is the angle in radians up to which chords of one curve may turn where they meet.
const chainTurn = 0.6

// chain strings chords that follow a curve into runs, so that a dashed line style runs on over them. Two
// chords are joined when they are of one class, meet end to end, meet no third, and turn little. The runs
// come in the order of their first chords; what is no chord is a run by itself.
//
//	 _.--._            an ellipse drawn in chords, half hidden:
//	/      \           one run of visible chords, one of hidden ones
//	'- - - -'
func chain(ss []stroke) [][]stroke {
	c := chainer{ss: ss, points: newVertices(64), used: make([]bool, len(ss))}
	for i := range ss {
		if ss[i].bent {
			c.file(int32(i))
		}
	}
	runs := make([][]stroke, 0, len(ss))
	for i := range ss {
		switch {
		case c.used[i]:
		case ss[i].bent:
			runs = append(runs, c.run(int32(i)))
		default:
			runs = append(runs, ss[i:i+1])
		}
	}
	return runs
}

// chainer knows which chords end at which point.
type chainer struct {
	ss     []stroke
	points *vertices
	ends   [][]int32
	used   []bool
}

func (c *chainer) file(i int32) {
	for _, p := range [2]Vec{c.ss[i].a, c.ss[i].b} {
		n := c.points.at(p)
		for int(n) >= len(c.ends) {
			c.ends = append(c.ends, nil)
		}
		c.ends[n] = append(c.ends[n], i)
	}
}

// run returns the run that chord i is part of, started at its rear end if it has ends.
func (c *chainer) run(i int32) []stroke {
	first := c.ss[i]
	back := first
	back.curve = back.reverse()
	c.used[i] = true
	ahead := c.follow(first)
	behind := c.follow(back)
	run := make([]stroke, 0, len(ahead)+len(behind)+1)
	for n := len(behind) - 1; n >= 0; n-- {
		s := behind[n]
		s.curve = s.reverse()
		run = append(run, s)
	}
	return append(append(run, first), ahead...)
}

// follow returns the chords after s, each turned to start where the one before ends.
func (c *chainer) follow(s stroke) []stroke {
	var run []stroke
	for {
		n, ok := c.next(s)
		if !ok {
			return run
		}
		run, s = append(run, n), n
	}
}

// next returns the one chord that goes on from the end of s.
func (c *chainer) next(s stroke) (stroke, bool) {
	here := c.ends[c.points.at(s.b)]
	if len(here) != 2 {
		return stroke{}, false
	}
	for _, i := range here {
		n := c.ss[i]
		if c.used[i] || n.rank != s.rank || n.owner != s.owner {
			continue
		}
		if !n.a.Near(s.b) {
			n.curve = n.reverse()
		}
		u, v := s.b.Sub(s.a), n.b.Sub(n.a)
		if n.a.Near(s.b) && math.Abs(math.Atan2(u.Cross(v), u.Dot(v))) < chainTurn {
			c.used[i] = true
			return n, true
		}
	}
	return stroke{}, false
}

// runPath returns a run of strokes as a path, closed when it comes back to its start.
func runPath(run []stroke) Path {
	if len(run) == 1 {
		return run[0].path()
	}
	var p Path
	for _, s := range run {
		p.V = append(p.V, Vertex{Vec: s.a})
	}
	if last := run[len(run)-1].b; last.Near(run[0].a) {
		p.Closed = true
	} else {
		p.V = append(p.V, Vertex{Vec: last})
	}
	return p
}
