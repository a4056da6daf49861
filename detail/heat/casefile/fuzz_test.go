package casefile

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"standclear/detail/heat"
	"standclear/detail/spec"
)

// No file makes the reader or the solver panic. What reads has a place for every part, and is solved, or refused at
// places in the file: its temperatures then lie between those of its environments, and no heat is lost.
func FuzzRead(f *testing.F) {
	f.Add([]byte(wall))
	f.Add([]byte(strings.Replace(wall, "    - {x: [0mm, 1m], y: [0mm, 120mm]", "    - {x: [0mm, 1m], y: [0mm, 60mm]", 1)))
	f.Add([]byte(strings.Replace(wall, "dimensions: 2", "dimensions: 3", 1)))
	f.Add([]byte("dimensions: 3\nmaterials: {a: [1 W/mK, 1 W/mK, 1 W/mK]}\nrods: [{x: [0mm, 1mm]}]\nprobes: {P: [~, 1mm, 2mm]}"))
	f.Add([]byte("dimensions: 3\nmaterials: {a: 1 W/mK, s: 50 W/mK}\nenvironments: {i: {temperature: 20C, resistance: 0.1 m2K/W}, o: {temperature: 0C, resistance: 0.04 m2K/W}}\n" +
		"boxes:\n- {x: [0mm, 9mm], y: [-1mm, 0mm], z: [0mm, 9mm], environment: i}\n- {x: [0mm, 9mm], y: [0mm, 9mm], z: [0mm, 9mm], material: a}\n- {x: [0mm, 9mm], y: [9mm, 10mm], z: [0mm, 9mm], environment: o}\n" +
		"rods: [{x: 4mm, y: [0mm, 9mm], z: 4mm, diameter: 2mm, material: s}]\nprobes: {P: [4mm, 0mm, 4mm]}"))
	f.Add([]byte("dimensions: 2\nboxes: [{x: [1mm, 0mm]}, 3, [], {}]\nenvironments: {a: 3, b: {temperature: 1C}}"))
	f.Add([]byte("dimensions: 2\nmaterials: {c: {air: 25mm, flow: up}}\nenvironments: {a: {temperature: 20C, coefficient: 8 W/m2K}, b: {temperature: 0C, coefficient: 25 W/m2K}}\nboxes: [{x: [0mm, 1mm], y: [0mm, 1mm], environment: a}, {x: [1mm, 2mm], y: [0mm, 1mm], material: c}, {x: [2mm, 3mm], y: [0mm, 1mm], environment: b}]"))
	f.Add([]byte("a: &b\n  c: *b\n? [x]\n: y\n<<: {d: e}"))
	f.Fuzz(func(t *testing.T, src []byte) {
		file, problems := Read("f.yaml", src)
		if (file == nil) == (problems == nil) {
			t.Fatalf("file %v, problems %v", file, problems)
		}
		placed(t, problems)
		if file == nil || len(file.Case.Boxes) > 20 {
			return
		}
		if len(file.parts[heat.InBox]) != len(file.Case.Boxes) || len(file.parts[heat.InEnv]) != len(file.Case.Envs) {
			t.Fatal("parts without places")
		}
		r, err := heat.Solve(context.Background(), file.Case, heat.Options{MaxCells: 2000})
		var faults heat.Faults
		switch {
		case errors.As(err, &faults):
			placed(t, file.Problems(faults))
		case err != nil && strings.TrimSpace(err.Error()) == "":
			t.Error("refused without a word")
		case err == nil:
			physical(t, r)
		}
	})
}

// placed holds that each problem has a place and words of one line.
func placed(t *testing.T, problems spec.Problems) {
	t.Helper()
	for _, p := range problems {
		if p.File != "f.yaml" || p.Line < 1 || p.Col < 1 || p.Given == "" || strings.ContainsAny(p.Error(), "\n\r") || len(p.Error()) > 2000 {
			t.Errorf("%d bytes: %+v", len(p.Error()), p)
		}
	}
}

// physical holds what no conduction can break: nothing is warmer or colder than what warms and cools it, heat does not
// flow from cold to warm, and what goes in comes out.
func physical(t *testing.T, r *heat.Result) {
	t.Helper()
	low, high := math.Inf(1), math.Inf(-1)
	for _, e := range r.Envs {
		low, high = min(low, e.T), max(high, e.T)
	}
	slack := 1e-5*(high-low) + 1e-9*(math.Abs(low)+math.Abs(high)) + 1e-12
	within := func(what string, v float64) {
		if !(v >= low-slack && v <= high+slack) {
			t.Errorf("%s is %g, outside of %g to %g", what, v, low, high)
		}
	}
	for _, e := range r.Envs {
		within("low of "+e.Name, e.Low.T.V)
		within("high of "+e.Name, e.High.T.V)
	}
	for _, p := range r.Probes {
		within("probe "+p.Name, p.T.V)
	}
	sum, all := 0.0, 0.0
	for _, e := range r.Envs {
		sum += e.Flow.V
		all += math.Abs(e.Flow.V)
	}
	if !(math.Abs(sum) <= 1e-4*all+1e-9) {
		t.Errorf("%g of %g W is lost", sum, all)
	}
	for i, row := range r.Coupling {
		for j, v := range row {
			if i != j && !(v.V >= -1e-6*(1+all)) {
				t.Errorf("coupling %d to %d is %g", i, j, v.V)
			}
		}
	}
}
