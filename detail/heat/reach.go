package heat

import "fmt"

// around are the six ways out of a region: axis and step.
var around = [6]struct {
	axis Axis
	step int
}{{X, -1}, {X, 1}, {Y, -1}, {Y, 1}, {Z, -1}, {Z, 1}}

// next returns the region one step from n, or -1 at the edge of the domain.
func (l *layout) next(n int, a Axis, step int) int {
	stride, size := 1, l.regions(a)
	for b := X; b < a; b++ {
		stride *= l.regions(b)
	}
	if p := n/stride%size + step; p < 0 || p >= size {
		return -1
	}
	return n + step*stride
}

// reached finds material that no environment touches, whose temperature nothing decides, and
// environments that touch nothing.
func (l *layout) reached(fs *Faults) {
	seen := make([]bool, len(l.kind))
	touches := make([]bool, len(l.c.Envs))
	for n, k := range l.kind {
		if k == solid && !seen[n] && !l.flood(n, seen, touches) {
			lo, hi := l.bounds(n)
			fs.add(InBox, l.owner[n], fmt.Sprintf("no environment touches the material at %s to %s mm, or what it joins", l.words(lo), l.words(hi)), "",
				"give the face toward the room or the outside a box of that environment")
			break
		}
	}
	for e, env := range l.c.Envs {
		if !touches[e] && len(*fs) == 0 {
			fs.add(InEnv, e, fmt.Sprintf("%q touches no material", env.Name), "", "give it a box that shares a face with one, or take it out")
		}
	}
}

// flood marks all solid regions that join n, and the environments they touch; it reports whether there
// is any.
func (l *layout) flood(n int, seen, touches []bool) bool {
	found := false
	seen[n] = true
	for todo := []int{n}; len(todo) > 0; {
		n, todo = todo[len(todo)-1], todo[:len(todo)-1]
		for _, way := range around {
			m := l.next(n, way.axis, way.step)
			switch {
			case m < 0 || seen[m]:
			case l.kind[m] == air:
				found = true
				touches[l.env[l.owner[m]]] = true
			case l.kind[m] == solid:
				seen[m] = true
				todo = append(todo, m)
			}
		}
	}
	return found
}
