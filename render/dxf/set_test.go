package dxf

import (
	"bytes"
	"math"
	"slices"
	"strings"
	"testing"

	"standclear/geom"
	"standclear/render"
)

// sampleSet returns three sheets of two disciplines, the second without views.
func sampleSet(u render.Unit) []*render.Sheet {
	a, g, s := sample(u), sample(u), sample(u)
	g.ID, g.Views = "G-001", nil
	s.ID = "S-501"
	return []*render.Sheet{a, g, s}
}

func writeSet(t *testing.T, o Options, sheets ...*render.Sheet) file {
	t.Helper()
	var b bytes.Buffer
	if err := WriteSet(&b, sheets, o); err != nil {
		t.Fatal(err)
	}
	f, err := parse(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// paper returns the entities of a layout, by the handle of its block record.
func (f file) paper(owner string) []record {
	var out []record
	for _, r := range f.records {
		if r.get(67) == "1" && r.owner() == owner && r.kind != "BLOCK" && r.kind != "ENDBLK" {
			out = append(out, r)
		}
	}
	return out
}

// Only the first layout stands among the entities, the others in their blocks; each has its sheet's paper, its own
// count of viewports and its title block.
func TestSetHasALayoutForEachSheet(t *testing.T) {
	f := writeSet(t, Options{}, sampleSet(render.Inch)...)
	blocks := map[string]string{} // name by handle of the record
	for _, r := range f.kind("BLOCK_RECORD", "TABLES") {
		blocks[r.handle()] = r.get(2)
	}
	var names, spaces, tabs []string
	for _, l := range f.kind("LAYOUT", "OBJECTS") {
		n := l.all(1)
		names, tabs = append(names, n[len(n)-1]), append(tabs, l.all(71)[0])
		space := l.all(330)[1]
		spaces = append(spaces, blocks[space])
		if blocks[space] == "*Model_Space" {
			continue
		}
		var ids, titles []string
		for _, e := range f.paper(space) {
			if want := map[bool]string{true: "ENTITIES", false: "BLOCKS"}[blocks[space] == "*Paper_Space"]; e.section != want {
				t.Fatalf("%s of %s stands among the %s", e.kind, blocks[space], e.section)
			}
			switch e.kind {
			case "VIEWPORT":
				ids = append(ids, e.get(69))
			case "INSERT":
				titles = append(titles, e.get(2))
			}
		}
		want := []string{"1", "2", "3"}
		if blocks[space] == "*Paper_Space0" {
			want = want[:1]
		}
		if !slices.Equal(ids, want) || len(titles) != 1 || !strings.HasPrefix(titles[0], "SC-TITLE") {
			t.Errorf("%s: viewports %v, inserts %v", blocks[space], ids, titles)
		}
	}
	if got := strings.Join(names, " ") + " / " + strings.Join(spaces, " ") + " / " + strings.Join(tabs, " "); got != "Model A-301 G-001 S-501 / *Model_Space *Paper_Space *Paper_Space0 *Paper_Space1 / 0 1 2 3" {
		t.Error(got)
	}
}

// The views of the third sheet stand under those of the first by whole steps, 10 ft being 120 in, and no viewport
// sees what another sees. What each draws is what the sheet alone draws.
func TestViewsOfASetStandApartAndOnce(t *testing.T) {
	for u, step := range map[render.Unit]float64{render.Inch: 120, render.Millimetre: 3000} {
		sheets := sampleSet(u)
		f := writeSet(t, Options{}, sheets...)
		alone := write(t, sheets[0])
		n := len(slices.DeleteFunc(f.kind("LWPOLYLINE", "ENTITIES"), func(r record) bool { return r.get(67) == "1" }))
		one := len(slices.DeleteFunc(alone.kind("LWPOLYLINE", "ENTITIES"), func(r record) bool { return r.get(67) == "1" }))
		if n != 2*one || n == 0 {
			t.Errorf("%d outlines in a set of two, %d in one", n, one)
		}
		var seen []geom.Box
		for _, p := range f.kind("VIEWPORT", "") {
			if p.get(69) == "1" {
				continue
			}
			half := geom.Vec{X: p.num(t, 40) / p.num(t, 41) * p.num(t, 45) / 2, Y: p.num(t, 45) / 2}
			c := p.point(t, 12)
			seen = append(seen, geom.BoxOf(c.Sub(half), c.Add(half)))
		}
		if len(seen) != 4 {
			t.Fatalf("%d viewports", len(seen))
		}
		down := seen[2].Center().Sub(seen[0].Center()) // blocks stand before the entities of the first
		if down.X != 0 || down.Y <= 0 || math.Abs(math.Remainder(down.Y, step)) > 1e-6 {
			t.Errorf("the second row stands %v from the first", down)
		}
		for i, a := range seen {
			for _, b := range seen[:i] {
				if a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y {
					t.Errorf("two viewports see %v", a)
				}
			}
		}
	}
}

// The title block of the samples takes layers of its own, so each discipline has one; a level that is all on the
// pen of its insert is there once.
func TestBlocksOfASet(t *testing.T) {
	level := &render.Symbol{Name: "SC-LEVEL", Items: []render.Item{stroke(render.Mark, xy(0, 0), xy(1, 0))}}
	sheets := sampleSet(render.Millimetre)
	for _, s := range sheets {
		s.Items = append(s.Items, render.Insert{Pen: render.Mark, Symbol: level, At: xy(40, 40)})
	}
	f := writeSet(t, Options{}, sheets...)
	var names []string
	for _, r := range f.kind("BLOCK", "BLOCKS") {
		if n := r.get(2); !strings.HasPrefix(n, "*") {
			names = append(names, n)
		}
	}
	slices.Sort(names)
	if got := strings.Join(names, " "); got != "SC-BUBBLE-A SC-BUBBLE-S SC-LEVEL SC-TITLE-A SC-TITLE-G SC-TITLE-S" {
		t.Errorf("blocks %s", got)
	}
	for _, r := range blockOf(f, "SC-TITLE-S") {
		if l := r.get(8); l != "0" && !strings.HasPrefix(l, "S-") {
			t.Errorf("the title block of S sheets holds layer %s", l)
		}
	}
}

func TestRefusedSets(t *testing.T) {
	other, twin := sample(render.Millimetre), sample(render.Inch)
	twin.ID = "a-301"
	for want, sheets := range map[string][]*render.Sheet{
		"no sheet":                  nil,
		"another unit":              {sample(render.Inch), other},
		"two sheets have the name":  {sample(render.Inch), twin},
		"neither inch nor":          {{ID: "A-1", Unit: 9}},
		"dxf: sheet G-001: size 0 ": {sample(render.Inch), {ID: "G-001"}},
	} {
		var b bytes.Buffer
		if err := WriteSet(&b, sheets, Options{}); err == nil || !strings.Contains(err.Error(), want) || b.Len() > 0 {
			t.Errorf("%v after %d bytes, want %q", err, b.Len(), want)
		}
	}
}

// The second view of the sample stands 120 units to the right on its sheet; in its own file it begins at (0, 0).
// What the file should remember stands on the title of the first, in model space.
func TestViewOnItsOwn(t *testing.T) {
	s := sample(render.Millimetre)
	s.Views[0].Origin = "face of sheathing x finished floor"
	read := func(n int) file {
		var b bytes.Buffer
		if err := WriteView(&b, s, n, Options{}); err != nil {
			t.Fatal(err)
		}
		f, err := parse(b.Bytes())
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	f := read(1)
	if p := f.one(t, "LWPOLYLINE").point(t, 10); p != xy(0, 0) {
		t.Errorf("the view begins at %v", p)
	}
	if p := f.header["$INSBASE"]; p[0].value != "0.0" || p[1].value != "0.0" {
		t.Errorf("insertion base %v", p)
	}
	ls := f.kind("LAYOUT", "OBJECTS")
	if n := ls[1].all(1); len(ls) != 2 || n[len(n)-1] != "A-301-2" {
		t.Errorf("layouts %v", ls)
	}
	var on []string
	for _, r := range read(0).kind("TEXT", "ENTITIES") {
		if r.get(67) == "" && r.get(1001) == appName {
			on = append(on, r.all(1000)...)
		}
	}
	if got := strings.Join(on, "|"); got != "project=REAR DECK|hash=0123abcd|view=1|insertion point=face of sheathing x finished floor" {
		t.Errorf("the title remembers %s", got)
	}
	if s.Views[1].Place == xy(0, 0) || len(s.Items) == 0 || len(s.Props) != 2 {
		t.Error("the sheet was changed")
	}
	for _, n := range []int{-1, 2} {
		if err := WriteView(&bytes.Buffer{}, s, n, Options{}); err == nil {
			t.Errorf("view %d was written", n)
		}
	}
}

// A map changes names, colours, weights and line types of layers and nothing else.
func TestLayersOfAnOffice(t *testing.T) {
	l := render.OwnLayers()
	l[render.Cut] = render.Layer{Name: "WALL " + render.DisciplineMark, Index: 2, Weight: 35, Type: render.LineType{Name: "OFFICE", Text: "OFFICE __ __", Dashes: []float64{3, -1.5}}}
	l[render.Visible] = l[render.Cut]
	l[render.Note].NoPlot = true
	s := sample(render.Millimetre)
	own, f := write(t, s), writeSet(t, Options{Layers: &l}, s)
	look := map[string]string{}
	for _, r := range f.kind("LAYER", "TABLES") {
		look[r.get(2)] = strings.Join([]string{r.get(62), r.get(370), r.get(6), r.get(290)}, " ")
	}
	if look["WALL A"] != "2 35 OFFICE " || look["A-ANNO-NOTE"] != "7 25 Continuous 0" || look["A-DETL-MCUT"] != "" || look["A-DETL-MBND"] != "" {
		t.Errorf("layers %v", look)
	}
	dashes := []string{}
	for _, r := range f.kind("LTYPE", "TABLES") {
		if r.get(2) == "OFFICE" {
			dashes = r.all(49)
		}
	}
	if !slices.Equal(dashes, []string{"3.0", "-1.5"}) {
		t.Errorf("dashes %v", dashes)
	}
	count := func(f file, kind string) int { return len(f.kind(kind, "ENTITIES")) }
	for _, kind := range []string{"LINE", "LWPOLYLINE", "ARC", "HATCH", "DIMENSION", "TEXT", "INSERT"} {
		if count(own, kind) != count(f, kind) {
			t.Errorf("%d %s, %d with the map", count(own, kind), kind, count(f, kind))
		}
	}
	if n := len(slices.DeleteFunc(f.kind("LWPOLYLINE", "ENTITIES"), func(r record) bool { return r.get(8) != "WALL A" })); n == 0 {
		t.Error("nothing on the office's layer")
	}
}

// A value may be lettered smaller than its field; an empty one stays a field.
func TestHeightOfAField(t *testing.T) {
	in := render.Insert{Pen: render.Mark, Symbol: bubble(), Scale: 2, Fields: []render.Field{{Name: "no", Value: "12", Height: 3}, {Name: "scale", Value: ""}}}
	as := draw(t, in).kind("ATTRIB", "ENTITIES")
	if len(as) != 2 || as[0].get(40) != "6.0" || as[0].get(1) != "12" || as[1].get(40) != "5.0" || as[1].get(1) != "" {
		t.Errorf("attributes %v", as)
	}
}
