package sheet_test

import (
	"math"

	"standclear/detail"
	"standclear/detail/check/thermal"
	"standclear/detail/heat"
	"standclear/detail/view"
	"standclear/geom"
)

// heatOf is a plausible field made by hand, for the sheets to be tried on: f falls from the room to the
// outside of the insulation, with a dent at the block; inside is warm, air outside the wall is air.
func heatOf(a *detail.Assembly) *thermal.Result {
	b := a.Blocks[1]
	length := a.Spec.Ledger.Length.MM()
	r := &thermal.Result{
		Asked: 0.02, Error: 0.01, Block: b.Mark, Bay: [2]float64{b.X - 300, b.X + 300}, Length: length, Blocks: len(a.Blocks),
		Wall: thermal.Value{V: 0.171, Err: 0.001}, Low: thermal.Value{V: 0.942, Err: 0.002}, Bolts: thermal.Value{V: 0.031, Err: 0.002},
		Cells: 1234567, Balance: 3e-7, Assumed: []string{"membranes and sheet metal are left out", "the gap behind the cladding is at the outside temperature"},
		AtBlock: fieldOf(a, b.X, 1), Between: fieldOf(a, b.X+260, 0),
	}
	n := float64(len(a.Blocks))
	r.Ways = []thermal.Way{
		{Key: "tight", Name: "ledger tight to the sheathing", Note: "insulation cut open along the whole ledger", Run: thermal.Value{V: 1.62, Err: 0.03}, Low: thermal.Value{V: 0.781, Err: 0.004}},
		{Key: "blocks", Name: "blocks through the insulation", Note: "as drawn", Drawn: true, Blocks: true, Bay: thermal.Value{V: 0.047, Err: 0.001}, Run: thermal.Value{V: 0.047 * n, Err: 0.001 * n}, Low: thermal.Value{V: 0.902, Err: 0.003}},
		{Key: "pad_25", Name: "blocks with a pad of 1 in", Note: "foam of that thickness at the sheathing, the block shorter by it", Blocks: true, Pad: 25.4, Run: thermal.Value{V: 0.031 * n, Err: 0.001 * n}, Low: thermal.Value{V: 0.921, Err: 0.003}},
		{Key: "freestanding", Name: "freestanding deck", Note: "posts carry it; nothing passes the insulation", Low: thermal.Value{V: 0.942, Err: 0.002}},
	}
	f := a.Frame
	z := (f.BlockTop + f.BlockBottom) / 2
	r.Spots = []thermal.Spot{
		{Key: "sheathing_behind_block", Name: "sheathing behind the block, inner face", Where: b.Mark, At: heat.Point{b.X, f.SheathIn, z}, F: thermal.Value{V: 0.71, Err: 0.004}},
		{Key: "bolt_inner_end", Name: "inner end of the upper bolt", Where: "BT1", At: heat.Point{b.X, a.Grip(a.Rows[0].Set).Inner, a.Rows[0].Z}, F: thermal.Value{V: 0.86, Err: 0.01}, Bolt: true},
		{Key: "rim_room", Name: "room face of the rim", Where: "R1", At: heat.Point{b.X, f.RimIn, f.RimBottom + 30}, F: thermal.Value{V: 0.88, Err: -1}, Room: true},
		{Key: "sheathing_between", Name: "sheathing between blocks, inner face", Where: "W3", At: heat.Point{b.X + 260, f.SheathIn, z}, F: thermal.Value{V: 0.78, Err: 0.003}},
		{Key: "floor_corner", Name: "corner of floor and wall", Where: "", At: heat.Point{b.X + 260, f.FinishIn, f.SubTop}, F: thermal.Value{V: 0.905, Err: 0.003}, Room: true},
	}
	return r
}

// outdoors are parts that the air outside flows round, or that stand beyond the model.
var outdoors = map[detail.Role]bool{detail.Cladding: true, detail.Furring: true, detail.Decking: true, detail.Earth: true}

func fieldOf(a *detail.Assembly, x, dent float64) thermal.Field {
	f := a.Frame
	field := thermal.Field{X: x, Y: lines(f.FinishIn-200, f.LedgerFront+250, 8), Z: lines(f.BlockBottom-700, 700, 8)}
	p := view.Cut(a, view.AcrossWall(x), view.Options{Window: geom.EmptyBox(), Depth: 700})
	for j := 1; j < len(field.Z); j++ {
		row := make([]float64, len(field.Y)-1)
		for i := range row {
			at := geom.Vec{X: (field.Y[i] + field.Y[i+1]) / 2, Y: (field.Z[j-1] + field.Z[j]) / 2}
			row[i] = -1
			for _, c := range p.Pieces {
				if !outdoors[c.Part.Role] && c.Whole.Bounds().Holds(at) && c.Whole.Contains(at) {
					row[i] = warmth(f, at, dent)
				}
			}
		}
		field.F = append(field.F, row)
	}
	return field
}

func warmth(f detail.Frame, at geom.Vec, dent float64) float64 {
	v := 1 - (at.X-f.FinishIn)/(f.InsulOut-f.FinishIn)
	d := (at.Y - (f.BlockTop+f.BlockBottom)/2) / 150
	v -= dent * 0.22 * math.Exp(-d*d) * math.Exp(-math.Pow((at.X-0)/90, 2))
	return math.Max(0.004, math.Min(0.985, v))
}

func lines(lo, hi, step float64) []float64 {
	var out []float64
	for v := lo; v < hi+step; v += step {
		out = append(out, v)
	}
	return out
}
