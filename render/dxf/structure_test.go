package dxf

import (
	"bytes"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"standclear/render"
)

// both runs a test on the samples of either unit, read from disk.
func both(t *testing.T, fn func(t *testing.T, f file)) {
	for _, path := range writeSamples(t) {
		t.Run(path[strings.LastIndex(path, "/")+1:], func(t *testing.T) {
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			f, err := parse(data)
			if err != nil {
				t.Fatal(err)
			}
			fn(t, f)
		})
	}
}

func TestSectionsAndTablesStandInOrder(t *testing.T) {
	both(t, func(t *testing.T, f file) {
		var sections, tables []string
		for _, r := range f.records {
			switch r.kind {
			case "SECTION":
				sections = append(sections, r.get(2))
			case "TABLE":
				tables = append(tables, r.get(2))
				if n := len(f.kind(r.get(2), "TABLES")); r.get(70) != strconv.Itoa(n) {
					t.Errorf("table %s says %s entries, has %d", r.get(2), r.get(70), n)
				}
			}
		}
		if want := "HEADER CLASSES TABLES BLOCKS ENTITIES OBJECTS"; strings.Join(sections, " ") != want {
			t.Errorf("sections %v, want %s", sections, want)
		}
		if !slices.Equal(tables, tableNames) {
			t.Errorf("tables %v", tables)
		}
		if last := f.records[len(f.records)-1]; last.kind != "EOF" || len(last.tags) > 0 {
			t.Errorf("the file ends with %v", last)
		}
	})
}

func TestHandlesAreUniqueAndPointersLead(t *testing.T) {
	none := []string{"SECTION", "ENDSEC", "ENDTAB", "CLASS", "EOF"}
	both(t, func(t *testing.T, f file) {
		seen, top := map[string]bool{"0": true}, int64(0)
		for _, r := range f.records {
			if slices.Contains(none, r.kind) {
				continue
			}
			h := r.handle()
			v, err := strconv.ParseInt(h, 16, 64)
			if err != nil || seen[h] || h != strings.ToUpper(h) {
				t.Fatalf("%s: handle %q is bad or used twice", r.kind, h)
			}
			seen[h], top = true, max(top, v)
		}
		if seed, _ := strconv.ParseInt(f.header["$HANDSEED"][0].value, 16, 64); seed <= top {
			t.Errorf("$HANDSEED %X is not above %X", seed, top)
		}
		for _, r := range f.records {
			for _, g := range r.tags {
				if g.code >= 330 && g.code <= 369 || g.code == 390 {
					if !seen[g.value] {
						t.Errorf("%s %s: %d leads to %s, which is nothing", r.kind, r.handle(), g.code, g.value)
					}
				}
			}
		}
	})
}

func TestOwners(t *testing.T) {
	both(t, func(t *testing.T, f file) {
		record := map[string]string{} // BLOCK_RECORD by name
		for _, r := range f.kind("BLOCK_RECORD", "TABLES") {
			record[r.get(2)] = r.handle()
		}
		owner, table, insert := "", "", ""
		for _, r := range f.records {
			want := ""
			switch {
			case r.kind == "TABLE":
				table, want = r.handle(), "0"
			case r.section == "TABLES" && r.handle() != "":
				want = table
			case r.kind == "BLOCK":
				owner = record[r.get(2)]
				want = owner
			case r.kind == "ATTRIB" || r.kind == "SEQEND":
				want = insert
			case r.section == "BLOCKS" && r.handle() != "":
				want = owner
			case r.section == "ENTITIES" && r.handle() != "":
				want = record["*Model_Space"]
				if r.get(67) == "1" {
					want = record["*Paper_Space"]
				}
			case r.section == "OBJECTS" && r.handle() != "":
				if r.owner() == "" {
					t.Errorf("%s %s has no owner", r.kind, r.handle())
				}
				continue
			default:
				continue
			}
			if r.kind == "INSERT" {
				insert = r.handle()
			}
			if r.owner() != want {
				t.Errorf("%s %s: owner %s, want %s", r.kind, r.handle(), r.owner(), want)
			}
		}
	})
}

func TestSubclassMarkers(t *testing.T) {
	want := map[string]string{
		"LINE": "AcDbLine", "CIRCLE": "AcDbCircle", "ARC": "AcDbCircle AcDbArc", "LWPOLYLINE": "AcDbPolyline", "POINT": "AcDbPoint",
		"TEXT": "AcDbText AcDbText", "MTEXT": "AcDbMText", "HATCH": "AcDbHatch", "INSERT": "AcDbBlockReference", "LEADER": "AcDbLeader",
		"ATTRIB": "AcDbText AcDbAttribute", "ATTDEF": "AcDbText AcDbAttributeDefinition", "SEQEND": "", "VIEWPORT": "AcDbViewport",
		"BLOCK": "AcDbBlockBegin", "ENDBLK": "AcDbBlockEnd",
	}
	both(t, func(t *testing.T, f file) {
		met := map[string]bool{}
		for _, r := range f.records {
			w, ok := want[r.kind]
			if !ok {
				continue
			}
			met[r.kind] = true
			if got := strings.Join(r.all(100), " "); got != strings.TrimSpace("AcDbEntity "+w) {
				t.Errorf("%s %s: markers %s", r.kind, r.handle(), got)
			}
		}
		if len(met) != len(want) {
			t.Errorf("the sample holds only %v", met)
		}
	})
}

func TestTablesHoldWhatIsUsedAndNoMore(t *testing.T) {
	both(t, func(t *testing.T, f file) {
		used := map[string]bool{"LAYER 0": true, "LAYER Defpoints": true, "STYLE Standard": true, "DIMSTYLE Standard": true,
			"LTYPE ByBlock": true, "LTYPE ByLayer": true, "LTYPE Continuous": true}
		for _, r := range f.records {
			switch {
			case r.section != "BLOCKS" && r.section != "ENTITIES" || r.kind == "BLOCK" || r.kind == "ENDBLK":
				continue
			case r.kind == "DIMENSION" || r.kind == "LEADER":
				used["DIMSTYLE "+r.get(3)] = true
			case r.get(7) != "":
				used["STYLE "+r.get(7)] = true
			}
			if l := r.get(8); l != "" {
				used["LAYER "+l] = true
			}
		}
		for _, r := range f.kind("LAYER", "TABLES") {
			used["LTYPE "+r.get(6)] = true
		}
		defined := map[string]bool{}
		for _, table := range []string{"LAYER", "STYLE", "DIMSTYLE", "LTYPE"} {
			for _, r := range f.kind(table, "TABLES") {
				defined[table+" "+r.get(2)] = true
			}
		}
		if fmt.Sprint(used) != fmt.Sprint(defined) {
			t.Errorf("used    %v\ndefined %v", used, defined)
		}
	})
}

func TestNamesOfDroppedThingsAreNotDefined(t *testing.T) {
	s := view(render.Millimetre, 1, stroke(render.Hidden, xy(0, 0), xy(9, 0)), stroke(render.Cut, xy(9, 0), xy(0, 0)))
	for _, r := range write(t, s).kind("LAYER", "TABLES") {
		if r.get(2) == s.Layer(render.Hidden) {
			t.Error("the layer of a line that lies under another is defined")
		}
	}
}

func TestUnitsOfTheHeader(t *testing.T) {
	for _, c := range []struct {
		unit                              render.Unit
		insunits, measurement, lunits, th string
	}{
		// text height: 3/32 in x 4; 2.5 mm x 5
		{render.Inch, "1", "0", "4", "0.375"},
		{render.Millimetre, "4", "1", "2", "12.5"},
	} {
		f := write(t, sample(c.unit))
		got := []string{f.header["$INSUNITS"][0].value, f.header["$MEASUREMENT"][0].value, f.header["$LUNITS"][0].value, f.header["$TEXTSIZE"][0].value}
		if want := []string{c.insunits, c.measurement, c.lunits, c.th}; !slices.Equal(got, want) {
			t.Errorf("unit %d: %v, want %v", c.unit, got, want)
		}
		for _, r := range f.kind("BLOCK_RECORD", "TABLES") {
			if r.get(70) != c.insunits {
				t.Errorf("block %s has unit %s", r.get(2), r.get(70))
			}
		}
	}
}

func TestSameSheetSameBytes(t *testing.T) {
	var first []byte
	for range 5 {
		var b bytes.Buffer
		if err := Write(&b, sample(render.Inch), Options{}); err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = b.Bytes()
		}
		if !bytes.Equal(first, b.Bytes()) {
			t.Fatal("two runs differ")
		}
	}
}

func TestEverythingIsByLayerAndNothingOnLayer0InModelSpace(t *testing.T) {
	both(t, func(t *testing.T, f file) {
		for _, r := range f.kind("BLOCK", "") {
			if r.get(8) != "0" {
				t.Errorf("block %s on layer %s", r.get(2), r.get(8))
			}
		}
		for _, r := range f.records {
			if r.section != "ENTITIES" || r.handle() == "" {
				continue
			}
			if r.get(8) == "0" && r.get(67) != "1" {
				t.Errorf("%s %s on layer 0", r.kind, r.handle())
			}
			for _, code := range []int{6, 62, 370, 420} {
				if r.get(code) != "" {
					t.Errorf("%s %s has its own look: %d = %s", r.kind, r.handle(), code, r.get(code))
				}
			}
		}
	})
}
