// Package dxf writes a sheet as a drawing file in DXF, release R2010 (AC1024), text in UTF-8.
//
// Model space holds each view once, at true size, in the sheet's unit; a layout named after the
// sheet holds the paper items and one locked viewport per view at exactly the view's scale.
// Everything is a real entity (outlines, hatches, dimensions, leaders, text, block inserts) on a
// named layer, so that the detail can be dropped into another drawing and measured there.
//
//	model space, 1:1                     layout A-301, paper
//	  view 1   view 2                      +--------------------+
//	  [    ]   [   ]   -- viewport, 1/K -->| [ ]  []      title |
//	                                       +--------------------+
//
// A white Fill is left out: it would hide what lies under it only in some programs. Callers leave a
// hole in a hatch where text stands on it.
//
//	f, _ := os.Create("A-301.dxf")
//	err := dxf.Write(f, &sheet, dxf.Options{})
package dxf

import (
	"bufio"
	"errors"
	"io"

	"standclear/render"
)

// Options of Write. The zero value is right; there is nothing to choose yet.
type Options struct{}

// Write writes the sheet to w as one complete file: the same sheet gives the same bytes.
//
// Nothing is written when the sheet cannot be drawn faithfully: a number that is not finite or
// beyond a million kilometres, a dimension whose words hide its value or whose printed value no
// dimension style would print, a symbol that holds itself, text too long for its record. The error
// names the sheet, the view and the item. An error of w is returned as it is.
//
// Exact repeats, pieces of no length and fills of no area are left out.
func Write(w io.Writer, s *render.Sheet, o Options) error {
	if s == nil {
		return errors.New("dxf: no sheet")
	}
	d := newDocument(s.Unit)
	if err := d.add(s); err != nil {
		return err
	}
	d.finish()
	b := bufio.NewWriter(w)
	d.write(b) // the writer keeps its first error; Flush returns it
	return b.Flush()
}
