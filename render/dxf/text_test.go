package dxf

import (
	"strings"
	"testing"
	"unicode"

	"standclear/render"
)

func note(lines ...string) render.Text {
	return render.Text{Pen: render.Note, At: xy(10, 20), Height: 2.5, Align: render.TopLeft, Lines: lines}
}

func TestPlain(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"signs", "\u00d85 30\u00b0 \u00b11", "%%c5 30%%d %%p1"},
		{"one per cent", "50% of 3%", "50% of 3%"},
		{"two per cent signs", "a%%d", "a% %d"},
		{"three", "%%%", "% % %"},
		{"per cent before a sign", "5%\u00b0", "5% %%d"},
		{"control characters", "a\r\nb\tc\x00d\u0085e\u2028f\ufeffg", "a  b cde fg"},
		{"caret", "a^Jb", "a^ Jb"},
		{"character by number", `\U+00B0 \m+n82a0`, `\U +00B0 \m +n82a0`},
		{"braces are themselves", `{\P}`, `{\P}`},
		{"other letters", "\u03bb \u6f22 \u00b2", "\u03bb \u6f22 \u00b2"},
		{"bytes that are no text", "a\xffb", "a\ufffdb"},
	} {
		if got := plain(c.in); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

func TestParagraph(t *testing.T) {
	for in, want := range map[string]string{
		`{\P}`:             `\{\\P\}`,
		`\U+00B0`:          `\\U +00B0`,
		`\S1/2;`:           `\\S1/2;`,
		"\u00b0%%":         "%%d% %",
		"a^b":              "a^ b",
		"plain":            "plain",
		"\\\u00b0":         `\\%%d`,
		"C:\\new\\{\u00d8": `C:\\new\\\{%%c`,
	} {
		if got := strings.Join(paragraph(in), ""); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
}

func TestCleanLeavesPerCentAlone(t *testing.T) {
	if got := clean("a%%d\x07\u00b0"); got != "a%%d\u00b0" {
		t.Errorf("%q", got)
	}
}

func TestOneLineIsTextAndSeveralAreParagraphs(t *testing.T) {
	r := draw(t, note("LEDGER")).one(t, "TEXT")
	if r.get(1) != "LEDGER" || r.get(7) != noteStyle || r.get(40) != "2.5" || r.get(73) != "3" || r.point(t, 11) != xy(10, 20) {
		t.Errorf("text %v", r.tags)
	}
	m := note("A", "", "C")
	m.Bold, m.Rot, m.Align = true, 90, render.BottomRight
	r = write(t, view(render.Millimetre, 5, m)).one(t, "MTEXT")
	if r.get(1) != `A\P\PC` || r.get(7) != boldStyle || r.get(40) != "12.5" || r.get(71) != "9" || r.get(50) != "90.0" || r.get(41) != "11.25" {
		t.Errorf("paragraph %v", r.tags)
	}
	// 1 is five thirds of the height, so 0.96 x 5/3 = 1.6 heights from line to line.
	if f := r.num(t, 44) * 5 / 3; r.get(73) != "2" || f < render.LinePitch-1e-9 || f > render.LinePitch+1e-9 {
		t.Errorf("lines %g heights apart, want %g", f, render.LinePitch)
	}
}

func TestJustification(t *testing.T) {
	for a, want := range map[render.Align][3]string{ // 72 across, 73 up, and whether 11 is there
		render.TopLeft: {"", "3", "y"}, render.TopCentre: {"1", "3", "y"}, render.TopRight: {"2", "3", "y"},
		render.MiddleLeft: {"", "2", "y"}, render.MiddleCentre: {"1", "2", "y"}, render.MiddleRight: {"2", "2", "y"},
		render.BottomLeft: {"", "", ""}, render.BottomCentre: {"1", "", "y"}, render.BottomRight: {"2", "", "y"},
	} {
		m := note("A")
		m.Align = a
		r := draw(t, m).one(t, "TEXT")
		got := [3]string{r.get(72), r.get(73)}
		if r.get(11) != "" {
			got[2] = "y"
		}
		if got != want {
			t.Errorf("alignment %d: %q, want %q", a, got, want)
		}
	}
}

func TestLongTextIsCutBetweenCharacters(t *testing.T) {
	for _, s := range []string{strings.Repeat("x", 300), strings.Repeat("\u6f22", 300), strings.Repeat("{", 300), strings.Repeat("\u00b0", 300)} {
		r := draw(t, note(s)).one(t, "MTEXT")
		parts := append(r.all(3), r.get(1))
		if len(parts) < 2 {
			t.Errorf("%.6s: one value", s)
		}
		for _, p := range parts {
			if len(p) > chunk {
				t.Errorf("%.6s: value of %d bytes", s, len(p))
			}
			if strings.Count(p, `\`)%2 != 0 && !strings.HasSuffix(p, "{") || strings.Count(p, "%")%2 != 0 {
				t.Errorf("%.6s: a value ends inside a code: %q", s, p[len(p)-4:])
			}
		}
		if got := readParagraph(strings.Join(parts, "")); got != s {
			t.Errorf("%.6s: read back %.20q", s, got)
		}
	}
}

// readParagraph reads paragraph text as a program shows it.
func readParagraph(s string) string {
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		if s[i] == '\\' && i+1 < len(s) {
			i++
			if s[i] == 'P' {
				b.WriteByte('\n')
				continue
			}
		}
		b.WriteByte(s[i])
	}
	return readSigns(b.String())
}

// readSigns replaces the codes that every kind of drawn text has.
func readSigns(s string) string {
	return strings.NewReplacer("%%d", "\u00b0", "%%p", "\u00b1", "%%c", "\u00d8", "^ ", "^").Replace(s)
}

// bare leaves of a text what the writer promises to keep: everything but blanks and what cannot be shown.
func bare(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return -1
		case r == '\u2300':
			return '\u00d8'
		}
		return r
	}, render.Clean(s))
}
