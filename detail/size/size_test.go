package size_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/demo"
	"standclear/detail/size"
	"standclear/detail/spec"
	"standclear/detail/trial"
)

// The best fails nothing when it is checked anew, and what is said to stop it does.
func TestBestAndStops(t *testing.T) {
	for _, name := range demo.Names() {
		src, _ := demo.File(name)
		b := trial.Base{Name: name, Src: src}
		aims := []size.Least{size.Blocks}
		if name == "balcony" {
			aims = []size.Least{size.Heat, size.Fasteners}
		}
		for _, least := range aims {
			r, err := size.Search(context.Background(), b, size.Options{Free: []string{"blocks.max_spacing", "fasteners.through.diameter"}, Least: least})
			if err != nil || r.Best == nil {
				t.Fatal(name, err)
			}
			best, err := b.Try(r.Best.Sets...)
			if err != nil || best.Report.Count(check.Fails) > 0 || len(best.Assembly.Blocks) != r.Best.Blocks {
				t.Errorf("%s: %v: %v", name, r.Best.Sets, err)
			}
			if least == size.Blocks && r.Best.Blocks > r.Now.Blocks {
				t.Errorf("%s: %d blocks, %d as it stands", name, r.Best.Blocks, r.Now.Blocks)
			}
			failing := 0
			for _, s := range r.Stops {
				if s.Check == "" {
					continue
				}
				failing++
				next, err := b.Try(s.Sets...)
				if err != nil {
					t.Fatal(err)
				}
				found := false
				for _, step := range next.Report.Steps {
					found = found || step.Name == s.Check && step.Verdict == check.Fails
				}
				if !found {
					t.Errorf("%s: %v does not fail %s", name, s.Sets, s.Check)
				}
			}
			if failing == 0 {
				t.Errorf("%s: nothing stops %v", name, r.Best.Sets)
			}
			for i, d := range r.Front {
				for k, o := range r.Front {
					if i != k && o.Parts() <= d.Parts() && o.Ratio <= d.Ratio && k < i {
						t.Errorf("%s: %v is beaten by %v", name, d.Sets, o.Sets)
					}
				}
			}
		}
	}
}

// Bolts of stock have a hole within what NDS 2018 12.1.3.2 allows, 1/32 to 1/16 in over: 5/8 in one of 11/16;
// M16 one of 17.5, 1.5 mm over.
func TestStock(t *testing.T) {
	for name, want := range map[string]string{"deck": "5/8in fasteners.through.hole=11/16in", "deck-metric": "M16 fasteners.through.hole=17.5mm"} {
		src, _ := demo.File(name)
		s, _ := spec.Read(name, src, nil)
		a, err := size.Stock("fasteners.through.diameter", s)
		if err != nil {
			t.Fatal(err)
		}
		found := false
		for _, p := range a.Points {
			found = found || p.Text+" "+p.Sets[1] == want
		}
		if !found {
			t.Errorf("%s: no %s", name, want)
		}
		now := s.Blocks.Depth()
		stacks, err := size.Stock("blocks.plies", s)
		if err != nil || len(stacks.Points) < 3 {
			t.Fatal(err, len(stacks.Points))
		}
		there := false
		for _, p := range stacks.Points {
			there = there || math.Abs(p.At-now) < 1e-6
			if p.At < now/2-1e-6 || p.At > 1.5*now+1e-6 {
				t.Errorf("%s: a stack of %.0f mm for one of %.0f", name, p.At, now)
			}
		}
		if !there {
			t.Errorf("%s: the stack there is is not among %v", name, stacks.Points)
		}
		for _, key := range []string{"deck.span", "fasteners.to_rim.diameter", "fasteners.through.rows"} {
			if _, err := size.Stock(key, s); err == nil || !strings.Contains(err.Error(), "blocks.max_spacing") {
				t.Errorf("%s: %v", key, err)
			}
		}
	}
}

// Fasteners dear, the design of fewest fasteners is the cheapest; blocks dear, that of fewest blocks.
func TestLeastCost(t *testing.T) {
	src, _ := demo.File("balcony")
	free := []string{"blocks.max_spacing", "fasteners.through.diameter"}
	find := func(least size.Least, rates string) *size.Design {
		t.Helper()
		r, err := size.Search(context.Background(), trial.Base{Name: "balcony", Src: src, Sets: []string{"rates=" + rates}}, size.Options{Free: free, Least: least})
		if err != nil || r.Best == nil {
			t.Fatal(err)
		}
		return r.Best
	}
	few := find(size.Fasteners, "{fastener: 1}")
	if d := find(size.Cost, "{block: 0, lumber: 0/m, fastener: 10, hour: 0, block_hours: 0, fastener_hours: 0}"); d.Fasteners != few.Fasteners || d.Cost != 10*float64(few.Fasteners) {
		t.Errorf("%d fasteners for %g; the fewest are %d", d.Fasteners, d.Cost, few.Fasteners)
	}
	low := find(size.Blocks, "{block: 1}")
	if d := find(size.Cost, "{block: 30, lumber: 0/m, fastener: 0, hour: 0, block_hours: 0, fastener_hours: 0}"); d.Blocks != low.Blocks || d.Cost != 30*float64(low.Blocks) {
		t.Errorf("%d blocks for %g; the fewest are %d", d.Blocks, d.Cost, low.Blocks)
	}
}

func TestNoCost(t *testing.T) {
	src, _ := demo.File("deck")
	if _, err := size.Search(context.Background(), trial.Base{Name: "deck", Src: src}, size.Options{Free: []string{"blocks.width"}, Least: size.Cost}); !errors.Is(err, size.ErrNoRates) {
		t.Errorf("%v", err)
	}
}
