package design

import (
	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/air"
	"standclear/detail/check/fit"
	"standclear/detail/check/strength"
	"standclear/detail/kept"
	"standclear/detail/same"
	"standclear/detail/spec"
)

// Known builds and checks many designs and does what two of them have in common once: parts that are the same,
// the strength of the same model, the fit of the same parts in the same climate. What it returns is what
// detail.Build and Check would. It may be used by several goroutines at once; nil keeps nothing.
type Known struct {
	parts  *kept.Store[*detail.Assembly]
	strong *kept.Store[*strongly]
	fitted *kept.Store[*check.Report]
}

// NewKnown returns a Known that keeps some tens of designs of usual size, fewer large ones: what the inner axes of a
// sweep come back to.
func NewKnown() *Known {
	return &Known{
		parts:  kept.New(48<<20, func(a *detail.Assembly) int { return 1000 * len(a.Parts) }),
		strong: kept.New(8<<20, func(s *strongly) int { return 600*len(s.report.Steps) + 64*len(s.results.Diagram) }),
		fitted: kept.New(4<<20, func(r *check.Report) int { return 600 * len(r.Steps) }),
	}
}

// strongly is what strength.Run returns.
type strongly struct {
	report  check.Report
	results strength.Results
}

// Check builds a project and checks it. Assembly, report and results share parts, steps and lists with those of
// other projects: none may be changed.
func (k *Known) Check(s *spec.Spec) (*detail.Assembly, check.Report, strength.Results, error) {
	if k == nil {
		a, err := detail.Build(s)
		if err != nil {
			return nil, check.Report{}, strength.Results{}, err
		}
		report, results := Check(a)
		return a, report, results, nil
	}
	a, err := detail.Lay(s)
	if err != nil {
		return nil, check.Report{}, strength.Results{}, err
	}
	key := a.Key()
	if parts := k.parts.Get(key, func() *detail.Assembly { a.Fill(); return a }); parts != a {
		a = a.Adopt(parts)
	}
	m := Model(a)
	strong := k.strong.Get(same.Of(m), func() *strongly {
		var r strongly
		r.report, r.results = strength.Run(m)
		return &r
	})
	fitted := k.fitted.Get(fitKey(a, key), func() *check.Report {
		r := check.Report{Steps: make([]check.Step, 0, 96)}
		fit.Parts(a, &r)
		air.Run(a, &r)
		return &r
	})
	var row check.Report
	fit.Row(a, &row)
	report := joined(strong.report, row, *fitted)
	rest(a, &report)
	return a, report, strong.results, nil
}

// fitKey is equal for assemblies of which fit.Parts and air.Run say the same; parts is the key of their parts.
func fitKey(a *detail.Assembly, parts same.Sum) same.Sum {
	return same.Of(parts, a.Spec.Site, a.Spec.Words())
}

// joined puts reports one after the other.
func joined(all ...check.Report) (r check.Report) {
	n := 8 // room for rest
	for _, one := range all {
		n += len(one.Steps)
	}
	r.Steps = make([]check.Step, 0, n)
	for _, one := range all {
		r.Steps = append(r.Steps, one.Steps...)
		r.Assumptions = append(r.Assumptions, one.Assumptions...)
		r.Cautions = append(r.Cautions, one.Cautions...)
	}
	return r
}
