// Package svg writes a drawing sheet as SVG: true paper size in millimetres, one group per pen with
// its layer name, parts with their titles, text as text. The file has no script and asks for
// nothing outside itself.
//
//	err := svg.Write(w, &sheet, svg.Options{})
package svg

import (
	"bufio"
	"encoding/xml"
	"fmt"
	"io"
	"strings"

	svgo "github.com/ajstarks/svgo/float"

	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// Options change how a sheet is written. The zero value writes a file of its own.
type Options struct {
	// Inline leaves out the XML declaration, for a drawing inside an HTML page.
	Inline bool
	// Prefix opens every id in the drawing; it must differ between drawings on one page. Empty
	// takes the sheet's ID.
	Prefix string
}

// Lettering and paper. The colours of the ink are those of render.Pens.
const (
	families = "'" + font.Family + "', Arial, Helvetica, sans-serif"
	// The widths in package font know no kerning and no ligatures, nor does the PDF.
	lettering = "font-kerning:none;font-variant-ligatures:none"
	paper     = "#ffffff"
	// A part lights up under the pointer or the focus; on a dark screen white paper turns black, on paper it stays.
	styles = "[data-mark]:hover,[data-mark]:focus{stroke:#b45309;outline:none}" +
		"@media screen and (prefers-color-scheme:dark){svg[role=img]{background:#fff;filter:invert(1) hue-rotate(180deg)}}"
)

// Declaration opens a file of its own; what follows is the drawing as it goes inside a page.
const Declaration = `<?xml version="1.0" encoding="UTF-8"?>` + "\n"

// Styles returns the text of the style element and of the style attribute that every drawing has, for a page whose
// policy names what it allows by hash.
func Styles() (element, attribute string) { return styles, lettering }

// Write writes the sheet. It returns what render.Sheet.Flatten finds wrong before a byte is written,
// else the first error of w.
func Write(w io.Writer, s *render.Sheet, o Options) error {
	frames, err := s.Flatten()
	if err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	out := bufio.NewWriter(w) // keeps the first error and gives it back on Flush
	d := &drawing{c: svgo.New(out), sheet: s, id: ident(o.Prefix, s.ID), met: map[string]bool{}}
	d.c.Decimals = decimals
	d.head(o)
	d.clips(frames)
	for i, f := range frames {
		d.frame(i, f)
	}
	d.c.Gend()
	d.c.End()
	if err := out.Flush(); err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	return nil
}

// drawing is a sheet being written.
type drawing struct {
	c     *svgo.SVG
	sheet *render.Sheet
	id    string          // opens every id
	met   map[string]bool // marks that can take the focus already, by view
	view  string          // being written
	buf   []byte          // path data under way
}

// head opens the drawing: size, title, description, what the file should remember, and the group
// that holds all ink.
func (d *drawing) head(o Options) {
	s, w := d.sheet, d.c.Writer
	if !o.Inline {
		io.WriteString(w, Declaration)
	}
	wide, high := num(s.Size.W), num(s.Size.H)
	fmt.Fprintf(w, `<svg xmlns="http://www.w3.org/2000/svg" id="%s" width="%smm" height="%smm" viewBox="0 0 %s %s" `+
		`role="img" aria-labelledby="%s-title %s-desc">`+"\n", d.id, wide, high, wide, high, d.id, d.id)
	d.note("title", ` id="`+d.id+`-title"`, strings.TrimSpace(s.ID+" "+s.Title))
	d.note("desc", ` id="`+d.id+`-desc"`, s.Desc)
	if len(s.Props) > 0 {
		var lines []string
		for _, p := range s.Props {
			lines = append(lines, p[0]+": "+p[1])
		}
		d.note("metadata", "", strings.Join(lines, "; "))
	}
	fmt.Fprintf(w, "<style>%s</style>\n", styles)
	d.c.Group(`fill="none"`, `fill-rule="evenodd"`, `stroke-linecap="round"`, `stroke-linejoin="round"`,
		attr("font-family", families), attr("style", lettering), `xml:space="preserve"`)
}

// note writes an element that holds only text.
func (d *drawing) note(name, attrs, text string) {
	fmt.Fprintf(d.c.Writer, "<%s%s>%s</%s>\n", name, attrs, escape(text), name)
}

// clips defines the openings of the views.
func (d *drawing) clips(frames []render.Frame) {
	d.c.Def()
	for i, f := range frames {
		if f.View == nil {
			continue
		}
		x, y := d.point(geom.Vec{X: f.Box.Min.X, Y: f.Box.Max.Y})
		d.c.ClipPath(attr("id", d.clipID(i)))
		d.c.Rect(x, y, round(f.Box.W()), round(f.Box.H()))
		d.c.ClipEnd()
	}
	d.c.DefEnd()
}

func (d *drawing) clipID(i int) string { return fmt.Sprintf("%s-view%d", d.id, i+1) }

// frame writes one view, or the sheet's own items.
func (d *drawing) frame(i int, f render.Frame) {
	d.view = ""
	if v := f.View; v != nil {
		d.view = v.ID
		d.c.Group(`class="view"`, attr("data-view", v.ID), attr("data-title", v.Title),
			attr("clip-path", "url(#"+d.clipID(i)+")"))
	} else {
		d.c.Group(`class="paper"`)
	}
	d.ink(f.Ink)
	d.c.Gend()
}

// point turns a paper point over: y runs down in SVG.
func (d *drawing) point(v geom.Vec) (x, y float64) { return round(v.X), round(d.sheet.Size.H - v.Y) }

// Ident returns the id of the drawing of a sheet written without a Prefix.
func Ident(sheetID string) string { return ident("", sheetID) }

// ident returns the prefix as an XML name of plain letters, digits and dashes.
func ident(prefix, sheetID string) string {
	if prefix == "" {
		prefix = sheetID
	}
	s := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9', r == '-':
			return r
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		}
		return '-'
	}, prefix)
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		s = "sheet-" + s
	}
	return s
}

// escape makes any text safe between tags and in attributes.
func escape(s string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(render.Clean(s))) // a Builder takes everything
	return b.String()
}

// attr returns name="value", the value escaped.
func attr(name, value string) string { return name + `="` + escape(value) + `"` }
