package layermap

import (
	"bytes"
	"strings"
	"testing"

	"standclear/geom"
	"standclear/render"
	"standclear/render/dxf"
)

// Whatever stands in the file, it is refused with places, or every layer can be written: a sheet with a line on each
// pen then goes into a DXF file that has the layer, drawn on as the map says.
func FuzzRead(f *testing.F) {
	f.Add(Starter())
	f.Add(iso13567)
	for _, s := range []string{"", "layers: {DETL-MCUT: X}", "layers: {DETL-MCUT: &a X, DETL-MBND: *a}", "layers: {DETL-MCUT: {weight: -1mm, line: A}}\nline_types: {A: [1mm, -1mm]}",
		"? [a]\n: b", "layers: {DETL-MCUT: <D><D>}", "layers: {DETL-MCUT: <<D>D>}", "layers: !!set {a}", "---\n---\n", "layers:\n  <<: {a: b}", "line_types: {A: [1e9mm, -1mm]}",
		"layers: {DETL-MCUT: {line: A}}\nline_types: {A: [1mm, -1mm, 0mm, -1/8in]}", "layers: {DETL-MCUT: \"0\"}", "layers: {DETL-MCUT: {name: \"A\u0308<D>\", colour: 255, weight: 2.11mm, plot: no}}"} {
		f.Add([]byte(s))
	}
	everything := onEachPen()
	f.Fuzz(func(t *testing.T, src []byte) {
		l, problems := Read("o.yaml", src)
		if (l == nil) != (len(problems) > 0) {
			t.Fatalf("layers %v with problems %v", l, problems)
		}
		for _, p := range problems {
			if p.File != "o.yaml" || p.Line < 1 || p.Col < 1 || p.Given == "" || strings.ContainsAny(p.Error(), "\n\r") || len(p.Error()) > 2000 {
				t.Errorf("%+v has no place, no words or too many", p)
			}
		}
		if l == nil {
			return
		}
		var b bytes.Buffer
		if err := dxf.Write(&b, everything, dxf.Options{Layers: l}); err != nil {
			t.Fatal(err)
		}
		drawn := onLayers(t, b.String())
		for _, one := range l {
			if !render.LegalName(one.Of("A")) || one.Index < 1 || one.Index > 255 || !render.LegalName(one.Type.Name) {
				t.Errorf("%+v cannot be written", one)
			}
			if !drawn[one.Of("A")] {
				t.Errorf("nothing is drawn on %q", one.Of("A"))
			}
		}
	})
}

// onEachPen is a sheet with a line on each pen.
func onEachPen() *render.Sheet {
	s := &render.Sheet{ID: "A-1", Title: "PENS", Size: render.Size{Name: "A4", W: 297, H: 210}, Unit: render.Millimetre}
	for p := range render.OwnLayers() {
		s.Items = append(s.Items, render.Stroke{Pen: render.Pen(p), Path: geom.Polyline(geom.Vec{X: 10, Y: 10 + float64(p)}, geom.Vec{X: 90, Y: 10 + float64(p)})})
	}
	return s
}

// onLayers returns the layers on which the file draws lines.
func onLayers(t *testing.T, data string) map[string]bool {
	t.Helper()
	lines := strings.Split(strings.ReplaceAll(data, "\r\n", "\n"), "\n")
	out := map[string]bool{}
	inLine := false
	for i := 0; i+1 < len(lines); i += 2 {
		switch code, value := strings.TrimSpace(lines[i]), lines[i+1]; {
		case code == "0":
			inLine = value == "LINE" || value == "LWPOLYLINE"
		case code == "8" && inLine:
			out[value] = true
		}
	}
	return out
}
