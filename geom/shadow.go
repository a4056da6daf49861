package geom

import "math"

// Shadow returns the area that s covers as seen in v, bores not counted: both ends and what its sides sweep
// over. Arcs seen at a slant are followed by chords within ChordTol.
func (s Solid) Shadow(v View) Region {
	if s.Empty() {
		return nil
	}
	var areas []Region
	for _, f := range s.ends() {
		if math.Abs(f.N.Dot(v.N)) > edgeOn {
			areas = append(areas, s.Profile.Flatten(ChordTol).Transform(v.map2(f)))
		}
	}
	step := Vec{s.W.Dot(v.U), s.W.Dot(v.V)}.Mul(s.Length)
	foot := View{O: s.O, U: s.U, V: s.V}
	for _, ring := range s.Profile {
		pts := ring.Flatten(ChordTol)
		for i, p := range pts {
			a, _ := v.To(foot.From(p, 0))
			b, _ := v.To(foot.From(pts[(i+1)%len(pts)], 0))
			if q := Polygon(a, b, b.Add(step), a.Add(step)); math.Abs(q.Area()) > Tol*Tol {
				areas = append(areas, Region{outward(q)})
			}
		}
	}
	return Union(areas...)
}
