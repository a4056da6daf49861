// Package asbuilt holds what a builder measured on the finished work against the design: what is within tolerance,
// what is off, and which checks of the design turn when the project is built anew with the measured values.
//
//	field, problems := asbuilt.Read("field.yaml", src, assembly)
//	result, err := asbuilt.Verify(asbuilt.Design{Assembly: assembly, Report: &report, Again: again}, field)
//	fmt.Println(result.Count(asbuilt.Fails), "fail")
//
// Every measured value goes into the re-check, within tolerance or not: a distance that the design keeps to the
// last sixteenth is not kept when the hole is a sixteenth off. What was not measured stands as drawn and says
// NOT CHECKED.
package asbuilt

import (
	"slices"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/design"
	"standclear/detail/unit"
)

// Design is the project as drawn. Its report is that of design.Check on the assembly.
type Design struct {
	Assembly *detail.Assembly
	Report   *check.Report
	Again    design.Reread
}

// Verdict is what is said of one measured thing.
type Verdict string

// The verdicts. Off is beyond its tolerance, yet every check that rests on it holds with the measured value.
const (
	OK         Verdict = "OK"
	Off        Verdict = "OFF, HOLDS"
	NotChecked Verdict = "NOT CHECKED" // not measured, or a check that rests on it cannot be done with it
	Engineer   Verdict = "ENGINEER"    // takes the design beyond what may be judged here
	Fails      Verdict = "FAILS"
)

// of is what a check that turned says of what turned it.
func of(v check.Verdict) Verdict {
	return map[check.Verdict]Verdict{check.Fails: Fails, check.Engineer: Engineer, check.NotChecked: NotChecked}[v]
}

// rank orders the verdicts, mildest first.
func (v Verdict) rank() int {
	return slices.Index([]Verdict{OK, Off, NotChecked, Engineer, Fails}, v)
}

// Item is one thing to measure, drawn and found. A word stands for what has no number.
type Item struct {
	Key       string // in the field file: "rim.thickness", "blocks.B3.through.count"
	Name      string // "thickness of the rim"
	Where     string // mark of the block, "" for the whole
	Kind      unit.Kind
	Word      bool // Drawn and Found are words
	Drawn     Value
	Found     *Value // nil: not measured
	Tolerance unit.Length
	Exact     bool   // no tolerance: a word, a count
	Source    string // of the tolerance
	Verdict   Verdict
	Reason    string
	Remedy    string // how the builder puts it right
}

// Value is a number in the base unit of its kind, or a word.
type Value struct {
	V    float64
	Word string
}

// Turn is one check of the design whose verdict or value changed with the measured values.
type Turn struct {
	Step   check.Step  // as built
	Drawn  *check.Step // as drawn; nil: the design has no such line
	Where  string      // "" for the whole, else the block whose own measures turned it
	Worse  bool        // its verdict is worse than that of the design
	Causes []string    // keys of what was measured that each turn it alone; none: only together
	Remedy string      // the smallest change that mends it, checked anew
}

// Result is the comparison and the re-check.
type Result struct {
	System  unit.System
	By      string // who measured, and when, as the field sheet says
	Date    string
	Items   []Item
	Turns   []Turn       // worse ones first, then by ratio
	Report  check.Report // the checks of the whole with the measured values
	Already []string     // names of checks that fail as drawn
	Notes   []string     // what the re-check took for granted
}

// Count returns how many items have the verdict.
func (r *Result) Count(v Verdict) int {
	n := 0
	for _, i := range r.Items {
		if i.Verdict == v {
			n++
		}
	}
	return n
}

// Turned returns how many checks changed to the verdict from a milder one.
func (r *Result) Turned(v check.Verdict) int {
	n := 0
	for _, t := range r.Turns {
		if t.Worse && t.Step.Verdict == v {
			n++
		}
	}
	return n
}

// Bad reports whether anything fails: a measured thing, a check with the measured values, or the design itself.
func (r *Result) Bad() bool {
	return r.Count(Fails) > 0 || r.Turned(check.Fails) > 0 || r.Report.Count(check.Fails) > 0 || len(r.Already) > 0
}

// Open reports whether anything is not checked or left to the engineer.
func (r *Result) Open() bool {
	return r.Count(NotChecked) > 0 || r.Turned(check.NotChecked)+r.Turned(check.Engineer) > 0 || r.Report.Count(check.NotChecked)+r.Report.Count(check.Engineer) > 0
}
