package render

import (
	"strconv"

	"standclear/geom"
)

// LeaderPicture returns the strokes and the filled tip of a leader, sizes by style st at k space
// millimetres per plotted millimetre. The arrow is three times as long as wide.
func (l Leader) Picture(st DimStyle, k float64) (line geom.Path, tip geom.Region) {
	line = geom.Polyline(l.Points...)
	if len(l.Points) < 2 {
		return line, nil
	}
	a := l.Points[0]
	switch l.End {
	case Arrow:
		u := l.Points[1].Sub(a).Unit()
		b := a.Add(u.Mul(k * st.Arrow))
		n := u.Perp().Mul(k * st.Arrow / 6)
		tip = geom.Region{geom.Polygon(a, b.Sub(n), b.Add(n))}
	case Dot:
		tip = geom.Circle(a, k*st.Arrow/4)
	}
	return line, tip
}

// trimFloat prints v with as few digits as it needs.
func trimFloat(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
