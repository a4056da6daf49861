// Package judge measures finished sheets against the rules of drafting. It knows nothing of how a sheet
// was composed: it looks at what the writers put on paper.
//
//	found, err := judge.Layout(sheet)           // hard rules of one sheet, L1 to L8, L11, L12
//	found, err = judge.Agree(sheets, assembly)  // L9, L10 and what the sheets of a set must say alike
//	score, err := judge.Soft(sheet)             // how well the sheet reads, rule by rule
//
// The hard rules; a sheet that breaks one must not go out:
//
//	L1   no text lies over another
//	L2   no line, hatch or fill runs through a text that no white ground keeps clear
//	L3   nothing leaves the frame of the sheet or the opening of its view
//	L4   no text is lower than 2.0 mm (0.08 in)
//	L5   no leader crosses a leader
//	L6   no leader or extension line crosses a dimension line
//	L7   chains of dimensions add up as printed; no dimension hides its value
//	L8   the printed scale is the drawn one
//	L9   every mark on a view is in the schedule, and the reverse
//	L10  quantities are equal wherever they stand
//	L11  every cut part is hatched or noted
//	L12  views stand 12 mm apart and off everything else
//	C1 to C5  the sheets of a set agree: see Agree
//
// The limits are a judgement after usual office practice.
package judge

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// Violation is one place where a sheet breaks a hard rule.
type Violation struct {
	Sheet string   // its ID; "" for the whole set
	Rule  string   // "L1"
	At    geom.Vec // paper mm from the lower left corner
	What  string   // what is wrong
	Texts []string // the texts involved, as lettered
}

// String is one line: sheet, rule, place, what is wrong, the texts.
func (v Violation) String() string {
	s := fmt.Sprintf("%s %s at %.1f, %.1f mm: %s", v.Sheet, v.Rule, v.At.X, v.At.Y, v.What)
	for i, t := range v.Texts {
		s += fmt.Sprintf("%s%q", []string{": ", ", "}[min(i, 1)], t)
	}
	return s
}

// Layout returns where a sheet breaks the hard rules that it can be judged by alone, ordered by rule and
// place. The error is that of render.Sheet.Flatten.
func Layout(s *render.Sheet) ([]Violation, error) {
	p, err := read(s)
	if err != nil {
		return nil, err
	}
	for _, rule := range []func(*page){
		textOverText, lineThroughText, fillAtText, outside, tooSmall, leadersCross, throughDimension, chainsAddUp, scales, cutUnmarked, viewsApart,
	} {
		rule(p)
	}
	sorted(p.found)
	return p.found, nil
}

// sorted brings violations into one order, whatever found them first.
func sorted(all []Violation) {
	slices.SortStableFunc(all, func(a, b Violation) int {
		return cmp.Or(strings.Compare(a.Sheet, b.Sheet), cmp.Compare(len(a.Rule), len(b.Rule)), strings.Compare(a.Rule, b.Rule),
			cmp.Compare(milli(a.At.Y), milli(b.At.Y)), cmp.Compare(milli(a.At.X), milli(b.At.X)), strings.Compare(a.String(), b.String()))
	})
}

// milli is a length in thousandths, so that equal places are equal numbers.
func milli(v float64) int { return int(math.Round(v * 1000)) }

func (p *page) fail(rule string, at geom.Vec, texts []string, format string, a ...any) {
	p.found = append(p.found, Violation{Sheet: p.sheet.ID, Rule: rule, At: at, What: fmt.Sprintf(format, a...), Texts: texts})
}
