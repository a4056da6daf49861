package view

import (
	"math"

	"standclear/detail"
	"standclear/detail/stock"
	"standclear/geom"
	"standclear/render"
)

func vec(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }

// texture fills a cut part by its material: hatches for boards and masses, diagonals for lumber
// cut across its grain, grain lines along it, loops for batts. Parts under 1.2 mm plotted stay empty.
func texture(c Piece, v geom.View, k float64) []render.Item {
	if len(c.Region) == 0 {
		return nil
	}
	b := c.Whole.Bounds()
	if math.Min(b.W(), b.H()) < 1.2*k {
		return nil
	}
	across := math.Abs(v.N.Dot(c.Part.Grain.Unit())) > 0.99
	switch c.Part.Role {
	case detail.Ledger, detail.Plate, detail.DeckJoist, detail.Stud, detail.FootPiece, detail.HouseJoist:
		return lumber(c, b, v, across)
	case detail.BlockPly, detail.Backing:
		return blocking(c, b, v, across)
	case detail.Rim:
		if isStrand(c.Part.Material) {
			return fill(c, lamella, longTurn(b))
		}
		return lumber(c, b, v, across)
	case detail.Cavity:
		return batt(c, b)
	case detail.Earth:
		return earth(c, b, k)
	}
	return hatch(c, b, k)
}

// lumber is framing that runs through the plane: two diagonals; along it, grain lines.
func lumber(c Piece, b geom.Box, v geom.View, across bool) []render.Item {
	if !across {
		return fill(c, grain, grainTurn(c, v))
	}
	return diagonals(c, b, true)
}

// blocking is a short piece: one diagonal.
func blocking(c Piece, b geom.Box, v geom.View, across bool) []render.Item {
	switch {
	case markOf(c.Part.Material) == "plywood":
		return fill(c, ply, longTurn(b))
	case isStrand(c.Part.Material) && across:
		return append(fill(c, lamella, longTurn(b)), diagonals(c, b, false)...)
	case isStrand(c.Part.Material):
		return fill(c, lamella, longTurn(b))
	case !across:
		return fill(c, grain, grainTurn(c, v))
	}
	return diagonals(c, b, false)
}

// grainTurn turns grain lines along the fibres as the view shows them.
func grainTurn(c Piece, v geom.View) float64 {
	if math.Abs(v.V.Dot(c.Part.Grain.Unit())) > 0.99 {
		return 90
	}
	return 0
}

// markOf returns the kind of mark of a material; wood species are lumber.
func markOf(key string) string {
	if m, ok := stock.MaterialOf(key); ok {
		return m.Hatch
	}
	if b, ok := stock.Rim(key, 0); ok {
		if m, ok := stock.MaterialOf(b.Material); ok {
			return m.Hatch
		}
	}
	return "lumber"
}

func isStrand(m string) bool { return m == "lsl" || m == "lvl" || m == "osb" || m == "osb-rim" }

// longTurn turns a pattern so that its lines run along the longer side.
func longTurn(b geom.Box) float64 {
	if b.H() > b.W() {
		return 90
	}
	return 0
}

func fill(c Piece, p *render.HatchPattern, turn float64) []render.Item {
	b := c.Whole.Bounds()
	return []render.Item{render.Fill{Pen: render.Pattern, Region: c.Region, Pattern: p, Turn: turn, Origin: b.Min}}
}

// hatch covers boards and masses with the pattern of their material.
func hatch(c Piece, b geom.Box, k float64) []render.Item {
	turn := longTurn(b)
	switch markOf(c.Part.Material) {
	case "plywood":
		return fill(c, ply, turn)
	case "osb":
		return fill(c, osb, turn)
	case "foam":
		return insulation(c, foam, 0)
	case "fibre":
		return insulation(c, fibre, turn+flip(b, k))
	case "gypsum":
		return fill(c, gypsum, 0)
	case "concrete":
		return append(fill(c, concrete, 0), stones(c, b, k)...)
	case "masonry":
		return fill(c, masonry, 0)
	case "steel":
		return []render.Item{render.Fill{Pen: render.Pattern, Region: c.Region, Pattern: steel, Origin: b.Min}}
	case "membrane":
		return fill(c, board, turn)
	}
	if c.Part.Role == detail.FloorBoard || c.Part.Role == detail.Furring {
		return fill(c, grain, turn)
	}
	return fill(c, endGrain, flip(b, k))
}

// flip turns every second neighbour the other way: by where the part stands.
func flip(b geom.Box, k float64) float64 {
	if int(math.Floor(math.Abs(b.Min.X+b.Min.Y)/(k*4)+0.5))%2 == 1 {
		return 90
	}
	return 0
}

func insulation(c Piece, p *render.HatchPattern, turn float64) []render.Item {
	return []render.Item{render.Fill{Pen: render.Insulation, Region: c.Region, Pattern: p, Turn: turn, Origin: c.Whole.Bounds().Min}}
}

// diagonals draws one or both diagonals of the part's box where the part is.
func diagonals(c Piece, b geom.Box, both bool) []render.Item {
	ps := []geom.Path{geom.Polyline(b.Min, b.Max)}
	if both {
		ps = append(ps, geom.Polyline(vec(b.Min.X, b.Max.Y), vec(b.Max.X, b.Min.Y)))
	}
	return strokesIn(c, ps, render.Pattern)
}

func strokesIn(c Piece, ps []geom.Path, pen render.Pen) []render.Item {
	var out []render.Item
	for _, p := range ps {
		for _, q := range geom.ClipPath(p, c.Region, true) {
			out = append(out, render.Stroke{Pen: pen, Path: q})
		}
	}
	return out
}

// batt draws the loops of a soft insulation: half circles to either face, a straight run between.
//
//	|( ) ( )|
func batt(c Piece, b geom.Box) []render.Item {
	depth, long, turned := b.W(), b.H(), true
	if b.W() > b.H() {
		depth, long, turned = b.H(), b.W(), false
	}
	r := depth / 8
	n := int(math.Ceil(long/(2*r))) + 1
	path := geom.Path{}
	at := func(u, v float64) geom.Vec {
		if turned {
			return vec(b.Min.X+v, b.Min.Y+u)
		}
		return vec(b.Min.X+u, b.Min.Y+v)
	}
	bulge := 1.0
	if turned {
		bulge = -1
	}
	for i := range n {
		u := float64(i) * 2 * r
		lo, hi := r, depth-r
		if i%2 == 1 {
			lo, hi = hi, lo
		}
		turn := bulge
		if i%2 == 0 {
			turn = -bulge
		}
		path.V = append(path.V, geom.Vertex{Vec: at(u, lo)}, geom.Vertex{Vec: at(u, hi), Bulge: turn})
	}
	return strokesIn(c, []geom.Path{path}, render.Insulation)
}

// stones scatters the small triangles of concrete, the same every time.
func stones(c Piece, b geom.Box, k float64) []render.Item {
	var ps []geom.Path
	seed := uint32(20011)
	next := func() float64 {
		seed = seed*1664525 + 1013904223
		return float64(seed>>8) / float64(1<<24)
	}
	n := int(b.W() * b.H() / (k * k * 90))
	for range min(n, 600) {
		p, s := vec(b.Min.X+next()*b.W(), b.Min.Y+next()*b.H()), k*(0.6+0.6*next())
		a := next() * 2 * math.Pi
		tri := geom.Polygon(geom.Polar(p, s, a), geom.Polar(p, s, a+2.2), geom.Polar(p, s, a+4.1))
		if within(c.Region, tri) {
			ps = append(ps, tri)
		}
	}
	var out []render.Item
	for _, p := range ps {
		out = append(out, render.Stroke{Pen: render.Pattern, Path: p})
	}
	return out
}

func within(r geom.Region, p geom.Path) bool {
	for _, v := range p.V {
		if !r.Contains(v.Vec) {
			return false
		}
	}
	return true
}

// earth draws clusters of three strokes under the ground line.
func earth(c Piece, b geom.Box, k float64) []render.Item {
	var ps []geom.Path
	for x := b.Min.X; x < b.Max.X; x += 9 * k {
		for i := range 3 {
			d := float64(i) * 1.2 * k
			ps = append(ps, geom.Polyline(vec(x+d, b.Max.Y-0.5*k), vec(x+d-3*k, b.Max.Y-3.5*k)))
		}
	}
	return strokesIn(c, ps, render.Pattern)
}
