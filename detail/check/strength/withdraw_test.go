package strength

import (
	"math"
	"testing"

	"standclear/detail/unit"
)

func TestLagWithdrawalAgainstPublishedValues(t *testing.T) {
	for _, row := range rows(t, "lag_withdrawal.csv") {
		d := unit.Length(number(t, row, "d")) * unit.Inch
		got := LagWithdrawal(number(t, row, "g"), d).PLF() / 12
		if want := number(t, row, "published"); math.Abs(got-want) > 1 {
			t.Errorf("D %s, G %s: %.1f lb/in, published %.0f", row["d"], row["g"], got, want)
		}
	}
}

// A 1/2 x 4 lag in Southern Pine through a 1.5 in side: threads hold over 4 - 1.5 - 0.3125 = 2.1875 in;
// 1800 x 0.55^1.5 x 0.5^0.75 = 436.6 lb/in; times 2.1875 = 955 lb. The standard's solved example.
func TestLagWithdrawalExample(t *testing.T) {
	if got := LagWithdrawal(0.55, 0.5*unit.Inch).PLF() / 12 * 2.1875; math.Abs(got-955) > 0.5 {
		t.Errorf("%.1f lb, want 955", got)
	}
}

// No. 10 in Southern Pine: 2850 x 0.3025 x 0.19 = 163.8 lb/in.
func TestScrewWithdrawal(t *testing.T) {
	if got := ScrewWithdrawal(0.55, 0.19*unit.Inch).PLF() / 12; math.Abs(got-163.8) > 0.1 {
		t.Errorf("%.1f lb/in, want 163.8", got)
	}
}

// The two forms of head pull-through meet at t = 2.5 head diameters; below it is in proportion to t.
// 0.30 in head, G 0.5, 0.5 in: 690 pi 0.30 0.25 0.5 = 81.3 lb.
func TestHeadPull(t *testing.T) {
	if got := HeadPull(0.5, 0.30*unit.Inch, 0.5*unit.Inch).Pounds(); math.Abs(got-81.29) > 0.01 {
		t.Errorf("%.2f lb, want 81.29", got)
	}
	thick := HeadPull(0.5, 0.30*unit.Inch, 2*unit.Inch).Pounds()
	if want := 1725 * math.Pi * 0.09 * 0.25; math.Abs(thick-want) > 0.01 {
		t.Errorf("thick wood: %.2f lb, want %.2f", thick, want)
	}
}

// At 0 degrees the lateral value stands, at 90 the withdrawal value; at 45 with 300 and 100 lb:
// 300 x 100/(300 x 0.5 + 100 x 0.5) = 150.
func TestCombinedScrew(t *testing.T) {
	for _, c := range []struct{ angle, want float64 }{{0, 100}, {90, 300}, {45, 150}} {
		if got := CombinedScrew(pounds(300), pounds(100), c.angle).Pounds(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("at %.0f degrees %.3f lb, want %.0f", c.angle, got, c.want)
		}
	}
}

// 1/2 in bolt, grip 6.75, washers 0.12: 6.75 + 0.24 + 7/16 + 3/13 = 7.658 in.
// M12, grip 212, washers 3: 212 + 6 + 10.8 + 3 x 1.75 = 234.05 mm.
func TestBoltLength(t *testing.T) {
	inchBolt, ok := BoltLength(6.75*unit.Inch, 0.12*unit.Inch, 0.5*unit.Inch)
	if !ok || math.Abs(inchBolt.Inches()-7.6583) > 1e-4 {
		t.Errorf("1/2 in bolt: %.4f in, %v", inchBolt.Inches(), ok)
	}
	metric, ok := BoltLength(212, 3, 12)
	if !ok || math.Abs(metric.MM()-234.05) > 1e-9 {
		t.Errorf("M12: %.3f mm, %v", metric.MM(), ok)
	}
	if _, ok := BoltLength(100, 3, 13); ok {
		t.Error("a 13 mm bolt has no nut")
	}
}

// Heights and pitches of nuts as the tables print them: ASME B18.2.2 and B1.1 in inches, ISO 4032 and 262 in
// millimetres (from memory, confirm).
func TestNuts(t *testing.T) {
	want := map[float64][2]float64{ // diameter: height, pitch in mm
		0.25 * 25.4: {0.219 * 25.4, 25.4 / 20}, 0.3125 * 25.4: {0.266 * 25.4, 25.4 / 18}, 0.375 * 25.4: {0.328 * 25.4, 25.4 / 16},
		0.4375 * 25.4: {0.375 * 25.4, 25.4 / 14}, 0.5 * 25.4: {0.4375 * 25.4, 25.4 / 13}, 0.625 * 25.4: {0.547 * 25.4, 25.4 / 11},
		0.75 * 25.4: {0.641 * 25.4, 25.4 / 10}, 0.875 * 25.4: {0.75 * 25.4, 25.4 / 9}, 25.4: {0.859 * 25.4, 25.4 / 8},
		8: {6.8, 1.25}, 10: {8.4, 1.5}, 12: {10.8, 1.75}, 16: {14.8, 2}, 20: {18, 2.5}, 24: {21.5, 3},
	}
	for _, n := range nuts() {
		w := want[n.d]
		if math.Abs(n.height-w[0]) > 0.02 || math.Abs(n.pitch-w[1]) > 0.001 {
			t.Errorf("nut of %.2f mm: %.3f high, pitch %.3f; want %.3f, %.3f", n.d, n.height, n.pitch, w[0], w[1])
		}
	}
	if len(nuts()) != len(want) {
		t.Errorf("%d nuts, want %d", len(nuts()), len(want))
	}
}

// Root diameters and tips of lag screws in thousandths of an inch, NDS 2018 appendix table L2 (from memory, confirm).
func TestLagThreads(t *testing.T) {
	roots := []int{173, 227, 265, 328, 371, 471, 579, 683, 780}
	tips := []int{156, 188, 219, 281, 313, 406, 500, 594, 688}
	for i, th := range lagThreads() {
		if root, tip := int(math.Round(1000*th.root)), int(math.Round(1000*th.tip)); root != roots[i] || tip != tips[i] {
			t.Errorf("lag screw of %.4f in: root %d, tip %d; want %d, %d", th.nominal, root, tip, roots[i], tips[i])
		}
	}
}
