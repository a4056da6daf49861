package air_test

import (
	"testing"

	"standclear/detail/check"
	"standclear/detail/check/air"
)

func BenchmarkRun(b *testing.B) {
	a := assembled(b, "deck")
	for b.Loop() {
		var r check.Report
		air.Run(a, &r)
	}
}
