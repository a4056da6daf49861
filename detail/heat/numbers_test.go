package heat_test

import (
	"math"
	"testing"

	"standclear/detail/heat"
)

// Closed layers of air, ISO 6946:2017 table 8 (from memory, confirm), and half way between its rows.
func TestAirTable(t *testing.T) {
	thick := []float64{0, 5, 7, 10, 15, 25, 50, 100, 300}
	for h, row := range map[heat.Heading][]float64{
		heat.Upward:   {0, 0.11, 0.13, 0.15, 0.16, 0.16, 0.16, 0.16, 0.16},
		heat.Sideways: {0, 0.11, 0.13, 0.15, 0.17, 0.18, 0.18, 0.18, 0.18},
		heat.Downward: {0, 0.11, 0.13, 0.15, 0.17, 0.19, 0.21, 0.22, 0.23},
	} {
		for i, d := range thick {
			r, _ := heat.AirResistance(d, h)
			near(t, "a row of the table", r, row[i], 1e-12)
			if i > 0 {
				r, _ = heat.AirResistance((thick[i-1]+d)/2, h)
				near(t, "between two rows", r, (row[i-1]+row[i])/2, 1e-12)
			}
		}
	}
}

// A surface coefficient of 8 W/(m2 K) is a resistance of 0.125, of 25 0.04.
func TestFilmRs(t *testing.T) {
	near(t, "8 W/(m2 K)", heat.FilmRs(8), 0.125, 1e-12)
	near(t, "25 W/(m2 K)", heat.FilmRs(25), 0.04, 1e-12)
}

// Where two walls 200 mm thick meet, the corner is the coldest place of the room and of the outside: it itself, not the middle
// of a cell beside it, and as warm as a probe there. The warmest places are those of the plain wall.
func TestExtremesOfACorner(t *testing.T) {
	c := heat.Case{
		Dim: 2, Materials: []heat.Material{heat.Isotropic("wall", 0.2)},
		Envs: []heat.Env{{Name: "room", T: 20, Rs: 0.25}, {Name: "outside", T: 0, Rs: 0.04}},
		Boxes: []heat.Box{
			{Lo: heat.Point{-100, -100}, Hi: heat.Point{1200, 1200}, Env: "outside"},
			{Lo: heat.Point{0, 0}, Hi: heat.Point{1200, 1200}, Material: "wall"},
			{Lo: heat.Point{200, 200}, Hi: heat.Point{1200, 1200}, Env: "room"},
		},
		Probes: []heat.Probe{{Name: "room", At: heat.Point{200, 200}}, {Name: "outside", At: heat.Point{0, 0}}},
	}
	r := solve(t, c, heat.Options{Error: 0.05, MaxCells: 2e4})
	low, cold := r.Envs[0].Low, r.Envs[1].Low
	if low.At != (heat.Point{200, 200}) || cold.At != (heat.Point{0, 0}) {
		t.Errorf("coldest in the room at %v, outside at %v", low.At, cold.At)
	}
	near(t, "coldest in the room", low.T.V, r.Probes[0].T.V, 1e-9)
	near(t, "coldest outside", cold.T.V, r.Probes[1].T.V, 1e-9)
	// Far from the corner 1/(0.25 + 1 + 0.04) = 0.775: the room's face at 20 - 20 x 0.25 x 0.775 = 16.12, outside at 0.62.
	near(t, "warmest in the room", r.Envs[0].High.T.V, 16.12, 0.01)
	near(t, "warmest outside", r.Envs[1].High.T.V, 0.62, 0.01)
	for i, g := range r.Grids {
		if !(g.Balance > 0) {
			t.Errorf("grid %d: the heat that is missing was not looked at", i)
		}
	}
}

// Two temperatures held side by side on one face of a block pass heat without end where they meet, and no error is told of it;
// kept apart by 20 mm of nothing they do not.
func TestHeldSideBySide(t *testing.T) {
	for _, apart := range []float64{0, 20} {
		c := heat.Case{
			Dim: 3, Materials: []heat.Material{heat.Isotropic("block", 1)},
			Envs: []heat.Env{{Name: "hot", T: 20}, {Name: "cold", T: 0}, {Name: "below", T: 10, Rs: 0.04}},
			Boxes: []heat.Box{
				{Lo: heat.Point{0, 0, 0}, Hi: heat.Point{100, 100, 50}, Material: "block"},
				{Lo: heat.Point{0, 100, 0}, Hi: heat.Point{100, 110, 50}, Void: true},
				{Lo: heat.Point{0, 100, 0}, Hi: heat.Point{50 - apart, 110, 50}, Env: "hot"},
				{Lo: heat.Point{50, 100, 0}, Hi: heat.Point{100, 110, 50}, Env: "cold"},
				{Lo: heat.Point{0, -10, 0}, Hi: heat.Point{100, 0, 50}, Env: "below"},
			},
		}
		r := solve(t, c, heat.Options{Error: 0.5, MaxCells: 2e4})
		if got := math.IsInf(r.Coupling[0][1].Err, 1); got != (apart == 0) {
			t.Errorf("%g mm apart: %+v", apart, r.Coupling[0][1])
		}
		if v := r.Coupling[0][2]; math.IsInf(v.Err, 1) || v.V <= 0 {
			t.Errorf("%g mm apart, to below: %+v", apart, v)
		}
	}
}
