// Package trial tries a project with other values of its parameters.
//
//	t, err := trial.Base{Name: name, Src: src}.Try("blocks.max_spacing=24in")
//	worst := t.Report.Governs()
package trial

import (
	"slices"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/design"
	"standclear/detail/check/strength"
	"standclear/detail/spec"
)

// Base is a project file and the changes every trial starts from.
type Base struct {
	Name string // as printed in messages
	Src  []byte
	Sets []string // KEY=VALUE

	file  *spec.File // once it is parsed
	known *design.Known
}

// Parsed returns b with its file parsed, for many trials, at once or one after the other. They share what they
// have in common, so that none of them may be changed.
func (b Base) Parsed() Base {
	b.file, b.known = spec.Parse(b.Name, b.Src), design.NewKnown()
	return b
}

// Read reads the project with the changes.
func (b Base) Read(changes ...string) (*spec.Spec, spec.Problems) {
	if b.file == nil {
		b = b.Parsed()
	}
	return b.file.Read(slices.Concat(b.Sets, changes))
}

// Trial is one design, built and checked; heat is not part of it.
type Trial struct {
	Sets     []string // changes to the base
	Spec     *spec.Spec
	Assembly *detail.Assembly
	Report   check.Report
	Results  strength.Results
}

// Try reads the project with the changes, builds it and checks it. The error is a spec.Problems when a value
// cannot be read or is out of range, else what keeps the parts from being built.
func (b Base) Try(changes ...string) (*Trial, error) {
	s, problems := b.Read(changes...)
	if s == nil {
		return nil, problems
	}
	a, report, results, err := b.known.Check(s)
	if err != nil {
		return nil, err
	}
	return &Trial{Sets: changes, Spec: a.Spec, Assembly: a, Report: report, Results: results}, nil
}

// Commas cuts a text at its commas, those within brackets apart: "a=1, b=[2, 3]" is two changes.
func Commas(text string) []string {
	var out []string
	depth, from := 0, 0
	for i, c := range text {
		switch c {
		case '[', '{':
			depth++
		case ']', '}':
			depth--
		case ',':
			if depth == 0 {
				out = append(out, strings.TrimSpace(text[from:i]))
				from = i + 1
			}
		}
	}
	return append(out, strings.TrimSpace(text[from:]))
}
