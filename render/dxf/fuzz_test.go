package dxf

import (
	"bytes"
	"strings"
	"testing"
	"unicode"

	"standclear/geom"
	"standclear/render"
)

// hostile returns a sheet with the text in every place that takes one.
func hostile(s string) *render.Sheet {
	symbol := &render.Symbol{Name: "SC-" + s, Items: []render.Item{
		stroke(render.Mark, xy(0, 0), xy(1, 0)),
		render.Text{Pen: render.Mark, Height: 2, Align: render.BottomLeft, Lines: []string{s}, Attr: "F" + s},
	}}
	pattern := &render.HatchPattern{Name: "SC-" + s, Lines: []render.PatternLine{{Spacing: 1}}}
	around := strings.NewReplacer("<", "", ">", "").Replace(s)
	sheet := view(render.Inch, 4,
		note(s),
		note(s, "//", s),
		render.Fill{Pen: render.Pattern, Region: geom.Rect(0, 0, 9, 9), Pattern: pattern},
		render.Stroke{Pen: render.Cut, Path: geom.Rect(0, 0, 9, 9)[0], Tag: &render.Tag{Mark: s, Material: s}},
		render.Insert{Pen: render.Mark, Symbol: symbol, Fields: []render.Field{{Name: "F" + s, Value: s}}},
		render.Dim{Pen: render.Dimension, P: xy(0, 0), Q: xy(9, 0), Line: xy(0, 20), Text: around + "<>"},
	)
	sheet.ID, sheet.Title, sheet.Size.Name = s, s, s
	sheet.Props = [][2]string{{"project", s}}
	return sheet
}

// Whatever a user types, the file stays a file and shows what was typed.
func FuzzText(f *testing.F) {
	for _, s := range []string{
		"2x10 LEDGER", "", " ", "%%", "%%%d", "50%%\u00b0", `a\b{c}d`, `\U+00B0`, `\\U+00B0`, "^J^M^ ^", "a\nb\r\nc\x00\x1b\x7f", "\u00d8\u2300\u00b0\u00b1",
		strings.Repeat("x", 300), strings.Repeat("\u6f22\\", 200), "\xff\xfe", "\u2028\u2029\u0085\ufeff", "  0\nSECTION", "<>", "*Model_Space", "{\\fArial;x}",
	} {
		f.Add(s)
	}
	known := kinds(f)
	f.Fuzz(func(t *testing.T, s string) {
		sheet := hostile(s)
		var b bytes.Buffer
		if err := Write(&b, sheet, Options{}); err != nil {
			if len(plain(s)) <= maxString && len(words(s)) <= maxString-2 || !strings.Contains(err.Error(), "bytes") {
				t.Fatal(err)
			}
			return // too long for a title block or a dimension, and said so
		}
		got, err := parse(b.Bytes())
		if err != nil {
			t.Fatal(err)
		}
		onlyKnown(t, got, known)
		want := bare(s)
		for _, r := range got.kind("MTEXT", "ENTITIES") {
			if text := bare(readParagraph(strings.Join(append(r.all(3), r.get(1)), ""))); text != want+"//"+want && (text != want || len(plain(s)) <= chunk) {
				t.Errorf("paragraph reads %q, typed %q", text, want)
			}
		}
		for _, r := range append(got.kind("TEXT", "ENTITIES"), got.kind("ATTRIB", "ENTITIES")...) {
			if text := bare(readSigns(r.get(1))); text != want {
				t.Errorf("%s reads %q, typed %q", r.kind, text, want)
			}
		}
		for _, r := range got.kind("DIMENSION", "ENTITIES") {
			typed := bare(strings.NewReplacer("<", "", ">", "").Replace(s))
			if text := bare(readParagraph(r.get(1))); text != typed+"<>" && text+typed != "" {
				t.Errorf("dimension reads %q, typed %q", text, typed)
			}
		}
		kept := map[string]string{} // on a part
		for _, r := range got.kind("LWPOLYLINE", "ENTITIES") {
			for _, fact := range r.all(1000) {
				if key, v, ok := strings.Cut(fact, "="); ok && kept[key] == "" {
					kept[key] = v
				}
			}
		}
		for _, key := range []string{"mark", "material"} {
			if v := bare(strings.ReplaceAll(kept[key], "^ ", "^")); len(s) < 100 && v != want {
				t.Errorf("%s is kept as %q, typed %q", key, v, want)
			}
		}
	})
}

// kinds returns the kinds of record that a file of harmless text has, each after its section.
func kinds(t testing.TB) map[string]bool {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, hostile("BLOCK"), Options{}); err != nil {
		t.Fatal(err)
	}
	harmless, err := parse(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	for _, r := range harmless.records {
		known[r.section+" "+r.kind] = true
	}
	return known
}

// onlyKnown holds that a file has no other kind of record, each name can stand in a table, and no value holds a control
// character.
func onlyKnown(t *testing.T, got file, known map[string]bool) {
	t.Helper()
	for _, r := range got.records {
		if !known[r.section+" "+r.kind] {
			t.Errorf("text became a record %s in %s", r.kind, r.section)
		}
		if n := r.get(2); r.section == "TABLES" && r.kind != "TABLE" && strings.TrimPrefix(n, "*") != "" && !render.LegalName(strings.TrimPrefix(n, "*")) {
			t.Errorf("%s is named %q", r.kind, n)
		}
		for _, g := range r.tags {
			if strings.ContainsFunc(g.value, unicode.IsControl) {
				t.Errorf("%s, %d holds %q", r.kind, g.code, g.value)
			}
		}
	}
}
