package detail

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"standclear/detail/spec"
	"standclear/detail/unit"
	"standclear/geom"
)

// LayerMark returns the mark of the i-th wall layer, counted from inside: W1, W2 ...
func LayerMark(i int) string { return "W" + strconv.Itoa(i+1) }

// doorHoles returns the openings in the wall above height z.
func (a *Assembly) doorHoles(z float64) geom.Region {
	var r geom.Region
	for _, d := range a.Spec.Doors {
		r = geom.Union(r, geom.Rect(d.From.MM(), z, d.To.MM(), a.Frame.Top+1))
	}
	return r
}

// holes through the layers of the wall where the blocks stand.
func (a *Assembly) blockHoles() geom.Region {
	var r geom.Region
	for _, b := range a.Blocks {
		r = append(r, geom.Rect(b.Box.Min.X, b.Box.Min.Z, b.Box.Max.X, b.Box.Max.Z)...)
	}
	return geom.Union(r)
}

// interior builds the layers inside the sheathing above the floor.
func (a *Assembly) interior() {
	s, f := a.Spec, a.Frame
	y := f.SheathIn
	for i := len(s.Wall.Layers) - 1; i >= 0; i-- {
		l := s.Wall.Layers[i]
		t := l.Thickness.MM()
		switch l.Role {
		case "studs":
			a.studs(l, i, y-t, y)
			y -= t
		case "finish":
			out := geom.Subtract(geom.Rect(f.Left, 0, f.Right, f.Top), a.doorHoles(0))
			a.add(Part{ID: LayerMark(i), Mark: LayerMark(i), Name: l.Name, Role: Finish, Material: l.Material, Block: -1, Existing: true,
				Size: [3]unit.Length{l.Thickness}, Solids: []geom.Solid{panel(out, y-t, y)}})
			y -= t
		}
	}
}

// studs builds the sole plate, the studs and what fills the bays.
func (a *Assembly) studs(l spec.Layer, i int, y0, y1 float64) {
	s, f := a.Spec, a.Frame
	sole := s.Pick(1.5*25.4, 45)
	wall := geom.Subtract(geom.Rect(f.Left, f.SubTop, f.Right, f.Top), a.doorHoles(f.SubTop))
	plate := wall.Clip(geom.Box{Min: geom.Vec{X: f.Left, Y: f.SubTop}, Max: geom.Vec{X: f.Right, Y: f.SubTop + sole}})
	a.add(Part{ID: "SOLE", Mark: "EX1", Name: "SOLE PLATE", Role: Plate, Material: "softwood", Grain: geom.X, Block: -1, Existing: true,
		Size: [3]unit.Length{unit.Length(sole), l.Thickness}, Solids: []geom.Solid{panel(plate, y0, y1)}})
	bay := geom.Subtract(wall, plate)
	h := s.Wall.StudWidth.MM() / 2
	n := 0
	var all geom.Region
	for _, x := range axes(s.Wall.StudFirst.MM(), s.Wall.StudSpacing.MM(), f.Left+h, f.Right-h) {
		at := geom.Intersect(bay, geom.Rect(x-h, f.SubTop+sole, x+h, f.Top))
		if at.Empty() {
			continue
		}
		n++
		a.add(Part{ID: fmt.Sprintf("STUD%d", n), Mark: "EX2", Name: "STUD", Role: Stud, Material: "softwood", Grain: geom.Z, Block: -1, Existing: true,
			Size: [3]unit.Length{s.Wall.StudWidth, l.Thickness}, Solids: []geom.Solid{panel(at, y0, y1)}})
		all = append(all, at...)
	}
	bay = geom.Subtract(bay, all)
	if bay.Empty() {
		return
	}
	a.add(Part{ID: LayerMark(i), Mark: LayerMark(i), Name: l.Name, Role: Cavity, Material: l.Material, Block: -1, Existing: true,
		Size: [3]unit.Length{l.Thickness}, Solids: panels(bay.Parts(), y0, y1)})
}

// panels extrudes each part of an outline on its own.
func panels(parts []geom.Region, y0, y1 float64) []geom.Solid {
	var out []geom.Solid
	for _, r := range parts {
		out = append(out, panel(r, y0, y1))
	}
	return out
}

// outside builds sheathing, barrier, insulation, furring and cladding.
func (a *Assembly) outside() {
	s, f := a.Spec, a.Frame
	whole := geom.Subtract(geom.Rect(f.Left, f.Bottom, f.Right, f.Top), a.doorHoles(f.SubTop))
	sheathed := whole.Clip(geom.Box{Min: geom.Vec{X: f.Left, Y: a.sheathBottom()}, Max: geom.Vec{X: f.Right, Y: f.Top}})
	cut := geom.Subtract(whole, a.blockHoles())
	pieces := cut.Parts()
	y, beyond := 0.0, false
	for i, l := range s.Wall.Layers {
		t := l.Thickness.MM()
		p := Part{ID: LayerMark(i), Mark: LayerMark(i), Name: l.Name, Material: l.Material, Block: -1, Size: [3]unit.Length{l.Thickness}}
		switch {
		case l.Role == "sheathing":
			beyond = true
			p.Role, p.Existing, p.Grain = Sheathing, true, geom.Z
			p.Solids = panels(sheathed.Parts(), f.SheathIn, 0)
			p.Bores = a.bores(f.SheathIn-1, 1)
		case !beyond:
			continue
		case l.Role == "wrb":
			p.Role, p.Thin = Barrier, true
			p.Solids = a.barrier(cut)
		case l.Role == "cavity":
			a.furring(l, i, y, y+t)
			y += t
			continue
		case l.Role == "cladding":
			a.cladding(l, i, y, y+t)
			y += t
			continue
		default:
			p.Role = OuterInsul
			p.Solids = panels(pieces, y, y+t)
			y += t
		}
		a.add(p)
	}
}

// sheathBottom is where the sheathing ends: at the underside of the plate on a foundation, at the
// bottom of the wall where a storey stands below.
func (a *Assembly) sheathBottom() float64 {
	if a.Spec.Foundation.Kind == "wall" {
		return a.Frame.Bottom
	}
	return math.Max(a.Frame.Bottom, a.Frame.PlateBottom)
}

// band is the stretch of wall that the cladding leaves free for the ledger.
func (a *Assembly) band() geom.Region {
	f, s := a.Frame, a.Spec
	if s.Wall.Cladding.BehindLedger {
		return nil
	}
	c := s.Wall.Cladding.AboveFlash.MM()
	return geom.Rect(-c, f.BandBottom, s.Ledger.Length.MM()+c, f.BandTop)
}

// furring builds the strips over the studs that keep the cavity open.
func (a *Assembly) furring(l spec.Layer, i int, y0, y1 float64) {
	s, f := a.Spec, a.Frame
	half := s.Pick(2.5*25.4, 60) / 2 // 1x3 strip
	wall := geom.Subtract(geom.Rect(f.Left, f.Bottom, f.Right, f.Top), a.doorHoles(f.SubTop), a.band())
	n := 0
	for _, x := range axes(s.Wall.StudFirst.MM(), s.Wall.StudSpacing.MM(), f.Left+half, f.Right-half) {
		for _, r := range geom.Intersect(wall, geom.Rect(x-half, f.Bottom, x+half, f.Top)).Parts() {
			n++
			a.add(Part{ID: fmt.Sprintf("%s/%d", LayerMark(i), n), Mark: LayerMark(i), Name: l.Name, Role: Furring, Material: l.Material, Grain: geom.Z, Block: -1,
				Size: [3]unit.Length{l.Thickness, unit.Length(2 * half)}, Solids: []geom.Solid{panel(r, y0, y1)}})
		}
	}
}

// lapOf is how far a course of lapped cladding runs up behind the next, mm (1 in; common practice, no
// source).
const lapOf = 25.4

// cladding builds the courses from the base up; lapped courses taper and run up behind the next. Under the
// sill of a door they stop short of it, so that the air of the cavity finds a way out.
//
//	 |/    tip
//	 /|    butt of the next course
//	/ |
func (a *Assembly) cladding(l spec.Layer, i int, y0, y1 float64) {
	s, f := a.Spec, a.Frame
	wall := geom.Subtract(geom.Rect(f.Left, f.Bottom, f.Right, f.Top), a.doorHoles(f.SubTop-s.Wall.Cladding.BelowSill.MM()), a.band())
	step, note := s.Wall.Cladding.Exposure.MM(), ""
	if step <= 0 {
		step = f.Top - f.Bottom
	} else {
		note = s.Wall.Cladding.Exposure.Text(s.Project.System) + " to the weather"
	}
	n := 0
	columns := a.columns(wall)
	for z := f.Bottom; z < f.Top-geom.Tol; z += step {
		for _, b := range strips(wall, columns, z, math.Min(z+step, f.Top)) {
			n++
			over := geom.Vec{X: (b.Min.X + b.Max.X) / 2, Y: b.Max.Y + lapOf}
			runsUp := slices.ContainsFunc(columns, func(c column) bool { return c.holds(over) })
			a.add(Part{ID: fmt.Sprintf("%s/%d", LayerMark(i), n), Mark: LayerMark(i), Name: l.Name, Role: Cladding, Material: l.Material, Grain: geom.X, Block: -1,
				Note: note, Size: [3]unit.Length{l.Thickness}, Solids: []geom.Solid{a.course(b, y0, y1, z, step, runsUp)}})
		}
	}
}

// column is a stretch of a wall between two of its corners, and the heights it fills there, from the bottom up.
type column struct {
	x0, x1 float64
	filled []geom.Box
	rough  bool // an end lies so near another corner that the two may be taken for one
}

// columns cuts a wall at its corners, which lie on the ends of the ledger band and of the doors.
func (a *Assembly) columns(wall geom.Region) []column {
	f := a.Frame
	xs := []float64{f.Left, f.Right}
	for _, p := range wall {
		for _, v := range p.V {
			xs = append(xs, v.X)
		}
	}
	slices.Sort(xs)
	xs = slices.Compact(xs)
	var out []column
	for i := 1; i < len(xs); i++ {
		c := column{x0: xs[i-1], x1: xs[i]}
		for _, x := range xs[max(0, i-2):min(len(xs), i+2)] {
			c.rough = c.rough || x != c.x0 && math.Abs(x-c.x0) < 1 || x != c.x1 && math.Abs(x-c.x1) < 1
		}
		for _, r := range geom.Intersect(wall, geom.Rect(c.x0, f.Bottom, c.x1, f.Top)).Parts() {
			c.filled = append(c.filled, r.Bounds())
		}
		out = append(out, c)
	}
	return out
}

// holds reports whether a point lies in the column.
func (c column) holds(p geom.Vec) bool {
	return slices.ContainsFunc(c.filled, func(b geom.Box) bool { return b.Grow(geom.Tol).Holds(p) })
}

// between returns what of the column lies between two heights: all or nothing of it as a rule.
func (c column) between(wall geom.Region, z0, z1 float64) []geom.Box {
	touched := false
	for _, b := range c.filled {
		if !c.rough && b.Min.Y <= z0 && b.Max.Y >= z1 {
			return []geom.Box{{Min: geom.Vec{X: c.x0, Y: z0}, Max: geom.Vec{X: c.x1, Y: z1}}}
		}
		touched = touched || b.Min.Y <= z1+geom.Tol && b.Max.Y >= z0-geom.Tol
	}
	if !touched && !c.rough {
		return nil
	}
	var out []geom.Box
	for _, r := range geom.Intersect(wall, geom.Rect(c.x0, z0, c.x1, z1)).Parts() {
		out = append(out, r.Bounds())
	}
	return out
}

// strips cuts the part of a wall between two heights into rectangles, as long as they can be.
func strips(wall geom.Region, columns []column, z0, z1 float64) []geom.Box {
	var out []geom.Box
	for _, c := range columns {
		for _, b := range c.between(wall, z0, z1) {
			k := slices.IndexFunc(out, func(o geom.Box) bool {
				return math.Abs(o.Max.X-b.Min.X) < geom.Tol && math.Abs(o.Min.Y-b.Min.Y) < geom.Tol && math.Abs(o.Max.Y-b.Max.Y) < geom.Tol
			})
			if k >= 0 {
				out[k] = out[k].Union(b)
				continue
			}
			out = append(out, b)
		}
	}
	return out
}

// course shapes one piece of cladding: flat, or a wedge leaning on the tip of the course below, with its
// own tip behind the course above where that one runs on.
func (a *Assembly) course(b geom.Box, y0, y1, z, step float64, runsUp bool) geom.Solid {
	if a.Spec.Wall.Cladding.Exposure <= 0 {
		return box(b.Min.X, b.Max.X, y0, y1, b.Min.Y, b.Max.Y)
	}
	const tip = 0.4 // of the depth, where the next course leans on it
	high := b.Max.Y
	if runsUp {
		high += lapOf
	}
	back := func(h float64) float64 { return y0 + (y1-y0)*tip*math.Max(0, 1-(h-z)/step) }
	face := func(h float64) float64 { return y1 - (y1-y0)*(1-tip)*(h-z)/step }
	profile := geom.Region{geom.Polygon(
		geom.Vec{X: back(b.Min.Y), Y: b.Min.Y}, geom.Vec{X: face(b.Min.Y), Y: b.Min.Y}, geom.Vec{X: math.Max(face(high), y0+0.5), Y: high},
		geom.Vec{X: back(high), Y: high}, geom.Vec{X: back(b.Max.Y), Y: b.Max.Y})}
	return geom.Prism(profile, geom.X, b.Min.X, b.Max.X)
}
