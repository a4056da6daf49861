package sheet

import (
	"fmt"
	"testing"

	"standclear/detail"
	"standclear/detail/check/design"
	"standclear/detail/demo"
	"standclear/detail/sheet/judge"
	"standclear/detail/spec"
	"standclear/render"
)

func TestZZ(t *testing.T) {
	for _, name := range demo.Names() {
		src, _ := demo.File(name)
		s, _ := spec.Read(name, src, nil)
		a, _ := detail.Build(s)
		r, res := design.Check(a)
		w := &writer{a: a, report: &r, results: res}
		for _, p := range w.pages() {
			if p.of != "S-501" && p.of != "S-701" && p.of != "S-503" && p.of != "G-003" && p.of != "G-001" {
				continue
			}
			w.page = p.no
			size := p.sizes(w)[0]
			l := sheetOf(size)
			for w.tight = range 4 {
				s := &render.Sheet{ID: p.id, Title: p.title, Desc: p.desc, Size: l.size, Unit: w.unit(), Number: number(w.a.Spec.Project.System)}
				scale, fits := p.draw(w, s, l)
				w.border(s, l, 1, 1, scale)
				found, err := judge.Layout(s)
				fmt.Println(name, p.id, size, w.tight, fits, len(found), err)
				for _, f := range found {
					fmt.Println("     ", f)
				}
			}
		}
	}
}
