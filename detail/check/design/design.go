// Package design runs every check on an assembly: strength on numbers measured from its parts, then
// fit, water and air.
//
//	report, results := design.Check(assembly)
package design

import (
	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/air"
	"standclear/detail/check/fit"
	"standclear/detail/check/strength"
	"standclear/detail/together"
)

// Check returns the whole report of an assembly and the strength results that sheets draw from.
func Check(a *detail.Assembly) (check.Report, strength.Results) {
	var report check.Report
	fitted := check.Report{Steps: make([]check.Step, 0, 96)}
	var results strength.Results
	together.Each(2, func(i int) { // each takes about as long as the other
		if i == 0 {
			report, results = strength.Run(Model(a))
			return
		}
		fit.Run(a, &fitted)
		air.Run(a, &fitted)
	})
	report.Steps = append(report.Steps, fitted.Steps...)
	report.Assumptions = append(report.Assumptions, fitted.Assumptions...)
	report.Cautions = append(report.Cautions, fitted.Cautions...)
	rest(a, &report)
	return report, results
}

// rest adds what takes no time.
func rest(a *detail.Assembly, r *check.Report) {
	deadLoad(a, r)
	leadHoles(a, r)
	plainLedger(a.Spec, r)
}
