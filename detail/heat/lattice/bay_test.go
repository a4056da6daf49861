package lattice

import (
	"context"
	"fmt"
	"math"
	"runtime"
	"testing"
)

// bay is half a bay of wall with one block and two bolts, as in the fixed heat problem that solvers
// are timed with: the cells, the heat from the room and the face cells of the room.
type bay struct {
	*System
	solid      int
	heat       []float64 // W at a room of 20 and an outside of 0 degrees
	room       []float32 // W/K from the room
	half       []float64 // K/W from the room face to the cell's middle, for face temperatures
	x, y, z    []float64 // widths, mm
	kx, ky, kz []float64
}

type bayBox struct {
	x0, x1, y0, y1, z0, z1 float64
	kx, ky, kz             float64
}

func widths(breaks []float64, counts []int, m int) (w, mid []float64) {
	for i, n := range counts {
		d := (breaks[i+1] - breaks[i]) / float64(n*m)
		for c := range n * m {
			w = append(w, d)
			mid = append(mid, breaks[i]+(float64(c)+0.5)*d)
		}
	}
	return w, mid
}

// newBay fills the grid of the problem, every interval split m times its count.
func newBay(m int) *bay {
	b := &bay{}
	var mx, my, mz []float64
	b.x, mx = widths([]float64{0, 5.64, 152.4, 304.8, 812.8}, []int{1, 8, 5, 7}, m)
	b.y, my = widths([]float64{0, 12.7, 114.3, 152.4, 165.1, 228.6, 241.3, 279.4}, []int{1, 5, 3, 1, 5, 2, 3}, m)
	b.z, mz = widths([]float64{-609.6, -304.8, -152.4, -117.475, -75.64, -64.36, 64.36, 75.64, 117.475, 152.4, 304.8, 609.6},
		[]int{5, 4, 3, 4, 2, 9, 2, 4, 3, 4, 5}, m)
	const all = 1e9
	boxes := []bayBox{
		{-all, all, 0, 12.7, -all, all, .25, .25, .25},
		{-all, all, 12.7, 152.4, -all, all, .04, .04, .04},
		{-all, all, 114.3, 152.4, -152.4, 152.4, .23, .13, .13},
		{-all, all, 152.4, 165.1, -all, all, .13, .13, .13},
		{-all, all, 165.1, 228.6, -all, all, .036, .036, .036},
		{0, 152.4, 165.1, 241.3, -117.475, 117.475, .23, .13, .13},
		{-all, all, 241.3, 279.4, -117.475, 117.475, .23, .13, .13},
		{0, 5.64, 114.3, 279.4, 70 - 5.64, 70 + 5.64, 50, 50, 50},
		{0, 5.64, 114.3, 279.4, -70 - 5.64, -70 + 5.64, 50, 50, 50},
	}
	b.System = New(Shape{len(b.x), len(b.y), len(b.z)})
	n := b.Len()
	b.kx, b.ky, b.kz = make([]float64, n), make([]float64, n), make([]float64, n)
	b.room, b.heat, b.half = make([]float32, n), make([]float64, n), make([]float64, n)
	for k, z := range mz {
		for j, y := range my {
			for i, x := range mx {
				at := b.At(i, j, k)
				for _, o := range boxes {
					if x > o.x0 && x < o.x1 && y > o.y0 && y < o.y1 && z > o.z0 && z < o.z1 {
						b.kx[at], b.ky[at], b.kz[at] = o.kx, o.ky, o.kz
					}
				}
				if b.kx[at] > 0 {
					b.solid++
				}
			}
		}
	}
	b.join()
	return b
}

// join sets the conductances: W/K with widths in mm.
func (b *bay) join() {
	for k := range b.Z {
		for j := range b.Y {
			for i := range b.X {
				at := b.At(i, j, k)
				if b.kx[at] == 0 {
					continue
				}
				ax, ay, az := b.y[j]*b.z[k]/1e3, b.x[i]*b.z[k]/1e3, b.x[i]*b.y[j]/1e3
				b.East[at] = b.side(at, b.stride(alongX), i+1 < b.X, false, ax, b.x[i], at0(b.x, i+1), b.kx)
				b.North[at] = b.side(at, b.stride(alongY), j+1 < b.Y, j+1 == b.Y, ay, b.y[j], at0(b.y, j+1), b.ky)
				b.Up[at] = b.side(at, b.stride(alongZ), k+1 < b.Z, false, az, b.z[k], at0(b.z, k+1), b.kz)
				b.side(at, -b.stride(alongX), i > 0, false, ax, b.x[i], 1, b.kx)
				b.side(at, -b.stride(alongY), j > 0, false, ay, b.y[j], 1, b.ky)
				b.side(at, -b.stride(alongZ), k > 0, false, az, b.z[k], 1, b.kz)
				if j == 0 {
					b.half[at] = b.y[j] / 2 / b.ky[at] / ay
					b.room[at] = float32(ay / (b.y[j]/2/b.ky[at] + 0.13*1e3))
					b.Loss[at] += b.room[at]
					b.heat[at] = float64(b.room[at]) * 20
				}
			}
		}
	}
}

func at0(w []float64, i int) float64 {
	if i < len(w) {
		return w[i]
	}
	return 1
}

// side returns the link over one side of a cell; a side to the open air adds to the loss instead.
func (b *bay) side(at, step int, inside, outer bool, area, d, dn float64, k []float64) float32 {
	switch {
	case outer:
		b.Loss[at] += float32(area / (d/2/k[at] + 0.04*1e3))
	case !inside:
	case k[at+step] == 0:
		b.Loss[at] += float32(area / (d/2/k[at] + 0.13*1e3))
	default:
		return float32(area / (d/2/k[at] + dn/2/k[at+step]))
	}
	return 0
}

// flow returns the heat from the room, W, and the lowest temperature of its face.
func (b *bay) flow(t []float64) (q, least float64) {
	least = 20
	for n, g := range b.room {
		f := float64(g) * (20 - t[n])
		q += f
		if g > 0 {
			least = min(least, t[n]+f*b.half[n])
		}
	}
	return q, least
}

// Grid 1 of the fixed heat problem gives 3.690275 W and 19.3663 C, computed twice independently
// with the same scheme.
func TestBay(t *testing.T) {
	b := newBay(1)
	if b.solid != 15876 {
		t.Fatalf("%d solid cells, want 15876", b.solid)
	}
	temp := make([]float64, b.Len())
	s, err := Prepare(context.Background(), b.System, Options{})
	if err != nil {
		t.Fatal(err)
	}
	run, err := s.Solve(context.Background(), temp, b.heat, 1e-8)
	if err != nil {
		t.Fatal(err)
	}
	q, least := b.flow(temp)
	if math.Abs(q-3.690275) > 1e-6 || math.Abs(least-19.3663) > 5e-5 {
		t.Errorf("flow %.6f W, lowest face %.4f C; want 3.690275 and 19.3663", q, least)
	}
	if run.Rounds > 25 {
		t.Errorf("%d rounds", run.Rounds)
	}
}

func BenchmarkBay(b *testing.B) {
	for _, m := range []int{2, 4, 6} {
		p := newBay(m)
		b.Run(fmt.Sprintf("m=%d", m), func(b *testing.B) {
			var run Run
			var q float64
			var before, after runtime.MemStats
			runtime.GC()
			runtime.ReadMemStats(&before)
			for b.Loop() {
				s, err := Prepare(context.Background(), p.System, Options{})
				if err != nil {
					b.Fatal(err)
				}
				temp := make([]float64, p.Len())
				if run, err = s.Solve(context.Background(), temp, p.heat, 1e-8); err != nil {
					b.Fatal(err)
				}
				q, _ = p.flow(temp)
			}
			runtime.ReadMemStats(&after)
			sec := b.Elapsed().Seconds() / float64(b.N)
			b.ReportMetric(float64(p.solid), "cells")
			b.ReportMetric(float64(p.solid)/sec, "cells/s")
			b.ReportMetric(float64(after.TotalAlloc-before.TotalAlloc)/float64(b.N)/float64(p.solid)+16*float64(p.Len())/float64(p.solid), "B/cell")
			b.ReportMetric(float64(run.Rounds), "rounds")
			b.ReportMetric(q, "W")
		})
	}
}
