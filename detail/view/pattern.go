package view

import "standclear/render"

// The hatches, by drafting convention for materials in section (handbook practice). Spacing is
// plotted millimetres and never under 0.7.
var (
	ply     = &render.HatchPattern{Name: "SC-PLY", Lines: []render.PatternLine{{Angle: 0, Spacing: 0.85}}}
	lamella = &render.HatchPattern{Name: "SC-LAMELLA", Lines: []render.PatternLine{{Angle: 0, Spacing: 1.0}}}
	grain   = &render.HatchPattern{Name: "SC-GRAIN", Lines: []render.PatternLine{
		{Angle: 0, Spacing: 3.2, Dashes: []float64{9, -1.4}, Shift: 4},
		{Angle: 0, Base: vec(2, 1.6), Spacing: 3.2, Dashes: []float64{5, -2.2}, Shift: 3},
	}}
	endGrain = &render.HatchPattern{Name: "SC-FINISH", Lines: []render.PatternLine{{Angle: 45, Spacing: 1.4}}}
	fibre    = &render.HatchPattern{Name: "SC-FIBRE", Lines: []render.PatternLine{
		{Angle: 45, Spacing: 1.9, Dashes: []float64{1.7, -1.3}, Shift: 1.1},
		{Angle: 105, Base: vec(1.0, 0.6), Spacing: 3.1, Dashes: []float64{1.3, -2.6}, Shift: 1.7},
	}}
	foam   = &render.HatchPattern{Name: "SC-FOAM", Lines: []render.PatternLine{{Angle: 60, Spacing: 2.4}, {Angle: 120, Spacing: 2.4}}}
	gypsum = &render.HatchPattern{Name: "SC-GYPSUM", Lines: []render.PatternLine{
		{Angle: 37, Spacing: 1.5, Dashes: []float64{0, -2.1}, Shift: 0.9},
	}}
	concrete = &render.HatchPattern{Name: "SC-CONCRETE", Lines: []render.PatternLine{
		{Angle: 50, Spacing: 3.7, Dashes: []float64{0, -2.9}, Shift: 1.3},
		{Angle: 12, Base: vec(1.1, 0.7), Spacing: 5.3, Dashes: []float64{0, -4.7}, Shift: 2.1},
	}}
	masonry = &render.HatchPattern{Name: "SC-MASONRY", Lines: []render.PatternLine{{Angle: 45, Spacing: 2.6}, {Angle: 45, Base: vec(1, 0), Spacing: 2.6}}}
	osb     = &render.HatchPattern{Name: "SC-STRAND", Lines: []render.PatternLine{
		{Angle: 20, Spacing: 1.3, Dashes: []float64{2.1, -1.6}, Shift: 1.2}, {Angle: 155, Base: vec(0.5, 0.4), Spacing: 2.1, Dashes: []float64{1.4, -2.4}, Shift: 0.8},
	}}
	steel = &render.HatchPattern{Name: "SC-STEEL", Lines: []render.PatternLine{{Angle: 45, Spacing: 2}, {Angle: 45, Base: vec(1, 0), Spacing: 2}}}
	board = &render.HatchPattern{Name: "SC-DIMPLE", Lines: []render.PatternLine{{Angle: 0, Spacing: 1.6, Dashes: []float64{0.8, -0.8}}}}
)
