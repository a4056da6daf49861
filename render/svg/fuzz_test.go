package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"strings"
	"testing"

	"standclear/geom"
	"standclear/render"
)

// typed returns a sheet with the text everywhere a user's text can go.
func typed(s string) *render.Sheet {
	tag := &render.Tag{Mark: s, Material: s, Size: s, Role: s}
	text := render.Text{Pen: render.Note, At: v(10, 10), Height: 2.5, Align: render.TopLeft, Lines: []string{s}}
	sheet := page(text, render.Stroke{Pen: render.Cut, Path: geom.Polyline(v(0, 0), v(9, 9)), Tag: tag})
	sheet.ID, sheet.Title, sheet.Desc, sheet.Props = s, s, s, [][2]string{{s, s}}
	sheet.Views = []render.View{{ID: s, Title: s, Scale: render.Scale{K: 1, Text: s}, Window: geom.Box{Max: v(50, 50)}, Items: []render.Item{text}}}
	return sheet
}

// FuzzText puts any text everywhere a user's text can go: the drawing must parse, have the elements and attributes of
// a harmless one and no more, and say what was said, as far as it can be lettered.
func FuzzText(f *testing.F) {
	for _, s := range []string{"", "BLOCK B3", `<&>"'`, "]]>", "\x00\x1b\ufffe\uffff", "a\xff\xc3(", "\u202e\u00ad\U0001f600", " two  spaces ", "%s%!d", "a\tb\nc\r", "--></svg><script>",
		`" onload="alert(1)`, "<!ENTITY x>&x;", "<![CDATA[", "url(#a)", "javascript:", "\u0085\u2028"} {
		f.Add(s)
	}
	known := parts(f)
	f.Fuzz(func(t *testing.T, s string) {
		for _, o := range []Options{{}, {Inline: true, Prefix: s}} {
			var b bytes.Buffer
			if err := Write(&b, typed(s), o); err != nil {
				t.Fatal(err)
			}
			n := read(t, b.String())
			want := render.Clean(s)
			texts := n.all("text")
			if blank := strings.TrimSpace(want) == ""; blank != (len(texts) == 0) {
				t.Fatalf("%d texts for %q", len(texts), want)
			}
			for _, x := range texts {
				if x.Text != want {
					t.Errorf("%q came back as %q", want, x.Text)
				}
			}
			says := strings.Join([]string{want, want, want}, ", ")
			for name, said := range map[string]string{"data-view": want, "data-title": want, "data-mark": want, "data-role": want, "aria-label": says} {
				n.each(func(x node) {
					for _, a := range x.Attrs {
						if a.Name.Local == name && a.Value != said {
							t.Errorf("%s: %q came back as %q", name, said, a.Value)
						}
					}
				})
			}
			if m := n.all("metadata"); len(m) != 1 || m[0].Text != want+": "+want {
				t.Errorf("metadata came back as %+v", m)
			}
			if d := n.all("desc"); len(d) != 1 || d[0].Text != want {
				t.Errorf("description came back as %+v", d)
			}
			nothingNew(t, n, known)
		}
	})
}

// each calls f for n and every element under it.
func (n node) each(f func(node)) {
	f(n)
	for _, c := range n.Nodes {
		c.each(f)
	}
}

// parts returns the elements and attributes that a drawing of harmless text has.
func parts(t testing.TB) map[string]bool {
	t.Helper()
	known := map[string]bool{}
	var b bytes.Buffer
	var n node
	if err := errors.Join(Write(&b, typed("BLOCK"), Options{}), xml.Unmarshal(b.Bytes(), &n)); err != nil {
		t.Fatal(err)
	}
	n.each(func(x node) {
		known[x.XMLName.Local] = true
		for _, a := range x.Attrs {
			known[x.XMLName.Local+" "+a.Name.Local] = true
		}
	})
	known["text textLength"], known["text lengthAdjust"] = true, true
	return known
}

// nothingNew holds that a drawing has no other elements and attributes.
func nothingNew(t *testing.T, n node, known map[string]bool) {
	t.Helper()
	n.each(func(x node) {
		if !known[x.XMLName.Local] {
			t.Errorf("text became an element %s", x.XMLName.Local)
		}
		for _, a := range x.Attrs {
			if !known[x.XMLName.Local+" "+a.Name.Local] {
				t.Errorf("text became an attribute %s of %s", a.Name.Local, x.XMLName.Local)
			}
			if a.Name.Local == "id" && strings.ContainsFunc(a.Value, func(r rune) bool { return (r < 'a' || r > 'z') && (r < '0' || r > '9') && r != '-' }) {
				t.Errorf("id %q", a.Value)
			}
		}
	})
}
