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
}

// Row is one line of the table; Class colours it: "ok", "fails", "engineer", "unchecked".
type Row struct {
	Cells []string
	Class string
}

type picture struct {
	ID, Title string
	SVG       template.HTML
}

// Write writes the page.
func Write(w io.Writer, p Page) error {
	var pics []picture
	for _, s := range p.Sheets {
		drawn, err := inline(s)
		if err != nil {
			return err
		}
		pics = append(pics, picture{s.ID, s.Title, drawn})
	}
	return page.Execute(w, struct {
		Page
		Pictures []picture
	}{p, pics})
}

// inline draws a sheet into the page.
func inline(s *render.Sheet) (template.HTML, error) {
	var b bytes.Buffer
	if err := svg.Write(&b, s, svg.Options{Inline: true}); err != nil {
		return "", fmt.Errorf("sheet %s: %w", s.ID, err)
	}
	return template.HTML(b.String()), nil
}

var page = template.Must(template.New("page").Parse(`<!doctype html>
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
nav a{margin-right:1rem}
table{border-collapse:collapse;font-size:.86rem}
td,th{border:1px solid #bbb;padding:.2rem .5rem;text-align:left;vertical-align:top}
tr.fails td{background:#fbe3e3}tr.engineer td{background:#fdf1d6}tr.unchecked td{background:#eee}
figure{margin:1rem 0;border:1px solid #888;background:#fff}
figure svg{width:100%;height:auto;display:block}
ul{padding-left:1.2rem}
@media print{nav{display:none}figure{page-break-inside:avoid}}
</style>
</head>
<body>
<h1>{{.Title}}</h1>
<p class="verdict{{if .Bad}} bad{{end}}">{{.Verdict}}</p>
<nav>{{range .Pictures}}<a href="#{{.ID}}">{{.ID}}</a>{{end}}<a href="#checks">Checks</a></nav>
<ul>{{range .Notes}}<li>{{.}}</li>{{end}}</ul>
{{range .Pictures}}<h2 id="{{.ID}}">{{.ID}} {{.Title}}</h2>
<figure>{{.SVG}}</figure>
{{end}}<h2 id="checks">Design checks</h2>
<table><thead><tr>{{range .Head}}<th>{{.}}</th>{{end}}</tr></thead><tbody>
{{range .Rows}}<tr class="{{.Class}}">{{range .Cells}}<td>{{.}}</td>{{end}}</tr>
{{end}}</tbody></table>
</body>
</html>
`))
