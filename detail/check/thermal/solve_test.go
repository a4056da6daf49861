package thermal

import (
	"context"
	"fmt"
	"testing"
	"time"

	"standclear/detail"
	"standclear/detail/demo"
	"standclear/detail/spec"
)

func assembly(t testing.TB, name string, sets ...string) *detail.Assembly {
	t.Helper()
	src, _ := demo.File(name)
	s, problems := spec.Read(name, src, sets)
	if s == nil {
		t.Fatal(problems)
	}
	a, err := detail.Build(s)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestTry(t *testing.T) {
	for _, n := range []string{"deck", "balcony", "deck-metric", "balcony-metric"} {
		a := assembly(t, n)
		at := time.Now()
		last := at
		was := 0
		r, err := Solve(context.Background(), a, Options{Progress: func(step, of int, what string) {
			if step != was {
				fmt.Println(step, of, what, time.Since(last))
				was, last = step, time.Now()
			}
		}})
		if err != nil {
			t.Fatal(err)
		}
		fmt.Println(n, time.Since(at), "U", r.Wall, r.Met, r.Cells, r.Balance, r.Bay, r.Block, "low", r.Low, "bolts", r.Bolts)
		for _, w := range r.Ways {
			fmt.Println(w.Key, "bay", w.Bay, "run", w.Run, "per m", r.PerMetre(&w), "saved", r.Saved(&w), "low", w.Low, "R", 5.678/r.Effective(&w).V)
		}
		for _, s := range r.Spots {
			fmt.Println(s.Key, s.Where, s.At, s.F)
		}
	}
}
