package sweep_test

import (
	"context"
	"testing"

	"standclear/detail/demo"
	"standclear/detail/sweep"
	"standclear/detail/trial"
	"standclear/detail/unit"
)

// Designs a second of whole sweeps of the deck, nothing known before: many that come out with the same blocks,
// a load beside, dimensions of the block beside, and last such that no two designs have anything in common.
func BenchmarkRun(b *testing.B) {
	src, _ := demo.File("deck")
	for _, s := range []struct {
		name string
		vary []string
	}{
		{"spacing", []string{"blocks.max_spacing=18in..60in/1/8in"}},
		{"spacing and load", []string{"blocks.max_spacing=24in..96in/4in", "loads.live=40psf..100psf/4psf"}},
		{"spacing, width and bolt", []string{"blocks.max_spacing=24in..96in/4in", "blocks.width=6in..9in/1in", "fasteners.through.diameter=1/2in,5/8in,3/4in"}},
		{"bolt, width and spacing", []string{"fasteners.through.diameter=1/2in,5/8in,3/4in", "blocks.width=6in..9in/1in", "blocks.max_spacing=24in..96in/4in"}},
		{"nothing in common", []string{"blocks.width=6in..9in/1/16in", "deck.span=9ft..11ft/6in"}},
	} {
		var axes []sweep.Axis
		for _, v := range s.vary {
			a, err := sweep.Parse(v, unit.IP)
			if err != nil {
				b.Fatal(err)
			}
			axes = append(axes, a)
		}
		b.Run(s.name, func(b *testing.B) {
			rows := 0
			for b.Loop() {
				r, err := sweep.Run(context.Background(), trial.Base{Name: "deck", Src: src}, axes, sweep.Options{})
				if err != nil {
					b.Fatal(err)
				}
				rows += len(r)
			}
			b.ReportMetric(float64(rows)/b.Elapsed().Seconds(), "designs/s")
		})
	}
}
