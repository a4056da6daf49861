package heat

import "math"

// Added returns how much more heat environment e gives in with than in without, with the error left in
// the difference; ok when both rest on at least three grids of the same cells. Limit is as in Options.
//
// A bridge is the difference of two flows that are much alike: point bridge chi and line bridge psi of
// ISO 10211:2017 are it over the difference of temperatures, and over the length. On the same cells most
// of the errors of the two cancel. The cells are the same when both cases have the same boxes, also
// those that others paint over:
//
//	without: ..., bolt, insulation over the bolt
//	with:    ..., insulation, bolt
func Added(with, without *Result, e int, limit bool) (v Value, ok bool) {
	n := min(len(with.Grids), len(without.Grids))
	if n < fewestGrids || e < 0 || e >= len(with.Envs) || e >= len(without.Envs) {
		return Value{Err: math.Inf(1)}, false
	}
	var step [fewestGrids]float64
	for i := range step {
		a, b := with.Grids[n-fewestGrids+i], without.Grids[n-fewestGrids+i]
		if a.Shape != b.Shape {
			return Value{Err: math.Inf(1)}, false
		}
		step[i] = a.Flow[e] - b.Flow[e]
	}
	return estimate(lastOf(with.Grids[:n]), step, limit), true
}
