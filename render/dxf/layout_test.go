package dxf

import (
	"math"
	"slices"
	"strings"
	"testing"

	"standclear/geom"
	"standclear/render"
)

// A viewport shows the window of its view, where the sheet has it, at exactly its scale.
func TestViewportsAreTrueToScale(t *testing.T) {
	for _, u := range []render.Unit{render.Inch, render.Millimetre} {
		for _, k := range []float64{1, 2, 4, 5, 8, 10, 12, 16, 24, 2.5, 1.0 / 3} {
			s := view(u, k, stroke(render.Cut, xy(0, 0), xy(100, 0)))
			v := &s.Views[0]
			v.At, v.Place, v.Window = xy(123.4, 77.7), xy(300, -40), geom.BoxOf(xy(-31.7, -12.3), xy(401.1, 222.2))
			ports := write(t, s).kind("VIEWPORT", "ENTITIES")
			if len(ports) != 2 {
				t.Fatalf("%d viewports", len(ports))
			}
			p := ports[1]
			if got := p.num(t, 45) / p.num(t, 41); math.Abs(got-k) > 1e-9*k {
				t.Errorf("scale %g, want %g", got, k)
			}
			// where the view's origin and its upper right window corner come out on paper
			per := u.PerMM()
			paper := func(q geom.Vec) geom.Vec {
				return p.point(t, 10).Add(q.Add(v.Place).Mul(per).Sub(p.point(t, 12)).Mul(p.num(t, 41) / p.num(t, 45)))
			}
			if got := paper(geom.Vec{}); got.Dist(v.At.Mul(per)) > 1e-8 {
				t.Errorf("k = %g: origin on paper at %v, want %v", k, got, v.At.Mul(per))
			}
			corner := p.point(t, 10).Add(xy(p.num(t, 40), p.num(t, 41)).Mul(0.5))
			if got := paper(v.Window.Max); got.Dist(corner) > 1e-8 {
				t.Errorf("k = %g: window ends at %v, viewport at %v", k, got, corner)
			}
		}
	}
}

func TestViewportsAreLockedAndCounted(t *testing.T) {
	both(t, func(t *testing.T, f file) {
		ports := f.kind("VIEWPORT", "ENTITIES")
		var ids, flags, layers []string
		for _, p := range ports {
			ids, flags, layers = append(ids, p.get(68)+p.get(69)), append(flags, p.get(90)), append(layers, p.get(8))
		}
		if !slices.Equal(ids, []string{"11", "22", "33"}) || !slices.Equal(flags, []string{"557088", "573472", "573472"}) || !slices.Equal(layers, []string{"0", "A-ANNO-NPLT", "A-ANNO-NPLT"}) {
			t.Errorf("numbers %v, flags %v, layers %v", ids, flags, layers)
		}
		for _, r := range f.kind("LAYER", "TABLES") {
			if (r.get(290) == "0") != (r.get(2) == "A-ANNO-NPLT" || r.get(2) == defPoints) {
				t.Errorf("layer %s: plot flag %q", r.get(2), r.get(290))
			}
		}
		if l := f.kind("LAYOUT", "OBJECTS")[1]; l.get(331) != ports[0].handle() {
			t.Errorf("main viewport %s, want %s", l.get(331), ports[0].handle())
		}
	})
}

func TestLayoutIsTheSheet(t *testing.T) {
	for _, c := range []struct {
		unit       render.Unit
		paper      string
		w, h, x, y float64 // paper in mm; limits in the file's unit
		plotUnit   string
	}{
		{render.Inch, "ARCH_D_(36.00_x_24.00_Inches)", 914.4, 609.6, 36, 24, "0"},
		{render.Millimetre, "ISO_A2_(594.00_x_420.00_MM)", 594, 420, 594, 420, "1"},
	} {
		ls := write(t, sample(c.unit)).kind("LAYOUT", "OBJECTS")
		if len(ls) != 2 || ls[0].all(1)[1] != "Model" || ls[1].all(1)[1] != "A-301" {
			t.Fatalf("layouts %v", ls)
		}
		for i, l := range ls {
			if l.get(4) != c.paper || l.num(t, 44) != c.w || l.num(t, 45) != c.h || l.get(72) != c.plotUnit || l.all(71)[0] != []string{"0", "1"}[i] {
				t.Errorf("layout %v", l.tags)
			}
		}
		if l := ls[1]; l.num(t, 11) != c.x || l.num(t, 21) != c.y || l.num(t, 10) != 0 || l.num(t, 40) != 0 {
			t.Errorf("limits %v, %v", l.num(t, 11), l.num(t, 21))
		}
	}
}

func TestLayoutName(t *testing.T) {
	for in, want := range map[string]string{"A-301": "A-301", "": "Sheet", "model": "Sheet", " A/1 ": "A-1", strings.Repeat("x", 300): strings.Repeat("x", render.MaxName)} {
		if got := layoutName(in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
}

// signed returns what of the paper carries the properties.
func signed(t *testing.T, s *render.Sheet) string {
	t.Helper()
	out := ""
	for _, r := range write(t, s).records {
		if slices.Contains(r.all(1000), "hash=0123abcd") {
			out += r.kind + " " + r.get(2)
		}
	}
	return out
}

func TestPropertiesStandOnTheTitleBlock(t *testing.T) {
	s := sample(render.Inch)
	if got := signed(t, s); got != "INSERT SC-TITLE" {
		t.Errorf("on %s", got)
	}
	s.Items = append([]render.Item{render.Insert{Pen: render.Mark, Symbol: bubble(), At: xy(50, 50)}}, s.Items[2])
	if got := signed(t, s); got != "INSERT SC-BUBBLE" {
		t.Errorf("without a title block on %s", got)
	}
	s.Items = nil // the bold text is the title of the view
	if got := signed(t, s); got != "TEXT " {
		t.Errorf("without paper items on %s", got)
	}
	s.Views = s.Views[1:]
	if got := signed(t, s); got != "VIEWPORT " {
		t.Errorf("without a title on %s", got)
	}
}

func TestTagsStandOnTheirParts(t *testing.T) {
	both(t, func(t *testing.T, f file) {
		for _, r := range f.kind("LWPOLYLINE", "ENTITIES") {
			if r.get(1001) != "" {
				if got := strings.Join(append(r.all(1001), r.all(1000)...), "|"); got != "STANDCLEAR|mark=B1|material=wood|size=24 x 12|role=block" {
					t.Errorf("extended data %s", got)
				}
				return
			}
		}
		t.Error("no outline says what it is")
	})
}

func TestLongFactsGoOn(t *testing.T) {
	long := strings.Repeat("0123456789", 60)
	got := facts([2]string{"note", long}, [2]string{"none", ""})
	whole := ""
	for _, v := range got {
		if len(v) > maxString {
			t.Errorf("value of %d bytes", len(v))
		}
		whole += strings.TrimPrefix(v, "note=")
	}
	if len(got) != 3 || whole != long {
		t.Errorf("%d values", len(got))
	}
}

func TestSheetWithoutViews(t *testing.T) {
	s := sample(render.Millimetre)
	s.Views = []render.View{{ID: "1"}} // without items, so without a window
	f := write(t, s)
	if n := len(f.kind("VIEWPORT", "")); n != 1 {
		t.Errorf("%d viewports", n)
	}
	if x := f.header["$EXTMAX"][0].value; x != "594.0" {
		t.Errorf("extent %s, want the sheet's", x)
	}
}
