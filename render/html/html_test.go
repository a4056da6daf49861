package html_test

import (
	"bytes"
	"errors"
	"regexp"
	"strings"
	"testing"

	"standclear/geom"
	"standclear/render"
	"standclear/render/html"
)

func page() html.Page {
	s := &render.Sheet{ID: "A-1", Title: `<b>&"SHEET"`, Size: render.Size{Name: "A4", W: 297, H: 210}, Unit: render.Millimetre,
		Items: []render.Item{render.Stroke{Pen: render.Cut, Path: geom.Rect(10, 10, 50, 50)[0]}}}
	return html.Page{Title: `HOUSE <script>alert(1)</script>`, Verdict: "all well", Head: []string{"Check"}, Sheets: []*render.Sheet{s},
		Rows: []html.Row{{Cells: []string{`a < b & "c"`}, Class: "fails"}}, Notes: []string{"<i>note</i>"}}
}

func TestPageIsWholeAndSafe(t *testing.T) {
	var b bytes.Buffer
	if err := html.Write(&b, page()); err != nil {
		t.Fatal(err)
	}
	out := b.String()
	for _, want := range []string{"<svg", `id="A-1"`, "a &lt; b &amp;", "&lt;script&gt;", "&lt;i&gt;note", `class="fails"`, "all well"} {
		if !strings.Contains(out, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	if strings.Contains(out, "<script") {
		t.Error("the page runs a script")
	}
	if m := regexp.MustCompile(`(?:src|href)="(https?:)?//`).FindString(out); m != "" {
		t.Errorf("the page loads from elsewhere: %s", m)
	}
}

type shortWriter struct{ left int }

var errFull = errors.New("full")

func (w *shortWriter) Write(p []byte) (int, error) {
	if len(p) > w.left {
		return 0, errFull
	}
	w.left -= len(p)
	return len(p), nil
}

func TestWriteErrorIsReturned(t *testing.T) {
	var b bytes.Buffer
	if err := html.Write(&b, page()); err != nil {
		t.Fatal(err)
	}
	for n := 0; n < b.Len(); n += b.Len() / 40 {
		if err := html.Write(&shortWriter{n}, page()); !errors.Is(err, errFull) {
			t.Errorf("after %d bytes: %v", n, err)
		}
	}
}

func TestReportIsWholeAndSafe(t *testing.T) {
	var b bytes.Buffer
	r := html.Report{Title: "HOUSE <b>", Verdict: "1 fail", Bad: true, Notes: []string{"<i>note</i>"}, Chapters: []html.Chapter{{Title: "Block", Figures: page().Sheets,
		Entries: []html.Entry{{ID: "block_shear", Name: "shear", Verdict: "FAILS", Class: "fails", Lines: []string{"V <= V'", "clause: NDS 2018"}}}}}}
	if err := html.WriteReport(&b, r); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"HOUSE &lt;b&gt;", `id="block_shear" class="fails"`, "V &lt;= V&#39;", "clause: NDS 2018", "<svg", "&lt;i&gt;note", "FAILS", "verdict bad"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("the report lacks %q", want)
		}
	}
	if err := html.WriteReport(&shortWriter{100}, r); !errors.Is(err, errFull) {
		t.Errorf("a full disk gives %v", err)
	}
}

// The set can be browsed: a thumbnail that is the drawing itself, checks that lead to their sheet, notes in the
// order of the alphabet and only once.
func TestPageIsBrowsable(t *testing.T) {
	p := page()
	p.Rows[0].Sheet = "A-1"
	note := func(lines ...string) render.Item {
		return render.Text{Pen: render.Note, At: geom.Vec{X: 20, Y: 20}, Height: 2.5, Align: render.TopLeft, Lines: lines}
	}
	p.Sheets[0].Items = append(p.Sheets[0].Items, note("SECOND NOTE", "IN TWO LINES"), note("A FIRST NOTE"), note("A FIRST NOTE"), note("B3"))
	var b bytes.Buffer
	if err := html.Write(&b, p); err != nil {
		t.Fatal(err)
	}
	out := b.String()
	for _, want := range []string{`viewBox="0 0 297 210" aria-hidden="true"`, `<use href="#a-1" width="297" height="210"/>`, `id="a-1"`, `<td><a href="#A-1">a &lt; b`, `<li><a href="#A-1">A FIRST NOTE</a></li><li><a href="#A-1">SECOND NOTE IN TWO LINES</a></li></ul>`} {
		if !strings.Contains(out, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
}
