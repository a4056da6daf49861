package render

import "standclear/geom"

// Item is something drawn: Stroke, Fill, Text, Dim, Leader or Insert.
type Item interface{ item() }

// Stroke is a line, chain or arc on a pen.
type Stroke struct {
	Pen  Pen
	Path geom.Path
	Tag  *Tag // the part it outlines, or nil
}

// PatternLine is one family of parallel lines of a hatch, in plotted millimetres and degrees.
type PatternLine struct {
	Angle   float64
	Base    geom.Vec  // a point of the first line, from the pattern's origin
	Spacing float64   // across, line to line
	Shift   float64   // along, line to line (broken bond)
	Dashes  []float64 // + dash, - gap, 0 dot; none is a full line
}

// HatchPattern is a named set of line families.
type HatchPattern struct {
	Name  string // own prefix, so that no program mistakes it for one of its own
	Lines []PatternLine
}

// Fill covers a region with a pattern, or solid when Pattern is nil.
type Fill struct {
	Pen     Pen
	Region  geom.Region
	Pattern *HatchPattern
	Turn    float64  // degrees added to every line family
	Origin  geom.Vec // where the pattern starts, in the space of the region
	White   bool     // an empty ground (solid only): covers what lies under it
	Tag     *Tag
}

// Align places a text block about its point.
type Align int

// The nine attachment points, numbered as in DXF: rows from the top, columns from the left.
const (
	TopLeft Align = iota + 1
	TopCentre
	TopRight
	MiddleLeft
	MiddleCentre
	MiddleRight
	BottomLeft
	BottomCentre
	BottomRight
)

// Text is a block of one or more lines of the same height.
type Text struct {
	Pen    Pen
	At     geom.Vec
	Height float64 // cap height, plotted millimetres (in a Symbol: symbol units)
	Align  Align
	Rot    float64 // degrees: 0 or 90
	Lines  []string
	Bold   bool
	Attr   string // attribute name when the text is a field of a Symbol
}

// LinePitch is the distance from baseline to baseline in cap heights.
const LinePitch = 1.6

// LeaderEnd is the mark at the tip of a leader.
type LeaderEnd int

// Tips: an arrow stops on an edge, a dot lies in an area.
const (
	Arrow LeaderEnd = iota
	Dot
	NoEnd
)

// Leader points at something: the tip first, then the elbow, then the end of the landing.
type Leader struct {
	Pen    Pen
	Points []geom.Vec
	End    LeaderEnd
}

// Symbol is a figure used again and again: a title bubble, a level target, a title block.
type Symbol struct {
	Name  string // own prefix
	Items []Item // about the grip at (0,0)
}

// Field is the value of one attribute of an inserted symbol.
type Field struct {
	Name, Value string
	Height      float64 // cap height in symbol units; 0 is that of the symbol
}

// Insert places a Symbol.
type Insert struct {
	Pen    Pen
	Symbol *Symbol
	At     geom.Vec
	Scale  float64 // space millimetres per symbol millimetre; 0 is 1
	Fields []Field
	Tag    *Tag
}

func (Stroke) item() {}
func (Fill) item()   {}
func (Text) item()   {}
func (Dim) item()    {}
func (Leader) item() {}
func (Insert) item() {}
