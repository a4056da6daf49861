// Package html writes a set of sheets as one self-contained page: a table, then every sheet inline.
// It loads nothing from elsewhere and runs no script.
//
//	err := html.Write(w, html.Page{Title: "PENNANT HOUSE", Sheets: sheets})
package html

import (
	"bytes"
	"fmt"
	"io"

	"standclear/render"
	"standclear/render/svg"
)

// Page is what goes on the page.
type Page struct {
	Title   string
	Verdict string // one line under the title
	Bad     bool   // the verdict is a failure
	Notes   []string
	Head    []string
	Rows    []Row
	Sheets  []*render.Sheet
	Drawn   func(*render.Sheet) ([]byte, error) // the SVG of a sheet, inline, where it has been drawn; nil draws it
}

// Row is one line of the table; Class colours it: "ok", "fails", "engineer", "unchecked". Sheet is the ID of the
// sheet where it is drawn, "" for none.
type Row struct {
	Cells []string
	Class string
	Sheet string
}

// Write writes the page.
func Write(w io.Writer, p Page) error {
	draw := inline
	if p.Drawn != nil {
		draw = p.Drawn
	}
	b := begun(p.Title, pageStyle)
	b.add("<h1>%s</h1>\n", p.Title)
	b.verdict(p.Verdict, p.Bad)
	b.add(`<nav aria-label="Sheets"><ul>`)
	for _, s := range p.Sheets {
		b.add(`<li><a href="#%s"><svg viewBox="0 0 %v %v" aria-hidden="true" focusable="false"><use href="#%s" width="%v" height="%v"/></svg>%s %s</a></li>`+"\n",
			s.ID, s.Size.W, s.Size.H, svg.Ident(s.ID), s.Size.W, s.Size.H, s.ID, s.Title)
	}
	b.add(`</ul><p><a href="#checks">Design checks</a></p></nav>` + "\n")
	b.list(p.Notes)
	for _, s := range p.Sheets {
		picture, err := draw(s)
		if err != nil {
			return fmt.Errorf("sheet %s: %w", s.ID, err)
		}
		b.add(`<h2 id="%s">%s %s</h2>`+"\n<figure>%s</figure>\n", s.ID, s.ID, s.Title, drawn(picture))
	}
	b.add(`<h2 id="checks">Design checks</h2>` + "\n<table><thead><tr>")
	for _, h := range p.Head {
		b.add("<th>%s</th>", h)
	}
	b.add("</tr></thead><tbody>\n")
	for _, r := range p.Rows {
		b.row(r)
	}
	b.add("</tbody></table>\n" + `<h2 id="notes">Notes on the sheets</h2>` + "\n")
	for _, s := range p.Sheets {
		b.notes(s)
	}
	return b.end(w)
}

// row adds a line of the table; its first cell leads to the sheet.
func (p *page) row(r Row) {
	p.add(`<tr class="%s">`, r.Class)
	for i, c := range r.Cells {
		if i == 0 && r.Sheet != "" {
			p.add(`<td><a href="#%s">%s</a></td>`, r.Sheet, c)
		} else {
			p.add("<td>%s</td>", c)
		}
	}
	p.add("</tr>\n")
}

// notes adds the notes of a sheet, each leading to it.
func (p *page) notes(s *render.Sheet) {
	notes := notesOf(s)
	if len(notes) == 0 {
		return
	}
	p.add("<details><summary>%s %s</summary><ul>", s.ID, s.Title)
	for _, n := range notes {
		p.add(`<li><a href="#%s">%s</a></li>`, s.ID, n)
	}
	p.add("</ul></details>\n")
}

// inline draws a sheet into the page.
func inline(s *render.Sheet) ([]byte, error) {
	var b bytes.Buffer
	err := svg.Write(&b, s, svg.Options{Inline: true})
	return b.Bytes(), err
}

const pageStyle = `body{font:15px/1.45 "Liberation Sans",Arial,Helvetica,sans-serif;margin:2rem auto;max-width:80rem;padding:0 1rem;color:#111;background:#fff}
h1{font-size:1.5rem;margin:0 0 .3rem}h2{font-size:1.1rem;margin:2.2rem 0 .6rem}
.verdict{font-weight:bold;border:2px solid #333;padding:.4rem .7rem;display:inline-block}
.verdict.bad{border-color:#9c1c1c;color:#9c1c1c}
nav ul{list-style:none;padding:0;display:flex;flex-wrap:wrap;gap:.8rem;margin:1rem 0}
nav a{display:block;width:11rem;text-decoration:none;color:inherit;font-size:.82rem}
nav a:hover,nav a:focus{text-decoration:underline}
nav svg{width:100%;height:7.4rem;border:1px solid #888;background:#fff;display:block;margin-bottom:.2rem}
details{margin:.4rem 0}summary{cursor:pointer}
table{border-collapse:collapse;font-size:.86rem}
td,th{border:1px solid #bbb;padding:.2rem .5rem;text-align:left;vertical-align:top}
tr.fails td{background:#fbe3e3}tr.engineer td{background:#fdf1d6}tr.unchecked td{background:#eee}
figure{margin:1rem 0;border:1px solid #888;background:#fff}
figure svg{width:100%;height:auto;display:block}
ul{padding-left:1.2rem}
@media print{nav,details{display:none}figure{page-break-inside:avoid}}
@media screen and (prefers-color-scheme:dark){
body{color:#ddd;background:#16181a}a{color:#9cc4ff}.verdict{border-color:#aaa}.verdict.bad{border-color:#ff8f8f;color:#ff8f8f}
td,th{border-color:#555}tr.fails td{background:#4a2020}tr.engineer td{background:#463b18}tr.unchecked td{background:#303336}
}
`
