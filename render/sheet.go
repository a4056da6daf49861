// Package render holds a drawing sheet as data: views at true size, each with a scale, and items
// on paper. Writers in its sub-packages turn one Sheet into DXF, SVG or PDF; they draw the same
// lines, the same dimensions and the same text, since all of it stands here.
//
// Lengths are millimetres throughout, y up. In a view, geometry is in model millimetres at 1:1;
// text height, arrows, ticks and hatch spacing are plotted (paper) millimetres. The lower left
// corner of the sheet is (0, 0).
//
//	s := render.Sheet{ID: "A-301", Title: "SECTION", Size: render.ArchD, Unit: render.Inch}
//	s.Views = []render.View{{ID: "1", Scale: render.Scale{K: 4, Text: `3" = 1'-0"`}}}
//	err := svg.Write(w, &s, svg.Options{})
package render

import "standclear/geom"

// Unit is the unit of a sheet's dimensions and of the DXF file that holds it.
type Unit int

// The two drawing units.
const (
	Inch Unit = iota
	Millimetre
)

// PerMM returns how many of the unit are in a millimetre.
func (u Unit) PerMM() float64 {
	if u == Inch {
		return 1 / 25.4
	}
	return 1
}

// Size is a sheet size in millimetres, landscape as drawn.
type Size struct {
	Name string
	W, H float64
}

// Scale relates model to paper.
type Scale struct {
	K    float64 // model millimetres per paper millimetre: 4 for 3" = 1'-0", 5 for 1:5
	Text string  // as printed under the view title
}

// Tag says which part an item belongs to; writers carry it into the file.
type Tag struct {
	Mark, Material, Size, Role string
}

// View is one picture on a sheet: items in model millimetres about a stated origin.
type View struct {
	ID     string   // number in the title bubble, "1"
	Title  string   // "SECTION AT BLOCK B3"
	Origin string   // what the view's (0,0) is: "outer face of sheathing x finished floor"
	Scale  Scale    // plotted scale
	At     geom.Vec // paper position of the view's (0,0)
	Window geom.Box // model box that the sheet shows of this view, all its notes included
	Place  geom.Vec // where the view's (0,0) lies in the model space of a shared file
	Items  []Item
}

// Sheet is one sheet of a set.
type Sheet struct {
	ID    string // "A-301"
	Title string
	Desc  string // one sentence for readers who cannot see the drawing
	Size  Size
	Unit  Unit
	Views []View
	Items []Item      // paper millimetres
	Props [][2]string // what the file should remember: project, parameter hash, version

	// Number prints a length in millimetres the way this sheet's dimensions do.
	Number func(mm float64) string
}

// Discipline returns the letter that opens the sheet's layer names: "A" for A-301.
func (s *Sheet) Discipline() string {
	if s.ID == "" {
		return "A"
	}
	return s.ID[:1]
}

// Layer returns the full layer name of a role on this sheet.
func (s *Sheet) Layer(p Pen) string { return s.Discipline() + "-" + p.Def().Layer }
