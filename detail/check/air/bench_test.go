package air_test

import (
	"testing"

	"standclear/detail/check"
	"standclear/detail/check/air"
	"standclear/detail/detailtest"
)

func BenchmarkRun(b *testing.B) {
	a := detailtest.Demo(b, "deck")
	for b.Loop() {
		var r check.Report
		air.Run(a, &r)
	}
}
