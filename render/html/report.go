package html

import (
	"fmt"
	"io"

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

// WriteReport writes the calculation as one self-contained page.
func WriteReport(w io.Writer, r Report) error {
	title := r.Title + ": calculation"
	b := begun(title, reportStyle)
	b.add("<h1>%s</h1>\n", title)
	b.verdict(r.Verdict, r.Bad)
	b.list(r.Notes)
	for _, c := range r.Chapters {
		b.add("<h2>%s</h2>\n", c.Title)
		for _, s := range c.Figures {
			picture, err := inline(s)
			if err != nil {
				return fmt.Errorf("figure %s: %w", s.ID, err)
			}
			b.add("<figure>%s</figure>\n", drawn(picture))
		}
		for _, e := range c.Entries {
			b.add(`<section id="%s" class="%s"><b>%s<span>%s</span></b>`+"\n", e.ID, e.Class, e.Name, e.Verdict)
			for _, l := range e.Lines {
				b.add("<p>%s</p>\n", l)
			}
			b.add("</section>\n")
		}
	}
	return b.end(w)
}

const reportStyle = `body{font:15px/1.45 "Liberation Sans",Arial,Helvetica,sans-serif;margin:2rem auto;max-width:56rem;padding:0 1rem;color:#111;background:#fff}
h1{font-size:1.5rem;margin:0 0 .3rem}h2{font-size:1.15rem;margin:2.2rem 0 .6rem;border-bottom:2px solid #333}
.verdict{font-weight:bold;border:2px solid #333;padding:.4rem .7rem;display:inline-block}
.verdict.bad{border-color:#9c1c1c;color:#9c1c1c}
section{margin:.8rem 0;break-inside:avoid}
section b span{float:right}
section p{margin:0 0 0 1.2rem;overflow-wrap:anywhere}
.fails b,.engineer b,.unchecked b{color:#9c1c1c}
figure{margin:1rem 0;text-align:center}figure svg{max-width:100%;height:auto}
ul{padding-left:1.2rem}
`
