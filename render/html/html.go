// Package html writes a set of sheets as one self-contained page: a table, then every sheet inline.
// It loads nothing from elsewhere and runs no script.
//
//	err := html.Write(w, html.Page{Title: "PENNANT HOUSE", Sheets: sheets})
package html

import (
	"bytes"
	"fmt"
	"html/template"
	"io"
	"sync"

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

type picture struct {
	ID, Title string
	Anchor    string  // id of the drawing on the page
	W, H      float64 // of the sheet, mm
	Notes     []string
	SVG       template.HTML
}

// Write writes the page.
func Write(w io.Writer, p Page) error {
	var pics []picture
	for _, s := range p.Sheets {
		draw := inline
		if p.Drawn != nil {
			draw = p.Drawn
		}
		drawn, err := draw(s)
		if err != nil {
			return fmt.Errorf("sheet %s: %w", s.ID, err)
		}
		pics = append(pics, picture{s.ID, s.Title, svg.Ident(s.ID), s.Size.W, s.Size.H, notesOf(s), template.HTML(drawn)})
	}
	return filled(w, page(), struct {
		Page
		Pictures []picture
	}{p, pics})
}

// filled writes a page of the values, UTF-8 whatever they are.
func filled(w io.Writer, page *template.Template, values any) error {
	var b bytes.Buffer
	if err := page.Execute(&b, values); err != nil {
		return err
	}
	_, err := w.Write(bytes.ToValidUTF8(b.Bytes(), []byte("\ufffd")))
	return err
}

// inline draws a sheet into the page.
func inline(s *render.Sheet) ([]byte, error) {
	var b bytes.Buffer
	err := svg.Write(&b, s, svg.Options{Inline: true})
	return b.Bytes(), err
}

var page = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("page").Parse(`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{{.Title}}</title>
<style>
body{font:15px/1.45 "Liberation Sans",Arial,Helvetica,sans-serif;margin:2rem auto;max-width:80rem;padding:0 1rem;color:#111;background:#fff}
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
</style>
</head>
<body>
<h1>{{.Title}}</h1>
<p class="verdict{{if .Bad}} bad{{end}}">{{.Verdict}}</p>
<nav aria-label="Sheets"><ul>{{range .Pictures}}<li><a href="#{{.ID}}"><svg viewBox="0 0 {{.W}} {{.H}}" aria-hidden="true" focusable="false"><use href="#{{.Anchor}}" width="{{.W}}" height="{{.H}}"/></svg>{{.ID}} {{.Title}}</a></li>
{{end}}</ul><p><a href="#checks">Design checks</a></p></nav>
<ul>{{range .Notes}}<li>{{.}}</li>{{end}}</ul>
{{range .Pictures}}<h2 id="{{.ID}}">{{.ID}} {{.Title}}</h2>
<figure>{{.SVG}}</figure>
{{end}}<h2 id="checks">Design checks</h2>
<table><thead><tr>{{range .Head}}<th>{{.}}</th>{{end}}</tr></thead><tbody>
{{range $r := .Rows}}<tr class="{{.Class}}">{{range $i, $c := .Cells}}<td>{{if and (eq $i 0) $r.Sheet}}<a href="#{{$r.Sheet}}">{{$c}}</a>{{else}}{{$c}}{{end}}</td>{{end}}</tr>
{{end}}</tbody></table>
<h2 id="notes">Notes on the sheets</h2>
{{range .Pictures}}{{if .Notes}}{{$id := .ID}}<details><summary>{{.ID}} {{.Title}}</summary><ul>{{range .Notes}}<li><a href="#{{$id}}">{{.}}</a></li>{{end}}</ul></details>
{{end}}{{end}}</body>
</html>
`))
})
