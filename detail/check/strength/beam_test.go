package strength

import (
	"math"
	"math/rand/v2"
	"testing"
)

// equalSpans is a beam of n spans of length l.
func equalSpans(n int, l float64) beam {
	b := beam{length: float64(n) * l, ei: 1e8, cut: make([]bool, n+1)}
	for i := range n + 1 {
		b.at = append(b.at, float64(i)*l)
	}
	return b
}

func uniform(b beam, w float64) action {
	a := action{spread: make([]float64, len(b.at)+1)}
	for i := range a.spread {
		a.spread[i] = w
	}
	return a
}

// Coefficients of wL, wL^2 and wL^4/EI for a uniform load on all spans of a continuous beam; any
// handbook of beam formulas.
func TestBeamCoefficients(t *testing.T) {
	for _, c := range []struct {
		name                        string
		spans                       int
		reaction, hog, sag, v, drop float64
	}{
		{"2 spans", 2, 1.25, 0.125, 0.0703, 0.625, 0.0054},
		{"3 spans", 3, 1.10, 0.100, 0.0800, 0.600, 0.0069},
		{"4 spans", 4, 1.143, 0.1071, 0.0772, 0.607, 0.0065},
		{"5 spans", 5, 1.132, 0.1053, 0.0779, 0.605, 0.0066},
	} {
		t.Run(c.name, func(t *testing.T) {
			const l, w = 40., 12.
			b := equalSpans(c.spans, l)
			r := b.solve(uniform(b, w))
			var most, hog, sag, v float64
			for i, s := range r.spans {
				if i < len(r.reaction) {
					most = math.Max(most, r.reaction[i]/(w*l))
				}
				least, m, shear := s.moments()
				hog, sag, v = math.Min(hog, least/(w*l*l)), math.Max(sag, m/(w*l*l)), math.Max(v, shear/(w*l))
			}
			drop := deflectionsOf(r).between.y * b.ei / (w * l * l * l * l)
			for _, q := range []struct {
				name      string
				got, want float64
			}{{"reaction", most, c.reaction}, {"hogging", -hog, c.hog}, {"sagging", sag, c.sag}, {"shear", v, c.v}, {"deflection", drop, c.drop}} {
				if math.Abs(q.got-q.want) > 0.0006 {
					t.Errorf("%s %.5f, want %.4f", q.name, q.got, q.want)
				}
			}
		})
	}
}

// Span 120 in, point load 1000 lb at 40 in: y = P b (L^2-b^2)^1.5/(9 sqrt3 L EI) with b = 40.
func TestPointLoadDeflection(t *testing.T) {
	b := equalSpans(1, 120)
	r := b.solve(action{spread: make([]float64, 3), points: []point{{40, 1000}}})
	want := 1000 * 40 * math.Pow(120*120-40*40, 1.5) / (9 * math.Sqrt(3) * 120 * b.ei)
	if got := deflectionsOf(r).between.y; math.Abs(got/want-1) > 1e-10 {
		t.Errorf("deflection %.8f, want %.8f", got, want)
	}
}

// Overhang a past a simple span: tip deflection w a (4 a^2 L + 3 a^3 - L^3)/(24 EI) under w everywhere.
func TestOverhangDeflection(t *testing.T) {
	b := beam{length: 150, at: []float64{0, 120}, cut: make([]bool, 2), ei: 1e8}
	r := b.solve(uniform(b, 10))
	end := r.spans[2].pieces[0]
	const a, l = 30., 120.
	want := 10 * a * (4*a*a*l + 3*a*a*a - l*l*l) / (24 * b.ei)
	if got := end.dropAt(end.l, b.ei); math.Abs(got/want-1) > 1e-10 {
		t.Errorf("tip goes down %.8f, want %.8f", got, want)
	}
	// The same beam seen from its other end.
	m := beam{length: 150, at: []float64{30, 150}, cut: make([]bool, 2), ei: 1e8}
	if got := m.solve(uniform(m, 10)).spans[0].pieces[0].y; math.Abs(got/want-1) > 1e-10 {
		t.Errorf("mirrored tip goes down %.8f, want %.8f", got, want)
	}
}

// Middle support of two equal spans raised by y with no load: R = 6 EI y/L^3.
func TestRaisedSupport(t *testing.T) {
	b := equalSpans(2, 50)
	r := b.solve(action{spread: make([]float64, 4), lift: []float64{0, 0.0625, 0}})
	want := 6 * b.ei * 0.0625 / (50 * 50 * 50)
	if math.Abs(r.reaction[1]/want-1) > 1e-10 || math.Abs(r.reaction[0]+want/2) > 1e-9*want {
		t.Errorf("reactions %v, want %.4f in the middle and minus half beside it", r.reaction, want)
	}
}

// A splice over the middle of two spans makes two simple beams: 1/2, 1 and 1/2 of wL.
func TestSplicedBeam(t *testing.T) {
	b := equalSpans(2, 50)
	b.cut[1] = true
	r := b.solve(uniform(b, 10))
	for i, want := range []float64{250, 500, 250} {
		if math.Abs(r.reaction[i]-want) > 1e-9 {
			t.Errorf("reaction %d is %.3f, want %.0f", i, r.reaction[i], want)
		}
	}
	if r.moment[1] != 0 {
		t.Errorf("moment at the splice %.6f, want 0", r.moment[1])
	}
}

// half rounds to half an inch, so that nodes of the stiffness method coincide or stand well apart.
func half(x float64) float64 { return math.Round(2*x) / 2 }

// randomBeam has 2 to 9 supports, overhangs, a load per segment and point loads anywhere.
func randomBeam(r *rand.Rand) (beam, action) {
	b := beam{ei: 5e7 + 1e8*r.Float64()}
	x := half(20 * r.Float64() * float64(r.IntN(2)))
	for range 2 + r.IntN(8) {
		b.at = append(b.at, x)
		b.cut = append(b.cut, false)
		x += half(10 + 50*r.Float64())
	}
	b.length = b.at[len(b.at)-1] + half(20*r.Float64()*float64(r.IntN(2)))
	a := action{spread: make([]float64, len(b.at)+1)}
	for i := range a.spread {
		a.spread[i] = 40 * r.Float64()
	}
	for range r.IntN(5) {
		a.points = append(a.points, point{half(b.length * r.Float64()), 1000 * r.Float64()})
	}
	if r.IntN(2) == 0 {
		a.points = append(a.points, point{b.at[r.IntN(len(b.at))], 500})
	}
	if r.IntN(3) == 0 {
		for range b.at {
			a.lift = append(a.lift, 0.1*(r.Float64()-0.5))
		}
	}
	return b, a
}

func TestBeamLaws(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 200 {
		b, a := randomBeam(r)
		a.lift = nil
		one := b.solve(a)
		load, moment, up, upMoment := 0.0, 0.0, 0.0, 0.0
		for i, w := range a.spread {
			ends := append(append([]float64{0}, b.at...), b.length)
			load += w * (ends[i+1] - ends[i])
			moment += w * (ends[i+1] - ends[i]) * (ends[i+1] + ends[i]) / 2
		}
		for i, p := range a.points {
			load, moment = load+p.p, moment+p.p*p.x
			a.points[i].p *= 2
		}
		for i, v := range one.reaction {
			up, upMoment = up+v, upMoment+v*b.at[i]
		}
		if math.Abs(up-load) > 1e-9*load || math.Abs(upMoment-moment) > 1e-9*moment {
			t.Fatalf("reactions %.9f at moment %.9f, load %.9f at %.9f", up, upMoment, load, moment)
		}
		for i := range a.spread {
			a.spread[i] *= 2
		}
		for i, v := range b.solve(a).reaction {
			if math.Abs(v-2*one.reaction[i]) > 1e-9*(1+load) {
				t.Fatalf("twice the load gives %.9f, not twice %.9f", v, one.reaction[i])
			}
		}
	}
}

// Springs of no give are rigid supports; on soft springs a stiff beam settles evenly: three equal blocks
// under the ends and middle of a rigid bar share in thirds.
func TestSprings(t *testing.T) {
	b := equalSpans(2, 50)
	rigid := b.solve(uniform(b, 10)).reaction
	stiff := b.liftMatrix()
	for i, v := range onSprings(rigid, stiff, make([]float64, 3), 1e15) {
		if math.Abs(v-rigid[i]) > 1e-3 {
			t.Errorf("hard springs: %v, rigid %v", v, rigid[i])
		}
	}
	for _, v := range onSprings(rigid, stiff, make([]float64, 3), 1e-3) {
		if math.Abs(v-1000./3) > 1e-2 {
			t.Errorf("soft springs: %v, want 333.33", v)
		}
	}
}

// The most a support can get from load on any set of spans is found by trying all sets.
func TestPatternsFindTheWorst(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for range 40 {
		b, _ := randomBeam(r)
		n := len(b.at)
		if n > 7 {
			continue
		}
		worst := func(sets [][]bool) (most, least []float64, sag float64) {
			most, least = make([]float64, n), make([]float64, n)
			for i := range least {
				least[i], most[i] = math.Inf(1), math.Inf(-1)
			}
			for _, on := range sets {
				a := action{spread: make([]float64, n+1)}
				for i := range on {
					a.spread[i] = 2
					if on[i] {
						a.spread[i] = 10
					}
				}
				s := b.solve(a)
				for i, v := range s.reaction {
					most[i], least[i] = math.Max(most[i], v), math.Min(least[i], v)
				}
				for _, x := range s.spans {
					_, m, _ := x.moments()
					sag = math.Max(sag, m)
				}
			}
			return most, least, sag
		}
		var every [][]bool
		for mask := range 1 << (n + 1) {
			on := make([]bool, n+1)
			for i := range on {
				on[i] = mask>>i&1 == 1
			}
			every = append(every, on)
		}
		m1, l1, s1 := worst(patterns(n))
		m2, l2, s2 := worst(every)
		for i := range m1 {
			if m2[i] > m1[i]+1e-6 || l2[i] < l1[i]-1e-6 {
				t.Fatalf("support %d of %v: patterns give %.4f to %.4f, all sets %.4f to %.4f", i, b.at, l1[i], m1[i], l2[i], m2[i])
			}
		}
		if s2 > s1+1e-6 {
			t.Fatalf("sagging moment: patterns %.4f, all sets %.4f", s1, s2)
		}
	}
}

func deflectionsOf(b bent) (d deflections) {
	d.take(alone(b), "")
	return d
}

// Spans hinged at both ends deflect 5 w L^4/(384 E I) in the middle and nowhere at an end: of 30, 40 and 30 in under
// 10 lb/in with E I of 1e8 lb in2 the 40 in one deflects most for its length, 5 x 10 x 40^4/(384 x 1e8) = 0.003333 in.
func TestHingedSpansAreLookedInto(t *testing.T) {
	b := beam{length: 100, at: []float64{0, 30, 70, 100}, cut: []bool{false, true, true, false}, ei: 1e8}
	d := deflectionsOf(b.solve(action{spread: []float64{10, 10, 10, 10, 10}})).between
	if want := 5 * 10 * 40 * 40 * 40 * 40 / (384 * 1e8); !(math.Abs(d.y-want) <= 1e-9*want) || d.span != 40 {
		t.Errorf("%.6f in over %g in; by hand %.6f over 40", d.y, d.span, want)
	}
}
