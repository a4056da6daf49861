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
	var report, rest check.Report
	var results strength.Results
	together.Each(2, func(i int) { // each takes about as long as the other
		if i == 0 {
			report, results = strength.Run(Model(a))
			return
		}
		fit.Run(a, &rest)
		air.Run(a, &rest)
	})
	report.Steps = append(report.Steps, rest.Steps...)
	report.Assumptions = append(report.Assumptions, rest.Assumptions...)
	report.Cautions = append(report.Cautions, rest.Cautions...)
	deadLoad(a, &report)
	leadHoles(a, &report)
	plainLedger(a.Spec, &report)
	return report, results
}
