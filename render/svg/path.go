package svg

import (
	"math"
	"strconv"

	"standclear/geom"
)

// decimals is how finely millimetres are written.
const decimals = 3

// round returns v to the last written decimal, and never minus zero.
func round(v float64) float64 {
	const k = 1000 // 10 to the power of decimals
	return math.Round(v*k)/k + 0
}

// num writes v as short as its decimals allow.
func num(v float64) string { return string(appendNum(nil, v)) }

func appendNum(b []byte, v float64) []byte { return strconv.AppendFloat(b, round(v), 'f', -1, 64) }

// path adds the path to the data under way: M x y, then bare pairs for lines, A for arcs.
func (d *drawing) path(p geom.Path) {
	segs := p.Segs()
	if len(segs) == 0 {
		return
	}
	d.buf = d.pair(append(d.buf, 'M'), segs[0].A)
	after := byte('M') // the command that stands; a pair after M is a line
	for i, s := range segs {
		switch {
		case s.IsArc() && !flat(s):
			d.arc(s)
			after = 'A'
		case p.Closed && i == len(segs)-1: // drawn by Z
		default:
			sep := byte(' ')
			if after == 'A' {
				sep = 'L'
			}
			d.buf = d.pair(append(d.buf, sep), s.B)
			after = 'M'
		}
	}
	if p.Closed {
		d.buf = append(d.buf, 'Z')
	}
}

// flat reports whether an arc is a line as far as the written decimals can tell.
func flat(s geom.Seg) bool { return math.Abs(s.Bulge)*s.A.Dist(s.B)/2 < 0.0005 }

// arc adds an arc in pieces of a third of a turn at most. An arc near half a turn has its radius
// near half its chord, and there the rounding of either moves the arc by far more than itself.
func (d *drawing) arc(s geom.Seg) {
	_, r, _, sweep := s.Arc()
	n := int(math.Ceil(math.Abs(sweep)/(2*math.Pi/3) - 1e-9))
	turn := " 0 0 0 " // counter-clockwise as seen: y is turned over, so against SVG's angles
	if sweep < 0 {
		turn = " 0 0 1 "
	}
	for i := 1; i <= n; i++ {
		d.buf = appendNum(append(d.buf, 'A'), r)
		d.buf = append(appendNum(append(d.buf, ' '), r), turn...)
		d.buf = d.pair(d.buf, s.At(float64(i)/float64(n)))
	}
}

func (d *drawing) pair(b []byte, v geom.Vec) []byte {
	x, y := d.point(v)
	return appendNum(append(appendNum(b, x), ' '), y)
}
