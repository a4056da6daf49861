// Package spectest makes projects at random for tests: one of the demos with many of its parameters changed,
// as a user might change them, and always a project that reads without a problem.
//
//	p := spectest.Random(7)
//	s, _ := spec.Read(p.Demo, p.Source, p.Sets)
package spectest

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"

	"standclear/detail/demo"
	"standclear/detail/spec"
)

// Project is a demo and the changes made to it.
type Project struct {
	Demo   string   // its name
	Source []byte   // the demo's file
	Sets   []string // as --set takes them
	Spec   *spec.Spec
}

// String is the command line that draws the project.
func (p Project) String() string {
	s := "standclear draw --demo " + p.Demo
	for _, v := range p.Sets {
		s += " --set '" + strings.ReplaceAll(v, "'", `'\''`) + "'"
	}
	return s
}

// Random returns the project of a number, the same every time. A change that makes the file unreadable,
// alone or with those before it, is left out.
func Random(n uint64) Project {
	r := rand.New(rand.NewPCG(n, 0x5ec))
	names := demo.Names()
	p := Project{Demo: names[r.IntN(len(names))]}
	p.Source, _ = demo.File(p.Demo)
	p.Spec, _ = spec.Read(p.Demo, p.Source, nil)
	g := &maker{Rand: r, metric: strings.HasSuffix(p.Demo, "metric")}
	var some []change
	for _, i := range r.Perm(len(changes)) {
		if r.IntN(3) == 0 {
			some = append(some, changes[i])
		}
	}
	p.make(g, some)
	return p
}

// make makes the changes, those of them that read: all at once where that goes, else by halves.
func (p *Project) make(g *maker, some []change) {
	if len(some) == 0 {
		return
	}
	sets := slices.Clone(p.Sets)
	for _, c := range some {
		sets = append(sets, c(g, p.Spec)...)
	}
	if s, problems := spec.Read(p.Demo, p.Source, sets); len(problems) == 0 {
		p.Sets, p.Spec = sets, s
	} else if n := len(some); n > 1 {
		p.make(g, some[:n/2])
		p.make(g, some[n/2:])
	}
}

// maker draws values at random.
type maker struct {
	*rand.Rand
	metric bool
}

// one picks a word.
func (g *maker) one(words ...string) string { return words[g.IntN(len(words))] }

// yes is true n times in a hundred.
func (g *maker) yes(n int) bool { return g.IntN(100) < n }

// length is a length between two, given in inches, in steps of the demo's system: mostly a sixteenth or a
// millimetre, now and then a coarse step.
func (g *maker) length(lo, hi float64) string {
	in := lo + (hi-lo)*g.Float64()
	switch {
	case g.metric && g.yes(50):
		return fmt.Sprintf("%.0fmm", in*25.4)
	case g.metric:
		return fmt.Sprintf("%.0fmm", float64(int(in*25.4/5))*5)
	case g.yes(50):
		return fmt.Sprintf("%gin", float64(int(in*16))/16)
	}
	return fmt.Sprintf("%gin", float64(int(in*2))/2)
}

// list is up to most lengths between two, rising.
func (g *maker) list(least, most int, lo, hi float64) string {
	n := least + g.IntN(most-least+1)
	at := make([]float64, n)
	for i := range at {
		at[i] = lo + (hi-lo)*g.Float64()
	}
	slices.Sort(at)
	out := make([]string, n)
	for i, v := range at {
		out[i] = g.length(v, v)
	}
	return "[" + strings.Join(out, ", ") + "]"
}
