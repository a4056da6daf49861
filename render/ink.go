package render

import (
	"errors"
	"fmt"
	"strings"
	"unicode"

	"standclear/geom"
)

// Frame is an opening in the sheet and what shows in it, drawn out in paper millimetres, y up.
type Frame struct {
	View *View    // the view behind the opening; nil for the sheet's own items
	Box  geom.Box // the opening: what lies outside must be clipped away
	Ink  []Ink    // in painting order
}

// Ink is something to put on paper: Line, Area or Words.
type Ink interface{ ink() }

// Line is a chain of lines and arcs to be stroked.
type Line struct {
	Pen    Pen
	Path   geom.Path
	Weight int  // 1/100 mm
	Hatch  bool // a line of a pattern: solid, whatever the pen's line type
	Use    Use  // what it is of a dimension or leader
	Tag    *Tag // the part it belongs to, or nil
}

// Use tells the lines of dimensions and leaders from linework.
type Use int

// The uses.
const (
	Linework      Use = iota
	DimensionLine     // between the ticks of a dimension
	ExtensionLine     // from the object to a dimension line, or of an ordinate
	LeaderLine
)

// Area is a region to be filled, by the even-odd rule.
type Area struct {
	Pen    Pen
	Region geom.Region
	White  bool // in the colour of the paper, not of the pen
	Tag    *Tag
}

// Words is one line of lettering.
type Words struct {
	Pen    Pen
	At     geom.Vec // on the baseline: at the start, middle or end of the text
	Side   Side     // which of these
	Height float64  // cap height
	Rot    float64  // degrees, counter-clockwise about At
	Text   string   // as Clean leaves it, never blank
	Bold   bool
}

func (Line) ink()  {}
func (Area) ink()  {}
func (Words) ink() {}

// Side is the place of the anchor along a line of lettering.
type Side int

// The three sides, in the order of the columns of Align.
const (
	Start Side = iota
	Middle
	End
)

// Share returns how much of the text lies before the anchor: 0, 1/2 or 1.
func (s Side) Share() float64 { return float64(s) / 2 }

// Clean returns s as it can be lettered on one line and written in any format: tabs and line breaks
// become spaces, bytes that are no UTF-8 become U+FFFD, control and invisible format characters
// (those that turn the direction of text among them) go.
func Clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= ' ' && r <= '~':
		case unicode.In(r, unicode.Zl, unicode.Zp), r == '\t', r == '\n', r == '\r':
			return ' '
		case unicode.In(r, unicode.Cc, unicode.Cf), r&0xfffe == 0xfffe:
			return -1
		}
		return r
	}, s)
}

var errNotFinite = errors.New("a number is not finite")

func checkInk(pen Pen, paths ...geom.Path) error {
	if pen < 0 || pen >= penCount {
		return fmt.Errorf("pen %d", pen)
	}
	for _, p := range paths {
		for _, v := range p.V {
			if !finite(v.Vec, geom.Vec{X: v.Bulge}) {
				return errNotFinite
			}
		}
	}
	return nil
}

func finite(vs ...geom.Vec) bool {
	for _, v := range vs {
		if s := v.X - v.X + v.Y - v.Y; s != 0 { // NaN for a number that is infinite or none
			return false
		}
	}
	return true
}
