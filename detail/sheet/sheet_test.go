package sheet_test

import (
	"fmt"
	"math"
	"regexp"
	"runtime"
	"strings"
	"sync"
	"testing"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/design"
	"standclear/detail/demo"
	"standclear/detail/sheet"
	"standclear/detail/spec"
	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// set is a composed set with what it was composed from.
type set struct {
	a      *detail.Assembly
	report check.Report
	sheets []*render.Sheet
	pages  []*render.Sheet // of the calculation
}

func compose(t testing.TB, name string, sets ...string) set {
	t.Helper()
	key := name + "\x00" + strings.Join(sets, "\x00")
	if s, ok := composed.Load(key); ok {
		return s.(set)
	}
	s := composeAnew(t, name, sets...)
	composed.Store(key, s)
	return s
}

// composed keeps the sets of the variants, which several tests look at.
var composed sync.Map

func composeAnew(t testing.TB, name string, sets ...string) set {
	t.Helper()
	src, _ := demo.File(name)
	s, problems := spec.Read(name, src, sets)
	if len(problems) > 0 {
		t.Fatalf("%s: %v", name, problems)
	}
	a, err := detail.Build(s)
	if err != nil {
		t.Fatal(err)
	}
	r, res := design.Check(a)
	o := sheet.Options{Version: "test"}
	p := sheet.Plan(a, &r, res, o)
	return set{a, r, p.Sheets(), p.Calculation()}
}

// variants are the demos and changes that move things about on the sheets.
func variants() map[string][]string {
	return map[string][]string{
		"deck": nil, "balcony": nil, "deck-metric": nil, "balcony-metric": nil,
		"deck, low": {"deck.below_floor=7in"}, "deck, equal": {"blocks.equal=yes"}, "deck, wide": {"blocks.width=14in"},
		"deck, spacer": {"blocks.spacer=1/2in"}, "deck, thin wall": {"wall.layers.4.thickness=1/2in", "wall.layers.5.thickness=1/2in"},
		"deck, thick wall": {"wall.layers.4.thickness=3in", "wall.layers.5.thickness=3in"}, "deck, one row": {"fasteners.through.rows=[4in]"},
		"deck, short": {"ledger.length=8ft", "doors=", "obstacles="}, "deck, long": {"ledger.length=30ft"},
		"balcony-metric, siding behind": {"wall.cladding.behind_ledger=yes"}, "deck, sawn": {"floor.joists.kind=sawn", "floor.joists.flange=1 1/2in"}, "deck, joists along": {"floor.joists.direction=parallel"},
		"deck, pad":           {"blocks.plies=[1 1/2in, 1 1/2in]", "blocks.pad.thickness=1in", "blocks.pad.strength=40psi", "blocks.pad.foot=yes"},
		"deck, revised":       {"project.revisions=[{mark: 1, date: 2026-11-03, by: A.B., text: BLOCKS WIDER AND ONE MORE OF THEM}, {mark: 2, date: 2026-11-09, by: C.D., text: GAP DEEPER}]"},
		"deck, hostile words": {`project.name=A <b>&"\{PENNANT\} %%u 100% HOUSE`, "project.element=" + strings.Repeat("LONG ELEMENT ", 14)},
	}
}

func eachSet(t *testing.T, f func(t *testing.T, s set)) {
	for name, sets := range variants() {
		if testing.Short() && name != "deck" && name != "balcony-metric" {
			continue // the race detector is slow, and the sheets are composed by one goroutine
		}
		t.Run(name, func(t *testing.T) {
			demo, _, _ := strings.Cut(name, ",")
			f(t, compose(t, demo, sets...))
		})
	}
}

// box is the room a line of lettering takes on paper.
func box(w render.Words) geom.Box {
	l := font.Width(w.Text, w.Height, w.Bold)
	x0 := -l * w.Side.Share()
	if w.Rot == 90 {
		return geom.BoxOf(w.At.Add(geom.Vec{X: -w.Height, Y: x0}), w.At.Add(geom.Vec{Y: x0 + l}))
	}
	return geom.BoxOf(w.At.Add(geom.Vec{X: x0}), w.At.Add(geom.Vec{X: x0 + l, Y: w.Height}))
}

// Hard layout rules L1, L3, L4: no text over another, none off the sheet, none under 2 mm.
func TestTextIsClear(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		for _, sh := range s.sheets {
			textIsClear(t, sh)
		}
	})
}

func textIsClear(t *testing.T, sh *render.Sheet) {
	t.Helper()
	frames, err := sh.Flatten()
	if err != nil {
		t.Fatal(err)
	}
	paper := geom.Box{Max: geom.Vec{X: sh.Size.W, Y: sh.Size.H}}
	var boxes []geom.Box
	var texts []string
	for _, f := range frames {
		for _, ink := range f.Ink {
			w, ok := ink.(render.Words)
			if !ok {
				continue
			}
			b := box(w)
			if w.Height < 2-1e-9 {
				t.Errorf("%s: %q is %.2f mm high", sh.ID, w.Text, w.Height)
			}
			if !paper.Holds(b.Min) || !paper.Holds(b.Max) {
				t.Errorf("%s: %q leaves the sheet", sh.ID, w.Text)
			}
			for i, o := range boxes {
				if in := o.Intersect(b); !in.Empty() && in.W()*in.H() > 0.04*math.Min(o.W()*o.H(), b.W()*b.H()) {
					t.Errorf("%s: %q lies over %q", sh.ID, w.Text, texts[i])
				}
			}
			boxes, texts = append(boxes, b), append(texts, w.Text)
		}
	}
}

// Hard layout rule L2: no line runs through a text (hatch included: textures leave text alone).
func TestNoLineThroughText(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		for _, sh := range s.sheets {
			noLineThroughText(t, sh)
		}
	})
}

func noLineThroughText(t *testing.T, sh *render.Sheet) {
	t.Helper()
	frames, err := sh.Flatten()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range frames {
		lineThroughText(t, sh.ID, f)
	}
}

func lineThroughText(t *testing.T, id string, f render.Frame) {
	t.Helper()
	var words []render.Words
	for _, ink := range f.Ink {
		if w, ok := ink.(render.Words); ok {
			words = append(words, w)
		}
	}
	for _, ink := range f.Ink {
		l, ok := ink.(render.Line)
		if !ok {
			continue
		}
		b := l.Path.Bounds()
		for _, w := range words {
			in := box(w).Grow(-0.15)
			if in.Empty() || !in.Overlaps(geom.Box{Min: b.Min.Sub(geom.Vec{X: 0.01, Y: 0.01}), Max: b.Max.Add(geom.Vec{X: 0.01, Y: 0.01})}) {
				continue
			}
			r := geom.Rect(in.Min.X, in.Min.Y, in.Max.X, in.Max.Y)
			for _, p := range geom.ClipPath(l.Path, r, true) {
				if p.Length() > 0.05 {
					t.Errorf("%s: a line on %s runs through %q", id, l.Pen.Def().Layer, w.Text)
					break
				}
			}
		}
	}
}

// Hard layout rules L8 and L12: the printed scale is the drawn one, and views stand 12 mm apart.
func TestViewsAndScales(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		for _, sh := range s.sheets {
			var boxes []geom.Box
			for _, v := range sh.Views {
				b := geom.Box{Min: v.Window.Min.Mul(1 / v.Scale.K).Add(v.At), Max: v.Window.Max.Mul(1 / v.Scale.K).Add(v.At)}
				for _, o := range boxes {
					if o.Grow(5.9).Overlaps(b.Grow(4)) {
						t.Errorf("%s: view %s stands too near another", sh.ID, v.ID)
					}
				}
				boxes = append(boxes, b)
				if v.Origin == "" || v.Scale.Text == "" {
					t.Errorf("%s: view %s has no stated origin or scale", sh.ID, v.ID)
				}
				found := false
				for _, it := range v.Items {
					if tx, ok := it.(render.Text); ok && strings.Contains(strings.Join(tx.Lines, " "), v.Scale.Text) {
						found = true
					}
				}
				if !found {
					t.Errorf("%s: view %s does not print its scale %s", sh.ID, v.ID, v.Scale.Text)
				}
			}
		}
	})
}

// Hard layout rule L7: every chain of dimensions sums to its overall as printed. Chains on one line
// are neighbours end to end; their printed values must add up to the value printed for the whole.
func TestChainsAddUp(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		for _, sh := range s.sheets {
			for _, v := range sh.Views {
				chainsAddUp(t, sh, v)
			}
		}
	})
}

func chainsAddUp(t *testing.T, sh *render.Sheet, v render.View) {
	t.Helper()
	stepMM := 25.4 / 16
	if sh.Unit == render.Millimetre {
		stepMM = 0.5
	}
	n := 0
	for _, it := range v.Items {
		d, ok := it.(render.Dim)
		if ok {
			n++
		}
		if !ok || d.Kind != render.Linear {
			continue
		}
		printed := math.Round(d.Value()/stepMM) * stepMM
		if math.Abs(printed-d.Value()) > 1e-6 {
			t.Errorf("%s/%s: a dimension measures %.5f mm but prints %.5f mm: a chain of such cannot add up", sh.ID, v.ID, d.Value(), printed)
		}
	}
	if bare := regexp.MustCompile(`^(S-501|S-502.*|S-701.*|S-702.*|G-001-.*|G-003.*)$`); n == 0 && v.Scale.Text != "NOT TO SCALE" && !bare.MatchString(sh.ID) {
		t.Errorf("%s/%s has no dimension", sh.ID, v.ID)
	}
}

// The sheets, the schedule and the report quote one assembly.
func TestSheetsAgree(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		bolts, blocks := s.a.Count(detail.Bolt), len(s.a.Blocks)
		find := func(id, re string) []string {
			for _, sh := range s.sheets {
				if sh.ID == id {
					return regexp.MustCompile(re).FindStringSubmatch(text(t, sh))
				}
			}
			return nil
		}
		if blocks == 0 {
			return
		}
		if m := find("A-201", `COUNT: (\d+) BLOCKS; HEX\s(?s:.*?: )(\d+);`); len(m) != 3 || m[1] != fmt.Sprint(blocks) || m[2] != fmt.Sprint(bolts) {
			t.Errorf("A-201 counts %v, the assembly has %d blocks and %d bolts", m, blocks, bolts)
		}
		if m := find("G-001", `BT1\nHEX BOLT [^:]*:\s(\d+);`); len(m) != 2 || m[1] != fmt.Sprint(bolts) {
			t.Errorf("G-001 counts %v fasteners, the assembly has %d", m, bolts)
		}
		if m := find("S-501", `HEX BOLT\n.*\n(\d+)\n`); len(m) != 2 || m[1] != fmt.Sprint(bolts) {
			t.Errorf("S-501 counts %v bolts, the assembly has %d", m, bolts)
		}
		if m := find("S-501", `BLOCK B1 TO B(\d+), (\d+) REQUIRED`); len(m) != 3 || m[2] != fmt.Sprint(blocks) {
			t.Errorf("S-501 counts %v blocks, the assembly has %d", m, blocks)
		}
		for _, sh := range s.sheets {
			all := text(t, sh)
			for _, want := range []string{s.a.Spec.Hash(), "NOT FOR CONSTRUCTION UNTIL", "LIFE-SAFETY CONNECTION", fmt.Sprintf("CHECKS: %d FAIL", s.report.Count(check.Fails))} {
				if !strings.Contains(strings.ReplaceAll(all, "\n", " "), want) {
					t.Errorf("%s does not say %q", sh.ID, want)
				}
			}
			if fails := s.report.Count(check.Fails) > 0; fails != strings.Contains(all, "DO NOT BUILD") {
				t.Errorf("%s: DO NOT BUILD is there: %v; checks fail: %v", sh.ID, !fails, fails)
			}
		}
	})
}

// text is all lettering of a sheet, a line each.
func text(t *testing.T, sh *render.Sheet) string {
	t.Helper()
	frames, err := sh.Flatten()
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	for _, f := range frames {
		for _, ink := range f.Ink {
			if w, ok := ink.(render.Words); ok {
				b.WriteString(w.Text + "\n")
			}
		}
	}
	return b.String()
}

// Every dimension of the section is one between faces of parts: the stand-off that is printed is the
// distance between the sheathing and the ledger as cut.
func TestSectionMeasuresParts(t *testing.T) {
	s := compose(t, "deck")
	ledger, sheathing := s.a.Find(detail.Ledger)[0].Bounds(), s.a.Find(detail.Sheathing)[0].Bounds()
	want := ledger.Min.Y - sheathing.Max.Y
	for _, sh := range s.sheets {
		if sh.ID != "A-301" {
			continue
		}
		for _, it := range sh.Views[0].Items {
			if d, ok := it.(render.Dim); ok && d.Text == "STAND-OFF <>" {
				if math.Abs(d.Value()-want) > 1e-6 {
					t.Errorf("stand-off dimension measures %.4f mm, the parts are %.4f mm apart", d.Value(), want)
				}
				return
			}
		}
	}
	t.Error("the section has no stand-off dimension")
}

// Sheets are drawn at the same time; which is done first must not show.
func TestSameSheetsOnAnyNumberOfThreads(t *testing.T) {
	b := composeAnew(t, "deck")
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	a := composeAnew(t, "deck")
	for i := range a.sheets {
		if text(t, a.sheets[i]) != text(t, b.sheets[i]) || len(a.sheets[i].Items) != len(b.sheets[i].Items) {
			t.Errorf("%s differs", a.sheets[i].ID)
		}
	}
}

func BenchmarkCompose(b *testing.B) {
	for b.Loop() {
		composeAnew(b, "deck")
	}
}

// One sheet as the preview draws it: the set counted, the sheet composed.
func BenchmarkPage(b *testing.B) {
	a := composeAnew(b, "deck").a
	r, res := design.Check(a)
	for _, id := range []string{"A-101", "A-201", "A-301"} {
		b.Run(id, func(b *testing.B) {
			for b.Loop() {
				if sheet.Plan(a, &r, res, sheet.Options{}).Page(id) == nil {
					b.Fatal("no such sheet")
				}
			}
		})
	}
}

// A bolt is named as it is bought, whatever the drawing measures in: 5/8 in (15.875 mm) is no M16, and no M15.9.
func TestBoltsAreNamedAsBought(t *testing.T) {
	for _, tt := range []struct{ demo, diameter, hole, want string }{
		{"deck-metric", "5/8in", "11/16in", `HEX BOLT 5/8" x `}, {"deck", "M16", "17.5mm", "HEX BOLT M16 x "},
	} {
		for _, sh := range compose(t, tt.demo, "fasteners.through.diameter="+tt.diameter, "fasteners.through.hole="+tt.hole).sheets {
			if got := strings.ReplaceAll(text(t, sh), "\n", " "); sh.ID == "A-301" && !strings.Contains(got, tt.want) {
				t.Errorf("%s with %s: %q is not on A-301:\n%s", tt.demo, tt.diameter, tt.want, got)
			}
		}
	}
}
