// Package pdf writes a set of drawing sheets as one PDF: a page per sheet at its own paper size and
// true scale, lines as lines, text that can be searched in an embedded face, and bookmarks for the
// sheets and their views.
//
//	err := pdf.Write(w, []*render.Sheet{&section, &schedule}, pdf.Options{Title: "REAR DECK LEDGER"})
package pdf

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"standclear/render"
	"standclear/render/font"
)

// Options change how a set is written. The zero value gives a good file.
type Options struct {
	// Title is the title of the document; empty takes that of the first sheet.
	Title string
	// Date is stamped into the file as the day it was made. The zero value is the first of January
	// 2000, so that the same sheets give the same bytes on any day.
	Date time.Time
	// Chapters gather the bookmarks of sheets under one of their own; sheets before the first stand by themselves.
	Chapters []Chapter
}

// Chapter is a run of sheets with a bookmark of its own.
type Chapter struct {
	Title string
	First int // index of its first sheet
}

// Write writes the sheets in order. It returns what render.Sheet.Flatten finds wrong, or that there
// is no sheet, before a byte is written; else the first error of w.
func Write(w io.Writer, sheets []*render.Sheet, o Options) error {
	if len(sheets) == 0 {
		return errors.New("pdf: no sheets")
	}
	b := newBook(sheets, o)
	for i, s := range sheets {
		for _, c := range o.Chapters {
			if c.First == i {
				b.chapter = c.Title
			}
		}
		if err := b.add(s); err != nil {
			return fmt.Errorf("pdf: %w", err)
		}
	}
	if err := b.f.Output(w); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}

// book is a document under way.
type book struct {
	f       *fpdf.Fpdf
	hasBold bool    // the bold face is in the document
	last    float64 // height of the last sheet, mm
	chapter string  // to be opened by the next sheet
	deep    int     // level of the bookmarks of sheets
}

// family is the name of the face inside the document.
var family = strings.ReplaceAll(font.Family, " ", "")

func newBook(sheets []*render.Sheet, o Options) *book {
	first, last := sheets[0], sheets[len(sheets)-1]
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: sizeOf(first)})
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.SetCatalogSort(true)
	if o.Date.IsZero() {
		o.Date = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	f.SetCreationDate(o.Date)
	f.SetModificationDate(o.Date)
	if o.Title == "" {
		o.Title = name(first.ID, first.Title)
	}
	f.SetTitle(clean(o.Title), true)
	f.SetSubject(clean(first.Desc), true)
	f.SetCreator("standclear", true)
	f.SetKeywords(keywords(first), true)
	f.AddUTF8FontFromBytes(family, "", font.Regular())
	f.SetFont(family, "", 12) // bookmarks are written in Unicode only once such a face is chosen
	return &book{f: f, last: last.Size.H}
}

// keywords holds what the file should remember, as the first sheet states it.
func keywords(s *render.Sheet) string {
	var list []string
	for _, p := range s.Props {
		list = append(list, p[0]+": "+p[1])
	}
	return clean(strings.Join(list, "; "))
}

func sizeOf(s *render.Sheet) fpdf.SizeType { return fpdf.SizeType{Wd: s.Size.W, Ht: s.Size.H} }

// add draws a sheet on a page of its own.
func (b *book) add(s *render.Sheet) error {
	frames, err := s.Flatten()
	if err != nil {
		return err
	}
	b.f.AddPageFormat("P", sizeOf(s))
	if b.chapter != "" {
		b.bookmark(b.chapter, 0, s.Size.H)
		b.chapter, b.deep = "", 1
	}
	b.bookmark(name(s.ID, s.Title), b.deep, s.Size.H)
	for _, v := range s.Views {
		b.bookmark(name(v.ID, v.Title), b.deep+1, v.At.Y+v.Window.Max.Y/v.Scale.K)
	}
	for _, f := range frames {
		p := page{book: b, h: s.Size.H}
		if f.View != nil {
			b.f.ClipRect(f.Box.Min.X, p.h-f.Box.Max.Y, f.Box.W(), f.Box.H(), false)
		}
		p.ink(f.Ink)
		if f.View != nil {
			b.f.ClipEnd()
		}
	}
	return nil
}

// bookmark adds an entry that leads to the height y over the lower edge of the present page. The
// library measures down from the top of the last page of the document, whatever the page, and takes
// -1 for where the pen is.
func (b *book) bookmark(text string, level int, y float64) {
	down := b.last - y
	if down == -1 {
		down = -1.001
	}
	b.f.Bookmark(clean(text), level, down)
}

func name(id, title string) string { return strings.TrimSpace(id + " " + title) }

// clean makes text safe for the document, which knows the characters up to U+FFFF only.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		if r > 0xffff {
			return 0xfffd
		}
		return r
	}, render.Clean(s))
}
