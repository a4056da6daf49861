package geom

import (
	"math"
	"testing"
)

// coords reads numbers between -50 and 50 from fuzzing bytes. The first byte chooses how they lie: on whole
// millimetres, so that everything touches; on whole millimetres give or take a few Tol, where rounding
// decides; or anywhere.
type coords struct {
	data []byte
	kind byte
}

func newCoords(data []byte) *coords {
	c := &coords{data: data}
	c.kind = c.byte() % 3
	return c
}

func (c *coords) byte() byte {
	if len(c.data) == 0 {
		return 0
	}
	b := c.data[0]
	c.data = c.data[1:]
	return b
}

func (c *coords) next() float64 {
	whole := float64(int(c.byte())%21 - 10)
	switch c.kind {
	case 0:
		return whole
	case 1:
		return whole + float64(int(c.byte())%9-4)*0.4*Tol
	}
	return whole*5 + float64(c.byte())/256 + float64(c.byte())/65536
}

func (c *coords) vec() Vec { return Vec{c.next(), c.next()} }

// region reads up to five shapes put together, each valid by itself: a box, disc, triangle or box with a
// rounded end.
func (c *coords) region() Region {
	var rs []Region
	for range 1 + c.byte()%5 {
		p, q := c.vec(), c.vec()
		switch c.byte() % 4 {
		case 0:
			rs = append(rs, Rect(p.X, p.Y, q.X, q.Y))
		case 1:
			rs = append(rs, Circle(p, math.Abs(q.X)))
		case 2:
			tri := Polygon(p, q, c.vec())
			rs = append(rs, Region{outward(tri)})
		case 3:
			end := Path{V: []Vertex{{p, 0}, {Vec{q.X, p.Y}, 0.5}, {q, 0}, {Vec{p.X, q.Y}, 0}}, Closed: true}
			rs = append(rs, Region{outward(end)})
		}
	}
	return Union(rs...)
}

func (c *coords) solid() Solid {
	o := Vec3{c.next(), c.next(), c.next()}
	d := Vec3{math.Abs(c.next()), math.Abs(c.next()), math.Abs(c.next())}
	axis := Axis(c.byte() % 3)
	box := BoxSolid(Box3{o, o.Add(d)})
	switch c.byte() % 5 {
	case 0:
		return Cylinder(o, axis, d.X, d.Y)
	case 1:
		return box.Bore(Cylinder(o.Add(Vec3{c.next(), c.next(), c.next()}), axis, 1, c.next()))
	case 2:
		return Prism(c.region(), axis, d.X, d.Y)
	case 3:
		return box.Transform(Turn(axis, o, c.next()))
	}
	return box
}

func (c *coords) view() View {
	if c.byte()%2 == 0 {
		return AxisView(Axis(c.byte()%3), 1-2*int(c.byte()%2), c.next())
	}
	return Axonometric(Vec3{}, Vec3{c.next(), c.next(), c.next()})
}

func seed(f *testing.F) {
	f.Add([]byte{})
	for kind := range byte(3) {
		for n := range byte(6) {
			data := []byte{kind}
			for i := range byte(60) {
				data = append(data, (i*(37+2*n)+n*11)^(i>>2))
			}
			f.Add(data)
		}
	}
}

func FuzzBoolean(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		c := newCoords(data)
		a, b := c.region(), c.region()
		u, i, d := Union(a, b), Intersect(a, b), Subtract(a, b)
		for _, r := range []Region{a, b, u, i, d} {
			if x := r.Area(); !(x >= -1e-9) {
				t.Errorf("area %g of %v", x, r)
			}
			for _, p := range r {
				if !p.finite() {
					t.Errorf("not finite: %v", p)
				}
			}
		}
		tol := 2e-5 * (1 + perimeter(a) + perimeter(b))
		near(t, "area of A and B + A less B", i.Area()+d.Area(), a.Area(), tol)
		near(t, "area of A or B", u.Area()+i.Area(), a.Area()+b.Area(), tol)
		in, out := ClipPath(shapePath(c), u, true), ClipPath(shapePath(c), u, false)
		_, _ = in, out
	})
}

// shapePath reads an open path with an arc.
func shapePath(c *coords) Path {
	return Path{V: []Vertex{{c.vec(), 0}, {c.vec(), c.next() / 10}, {c.vec(), 0}}}
}

func FuzzHatch(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		c := newCoords(data)
		angle, spacing, origin, shift := c.next(), 0.3+math.Abs(c.next()), c.vec(), c.next()
		var dashes []float64
		for range c.byte() % 4 {
			dashes = append(dashes, c.next())
		}
		r := c.region()
		checkHatch(t, r, angle, spacing, origin, dashes, shift)
		whole, dashed := Hatch(r, angle, spacing, origin, nil, 0), Hatch(r, angle, spacing, origin, dashes, shift)
		if total(dashed) > total(whole)+1e-6 {
			t.Errorf("dashed %g, whole %g", total(dashed), total(whole))
		}
		if m := total(Merge(append(whole, dashed...))); m > total(whole)+1e-4 {
			t.Errorf("dashes beside the lines: %g, lines %g", m, total(whole))
		}
	})
}

func FuzzProject(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		c := newCoords(data)
		v := c.view()
		flags := c.byte()
		var solids []Solid
		for range 1 + c.byte()%4 {
			solids = append(solids, c.solid())
		}
		o := ProjectOptions{Cut: flags&1 != 0, Near: float64(flags & 6), Far: float64(flags & 24)}
		es := Project(v, solids, o)
		visible, hidden := drawn(es)
		o.Clear = func(int) bool { return true }
		all, _ := drawn(Project(v, solids, o))
		if c.kind != 1 { // lines a Tol or two apart may or may not count as one
			near(t, "visible + hidden", visible+hidden, all, 1e-3*(1+all))
		}
		for _, e := range es {
			if !e.Path.finite() || e.Solid < 0 || e.Solid >= len(solids) || !(e.Path.Length() > 0) {
				t.Errorf("edge %v", e)
			}
		}
		for _, s := range solids {
			r := s.Cut(v)
			if a := r.Area(); !(a >= -1e-6) {
				t.Errorf("section of area %g", a)
			}
			if vol := s.Volume(); !(vol >= -1e-6) {
				t.Errorf("volume %g", vol)
			}
		}
	})
}
