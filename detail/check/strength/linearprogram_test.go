package strength

import (
	"math"
	"math/rand/v2"
	"testing"
)

// program is a linear program: maximize c x with a x <= b, x >= 0. b must not be negative.
type program struct {
	a    [][]float64
	b, c []float64
}

// best solves it by the simplex method on a dense tableau, the smallest index first so that it ends.
func (p program) best(t *testing.T) float64 {
	t.Helper()
	n := len(p.c)
	rows := make([][]float64, len(p.a)+1)
	for i := range p.a {
		rows[i] = append(append([]float64{}, p.a[i]...), p.b[i])
	}
	goal := make([]float64, n+1)
	for j, c := range p.c {
		goal[j] = -c
	}
	rows[len(p.a)] = goal
	base, free := make([]int, len(p.a)), make([]int, n)
	for i := range base {
		base[i] = n + i
	}
	for j := range free {
		free[j] = j
	}
	for range 20000 {
		in := -1
		for j := range n {
			if goal[j] < -1e-9 && (in < 0 || free[j] < free[in]) {
				in = j
			}
		}
		if in < 0 {
			return goal[n]
		}
		out := -1
		for i := range base {
			if rows[i][in] <= 1e-9 {
				continue
			}
			if out < 0 {
				out = i
				continue
			}
			d := rows[i][n]/rows[i][in] - rows[out][n]/rows[out][in]
			if d < -1e-12 || d < 1e-12 && base[i] < base[out] {
				out = i
			}
		}
		if out < 0 {
			t.Fatal("the program has no bound")
		}
		pivot(rows, out, in)
		base[out], free[in] = free[in], base[out]
	}
	t.Fatal("the simplex method does not end")
	return 0
}

// pivot exchanges the basic variable of row r with the free one of column c, in place.
func pivot(rows [][]float64, r, c int) {
	by := rows[r][c]
	for j := range rows[r] {
		rows[r][j] /= by
	}
	rows[r][c] = 1 / by
	for i := range rows {
		f := rows[i][c]
		if i == r || f == 0 {
			continue
		}
		for j := range rows[i] {
			if j != c {
				rows[i][j] -= f * rows[r][j]
			}
		}
		rows[i][c] = -f * rows[r][c]
	}
}

// dowelProgram is the limit analysis of a dowel as a linear program: the dowel lies in strips of wood, each pressing
// on it one way or the other with at most q per length; its moment stays below the plastic one at the ends of all
// strips; each loose layer is in balance by itself; the load is what the side group presses.
//
// Unknowns are the two ways of each strip, in units of lb; lengths in inches.
func dowelProgram(d Dowel, beds []Bed, strips int) program {
	type strip struct {
		mid, most float64
		bed       int
	}
	var all []strip
	var nodes []float64
	x := 0.0
	for i, b := range beds {
		t := b.Length.Inches()
		if b.Hold != Void {
			h := t / float64(strips)
			for k := range strips {
				all = append(all, strip{x + (float64(k)+0.5)*h, b.Fe.PSI() * d.Nominal.Inches() * h, i})
				nodes = append(nodes, x+float64(k+1)*h)
			}
		}
		x += t
		nodes = append(nodes, x)
	}
	n := len(all)
	row := func(of func(s strip) float64) []float64 {
		r := make([]float64, 2*n)
		for i, s := range all {
			r[i], r[n+i] = of(s), -of(s)
		}
		return r
	}
	var p program
	atMost := func(r []float64, b float64) { p.a, p.b = append(p.a, r), append(p.b, b) }
	both := func(r []float64, b float64) {
		less := make([]float64, len(r))
		for i := range r {
			less[i] = -r[i]
		}
		atMost(r, b)
		atMost(less, b)
	}
	for i, s := range all {
		one := make([]float64, 2*n)
		one[i], one[n+i] = 1, 1
		atMost(one, s.most)
	}
	moment := func(at float64) []float64 { return row(func(s strip) float64 { return math.Max(0, at-s.mid) }) }
	for _, at := range nodes {
		both(moment(at), d.Plastic().PoundInches())
	}
	both(moment(x+1), 0) // nothing holds the ends: no moment beyond them, no force
	both(row(func(s strip) float64 { return 1 }), 0)
	for i, b := range beds {
		if b.Hold == Loose {
			both(row(func(s strip) float64 { return either01(s.bed == i) }), 0)
		}
	}
	p.c = row(func(s strip) float64 { return either01(beds[s.bed].Hold == Side) })
	return p
}

func either01(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

// The closed form for a dowel through many layers is the limit load that a linear program finds, which knows
// nothing of hinges, groups or modes. The strips of the program make it a little coarse.
func TestTransferAgainstLinearProgram(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for i := range 24 {
		d := Dowel{Kind: Bolt, Nominal: inches([]float64{0.5, 0.625, 0.75}[r.IntN(3)]), Fyb: psis(45000)}
		d.Root = d.Nominal
		wood := func(h Hold) Bed {
			return Bed{"", h, inches(0.5 + 2.5*r.Float64()), psis(1500 + 4000*r.Float64()), 90}
		}
		gap := func() Bed { return Bed{"", Void, inches(1.5 * r.Float64()), 0, 0} }
		beds := []Bed{wood(Main)}
		if r.IntN(2) == 0 {
			beds = append(beds, wood(Main))
		}
		beds = append(beds, gap())
		for range r.IntN(3) {
			beds = append(beds, wood(Loose), gap())
		}
		beds = append(beds, wood(Side))
		if r.IntN(2) == 0 {
			beds = append(beds, wood(Side))
		}
		want := dowelProgram(d, beds, 12).best(t)
		if got := d.Transfer(beds).P.Pounds(); math.Abs(got-want) > 0.01*want {
			t.Errorf("case %d, %+v: P %.1f lb, by linear program %.1f lb", i, beds, got, want)
		}
	}
}
