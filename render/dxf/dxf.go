// Package dxf writes sheets as drawing files in DXF, release R2010 (AC1024), text in UTF-8.
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
// Write makes a file of one sheet, WriteSet a file of all sheets with a layout for each, WriteView a file of one
// view, its stated origin at (0, 0), to insert into another drawing or to attach to it.
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
	"fmt"
	"io"

	"standclear/geom"
	"standclear/render"
)

// Options of a file. The zero value is right.
type Options struct {
	Layers *render.Layers // how the layer of each role is named and looks; nil is render.OwnLayers
}

// Write writes the sheet to w as one complete file: the same sheet gives the same bytes.
//
// Nothing is written when the sheet cannot be drawn faithfully: a number that is not finite or
// beyond a million kilometres, a dimension whose words hide its value or whose printed value no
// dimension style would print, a symbol that holds itself, text too long for its record. The error
// names the sheet, the view and the item. An error of w is returned as it is.
//
// Exact repeats, pieces of no length and fills of no area are left out.
func Write(w io.Writer, s *render.Sheet, o Options) error {
	return WriteSet(w, []*render.Sheet{s}, o)
}

// WriteSet writes the sheets to w as one file with a layout for each, in their order. In model space their views
// stand in rows, those of the first sheet where the sheet places them, the others below. The sheets are of one
// unit, their numbers differ. Otherwise it is as Write.
func WriteSet(w io.Writer, sheets []*render.Sheet, o Options) error {
	d, err := documentOf(sheets, o)
	if err != nil {
		return err
	}
	return d.send(w)
}

// WriteView writes view n of the sheet, counted from 0, as a file of its own: the view's (0, 0) is that of the
// file, and the layout, named after sheet and view, shows the view where the sheet does. What the file should
// remember, with the words for the view's origin, stands on its title. Otherwise it is as Write.
func WriteView(w io.Writer, s *render.Sheet, n int, o Options) error {
	if s == nil || n < 0 || n >= len(s.Views) {
		return fmt.Errorf("dxf: no view %d", n)
	}
	v := s.Views[n]
	v.Place = geom.Vec{}
	one := *s
	one.ID, one.Views, one.Items = s.ID+"-"+v.ID, []render.View{v}, nil
	one.Props = append(s.Props[:len(s.Props):len(s.Props)], [2]string{"view", v.ID}, [2]string{"scale", v.Scale.Text}, [2]string{"insertion point", v.Origin})
	d, err := documentOf([]*render.Sheet{&one}, o)
	if err != nil {
		return err
	}
	return d.send(w)
}

// documentOf returns the finished file of the sheets.
func documentOf(sheets []*render.Sheet, o Options) (*document, error) {
	if len(sheets) == 0 || sheets[0] == nil {
		return nil, errors.New("dxf: no sheet")
	}
	d := newDocument(sheets[0].Unit)
	if o.Layers != nil {
		d.layers = *o.Layers
	}
	if err := d.add(sheets...); err != nil {
		return nil, err
	}
	d.finish()
	return d, nil
}

func (d *document) send(w io.Writer) error {
	b := bufio.NewWriter(w)
	d.write(b) // the writer keeps its first error; Flush returns it
	return b.Flush()
}
