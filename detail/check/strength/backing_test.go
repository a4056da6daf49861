package strength

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// Two pulls of 500 and 300 lb at 4 and 10 in on a piece between ties at 1 and 13 in: B = (500 x 3 + 300 x 9)/12
// = 350, A = 450; M at 4 in = 450 x 3 = 1350, at 10 in = 350 x 3 = 1050. A third of 200 lb at 14 in, past B:
// B = 350 + 200 x 13/12 = 566.7, A = 433.3; M at 4 in = 1300, at B = -200.
func TestBayByHand(t *testing.T) {
	b := bay{from: 0, to: 15, a: 1, b: 13}
	for _, c := range []struct {
		pulls      []point
		a, b, most float64
	}{
		{[]point{{4, 500}, {10, 300}}, 450, 350, 1350},
		{[]point{{4, 500}, {10, 300}, {14, 200}}, 433.333, 566.667, 1300},
		{[]point{{15, 200}}, -33.333, 233.333, 400},
	} {
		left, right := b.reactions(c.pulls)
		if math.Abs(left-c.a) > 0.001 || math.Abs(right-c.b) > 0.001 || math.Abs(b.moment(c.pulls)-c.most) > 0.01 {
			t.Errorf("%v: ties %.3f and %.3f, moment %.2f; by hand %.3f, %.3f, %.2f", c.pulls, left, right, b.moment(c.pulls), c.a, c.b, c.most)
		}
	}
}

// Wherever the pulls stand, the ties hold their sum, and no more pull makes a tie between them hold less.
func TestBayIsInBalance(t *testing.T) {
	r := rand.New(rand.NewPCG(37, 41))
	for range 1000 {
		b := bay{from: 0, to: 20, a: r.Float64(), b: 19 + r.Float64()}
		var pulls []point
		sum, turn := 0.0, 0.0
		for range 1 + r.IntN(6) {
			p := point{b.a + (b.b-b.a)*r.Float64(), 1000 * r.Float64()}
			pulls, sum, turn = append(pulls, p), sum+p.p, turn+p.p*p.x
		}
		left, right := b.reactions(pulls)
		if math.Abs(left+right-sum) > 1e-9*sum || math.Abs(left*b.a+right*b.b-turn) > 1e-9*turn {
			t.Fatalf("ties %.6f and %.6f under %v", left, right, pulls)
		}
		l2, r2 := b.reactions(append(pulls, point{(b.a + b.b) / 2, 100}))
		if l2 < left || r2 < right {
			t.Fatalf("a further pull eases a tie: %.6f and %.6f, before %.6f and %.6f", l2, r2, left, right)
		}
	}
}

// A piece whose block stands off its middle loads the near tie more. Piece 22.75 to 41.25, bolts 28.25 and
// 31.75, 520.3 lb each: A = 520.3 x (13 + 9.5)/18.5 = 632.8.
func TestNearTie(t *testing.T) {
	m := scenarioB()
	m.Backing.Pieces = []Span{{0.75 * in, 15.25 * in}, {22.75 * in, 41.25 * in}, {44.75 * in, 59.25 * in}}
	m.Tie.At = lengths(0.75, 15.25, 22.75, 41.25, 44.75, 59.25)
	r, res := Run(m)
	wants(t, r, map[string]float64{"tie_rating": 632.8, "tie_rating[A]": 632.8, "tie_rating[B]": 407.8})
	if got := res.RequiredTie.Pounds(); math.Abs(got-632.8/0.9) > 1 {
		t.Errorf("least rating of a tie %.1f lb, want 703.1", got)
	}
	if s := r.Find("tie_rating"); s.Where != "B2" {
		t.Errorf("the most loaded tie is at %q, want B2", s.Where)
	}
}

// Two blocks in one bay add their pulls.
func TestBlocksInOneBayAdd(t *testing.T) {
	m := scenarioB()
	m.Backing.Pieces = []Span{{0.75 * in, 59.25 * in}}
	m.Tie.At, m.Tie.Rating = lengths(0.75, 59.25), 3000*unit.Pound
	r, res := Run(m)
	sum := 0.0
	for _, re := range res.Reactions {
		sum += float64(re.Design / res.Reactions[1].Design * res.Tension)
	}
	a, _ := lookUp(r, "tie_rating[A]")
	b, _ := lookUp(r, "tie_rating[B]")
	if math.Abs(a+b-unit.Force(sum).Pounds()) > 0.01 || r.Find("tie_rating").Where != "B1, B2, B3" {
		t.Errorf("ties hold %.2f of %.2f lb at %s", a+b, unit.Force(sum).Pounds(), r.Find("tie_rating").Where)
	}
}

// Every column must pass a piece; the block is named. The rim alone takes nothing to the joists.
func TestBoltPastTheBacking(t *testing.T) {
	m := scenarioB()
	m.Backing.Pieces[2].To = 53 * in
	r, _ := Run(m)
	s := r.Find("backing_behind_bolts")
	if s == nil || s.Verdict != check.Fails || s.Where != "B3" || !strings.Contains(s.Reason, "B3") {
		t.Errorf("%+v, want FAILS at B3", s)
	}
}

// The outermost column 2 in from the end of its piece has 2/2.5 of the value at that block: 0.8. The other
// blocks keep theirs, so a plane that is worst at B2 in any case stays where it was.
func TestEndOfBackingCutsItsBlockOnly(t *testing.T) {
	m := scenarioB()
	m.Backing.Pieces[0].From = 4.25 * in
	m.Tie.At[0] = 4.25 * in
	r, _ := Run(m)
	s := r.Find("c_delta")
	if s == nil || math.Abs(s.Value.V-0.8) > 1e-9 || s.Where != "B1" {
		t.Errorf("geometry factor %+v, want 0.8 at B1", s)
	}
	wants(t, r, map[string]float64{"plane1_rim_from_block@ratio": 0.604007, "end_backing": 2})
	// 2 in from the end, a 3 in plate reaches to 1/2 in: no Cb there. At B1 R = 570.9: 60.298 x 570.9/812.97 = 42.3 psi
	// of 405 is less than B2's 60.3 of 455.6, which still governs.
	wants(t, r, map[string]float64{"rim_washer_bearing[Cb]": 1.125})
	m.Backing.Pieces[1].From = 26.25 * in
	r, _ = Run(m)
	wants(t, r, map[string]float64{"rim_washer_bearing[Cb]": 1, "plane1_rim_from_block@ratio": 0.604007 / 0.8})
}

// The rim takes no share of the backing's bending, and a wide bay bends it more: from tie to tie 36 in, bolts
// in the middle: 520.3 x (18 - 1.75) = 8455 lb-in over 2.9531 = 2863 psi of 1290.3.
func TestWideBayBends(t *testing.T) {
	m := scenarioB()
	m.Backing.Pieces[1] = Span{12 * in, 48 * in}
	m.Backing.Pieces = m.Backing.Pieces[1:2]
	m.Tie.At = lengths(12, 48)
	r, _ := Run(m)
	s := r.Find("backing_bending")
	if s == nil || s.Verdict != check.Fails || math.Abs(inchPound(s.Value)-2863) > 0.005*2863 || s.Fix == "" {
		t.Errorf("%+v, want 2863 psi to fail with a fix", s)
	}
	m.Backing.Panel = true // engineered: no flat-use factor
	r, _ = Run(m)
	wants(t, r, map[string]float64{"backing_bending[Cfu]": 1})
}

// A backing that bends too much is offered the thickness at which it does not: stress goes with the square of the
// thickness, so sqrt(ratio/0.9) times what it has.
func TestThickerBackingIsEnough(t *testing.T) {
	m := scenarioB()
	m.Backing.Pieces = []Span{{0.75 * in, 59.25 * in}}
	for m.Backing.Thickness = 3 * in; m.Backing.Thickness > in/4; m.Backing.Thickness *= 0.8 {
		r, _ := Run(m)
		s := r.Find("backing_bending")
		if s == nil || s.Verdict != check.Fails {
			continue
		}
		need := m.Backing.Thickness.Inches() * math.Sqrt(s.Ratio/0.9)
		if _, said, _ := strings.Cut(s.Fix, "(floor.backing.thickness): "); said != inch(need).Text(unit.IP) {
			t.Errorf("%q is offered at a ratio of %.3f, want %.3f in", s.Fix, s.Ratio, need)
		}
		return
	}
	t.Error("no backing is too thin")
}
