package stock

import "standclear/detail/unit"

// PlainSpacing is the spacing of the fasteners of a ledger that lies tight on the sheathing.
type PlainSpacing struct {
	Connection string // as printed
	Spacing    unit.Length
}

// PlainLedger returns what the prescriptive table allows for a plain ledger tight to the sheathing, at the
// greater of live load and ground snow and a joist span: IRC 2021 table R507.9.1.3(1), the 40 psf rows read,
// the snow rows from memory (confirm). It is there to compare with; a ledger that stands off the wall is
// outside the table. None is returned beyond its loads and spans.
func PlainLedger(load unit.Pressure, span unit.Length) []PlainSpacing {
	column := -1
	for i, ft := range []float64{6, 8, 10, 12, 14, 16, 18} {
		if span.Feet() <= ft+1e-9 {
			column = i
			break
		}
	}
	if column < 0 {
		return nil
	}
	for _, row := range plainRows() {
		if load.PSF() > row.psf+1e-6 {
			continue
		}
		var out []PlainSpacing
		for i, name := range []string{"1/2 in lag screw, sheathing to 1/2 in", "1/2 in bolt, sheathing to 1/2 in", "1/2 in bolt, sheathing to 1 in"} {
			out = append(out, PlainSpacing{name, unit.Length(row.inches[i][column]) * unit.Inch})
		}
		return out
	}
	return nil
}

// plainRow is a load with the spacings in inches of lag screws, bolts, and bolts over thicker sheathing, at
// spans of 6 to 18 ft.
type plainRow struct {
	psf    float64
	inches [3][7]float64
}

func plainRows() []plainRow {
	return []plainRow{
		{40, [3][7]float64{{30, 23, 18, 15, 13, 11, 10}, {36, 36, 34, 29, 24, 21, 19}, {36, 36, 29, 24, 21, 18, 16}}},
		{50, [3][7]float64{{29, 21, 17, 14, 12, 11, 9}, {36, 36, 33, 27, 23, 20, 18}, {36, 35, 28, 23, 20, 17, 15}}},
		{60, [3][7]float64{{25, 18, 15, 12, 10, 9, 8}, {36, 35, 28, 23, 20, 17, 15}, {36, 30, 24, 20, 17, 15, 13}}},
		{70, [3][7]float64{{22, 16, 13, 11, 9, 8, 7}, {36, 31, 25, 20, 17, 15, 13}, {35, 26, 21, 17, 15, 13, 11}}},
	}
}
