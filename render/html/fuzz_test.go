package html_test

import (
	"bytes"
	"errors"
	"io"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	reader "golang.org/x/net/html"

	"standclear/geom"
	"standclear/render"
	"standclear/render/html"
)

// pages returns both kinds of page with the text everywhere a user's text can go.
func pages(t testing.TB, s string) []string {
	t.Helper()
	text := render.Text{Pen: render.Note, At: geom.Vec{X: 10, Y: 10}, Height: 2.5, Align: render.TopLeft, Lines: []string{s, "TWO MORE WORDS"}}
	sheet := &render.Sheet{ID: s, Title: s, Desc: s, Props: [][2]string{{s, s}}, Size: render.Size{Name: "A4", W: 297, H: 210}, Unit: render.Millimetre, Items: []render.Item{text}}
	p := html.Page{Title: s, Verdict: s, Notes: []string{s}, Head: []string{s}, Rows: []html.Row{{Cells: []string{s, s}, Class: "fails", Sheet: s}}, Sheets: []*render.Sheet{sheet}}
	r := html.Report{Title: s, Verdict: s, Notes: []string{s}, Chapters: []html.Chapter{{Title: s, Figures: []*render.Sheet{sheet}, Entries: []html.Entry{{ID: "a", Name: s, Verdict: s, Class: "fails", Lines: []string{s}}}}}}
	var page, report bytes.Buffer
	if err := errors.Join(html.Write(&page, p), html.WriteReport(&report, r)); err != nil {
		t.Fatal(err)
	}
	return []string{page.String(), report.String()}
}

// FuzzText puts any text everywhere a user's text can go: both pages have the elements and attributes of harmless
// ones, lead nowhere but into themselves, and say what was said.
func FuzzText(f *testing.F) {
	for _, s := range []string{"", "BLOCK B3", `<&>"'`, "]]>", "\x00\x1b\ufffe\uffff", "a\xff\xc3(", "\u202e\u00ad\U0001f600", " two  spaces ", "{{.Title}}", "a\tb\nc\r", "--></svg><script>alert(1)</script>",
		`" onload="alert(1)`, "javascript:alert(1)", "https://deck.example/", "//deck.example", "</title>", "</style>", "<!--", "&amp;lt;", "%00%3cb", "#"} {
		f.Add(s)
	}
	var harmless [][]string
	for _, page := range pages(f, "BLOCK") {
		is, _ := tags(f, page)
		harmless = append(harmless, plainly(is))
	}
	f.Fuzz(func(t *testing.T, s string) {
		if strings.TrimSpace(render.Clean(s)) == "" {
			return // no words, no elements for them
		}
		for i, page := range pages(t, s) {
			if !utf8.ValidString(page) {
				t.Fatalf("page %d is not UTF-8", i)
			}
			got, texts := tags(t, page)
			if !slices.Equal(plainly(got), harmless[i]) {
				t.Errorf("page %d of %q has the elements\n%s\nand not\n%s", i, s, got, harmless[i])
			}
			said := 0
			for _, text := range texts {
				if text == shown(s) {
					said++
				}
			}
			if said < 6 {
				t.Errorf("page %d says %q %d times, want 6 or more: %q", i, shown(s), said, texts)
			}
		}
	})
}

// plainly leaves the attribute out that depends on whether our face has the characters.
func plainly(tags []string) (out []string) {
	for _, t := range tags {
		out = append(out, strings.NewReplacer(" textlength", "", " lengthadjust", "").Replace(t))
	}
	return out
}

// shown is a text as a page holds it: without line ends of its own, and what is no character replaced.
func shown(s string) string {
	return strings.NewReplacer("\r\n", "\n", "\r", "\n", "\x00", "\ufffd").Replace(strings.ToValidUTF8(s, "\ufffd"))
}

// tags reads a page as a browser would: each element with the names of its attributes, and the texts between.
func tags(t testing.TB, page string) (out, texts []string) {
	t.Helper()
	z := reader.NewTokenizer(strings.NewReader(page))
	for {
		switch z.Next() {
		case reader.ErrorToken:
			if !errors.Is(z.Err(), io.EOF) {
				t.Fatal(z.Err())
			}
			return out, texts
		case reader.StartTagToken, reader.SelfClosingTagToken:
			k := z.Token()
			tag := k.Data
			for _, a := range k.Attr {
				tag += " " + a.Key
				if (a.Key == "href" || a.Key == "src") && !strings.HasPrefix(a.Val, "#") {
					t.Errorf("%s leads to %q", k.Data, a.Val)
				}
			}
			out = append(out, tag)
		case reader.EndTagToken:
			out = append(out, "/"+z.Token().Data)
		case reader.CommentToken, reader.DoctypeToken:
			out = append(out, "!"+z.Token().Data)
		case reader.TextToken:
			texts = append(texts, z.Token().Data)
		}
	}
}
