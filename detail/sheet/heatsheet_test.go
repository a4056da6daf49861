package sheet_test

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"sync"
	"testing"

	"standclear/detail"
	"standclear/detail/check/design"
	"standclear/detail/check/thermal"
	"standclear/detail/demo"
	"standclear/detail/detailtest"
	"standclear/detail/sheet"
	"standclear/detail/spec"
	"standclear/geom"
	"standclear/render"
	"standclear/render/dxf"
	"standclear/render/svg"
)

// heated keeps what warm has composed.
var heated sync.Map

type warmSet struct {
	a      *detail.Assembly
	sheets map[string]*render.Sheet
}

// warm composes a demo with the field made by hand.
func warm(t *testing.T, name string, sets ...string) (*detail.Assembly, map[string]*render.Sheet) {
	t.Helper()
	key := name + "\x00" + strings.Join(sets, "\x00")
	if s, ok := heated.Load(key); ok {
		return s.(warmSet).a, s.(warmSet).sheets
	}
	a := detailtest.Demo(t, name, sets...)
	r, res := design.Check(a)
	out := map[string]*render.Sheet{}
	for _, sh := range sheet.Compose(a, &r, res, sheet.Options{Version: "test", Heat: heatOf(a)}) {
		out[sh.ID] = sh
	}
	heated.Store(key, warmSet{a, out})
	return a, out
}

func TestHeatSheetsOnlyWithHeat(t *testing.T) {
	const unchecked = "HEAT LOSS, SURFACE TEMPERATURE AND MOISTURE"
	for _, sh := range compose(t, "deck").sheets {
		if sh.ID == "A-311" || sh.ID == "G-002" {
			t.Errorf("%s is drawn without heat", sh.ID)
		}
		if all := text(t, sh); sh.ID == "G-001" && (!strings.Contains(all, unchecked) || strings.Contains(all, "A-311")) {
			t.Error("G-001 without heat must list it as not checked, and no sheet of it")
		}
	}
	_, sheets := warm(t, "deck")
	for _, id := range []string{"A-311", "G-002"} {
		if sheets[id] == nil {
			t.Fatalf("no %s", id)
		}
		if !strings.Contains(text(t, sheets["G-001"]), id) {
			t.Errorf("G-001 does not list %s", id)
		}
	}
	if strings.Contains(text(t, sheets["G-001"]), unchecked) {
		t.Error("G-001 lists heat as not checked beside the sheets of it")
	}
}

// Both sheets keep the rules of layout, in both systems, with and without a climate.
func TestHeatSheetsAreLegible(t *testing.T) {
	for name, sets := range map[string][]string{
		"deck": nil, "balcony": nil, "deck-metric": nil, "balcony-metric": nil,
		"deck, no climate": {"site.design_temperature=", "site.inside_humidity=", "site.degree_days=", "site.cold_month_temperature="},
		"deck, short":      {"ledger.length=8ft", "doors=", "obstacles="},
		"deck, A4":         {"sheets.size=ANSI B"},
	} {
		t.Run(name, func(t *testing.T) {
			demo, _, _ := strings.Cut(name, ",")
			_, sheets := warm(t, demo, sets...)
			for _, id := range []string{"A-311", "G-002"} {
				textIsClear(t, sheets[id])
				noLineThroughText(t, sheets[id])
				for _, v := range sheets[id].Views {
					box := geom.Box{Min: v.Window.Min.Mul(1 / v.Scale.K).Add(v.At), Max: v.Window.Max.Mul(1 / v.Scale.K).Add(v.At)}
					if paper := (geom.Box{Max: geom.Vec{X: sheets[id].Size.W, Y: sheets[id].Size.H}}); !paper.Holds(box.Min) || !paper.Holds(box.Max) {
						t.Errorf("%s: view %s leaves the sheet: %v", id, v.ID, box)
					}
				}
			}
		})
	}
}

// A result without its fields, or without ways, is drawn empty and does not end the program.
func TestHeatWithoutFields(t *testing.T) {
	a, _ := warm(t, "deck-metric")
	r, res := design.Check(a)
	bare := &thermal.Result{Block: "B1", Length: 4600, Blocks: 9, Wall: thermal.Value{V: 0.2}}
	for _, sh := range sheet.Compose(a, &r, res, sheet.Options{Heat: bare}) {
		if sh.ID == "A-311" && len(sh.Views) != 2 {
			t.Errorf("%d views", len(sh.Views))
		}
		textIsClear(t, sh)
	}
}

// The bands cover the solid cells that the section shows, and nothing beside: their area is that of the
// cells in the picture.
func TestBandsAreTheSolidCells(t *testing.T) {
	a, sheets := warm(t, "deck-metric")
	r := heatOf(a)
	for i, f := range []*struct {
		y, z []float64
		v    [][]float64
	}{{r.AtBlock.Y, r.AtBlock.Z, r.AtBlock.F}, {r.Between.Y, r.Between.Z, r.Between.F}} {
		got, bounds := 0.0, geom.EmptyBox()
		for _, it := range sheets["A-311"].Views[i].Items {
			if b, ok := it.(render.Fill); ok && b.Pen >= render.Heat1 && b.Pen <= render.Heat8 {
				got += b.Region.Area()
				bounds = bounds.Union(b.Region.Bounds())
			}
		}
		want := 0.0
		for j := range f.v {
			for n, v := range f.v[j] {
				if cell := (geom.Box{Min: geom.Vec{X: f.y[n], Y: f.z[j]}, Max: geom.Vec{X: f.y[n+1], Y: f.z[j+1]}}).Intersect(bounds); v >= 0 && !cell.Empty() {
					want += cell.W() * cell.H()
				}
			}
		}
		if math.Abs(got-want) > 1e-4*want || want < 1e4 {
			t.Errorf("section %d: bands of %.0f mm2 for cells of %.0f", i+1, got, want)
		}
	}
}

// What is printed is what the result says, in the project's units: 0.71 of the way from -18 C to 20 C is
// 8.98 C or 48.16 F; 1.62 W/K is 3.071 Btu/(h F) and, over 3830 K d, 1.62 x 24 x 3830/1000 = 148.9 kWh.
func TestHeatIsPrintedInTheUnitsOfTheProject(t *testing.T) {
	for name, want := range map[string][2][]string{
		"deck":        {{"48.2 ±0.3", "DEW 48.7", "48.7", "0.710 ±0.004", "0.880 ±?"}, {"3.07 ±0.06", "149 ±3", "100 %", "DRAWN", "h ft2 F/Btu"}},
		"deck-metric": {{"9.0 ±0.2", "DEW 9.3", "9.3", "0.710 ±0.004", "15.4 ±?"}, {"1.62 ±0.03", "149 ±3", "100 %", "DRAWN", "m2 K/W"}},
	} {
		_, sheets := warm(t, name)
		for i, id := range []string{"A-311", "G-002"} {
			all := text(t, sheets[id])
			for _, s := range want[i] {
				if !strings.Contains(all, s) {
					t.Errorf("%s, %s: no %q", name, id, s)
				}
			}
		}
	}
}

// Every isotherm that is drawn has its name, over the picture or in it.
func TestIsothermsAreNamed(t *testing.T) {
	_, sheets := warm(t, "deck-metric")
	for _, v := range sheets["A-311"].Views {
		names := map[string]bool{}
		for _, it := range v.Items {
			if x, ok := it.(render.Text); ok {
				names[strings.Join(x.Lines, " ")] = true
			}
		}
		for c := -10; c <= 15; c += 5 {
			if !names[fmt.Sprint(c)] {
				t.Errorf("view %s: the isotherm of %d C has no name", v.ID, c)
			}
		}
	}
}

// The two files of the sheet of temperatures stay small: bands are regions, not cells.
func TestBandsAreSmallInFiles(t *testing.T) {
	_, sheets := warm(t, "deck")
	var b bytes.Buffer
	if err := svg.Write(&b, sheets["A-311"], svg.Options{}); err != nil {
		t.Fatal(err)
	}
	if err := dxf.Write(&b, sheets["A-311"], dxf.Options{}); err != nil {
		t.Fatal(err)
	}
	if n := b.Len(); n > 1<<20 {
		t.Errorf("SVG and DXF take %d bytes", n)
	}
	if n := strings.Count(b.String(), "\nHATCH\n"); n > 40 {
		t.Errorf("%d hatches", n)
	}
}

// What the two sheets add to composing a set and writing it.
func BenchmarkHeatSheets(b *testing.B) {
	src, _ := demo.File("deck")
	s, _ := spec.Read("deck", src, nil)
	a, err := detail.Build(s)
	if err != nil {
		b.Fatal(err)
	}
	r, res := design.Check(a)
	h := heatOf(a)
	for name, o := range map[string]sheet.Options{"without": {}, "with": {Heat: h}} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				sheet.Compose(a, &r, res, o)
			}
		})
	}
}
