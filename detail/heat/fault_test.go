package heat_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"standclear/detail/heat"
)

// Each mistake gives one clear fault, at the part it is in.
func TestFaults(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name  string
		spoil func(c *heat.Case)
		part  heat.Part
		index int
		says  string
	}{
		{"dimensions", func(c *heat.Case) { c.Dim = 4 }, heat.InCase, 0, "4 dimensions"},
		{"gap", func(c *heat.Case) { c.Boxes[1].Hi[0] = 900 }, heat.InCase, 0, "gap in the material: nothing fills (900, 0) to (1000, 120) mm"},
		{"no box", func(c *heat.Case) { c.Boxes = nil }, heat.InCase, 0, "there is no box"},
		{"zero conductivity", func(c *heat.Case) { c.Materials[0].K[1] = 0 }, heat.InMaterial, 0, "along y is 0 W/(m K)"},
		{"negative conductivity", func(c *heat.Case) { c.Materials[0].K[0] = -1 }, heat.InMaterial, 0, "along x is -1 W/(m K)"},
		{"no number", func(c *heat.Case) { c.Materials[0].K[0] = nan }, heat.InMaterial, 0, "NaN"},
		{"no environment", func(c *heat.Case) { c.Envs = nil; c.Boxes = c.Boxes[1:2] }, heat.InCase, 0, "there is no environment"},
		{"one temperature", func(c *heat.Case) { c.Envs[1].T = 20 }, heat.InCase, 0, "every environment is at 20 C"},
		{"no temperature", func(c *heat.Case) { c.Envs[0].T = nan }, heat.InEnv, 0, "NaN"},
		{"negative film", func(c *heat.Case) { c.Envs[0].Rs = -0.1 }, heat.InEnv, 0, "-0.1 m2K/W"},
		{"overlapping environments", func(c *heat.Case) { c.Boxes[2].Lo[1] = -5 }, heat.InBox, 2, `environment "out" overlaps "in" of box 1`},
		{"probe outside", func(c *heat.Case) { c.Probes = []heat.Probe{{Name: "P", At: heat.Point{500, 125}}} }, heat.InProbe, 0, `"P" at (500, 125) mm is outside every material`},
		{"probe nowhere", func(c *heat.Case) { c.Probes = []heat.Probe{{Name: "P", At: heat.Point{nan, 0}}} }, heat.InProbe, 0, "NaN"},
		{"cut square to nothing", func(c *heat.Case) { c.Cuts = []heat.Cut{{Axis: 2}} }, heat.InCase, 0, "a cut square to axis 2"},
		{"box inside out", func(c *heat.Case) { c.Boxes[1].Hi[1] = -3 }, heat.InBox, 1, "y runs from 0 to -3 mm"},
		{"box without end", func(c *heat.Case) { c.Boxes[1].Hi[1] = math.Inf(1) }, heat.InBox, 1, "+Inf"},
		{"unknown material", func(c *heat.Case) { c.Boxes[1].Material = "iron" }, heat.InBox, 1, `"iron" is no material`},
		{"unknown environment", func(c *heat.Case) { c.Boxes[0].Env = "layer 0" }, heat.InBox, 0, `"layer 0" is no environment of the case; it is one as material`},
		{"filled twice", func(c *heat.Case) { c.Boxes[1].Void = true }, heat.InBox, 1, "filled with 2 things"},
		{"film on a material", func(c *heat.Case) { c.Boxes[1].Rs = 0.1 }, heat.InBox, 1, "in a box of an environment"},
		{"name twice", func(c *heat.Case) { c.Envs[0].Name = "layer 0"; c.Boxes[0].Env = "layer 0" }, heat.InEnv, 0, `"layer 0" is already the name of material 1`},
		{"no name", func(c *heat.Case) { c.Materials = append(c.Materials, heat.Isotropic("", 1)) }, heat.InMaterial, 1, "no name"},
		{"touches nothing", func(c *heat.Case) {
			c.Envs = append(c.Envs, heat.Env{Name: "attic", T: 3})
		}, heat.InEnv, 2, `"attic" touches no material`},
		{"material alone", func(c *heat.Case) {
			c.Boxes = append(c.Boxes, heat.Box{Lo: heat.Point{1000, -10}, Hi: heat.Point{1010, 130}, Void: true},
				heat.Box{Lo: heat.Point{1010, -10}, Hi: heat.Point{1020, 130}, Material: "layer 0"})
		}, heat.InBox, 4, "no environment touches the material at (1010, -10)"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := slab(2, 0.13, 0.04, []float64{120}, []float64{0.12})
			c.spoil(&s)
			_, err := heat.Solve(context.Background(), s, heat.Options{})
			var fs heat.Faults
			if !errors.As(err, &fs) {
				t.Fatalf("got %v", err)
			}
			if len(fs) != 1 || fs[0].Part != c.part || fs[0].Index != c.index || !strings.Contains(fs[0].Error(), c.says) {
				t.Errorf("got %d: %v; want %v %d: %s", len(fs), err, c.part, c.index, c.says)
			}
		})
	}
}

// All faults come at once.
func TestAllFaultsAtOnce(t *testing.T) {
	s := slab(2, 0.13, 0.04, []float64{120}, []float64{0})
	s.Envs[0].Rs = -1
	s.Boxes[1].Hi[0] = -1
	_, err := heat.Solve(context.Background(), s, heat.Options{})
	var fs heat.Faults
	if !errors.As(err, &fs) || len(fs) != 3 || strings.Count(err.Error(), "\n") != 2 {
		t.Errorf("got %v", err)
	}
}

// A case whose coarsest grid has more cells than allowed is refused.
func TestTooManyCells(t *testing.T) {
	s := slab(3, 0.13, 0.04, []float64{120, 5, 60}, []float64{0.12, 1, 2})
	_, err := heat.Solve(context.Background(), s, heat.Options{MaxCells: 6})
	if err == nil || !strings.Contains(err.Error(), "its coarsest grid has") {
		t.Errorf("got %v", err)
	}
	_, err = heat.Solve(context.Background(), s, heat.Options{MaxCells: 3})
	if err == nil || !strings.Contains(err.Error(), "more than 3 regions") {
		t.Errorf("got %v", err)
	}
}

// A message counts from 1, as people do.
func TestFaultSaysWhichOne(t *testing.T) {
	for want, f := range map[string]heat.Fault{
		"box 3: it has no size; more than 0": {Part: heat.InBox, Index: 2, Given: "it has no size", Allowed: "more than 0"},
		"case: it is empty":                  {Given: "it is empty"},
	} {
		if f.Error() != want {
			t.Errorf("got %q, want %q", f.Error(), want)
		}
	}
}
