package thermal

import (
	"context"
	"runtime"
	"testing"

	"standclear/detail/detailtest"
	"standclear/detail/heat"
)

// BenchmarkBlock is what one block of the demo adds in heat, with its error, at the default error of 1 %: the
// bay without and with the attachment.
func BenchmarkBlock(b *testing.B) {
	a := detailtest.Demo(b, "deck")
	var last [2]*heat.Result
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	for b.Loop() {
		r := newRun(a, Options{})
		r.ctx = context.Background()
		drawn, _ := r.b.ways(r.out.Block)
		g := r.align([]variant{drawn})
		for i, c := range []heat.Case{g.compose("without", nil, rsInside, nil), g.compose("with", g.ways[0].boxes, rsInside, nil)} {
			res, err := r.one(c, drawnCare)
			if err != nil {
				b.Fatal(err)
			}
			last[i] = res
		}
	}
	runtime.ReadMemStats(&after)
	sec := b.Elapsed().Seconds() / float64(b.N)
	cells, rounds := 0, 0
	for _, res := range last {
		for _, g := range res.Grids {
			cells, rounds = cells+g.Cells, rounds+g.Rounds
		}
	}
	chi := added(last[1], last[0])
	b.ReportMetric(float64(cells), "cells")
	b.ReportMetric(float64(cells)/sec, "cells/s")
	b.ReportMetric(float64(after.TotalAlloc-before.TotalAlloc)/float64(b.N)/float64(cells), "B/cell")
	b.ReportMetric(float64(rounds), "rounds")
	b.ReportMetric(chi.V, "W/K")
	b.ReportMetric(chi.Err, "W/K-error")
}
