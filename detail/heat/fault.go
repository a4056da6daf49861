package heat

import (
	"fmt"
	"strings"
)

// Part is the kind of thing in a Case that a Fault is about.
type Part int

// The parts of a case.
const (
	InCase Part = iota
	InMaterial
	InEnv
	InBox
	InProbe
)

// String returns the part as a message calls it.
func (p Part) String() string {
	return [...]string{"case", "material", "environment", "box", "probe"}[p]
}

// Fault is one thing wrong with a Case, in words for the person who wrote it.
type Fault struct {
	Part    Part
	Index   int    // of the material, environment, box or probe, from 0; 0 for the case
	Given   string // what is wrong
	Allowed string // what may be
	Do      string // what to do
}

// Error returns the fault in one line.
func (f Fault) Error() string {
	where := f.Part.String()
	if f.Part != InCase {
		where = fmt.Sprintf("%s %d", where, f.Index+1)
	}
	var parts []string
	for _, s := range []string{f.Given, f.Allowed, f.Do} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	return where + ": " + strings.Join(parts, "; ")
}

// Faults is all that is wrong with a Case, materials first, then environments, boxes, probes.
type Faults []Fault

// Error returns one fault a line.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

func (fs *Faults) add(p Part, i int, given, allowed, do string) {
	*fs = append(*fs, Fault{p, i, given, allowed, do})
}

// err returns fs as an error, nil when there are none.
func (fs Faults) err() error {
	if len(fs) == 0 {
		return nil
	}
	return fs
}
