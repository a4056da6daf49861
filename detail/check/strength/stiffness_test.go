package strength

import (
	"math"
	"math/rand/v2"
	"testing"
)

// An independent solve of the same beams: a stiffness matrix over nodes at supports, ends and point
// loads, with cubic beam elements and fixed-end forces.
func TestBeamAgainstStiffnessMatrix(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for n := range 500 {
		b, a := randomBeam(r)
		got := b.solve(a)
		nodes, u, reaction := stiffnessSolve(b, a)
		scale := 1.0
		for _, v := range reaction {
			scale = math.Max(scale, math.Abs(v))
		}
		for i := range b.at {
			if math.Abs(got.reaction[i]-reaction[i]) > 1e-6*scale {
				t.Fatalf("beam %d: reaction %d is %.6f, stiffness method %.6f", n, i, got.reaction[i], reaction[i])
			}
		}
		for i, x := range nodes {
			if y := got.dropAt(x); math.Abs(y-u[2*i]) > 1e-7*(0.01+math.Abs(u[2*i])) {
				t.Fatalf("beam %d: deflection at %.3f is %.9f, stiffness method %.9f", n, x, y, u[2*i])
			}
		}
	}
}

// dropAt is the deflection at x.
func (b bent) dropAt(x float64) float64 {
	y := math.NaN()
	for _, s := range b.spans {
		for _, p := range s.pieces {
			if x >= p.x-near && x <= p.x+p.l+near {
				y = p.dropAt(x-p.x, b.ei)
			}
		}
	}
	return y
}

func stiffnessSolve(b beam, a action) (nodes, u, reaction []float64) {
	nodes = append(append([]float64{}, b.at...), 0, b.length)
	for _, p := range a.points {
		nodes = append(nodes, p.x)
	}
	nodes = distinct(nodes)
	n := 2 * len(nodes)
	k, f := make([][]float64, n), make([]float64, n)
	for i := range k {
		k[i] = make([]float64, n)
	}
	for e := range len(nodes) - 1 {
		l := nodes[e+1] - nodes[e]
		w := a.spread[b.segment((nodes[e]+nodes[e+1])/2)]
		ke := [4][4]float64{{12, 6 * l, -12, 6 * l}, {6 * l, 4 * l * l, -6 * l, 2 * l * l}, {-12, -6 * l, 12, -6 * l}, {6 * l, 2 * l * l, -6 * l, 4 * l * l}}
		fe := [4]float64{w * l / 2, w * l * l / 12, w * l / 2, -w * l * l / 12}
		for i := range 4 {
			f[2*e+i] += fe[i]
			for j := range 4 {
				k[2*e+i][2*e+j] += b.ei / (l * l * l) * ke[i][j]
			}
		}
	}
	for _, p := range a.points {
		f[2*index(nodes, p.x)] += p.p
	}
	full := make([][]float64, n)
	load := append([]float64{}, f...)
	for i := range k {
		full[i] = append([]float64{}, k[i]...)
	}
	for i, x := range b.at { // hold the supports at their levels
		row := 2 * index(nodes, x)
		for j := range k[row] {
			k[row][j] = 0
		}
		k[row][row] = b.ei // of the size of its neighbours
		f[row] = b.ei * a.level(i)
	}
	u = gauss(k, f)
	for _, x := range b.at {
		row := 2 * index(nodes, x)
		sum := load[row]
		for j := range u {
			sum -= full[row][j] * u[j]
		}
		reaction = append(reaction, sum)
	}
	return nodes, u, reaction
}

// distinct sorts and drops repeats closer than a millionth of an inch.
func distinct(x []float64) []float64 {
	var out []float64
	for len(x) > 0 {
		i := 0
		for j := range x {
			if x[j] < x[i] {
				i = j
			}
		}
		if len(out) == 0 || x[i]-out[len(out)-1] > near {
			out = append(out, x[i])
		}
		x = append(x[:i], x[i+1:]...)
	}
	return out
}

func index(nodes []float64, x float64) int {
	for i, n := range nodes {
		if math.Abs(n-x) <= near {
			return i
		}
	}
	return -1
}
