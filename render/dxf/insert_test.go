package dxf

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"standclear/geom"
	"standclear/render"
)

// blockOf returns the entities in a block.
func blockOf(f file, name string) []record {
	var out []record
	in := false
	for _, r := range f.records {
		switch {
		case r.kind == "BLOCK":
			in = r.get(2) == name
		case in && r.kind != "ENDBLK" && r.section == "BLOCKS" && r.handle() != "":
			out = append(out, r)
		}
	}
	return out
}

func TestSymbolIsABlockAndItsInserts(t *testing.T) {
	in := render.Insert{Pen: render.Mark, Symbol: bubble(), At: xy(30, 40), Scale: 5, Fields: []render.Field{{Name: "NO", Value: "7"}}}
	f := draw(t, in)
	r := f.one(t, "INSERT")
	if r.get(2) != "SC-BUBBLE" || r.point(t, 10) != xy(30, 40) || r.get(41) != "5.0" || r.get(42) != "5.0" || r.get(43) != "5.0" || r.get(66) != "1" {
		t.Errorf("insert %v", r.tags)
	}
	var defs, values []string
	for _, d := range blockOf(f, "SC-BUBBLE") {
		if d.kind == "ATTDEF" {
			defs = append(defs, d.get(2)+"="+d.get(1)+" "+d.get(3))
		}
	}
	attributes := f.kind("ATTRIB", "ENTITIES")
	for _, a := range attributes {
		values = append(values, a.get(2)+"="+a.get(1))
	}
	if !slices.Equal(defs, []string{"NO=? no", "SCALE=FULL SIZE scale"}) || !slices.Equal(values, []string{"NO=7", "SCALE=FULL SIZE"}) {
		t.Errorf("definitions %v, values %v", defs, values)
	}
	// the scale stands at (10, -2) in the symbol, 2.5 high, five times as large from (30, 40)
	if a := attributes[1]; a.point(t, 11) != xy(80, 30) || a.get(40) != "12.5" || a.get(74) != "3" {
		t.Errorf("attribute %v", a.tags)
	}
}

func TestBlocksAreWrittenOnceAndInnerOnesFirst(t *testing.T) {
	inner := &render.Symbol{Name: "SC-IN", Items: []render.Item{stroke(render.Mark, xy(0, 0), xy(1, 0))}}
	outer := &render.Symbol{Name: "SC-OUT", Items: []render.Item{render.Insert{Pen: render.Mark, Symbol: inner, At: xy(3, 3)}}}
	same := *outer // another value with the same content is the same symbol
	f := draw(t, render.Insert{Pen: render.Mark, Symbol: outer}, render.Insert{Pen: render.Mark, Symbol: &same, At: xy(9, 9)})
	var names []string
	for _, r := range f.kind("BLOCK", "BLOCKS") {
		names = append(names, r.get(2))
	}
	if got := strings.Join(names, " "); got != "*Model_Space *Paper_Space SC-IN SC-OUT" {
		t.Errorf("blocks %s", got)
	}
	if rs := f.kind("INSERT", "ENTITIES"); len(rs) != 2 || rs[0].get(66) != "" {
		t.Error("not two inserts without attributes")
	}
}

// In a symbol that always comes on one pen, lines of that pen stand on layer 0 and follow the insert.
func TestLayersInASymbol(t *testing.T) {
	layers := func(items ...render.Item) []string {
		var out []string
		for _, r := range blockOf(draw(t, items...), "SC-BUBBLE") {
			out = append(out, r.get(8))
		}
		return out
	}
	on := func(p render.Pen, x float64) render.Insert {
		return render.Insert{Pen: p, Symbol: bubble(), At: xy(x, 0)}
	}
	if got := layers(on(render.Mark, 0)); !slices.Equal(got, []string{"0", "A-ANNO-TITL", "0", "A-ANNO-NOTE"}) {
		t.Errorf("on one pen %v", got)
	}
	if got := layers(on(render.Mark, 0), on(render.Note, 50)); !slices.Equal(got, []string{"A-ANNO-SYMB", "A-ANNO-TITL", "A-ANNO-SYMB", "A-ANNO-NOTE"}) {
		t.Errorf("on two pens %v", got)
	}
}

// hex returns the handle of a record as a number: it grows in the order of drawing.
func hex(t *testing.T, r record) int64 {
	t.Helper()
	v, err := strconv.ParseInt(r.handle(), 16, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestLeader(t *testing.T) {
	pts := []geom.Vec{xy(1, 1), xy(20, 20), xy(25, 20)}
	for end, want := range map[render.LeaderEnd][2]string{render.Arrow: {"1", ""}, render.Dot: {"0", "dot"}, render.NoEnd: {"0", ""}} {
		f := draw(t, render.Leader{Pen: render.Note, Points: pts, End: end}, stroke(render.Cut, xy(0, 0), xy(9, 0)))
		r := f.one(t, "LEADER")
		if r.get(71) != want[0] || r.get(73) != "3" || r.get(76) != "3" || r.point(t, 10) != pts[0] || r.get(3) != "SC-DIM-MM-1" || r.get(340) != "" {
			t.Errorf("end %d: %v", end, r.tags)
		}
		if got := r.all(10); !slices.Equal(got, []string{"1.0", "20.0", "25.0"}) {
			t.Errorf("end %d: points %v", end, got)
		}
		for _, h := range f.kind("HATCH", "ENTITIES") {
			if hex(t, h) < hex(t, f.one(t, "LINE")) {
				t.Errorf("end %d: the dot lies under what it points at", end)
			}
		}
		if n := len(f.kind("HATCH", "ENTITIES")); (n == 1) != (want[1] == "dot") {
			t.Errorf("end %d: %d dots", end, n)
		}
	}
}
