package asbuilt

import (
	"math"
	"testing"

	"standclear/detail/unit"
)

// Which columns count when fasteners are missing.
func TestWholeColumns(t *testing.T) {
	for _, c := range []struct{ n, lost, want int }{{1, 1, 0}, {2, 1, 1}, {2, 2, 0}, {3, 1, 1}, {3, 2, 0}, {4, 1, 2}, {4, 2, 0}, {5, 1, 3}} {
		if got := whole(c.n, c.lost); got != c.want {
			t.Errorf("%d columns, %d missing: %d count, want %d", c.n, c.lost, got, c.want)
		}
	}
}

// The load on three fasteners of a two by two group, by the elastic sum of a fastener group (statics): V/3 each and
// the moment V b/6 shared by distance from their centre. None takes more than half of V, whatever the proportions.
func TestThreeOfFour(t *testing.T) {
	for _, ratio := range []float64{0.01, 0.2, 0.5, 1, 1.17, 2, 10} {
		b, h := 1.0, ratio
		at := [][2]float64{{0, 0}, {b, 0}, {b, h}}
		cx, cz, polar, most := 2*b/3, h/3, 0.0, 0.0
		for _, p := range at {
			polar += (p[0]-cx)*(p[0]-cx) + (p[1]-cz)*(p[1]-cz)
		}
		moment := cx - b/2 // of V = 1 between the columns
		for _, p := range at {
			down := 1./3 - moment*(p[0]-cx)/polar
			side := moment * (p[1] - cz) / polar
			most = math.Max(most, math.Hypot(down, side))
		}
		if most > 0.5+1e-4 || most < 1./3 {
			t.Errorf("h/b %.2f: %.4f V on one", ratio, most)
		}
	}
}

// By hand: B5 carries 1.25 x 418.203/12 x (113 - 77.125)/2 = 781.41 lb, the load line 6.75 in from the rim face, and
// the moment is 5274.5 lb-in. A gap of 1/4 in puts the ledger and its load line that much farther out, 7 in, and as much
// more deck stands over the ledger: it carries 66 1/4 + 1/4 in of deck in place of 66 1/4, so 784.36 lb and 5490.5 lb-in.
func TestMomentAcrossAGap(t *testing.T) {
	d := deck(t)
	field, problems := Read("f.yaml", []byte("blocks: {B5: {gap: 1/4in}}"), d.Assembly)
	if problems != nil {
		t.Fatal(problems)
	}
	for _, c := range []struct {
		b          built
		load, want float64
	}{{built{d: d, f: field}, 784.36, 5490.5}, {built{d: d, f: field}.but("blocks.B5.gap"), 781.41, 5274.5}} {
		r, err := c.b.checkBlock("B5")
		if err != nil {
			t.Fatal(err)
		}
		m, v := r.Find("moment_at_rim_face"), r.Find("plane1_rim_from_block")
		if got := m.Value.V / float64(unit.PoundInch); math.Abs(got-c.want) > 0.5 || m.Where != "B5" {
			t.Errorf("%.1f lb-in at %s, want %.1f", got, m.Where, c.want)
		}
		if got := v.Value.V / float64(unit.Pound); math.Abs(got-c.load) > 0.01 {
			t.Errorf("%.2f lb on the fasteners, want %.2f", got, c.load)
		}
	}
}
