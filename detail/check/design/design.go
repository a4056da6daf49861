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
)

// Check returns the whole report of an assembly and the strength results that sheets draw from.
func Check(a *detail.Assembly) (check.Report, strength.Results) {
	report, results := strength.Run(Model(a))
	fit.Run(a, &report)
	air.Run(a, &report)
	deadLoad(a, &report)
	leadHoles(a, &report)
	plainLedger(a.Spec, &report)
	return report, results
}
