package dxf

import (
	"math"
	"strings"
	"testing"

	"standclear/geom"
	"standclear/render"
)

func TestDimensionKinds(t *testing.T) {
	moved := xy(50, 50)
	for _, c := range []struct {
		name    string
		dim     render.Dim
		kind    string // group 70
		markers string
		points  map[int]geom.Vec
		value   float64
	}{
		// 30 across, 40 up, so 50 along; the foot of the second extension line lies at y = -10
		{"linear", render.Dim{P: xy(0, 0), Q: xy(30, 40), Line: xy(99, -10)},
			"32", "AcDbAlignedDimension AcDbRotatedDimension", map[int]geom.Vec{10: xy(30, -10), 13: xy(0, 0), 14: xy(30, 40)}, 30},
		{"upright", render.Dim{P: xy(0, 0), Q: xy(30, 40), Line: xy(-10, 7), Angle: 90},
			"32", "AcDbAlignedDimension AcDbRotatedDimension", map[int]geom.Vec{10: xy(-10, 40), 13: xy(0, 0), 14: xy(30, 40)}, 40},
		{"turned by less than nothing", render.Dim{P: xy(0, 0), Q: xy(30, 40), Line: xy(-10, 7), Angle: -270},
			"32", "AcDbAlignedDimension AcDbRotatedDimension", map[int]geom.Vec{10: xy(-10, 40)}, 40},
		// at 45 degrees: (30 + 40)/sqrt(2)
		{"sloping", render.Dim{P: xy(0, 0), Q: xy(30, 40), Line: xy(0, 0), Angle: 45},
			"32", "AcDbAlignedDimension AcDbRotatedDimension", map[int]geom.Vec{10: xy(35, 35)}, 70 / math.Sqrt2},
		{"text moved", render.Dim{P: xy(0, 0), Q: xy(30, 40), Line: xy(99, -10), TextAt: &moved},
			"160", "AcDbAlignedDimension AcDbRotatedDimension", map[int]geom.Vec{11: moved}, 30},
		{"aligned", render.Dim{Kind: render.Aligned, P: xy(0, 0), Q: xy(30, 40), Line: xy(-40, 30)},
			"33", "AcDbAlignedDimension", map[int]geom.Vec{10: xy(-10, 70), 13: xy(0, 0), 14: xy(30, 40)}, 50},
		{"angle", render.Dim{Kind: render.Angular, P: xy(20, 10), Q: xy(10, 30), Centre: xy(10, 10), Line: xy(15, 10)},
			"37", "AcDb3PointAngularDimension", map[int]geom.Vec{13: xy(20, 10), 14: xy(10, 30), 15: xy(10, 10)}, math.Pi / 2},
		{"angle the long way", render.Dim{Kind: render.Angular, P: xy(10, 30), Q: xy(20, 10), Centre: xy(10, 10), Line: xy(5, 10)},
			"37", "AcDb3PointAngularDimension", map[int]geom.Vec{13: xy(10, 30), 14: xy(20, 10), 15: xy(10, 10)}, 3 * math.Pi / 2},
		{"diameter", render.Dim{Kind: render.Diameter, P: xy(1, 1), Q: xy(4, 5)},
			"35", "AcDbDiametricDimension", map[int]geom.Vec{10: xy(1, 1), 15: xy(4, 5)}, 5},
		{"ordinate across", render.Dim{Kind: render.OrdinateX, P: xy(5, 5), Q: xy(25, 9), Line: xy(25, 40)},
			"102", "AcDbOrdinateDimension", map[int]geom.Vec{10: xy(5, 5), 13: xy(25, 9), 14: xy(25, 40)}, 20},
		{"ordinate up", render.Dim{Kind: render.OrdinateY, P: xy(5, 5), Q: xy(25, 9), Line: xy(40, 9)},
			"38", "AcDbOrdinateDimension", map[int]geom.Vec{10: xy(5, 5), 13: xy(25, 9), 14: xy(40, 9)}, 4},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.dim.Pen = render.Dimension
			r := draw(t, c.dim).one(t, "DIMENSION")
			if r.get(70) != c.kind || strings.Join(r.all(100), " ") != "AcDbEntity AcDbDimension "+c.markers {
				t.Errorf("kind %s, markers %v", r.get(70), r.all(100))
			}
			for code, want := range c.points {
				if got := r.point(t, code); got.Dist(want) > 2e-9 {
					t.Errorf("point %d at %v, want %v", code, got, want)
				}
			}
			if got := r.num(t, 42); math.Abs(got-c.value) > 1e-8 {
				t.Errorf("measures %g, want %g", got, c.value)
			}
			if r.get(1) != "" || r.get(3) != "SC-DIM-MM-1" {
				t.Errorf("text %q, style %q", r.get(1), r.get(3))
			}
		})
	}
}

// The stored value is what the points in the file measure, however they were rounded.
func TestMeasurementIsThatOfTheRoundedPoints(t *testing.T) {
	for i := range 50 {
		a := float64(i) * 0.731
		d := render.Dim{Pen: render.Dimension, Kind: render.Aligned, P: xy(a*1.37, a/7), Q: xy(100/3.0+a, 41/9.0*a), Line: xy(0, 400)}
		s := view(render.Inch, 4, d)
		s.Number = func(mm float64) string { return numbering{render.Inch, 8, dropBoth}.print(mm / 25.4) }
		r := write(t, s).one(t, "DIMENSION")
		if got, want := r.num(t, 42), r.point(t, 13).Dist(r.point(t, 14)); math.Abs(got-want) > 6e-10 {
			t.Errorf("stored %.12f, points %.12f", got, want)
		}
	}
}

// picture returns the entities of the block that shows the only dimension.
func picture(t *testing.T, f file) map[string][]record {
	t.Helper()
	out := map[string][]record{}
	in := false
	for _, r := range f.records {
		if r.kind == "BLOCK" {
			in = r.get(2) == f.one(t, "DIMENSION").get(2) && r.get(70) == "1"
		} else if in && r.kind != "ENDBLK" && r.handle() != "" && r.section == "BLOCKS" {
			out[r.kind] = append(out[r.kind], r)
		}
	}
	return out
}

func TestPictureShowsTheDimension(t *testing.T) {
	s := view(render.Inch, 4, render.Dim{Pen: render.Dimension, P: xy(0, 0), Q: xy(16.5*25.4, 0), Line: xy(0, 254), Text: "<> TYP."})
	f := write(t, s)
	p := picture(t, f)
	if len(p["LINE"]) != 5 || len(p["MTEXT"]) != 1 || len(p["POINT"]) != 3 { // two extension lines, dimension line, two ticks
		t.Fatalf("%d lines, %d texts, %d points", len(p["LINE"]), len(p["MTEXT"]), len(p["POINT"]))
	}
	m := p["MTEXT"][0]
	// the middle of the text: half a text height (3/64) and the gap (1/16) over the line, times 4
	if m.get(1) != `1'-4 1/2" TYP.` || m.point(t, 10) != xy(8.25, 10.4375) || m.get(71) != "5" || m.get(40) != "0.375" {
		t.Errorf("text %v", m.tags)
	}
	if d := f.one(t, "DIMENSION"); d.get(1) != "<> TYP." || d.point(t, 11) != m.point(t, 10) {
		t.Errorf("dimension %v", d.tags)
	}
	for kind, rs := range p {
		for _, r := range rs {
			if r.get(62) != "0" || (r.get(8) == defPoints) != (kind == "POINT") {
				t.Errorf("%s on %s with colour %s", kind, r.get(8), r.get(62))
			}
		}
	}
}

func TestSignsInDimensionText(t *testing.T) {
	for want, d := range map[string]render.Dim{
		"90%%d":    {Kind: render.Angular, P: xy(10, 0), Q: xy(0, 10), Line: xy(5, 0)},
		"%%c5":     {Kind: render.Diameter, P: xy(0, 0), Q: xy(3, 4)},
		"%%p 10":   {P: xy(0, 0), Q: xy(10, 0), Line: xy(0, 20), Text: "\u00b1 <>"},
		`\{10\}`:   {P: xy(0, 0), Q: xy(10, 0), Line: xy(0, 20), Text: "{<>}"},
		"% %d 10":  {P: xy(0, 0), Q: xy(10, 0), Line: xy(0, 20), Text: "%%d <>"},
		"10 ^ TYP": {P: xy(0, 0), Q: xy(10, 0), Line: xy(0, 20), Text: "<> ^TYP"},
	} {
		d.Pen = render.Dimension
		if got := picture(t, draw(t, d))["MTEXT"][0].get(1); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestOrdinateOfTheDatumIsDrawnPlainly(t *testing.T) {
	f := draw(t, render.Dim{Pen: render.Dimension, Kind: render.OrdinateX, P: xy(0, 0), Q: xy(0, 9), Line: xy(0, 20)})
	if len(f.kind("DIMENSION", "")) != 0 || f.one(t, "TEXT").get(1) != "0" || len(f.kind("LINE", "ENTITIES")) != 1 {
		t.Error("it is not a line and a text")
	}
}

func TestDimensionStyle(t *testing.T) {
	both(t, func(t *testing.T, f file) {
		unit, k, other := render.Inch, "4", "8"
		if f.header["$INSUNITS"][0].value == "4" {
			unit, k, other = render.Millimetre, "5", "10"
		}
		var names []string
		for _, r := range f.kind("DIMSTYLE", "TABLES") {
			names = append(names, strings.TrimRight(r.get(2), "0123456789")+r.get(40))
			st := unit.Style()
			for code, mm := range map[int]float64{41: st.Arrow, 42: st.Offset, 43: st.Step, 44: st.Over, 140: st.Text, 142: st.Tick, 147: st.Gap} {
				if got := r.num(t, code) / unit.PerMM(); math.Abs(got-mm) > 1e-7 {
					t.Errorf("%s: group %d is %g mm, want %g", r.get(2), code, got, mm)
				}
			}
		}
		prefix := map[render.Unit]string{render.Inch: "SC-DIM-IN-", render.Millimetre: "SC-DIM-MM-"}[unit]
		if got, want := strings.Join(names, " "), "Standard1.0 "+prefix+k+".0 "+prefix+other+".0"; got != want {
			t.Errorf("styles %s, want %s", got, want)
		}
	})
}

func TestNumberingPrints(t *testing.T) {
	usual, both, fine := usualNumbering(render.Inch), numbering{render.Inch, 4, dropBoth}, numbering{render.Inch, 5, dropFeet}
	mm := func(places int) numbering { return numbering{render.Millimetre, places, dropTrailing} }
	for _, c := range []struct {
		n    numbering
		v    float64
		want string
	}{
		{usual, 16.5, `1'-4 1/2"`}, {usual, 12, `1'-0"`}, {usual, 12.375, `1'-0 3/8"`}, {usual, 6, `6"`}, {usual, 0.375, `0 3/8"`}, {usual, 0, `0"`},
		{usual, 11.99, `1'-0"`}, {usual, 7.4375, `7 7/16"`}, {usual, 1.02, `1"`},
		{both, 0.375, `3/8"`}, {both, 12, `1'`}, {both, 12.375, `1'-0 3/8"`}, {both, 6, `6"`},
		{fine, 1.03125, `1 1/32"`},
		{mm(0), 119.6, "120"}, {mm(1), 12.5, "12.5"}, {mm(2), 12.5, "12.5"}, {mm(0), 100, "100"},
		{numbering{render.Millimetre, 2, keepDecimals}, 12.5, "12.50"},
	} {
		if got := c.n.print(c.v); got != c.want {
			t.Errorf("%v of %g: %s, want %s", c.n, c.v, got, c.want)
		}
	}
}

// What a sheet prints must be what the style prints; a dimension says where it differs.
func TestOverrideMakesTheStylePrintWhatTheSheetPrints(t *testing.T) {
	for _, c := range []struct {
		name     string
		unit     render.Unit
		mm       float64
		prints   string
		override string // codes and values of the extended data
	}{
		{"usual", render.Inch, 16.5 * 25.4, `1'-4 1/2"`, ""},
		{"under an inch", render.Inch, 0.375 * 25.4, `3/8"`, "78 0"},
		{"thirty-seconds", render.Inch, 1.03125 * 25.4, `1 1/32"`, "271 5"},
		{"thirty-seconds under an inch", render.Inch, 0.03125 * 25.4, `1/32"`, "271 5 78 0"},
		{"coarser", render.Inch, 1.1 * 25.4, `1"`, "271 0"},
		{"halfway, down", render.Inch, 1.03125 * 25.4, `1"`, ""},
		{"halfway, up", render.Inch, 1.03125 * 25.4, `1 1/16"`, ""},
		{"whole millimetres", render.Millimetre, 119.6, "120", ""},
		{"tenths", render.Millimetre, 12.5, "12.5", "271 1"},
		{"trailing zeros", render.Millimetre, 12.5, "12.50", "271 2 78 0"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := view(c.unit, 4, render.Dim{Pen: render.Dimension, P: xy(0, 0), Q: xy(c.mm, 0), Line: xy(0, 20)})
			s.Number = func(float64) string { return c.prints }
			f := write(t, s)
			got := strings.Join(f.one(t, "DIMENSION").all(1070), " ")
			if got != c.override {
				t.Errorf("override %q, want %q", got, c.override)
			}
			if m := picture(t, f)["MTEXT"][0].get(1); m != c.prints {
				t.Errorf("shows %q", m)
			}
		})
	}
}
