package stock

import (
	"math"
	"testing"

	"standclear/detail/unit"
)

// The cells of IRC 2021 table R507.9.1.3(1) follow from one value per fastener, 375 lb for the lag, 712 lb
// for the bolt, 600 lb over thicker sheathing, times 1.15 under snow, with 10 psf of dead load on half the
// span, to the inch and at most 36 in: so no cell is mistyped.
func TestPlainLedgerCells(t *testing.T) {
	each := []float64{375, 712, 600}
	for _, psf := range []float64{40, 50, 60, 70} {
		for _, ft := range []float64{6, 8, 10, 12, 14, 16, 18} {
			got := PlainLedger(unit.Pressure(psf)*unit.PSF, unit.Length(ft)*unit.Foot)
			if len(got) != 3 {
				t.Fatalf("%g psf, %g ft: %v", psf, ft, got)
			}
			for i, c := range got {
				cd := 1.0
				if psf > 40 {
					cd = 1.15
				}
				want := math.Min(36, each[i]*cd/((psf+10)*ft/2)*12)
				if math.Abs(c.Spacing.Inches()-want) > 0.76 {
					t.Errorf("%g psf, %g ft, %s: %g in, the value per fastener gives %.2f in", psf, ft, c.Connection, c.Spacing.Inches(), want)
				}
			}
		}
	}
}

func TestPlainLedgerEndsWhereTheTableDoes(t *testing.T) {
	if got := PlainLedger(71*unit.PSF, 6*unit.Foot); got != nil {
		t.Errorf("beyond 70 psf: %v", got)
	}
	if got := PlainLedger(40*unit.PSF, 18.1*unit.Foot); got != nil {
		t.Errorf("beyond 18 ft: %v", got)
	}
	if got := PlainLedger(45*unit.PSF, 11*unit.Foot); got[1].Spacing != 27*unit.Inch { // the next row, the next column
		t.Errorf("45 psf, 11 ft: %v", got)
	}
}
