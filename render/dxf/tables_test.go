package dxf

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"standclear/geom"
	"standclear/render"
)

// everyPen draws a line on each pen, apart from each other.
func everyPen(u render.Unit) *render.Sheet {
	var items []render.Item
	for p := range render.Pens {
		items = append(items, stroke(render.Pen(p), xy(0, float64(p)), xy(10, float64(p))))
	}
	return view(u, 4, items...)
}

func TestLayersAreThePens(t *testing.T) {
	s := everyPen(render.Millimetre)
	got := map[string]string{}
	for _, r := range write(t, s).kind("LAYER", "TABLES") {
		got[r.get(2)] = strings.Join([]string{r.get(62), r.get(370), r.get(6), r.get(290), r.get(420)}, " ")
	}
	for p, d := range render.Pens {
		want := fmt.Sprintf("%d %d %s ", d.Index, d.Weight, d.Type.Name)
		if d.NoPlot {
			want += "0"
		}
		want += " "
		if d.Index > 9 { // the nine named colours need no other
			var n int
			fmt.Sscanf(d.RGB, "#%x", &n)
			want += fmt.Sprint(n)
		}
		if l := s.Layer(render.Pen(p)); got[l] != want {
			t.Errorf("layer %s: %q, want %q", l, got[l], want)
		}
	}
	if len(got) != len(render.Pens)+2 {
		t.Errorf("%d layers for %d pens", len(got), len(render.Pens))
	}
}

// Dashes stand in the file's unit at their plotted length.
func TestLineTypesHavePlottedLengths(t *testing.T) {
	types := map[string]render.LineType{}
	for _, d := range render.Pens {
		types[d.Type.Name] = d.Type
	}
	for _, u := range []render.Unit{render.Inch, render.Millimetre} {
		rs := write(t, everyPen(u)).kind("LTYPE", "TABLES")
		if len(rs) != len(types)+2 {
			t.Errorf("%d line types, want %d", len(rs), len(types)+2)
		}
		for _, r := range rs {
			sum := 0.0
			for i, v := range r.all(49) {
				f, _ := strconv.ParseFloat(v, 64)
				sum += math.Abs(f)
				if want := types[r.get(2)].Dashes[i] * u.PerMM(); math.Abs(f-want) > 1e-9 {
					t.Errorf("%s: dash %g, want %g", r.get(2), f, want)
				}
			}
			if math.Abs(r.num(t, 40)-sum) > 2e-9 || r.get(73) != strconv.Itoa(len(types[r.get(2)].Dashes)) || r.get(72) != "65" {
				t.Errorf("%s: length %s of %s dashes, want %g", r.get(2), r.get(40), r.get(73), sum)
			}
		}
	}
}

func TestTextStylesKeepNoHeight(t *testing.T) {
	f := draw(t, note("A"))
	var names []string
	for _, r := range f.kind("STYLE", "TABLES") {
		names = append(names, r.get(2))
		if r.get(40) != "0.0" || r.get(3) != "arial.ttf" {
			t.Errorf("style %v", r.tags)
		}
	}
	if !slices.Equal(names, []string{"Standard", noteStyle}) {
		t.Errorf("styles %v for plain text", names)
	}
	bold := note("A")
	bold.Bold = true
	if rs := draw(t, bold).kind("STYLE", "TABLES"); len(rs) != 2 || rs[1].get(2) != boldStyle || rs[1].get(3) != "arialbd.ttf" {
		t.Errorf("styles %v for bold text", rs)
	}
}

// What does not come from the table of sizes: how a dimension style prints and where its text goes.
func TestDimensionStyleSettings(t *testing.T) {
	want := map[render.Unit]string{
		render.Inch:       "46=0.0 141=0.0 144=1.0 73=0 74=0 77=1 78=3 172=1 179=0 271=4 275=0 276=2 277=4 278=46 279=2 289=3 371=-2 372=-2",
		render.Millimetre: "46=0.0 141=0.0 144=1.0 73=0 74=0 77=1 78=8 172=1 179=0 271=0 275=0 276=2 277=2 278=46 279=2 289=3 371=-2 372=-2",
	}
	for u, w := range want {
		f := write(t, sample(u))
		styles := f.kind("STYLE", "TABLES")
		for i, r := range f.kind("DIMSTYLE", "TABLES") {
			var got []string
			for _, pair := range strings.Fields(w) {
				code, _ := strconv.Atoi(pair[:strings.Index(pair, "=")])
				got = append(got, fmt.Sprintf("%d=%s", code, r.get(code)))
			}
			if g := strings.Join(got, " "); g != w {
				t.Errorf("%s\ngot  %s\nwant %s", r.get(2), g, w)
			}
			if text := styles[min(i, 1)].handle(); r.get(340) != text {
				t.Errorf("%s: text style %s, want %s", r.get(2), r.get(340), text)
			}
		}
	}
}

func TestHeaderVariables(t *testing.T) {
	f := write(t, sample(render.Inch))
	for _, w := range []string{"$ACADVER 1 AC1024", "$DWGCODEPAGE 3 ANSI_1252", "$INSBASE 10 0.0", "$LTSCALE 40 1.0", "$TEXTSTYLE 7 SC-NOTES", "$CLAYER 8 0",
		"$CELTYPE 6 ByLayer", "$CECOLOR 62 256", "$DIMSCALE 40 4.0", "$DIMSTYLE 2 SC-DIM-IN-4", "$LUPREC 70 4", "$AUNITS 70 0", "$TILEMODE 70 1",
		"$PSLTSCALE 70 1", "$CELWEIGHT 370 -1", "$LWDISPLAY 290 1", "$PSTYLEMODE 290 1"} {
		name, rest, _ := strings.Cut(w, " ")
		if v := f.header[name]; len(v) == 0 || fmt.Sprintf("%d %s", v[0].code, v[0].value) != rest {
			t.Errorf("%s is %v, want %s", name, v, rest)
		}
	}
	for name := range f.header {
		if strings.HasPrefix(name, "$TD") || strings.Contains(name, "GUID") || strings.Contains(name, "SAVEDBY") {
			t.Errorf("%s changes from run to run", name)
		}
	}
}

// The first view shows the whole of model space, wide or tall.
func TestFirstViewShowsAll(t *testing.T) {
	for _, size := range []geom.Vec{xy(900, 10), xy(10, 900), xy(150, 100)} {
		r := draw(t, stroke(render.Cut, xy(0, 0), size)).kind("VPORT", "TABLES")[0]
		h := r.num(t, 40)
		if w := h * r.num(t, 41); r.point(t, 12) != size.Mul(0.5) || h < size.Y*1.05 || w < size.X*1.05 || h > size.Y*1.2 && w > size.X*1.2 {
			t.Errorf("%v: shows %g x %g about %v", size, w, h, r.point(t, 12))
		}
	}
}
