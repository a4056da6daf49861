package detail

import (
	"math"

	"standclear/detail/unit"
	"standclear/geom"
)

// Fold is one bend line of a sheet laid flat.
type Fold struct {
	At       float64 // from the edge where the profile starts, along the girth, mm
	Included float64 // angle between the legs as bent, degrees; 180 is flat
	Up       bool    // bent towards the face that weathers
}

// Unfold returns the legs of the part's first bent path, in order from its start, and the bends between them.
// Nothing is taken off at the bends: right to about 0.03 in (0.8 mm) of sheet.
//
//	|  leg 1      bend up: the path turns left
//	|_____        bend down: it turns right
//	 leg 2 |  leg 3
func (p *Part) Unfold() (legs []float64, folds []Fold) {
	if len(p.Bends) == 0 {
		return nil, nil
	}
	var last geom.Vec
	at := 0.0
	for i := 1; i < len(p.Bends[0].Path.V); i++ {
		d := p.Bends[0].Path.V[i].Sub(p.Bends[0].Path.V[i-1].Vec)
		if d.Len() < geom.Tol {
			continue
		}
		if len(legs) > 0 {
			turn := math.Atan2(last.Cross(d), last.Dot(d))
			folds = append(folds, Fold{At: at, Included: 180 - math.Abs(turn)*180/math.Pi, Up: turn > 0})
		}
		legs, last = append(legs, d.Len()), d
		at += d.Len()
	}
	return legs, folds
}

// Sheet metal is sold and bent in sticks of this length (common practice, no source).
const (
	stickInch   = 10 * unit.Foot
	stickMetric = 3000 * unit.MM
)

// MetalStick is the longest piece of bent metal.
func (a *Assembly) MetalStick() unit.Length {
	return unit.Length(a.Spec.Pick(stickInch.MM(), stickMetric.MM()))
}

// MetalLap is the least lap of one piece over the next: 4 in (100 mm), common practice, no source.
func (a *Assembly) MetalLap() unit.Length { return unit.Length(a.Spec.Pick(4*25.4, 100)) }

// Dammed reports whether the ends of F1 are turned up, which takes a level leg and an upstand as high as the
// dam at its back.
func (a *Assembly) Dammed() bool {
	w := a.Spec.Water.Flashing
	return w.EndDam > 0 && w.Out > 0 && w.Up >= w.EndDam
}

// FlashingPieces divides F1, its end dams laid flat, into pieces of at most one stick, from and to along the
// ledger. Neighbours lap by MetalLap, midway between two notches of the leg where a stick reaches so far.
func (a *Assembly) FlashingPieces() [][2]float64 {
	found := a.Find(Flashing)
	if len(found) == 0 {
		return nil
	}
	x0, x1 := 0.0, a.Spec.Ledger.Length.MM()
	if a.Dammed() {
		d := a.Spec.Water.Flashing.EndDam.MM()
		x0, x1 = x0-d, x1+d
	}
	return divide(x0, x1, a.MetalStick().MM(), a.MetalLap().MM(), middles(FlashingLegs(found[0])))
}

// FlashingLegs returns the stretches of the drip leg along the ledger, between its notches: the solids that reach
// below the level leg.
func FlashingLegs(f1 *Part) [][2]float64 {
	var out [][2]float64
	for _, s := range f1.Solids {
		if b := s.Bounds(); b.Min.Z < f1.Bends[0].Path.V[2].Y-1 {
			out = append(out, [2]float64{b.Min.X, b.Max.X})
		}
	}
	return out
}

func middles(runs [][2]float64) []float64 {
	var out []float64
	for _, r := range runs {
		out = append(out, (r[0]+r[1])/2)
	}
	return out
}

// divide cuts x0 to x1 into the fewest pieces, alike in length, and moves each lap to the nearest of the good
// places as long as no piece grows longer than a stick.
func divide(x0, x1, stick, lap float64, good []float64) [][2]float64 {
	n := max(1, int(math.Ceil((x1-x0-lap)/(stick-lap)-1e-9)))
	if x1-x0 <= stick {
		n = 1
	}
	each := (x1 - x0 + float64(n-1)*lap) / float64(n)
	laps := make([]float64, 0, n+1) // middles of the laps, the ends half a lap beyond
	laps = append(laps, x0+lap/2)
	for i := 1; i < n; i++ {
		laps = append(laps, x0+float64(i)*(each-lap)+lap/2)
	}
	laps = append(laps, x1-lap/2)
	even := append([]float64(nil), laps...)
	for i := 1; i < n; i++ {
		laps[i] = nearest(laps[i], good)
	}
	for i := 1; i < len(laps); i++ {
		if l := laps[i] - laps[i-1] + lap; l > stick+1e-6 || l < 2*lap {
			laps = even
			break
		}
	}
	out := make([][2]float64, n)
	for i := range out {
		out[i] = [2]float64{laps[i] - lap/2, laps[i+1] + lap/2}
	}
	return out
}

// nearest returns the value closest to x, x itself where there is none.
func nearest(x float64, of []float64) float64 {
	best, d := x, math.Inf(1)
	for _, v := range of {
		if e := math.Abs(v - x); e < d {
			best, d = v, e
		}
	}
	return best
}

// Blank is a piece of sheet laid flat, its weather face up: x along the piece, y from its lower edge up the
// girth to the edge where the profile starts.
type Blank struct {
	Outline geom.Region
	Bends   []BendLine
	Cuts    []geom.Path // slits inside the outline
}

// BendLine is one line to bend along.
type BendLine struct {
	Path geom.Path
	Fold
}

// FlashingBlank returns F1 laid flat between x0 and x1 along the ledger. At an end the level leg runs on by
// the dam and folds up; the upstand runs on as a tab that folds round its back; the drip leg stops.
//
//	 ______________   upstand
//	|_|__ tab, slit under it
//	|_|____________   level leg, its end the dam
//	   |__|  |_____   drip leg, notched at the joists
func (a *Assembly) FlashingBlank(x0, x1 float64) Blank {
	f1 := a.Find(Flashing)[0]
	legs, folds := f1.Unfold()
	girth := 0.0
	for _, l := range legs {
		girth += l
	}
	y := make([]float64, len(folds)) // of the bends
	for i, f := range folds {
		y[i] = girth - f.At
	}
	long := a.Spec.Ledger.Length.MM()
	foot := 0.0 // of the parts that run over the whole length
	down := 0   // the bend over the drip leg
	for down < len(folds) && folds[down].Up {
		down++
	}
	if down < len(folds) {
		foot = y[down]
	}
	b := Blank{Outline: geom.Rect(0, foot, long, girth)}
	for _, r := range FlashingLegs(f1) {
		b.Outline = geom.Union(b.Outline, geom.Rect(r[0], 0, r[1], foot))
	}
	for i, f := range folds {
		if y[i] >= foot-geom.Tol {
			b.Bends = append(b.Bends, BendLine{geom.Polyline(geom.Vec{X: 0, Y: y[i]}, geom.Vec{X: long, Y: y[i]}), f})
			continue
		}
		for _, r := range FlashingLegs(f1) {
			b.Bends = append(b.Bends, BendLine{geom.Polyline(geom.Vec{X: r[0], Y: y[i]}, geom.Vec{X: r[1], Y: y[i]}), f})
		}
	}
	for _, d := range a.Spec.Doors { // the upstand ends at the sill
		lo, hi := math.Max(0, d.From.MM()), math.Min(long, d.To.MM())
		if low := girth - (f1.Bends[0].Path.V[0].Y - a.FlashingPathAt((lo + hi) / 2).V[0].Y); hi > lo && low < girth {
			b.Outline = geom.Subtract(b.Outline, geom.Rect(lo, low, hi, girth+1))
		}
	}
	if a.Dammed() && down > 0 {
		b.dam(0, -1, a.Spec.Water.Flashing.EndDam.MM(), foot, y[0])
		b.dam(long, 1, a.Spec.Water.Flashing.EndDam.MM(), foot, y[0])
	}
	return b.clip(geom.Box{Min: geom.Vec{X: x0, Y: -1}, Max: geom.Vec{X: x1, Y: girth + 1}})
}

// dam adds the end dam at x, reaching d outward: a tongue on the level leg between heights low and high, and
// a tab d high over it.
func (b *Blank) dam(x, out, d, low, high float64) {
	end := x + out*d
	b.Outline = geom.Union(b.Outline, geom.Rect(math.Min(x, end), low, math.Max(x, end), high+d))
	b.Cuts = append(b.Cuts, geom.Polyline(geom.Vec{X: x, Y: high}, geom.Vec{X: end, Y: high}))
	f := Fold{Included: 90, Up: true}
	b.Bends = append(b.Bends,
		BendLine{geom.Polyline(geom.Vec{X: x, Y: low}, geom.Vec{X: x, Y: high}), f}, BendLine{geom.Polyline(geom.Vec{X: x, Y: high}, geom.Vec{X: x, Y: high + d}), f})
}

func (b Blank) clip(w geom.Box) Blank {
	out := Blank{Outline: b.Outline.Clip(w)}
	r := geom.Rect(w.Min.X, w.Min.Y, w.Max.X, w.Max.Y)
	for _, l := range b.Bends {
		for _, p := range geom.ClipPath(l.Path, r, true) {
			out.Bends = append(out.Bends, BendLine{p, l.Fold})
		}
	}
	for _, c := range b.Cuts {
		out.Cuts = append(out.Cuts, geom.ClipPath(c, r, true)...)
	}
	return out
}

// CapBlank returns the cap of block i laid flat, outer face up, x from its middle: the turn-up at the wall over
// the top, a flap on either side; the corners beside the turn-up are cut away.
//
//	 __|  |__
//	|        |   turn-up, as wide as the block
//	|_|____|_|   top, with its flaps
func (a *Assembly) CapBlank(i int) Blank {
	cap := a.wrapPiece(i, "M2")
	up, half := a.Spec.Water.WrapLap.MM(), (a.Blocks[i].Box.Max.X-a.Blocks[i].Box.Min.X)/2
	high, wide := cap.Size[1].MM(), cap.Size[2].MM()/2
	top := high - up
	line := func(x0, y0, x1, y1 float64) geom.Path {
		return geom.Polyline(geom.Vec{X: x0, Y: y0}, geom.Vec{X: x1, Y: y1})
	}
	slope := math.Atan(float64(a.Spec.Blocks.TopSlope)) * 180 / math.Pi
	return Blank{
		Outline: geom.Union(geom.Rect(-wide, 0, wide, top), geom.Rect(-half, 0, half, high)),
		Bends: []BendLine{
			{line(-half, top, half, top), Fold{Included: 90 + slope, Up: true}},
			{line(-half, 0, -half, top), Fold{Included: 90}}, {line(half, 0, half, top), Fold{Included: 90}},
		},
	}
}

// SideBlank returns the side piece of block i that stands at its right, seen from outside, laid flat, outer
// face up: the wing on the wall to the right, the side of the block to the left; its top falls with the block's.
func (a *Assembly) SideBlank(i int) Blank {
	side := a.wrapPiece(i, "M3")
	long, high := side.Size[1].MM(), side.Size[2].MM()
	deep := a.Blocks[i].Box.Max.Y - a.Blocks[i].Box.Min.Y
	v := func(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }
	front := high - (a.blockTop(i, 0) - a.blockTop(i, deep))
	return Blank{
		Outline: geom.Region{geom.Polygon(v(0, 0), v(long, 0), v(long, high), v(deep, high), v(0, front))},
		Bends:   []BendLine{{geom.Polyline(v(deep, 0), v(deep, high)), Fold{Included: 90, Up: true}}},
	}
}

// wrapPiece is the first piece of the wrap of block i with the mark.
func (a *Assembly) wrapPiece(i int, mark string) *Part {
	for _, p := range a.Blocks[i].Parts {
		if p.Role == Wrap && p.Mark == mark {
			return p
		}
	}
	return nil
}
