package html

import (
	"html/template"
	"io"
	"sync"

	"standclear/render"
)

// Report is a calculation: chapters of entries, each a name and the lines under it.
type Report struct {
	Title    string
	Verdict  string // one line under the title
	Bad      bool   // the verdict is a failure
	Notes    []string
	Chapters []Chapter
}

// Chapter is one group of entries with its figures.
type Chapter struct {
	Title   string
	Figures []*render.Sheet
	Entries []Entry
}

// Entry is one step of a calculation. Class colours it as in a Row; ID is its anchor.
type Entry struct {
	ID, Name, Verdict, Class string
	Lines                    []string
}

type drawnChapter struct {
	Chapter
	Pictures []template.HTML
}

// WriteReport writes the calculation as one self-contained page.
func WriteReport(w io.Writer, r Report) error {
	var all []drawnChapter
	for _, c := range r.Chapters {
		d := drawnChapter{Chapter: c}
		for _, s := range c.Figures {
			drawn, err := inline(s)
			if err != nil {
				return err
			}
			d.Pictures = append(d.Pictures, template.HTML(drawn))
		}
		all = append(all, d)
	}
	return filled(w, report(), struct {
		Report
		Drawn []drawnChapter
	}{r, all})
}

var report = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("report").Parse(`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{{.Title}}: calculation</title>
<style>
body{font:15px/1.45 "Liberation Sans",Arial,Helvetica,sans-serif;margin:2rem auto;max-width:56rem;padding:0 1rem;color:#111;background:#fff}
h1{font-size:1.5rem;margin:0 0 .3rem}h2{font-size:1.15rem;margin:2.2rem 0 .6rem;border-bottom:2px solid #333}
.verdict{font-weight:bold;border:2px solid #333;padding:.4rem .7rem;display:inline-block}
.verdict.bad{border-color:#9c1c1c;color:#9c1c1c}
section{margin:.8rem 0;break-inside:avoid}
section b span{float:right}
section p{margin:0 0 0 1.2rem;overflow-wrap:anywhere}
.fails b,.engineer b,.unchecked b{color:#9c1c1c}
figure{margin:1rem 0;text-align:center}figure svg{max-width:100%;height:auto}
ul{padding-left:1.2rem}
</style>
</head>
<body>
<h1>{{.Title}}: calculation</h1>
<p class="verdict{{if .Bad}} bad{{end}}">{{.Verdict}}</p>
<ul>{{range .Notes}}<li>{{.}}</li>{{end}}</ul>
{{range .Drawn}}<h2>{{.Title}}</h2>
{{range .Pictures}}<figure>{{.}}</figure>
{{end}}{{range .Entries}}<section id="{{.ID}}" class="{{.Class}}"><b>{{.Name}}<span>{{.Verdict}}</span></b>
{{range .Lines}}<p>{{.}}</p>
{{end}}</section>
{{end}}{{end}}</body>
</html>
`))
})
