package pdf

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
	"testing"
	utf16code "unicode/utf16"

	"standclear/geom"
	"standclear/render"
)

// FuzzText puts any text everywhere a user's text can go: the file keeps its structure, and its drawn text, its
// bookmarks and its title read as what was typed, as far as it can be lettered.
func FuzzText(f *testing.F) {
	for _, s := range []string{"", "BLOCK B3", "(a\\b)", "\x00\x1b\ufffe\uffff", "a\xff\xc3(", "\u202e\u00ad\U0001f600", "\u0d0d\u0a0a\u5c28", "\u4e2d\u6587", ") Tj ET", "endstream endobj", ">> /AA", "\\", "\ufeffA", " two  spaces "} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		text := render.Text{Pen: render.Note, At: v(10, 10), Height: 2.5, Align: render.TopLeft, Lines: []string{s}}
		sheet := page200(text)
		sheet.ID, sheet.Title, sheet.Desc, sheet.Props = s, s, s, [][2]string{{s, s}}
		sheet.Views = []render.View{{ID: s, Title: s, Scale: render.Scale{K: 1}, Window: geom.Box{Max: v(50, 50)}, Items: []render.Item{text}}}
		doc := write(t, Options{Title: s}, sheet)
		want := clean(s)
		texts := drawnTexts(content(t, doc))
		if n := 2; strings.TrimSpace(want) == "" && len(texts) > 0 || strings.TrimSpace(want) != "" && len(texts) != n {
			t.Errorf("%d texts, want %d", len(texts), n)
		}
		for _, got := range texts {
			if got != want {
				t.Errorf("%q came back as %q", want, got)
			}
		}
		wholeFile(t, doc)
		both := clean(name(s, s))
		for _, c := range []struct{ key, want string }{{"Title", want}, {"Subject", want}, {"Keywords", clean(s + ": " + s)}} {
			if got := known(doc, c.key); want != "" && !contains(got, c.want) {
				t.Errorf("%s reads %q, want %q", c.key, got, c.want)
			}
		}
		if got := known(doc, "Title"); both != "" && !contains(got, both) {
			t.Errorf("bookmarks read %q, want %q", got, both)
		}
	})
}

func contains(list []string, s string) bool {
	for _, l := range list {
		if l == s {
			return true
		}
	}
	return false
}

// drawnTexts reads the strings that a page shows.
func drawnTexts(content string) (out []string) {
	for {
		_, rest, ok := strings.Cut(content, " Td (")
		if !ok {
			return out
		}
		s, n := literal(rest)
		out = append(out, decoded(s))
		content = rest[n:]
	}
}

// known reads the strings under a name in the document.
func known(doc []byte, key string) (out []string) {
	for _, at := range regexp.MustCompile("/"+key+" \\(").FindAllIndex(doc, -1) {
		s, _ := literal(string(doc[at[1]:]))
		out = append(out, decoded(strings.TrimPrefix(s, "\xfe\xff")))
	}
	return out
}

// literal reads a string to the bracket that closes it and returns the place after.
func literal(s string) (string, int) {
	var b strings.Builder
	depth := 0
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c == '\\' && i+1 < len(s):
			i++
			b.WriteString(map[byte]string{'n': "\n", 'r': "\r", 't': "\t", 'b': "\b", 'f': "\f"}[s[i]])
			if !strings.ContainsRune("nrtbf", rune(s[i])) {
				b.WriteByte(s[i])
			}
		case c == ')' && depth == 0:
			return b.String(), i + 1
		case c == ')', c == '(':
			depth += map[byte]int{'(': 1, ')': -1}[c]
			b.WriteByte(c)
		default:
			b.WriteByte(c)
		}
	}
	return b.String(), len(s)
}

// decoded reads UTF-16, the high byte first.
func decoded(s string) string {
	var units []uint16
	for i := 0; i+1 < len(s); i += 2 {
		units = append(units, uint16(s[i])<<8|uint16(s[i+1]))
	}
	return string(utf16code.Decode(units))
}

// wholeFile holds that the table at the end leads to every object, so that no text has become one.
func wholeFile(t *testing.T, doc []byte) {
	t.Helper()
	tail := bytes.LastIndex(doc, []byte("startxref\n"))
	if tail < 0 || !bytes.HasSuffix(doc, []byte("%%EOF\n")) {
		t.Fatalf("it ends with %q", doc[max(0, len(doc)-40):])
	}
	at, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(string(doc[tail+len("startxref\n"):]), "%%EOF\n")))
	if err != nil || at >= len(doc) || !bytes.HasPrefix(doc[at:], []byte("xref\n0 ")) {
		t.Fatalf("no table at %d: %v", at, err)
	}
	lines := strings.Split(string(doc[at:tail]), "\n")
	count, err := strconv.Atoi(strings.TrimPrefix(lines[1], "0 "))
	if err != nil || count < 5 {
		t.Fatalf("%d objects, %v", count, err)
	}
	for i := 1; i < count; i++ {
		off, err := strconv.Atoi(lines[2+i][:10])
		if head := strconv.Itoa(i) + " 0 obj\n"; err != nil || off >= len(doc) || !bytes.HasPrefix(doc[off:], []byte(head)) {
			t.Errorf("object %d is not at %d: %v", i, off, err)
		}
	}
}
