package dxf_test

import (
	"bytes"
	"fmt"
	"strings"

	"standclear/geom"
	"standclear/render"
	"standclear/render/dxf"
)

func ExampleWrite() {
	s := render.Sheet{ID: "A-301", Size: render.Size{Name: "ISO A3", W: 420, H: 297}, Unit: render.Millimetre}
	s.Views = []render.View{{
		ID: "1", Scale: render.Scale{K: 5, Text: "1:5"}, At: geom.Vec{X: 100, Y: 100},
		Window: geom.BoxOf(geom.Vec{X: -50, Y: -50}, geom.Vec{X: 350, Y: 250}),
		Items:  []render.Item{render.Stroke{Pen: render.Cut, Path: geom.Rect(0, 0, 300, 200)[0]}},
	}}
	var b bytes.Buffer
	if err := dxf.Write(&b, &s, dxf.Options{}); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(strings.Count(b.String(), "\nLWPOLYLINE\n"), "outline on layer A-DETL-MCUT:", strings.Contains(b.String(), "A-DETL-MCUT"))
	// Output: 1 outline on layer A-DETL-MCUT: true
}
