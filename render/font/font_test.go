package font

import (
	"bytes"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"
	"unicode/utf8"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// At a cap height of CapRatio the em is 1, so widths come out in ems.
func TestWidth(t *testing.T) {
	tests := []struct {
		name string
		s    string
		bold bool
		want float64 // units of 1/2048 em: the advance table that Arial and this face share
	}{
		{"empty", "", false, 0},
		{"capital H", "H", false, 1479},
		{"figure one", "1", false, 1139},
		{"space", " ", false, 569},
		{"no-break space", "\u00a0", false, 569},
		{"full stop", ".", false, 569},
		{"capital W", "W", false, 1933},
		{"letter i", "i", false, 455},
		{"inch mark", `"`, false, 727},
		{"diameter sign", "\u00d8", false, 1593},
		{"degree sign", "\u00b0", false, 819},
		// L 1139, E 1366, D 1479, G 1593, E 1366, R 1479
		{"LEDGER", "LEDGER", false, 1139 + 1366 + 1479 + 1593 + 1366 + 1479},
		// A 1366, V 1366: kerned in many programs, never here
		{"kerning pair", "AV", false, 2732},
		{"bold H", "H", true, 1479},
		{"bold one", "1", true, 1139},
		{"bold i", "i", true, 569},
		{"bold B", "B", true, 1479},
		{"control characters", "\x00\x07\t\n\x7f", false, 0},
		{"soft hyphen", "\u00ad", false, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := Width(tt.s, CapRatio, tt.bold) * 2048
			if math.Abs(got-tt.want) > 1e-9 {
				t.Errorf("Width(%q) = %v units, want %v", tt.s, got, tt.want)
			}
		})
	}
}

// A capital H 2.5 mm tall: em = 2.5 x 2048 / 1409, width = em x 1479 / 2048 = 2.5 x 1479 / 1409.
func TestWidthFollowsHeight(t *testing.T) {
	want := 2.5 * 1479 / 1409
	if got := Width("H", 2.5, false); math.Abs(got-want) > 1e-12 {
		t.Errorf("Width(H, 2.5) = %v, want %v", got, want)
	}
	if got := Width("H", 5, false); math.Abs(got-2*want) > 1e-12 {
		t.Errorf("twice the height: %v, want %v", got, 2*want)
	}
	if got := Em(1409); got != 2048 {
		t.Errorf("Em(1409) = %v, want 2048", got)
	}
}

// The ratio is that of the drawn letter, not only of the table that states it.
func TestCapRatioIsTheHeightOfH(t *testing.T) {
	for name, ttf := range map[string][]byte{"regular": Regular(), "bold": Bold()} {
		f, err := sfnt.Parse(ttf)
		if err != nil {
			t.Fatal(err)
		}
		var b sfnt.Buffer
		g, err := f.GlyphIndex(&b, 'H')
		if err != nil {
			t.Fatal(err)
		}
		box, _, err := f.GlyphBounds(&b, g, fixed.I(2048), font.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		if top := -box.Min.Y.Round(); float64(top)/2048 != CapRatio {
			t.Errorf("%s: H is %d units tall, CapRatio says %v", name, top, CapRatio*2048)
		}
	}
}

func TestWidthAddsUp(t *testing.T) {
	for _, s := range []string{"7 1/2\"", "BLOCK B3", "\u00d8 9/16 THRU", "\u4e2d\u6587", "a\xffb"} {
		sum := 0.0
		for _, r := range s {
			sum += Width(string(r), 2.5, false)
		}
		if got := Width(s, 2.5, false); math.Abs(got-sum) > 1e-9 {
			t.Errorf("%q: %v whole, %v in pieces", s, got, sum)
		}
	}
}

func TestHas(t *testing.T) {
	for _, r := range "AZaz09 .,'\"/-+()&\u00d8\u00b0\u00b1\u00bd\u00d7\u00e9\u2013\u2019\u2026\u03bb" {
		if !Has(r) {
			t.Errorf("%q (%U) is missing", r, r)
		}
	}
	for _, r := range []rune{'\u4e2d', '\U0001f600', -1} {
		if Has(r) {
			t.Errorf("%U is not in the face", r)
		}
	}
	if w := Width("\u4e2d", 2.5, false); w <= 0 {
		t.Errorf("a missing character is %v wide", w)
	}
}

func TestConcurrentUse(t *testing.T) {
	var wg sync.WaitGroup
	want := Width("BLOCK \u03bb \u4e2d", 2.5, true)
	for range 8 {
		wg.Go(func() {
			for range 200 {
				if got := Width("BLOCK \u03bb \u4e2d", 2.5, true); got != want {
					t.Errorf("%v, want %v", got, want)
				}
			}
		})
	}
	wg.Wait()
}

func TestWrap(t *testing.T) {
	em := func(units float64) float64 { return units/2048 + 1e-6 } // a column, with height CapRatio
	tests := []struct {
		name  string
		s     string
		width float64
		want  []string
	}{
		{"empty", "", 10, nil},
		{"one word", "LEDGER", 10, []string{"LEDGER"}},
		{"fits to the unit", "II II", em(4*569 + 569), []string{"II II"}},
		{"one unit short", "II II", em(4*569 + 569 - 1), []string{"II", "II"}},
		{"greedy", "I I I I I", em(3*569 + 2*569), []string{"I I I", "I I"}},
		{"spaces run together", "  I   I  ", 10, []string{"I I"}},
		{"newline breaks", "I\nI", 10, []string{"I", "I"}},
		{"empty line kept", "I\n\nI", 10, []string{"I", "", "I"}},
		{"long word cut", "IIIII", em(2 * 569), []string{"II", "II", "I"}},
		{"long word after a short one", "I IIII I", em(2 * 569), []string{"I", "II", "II", "I"}},
		{"no room at all", "ab c", 0, []string{"a", "b", "c"}},
		{"no-break space holds", "I I\u00a0I", em(3 * 569), []string{"I", "I\u00a0I"}},
		{"bad bytes", "a\xffb", 0, []string{"a", "\ufffd", "b"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Wrap(tt.s, CapRatio, tt.width, false); !slices.Equal(got, tt.want) {
				t.Errorf("Wrap(%q, %v) = %q, want %q", tt.s, tt.width, got, tt.want)
			}
		})
	}
}

// FuzzWrap holds the laws of breaking: no letter is lost or changed, and no line is too wide unless it
// is one character.
func FuzzWrap(f *testing.F) {
	f.Add("NOTES: FLASHING LAPS OVER THE LEDGER, 4\" MIN.", 30.0)
	f.Add("a\xff\xfe b\u00a0c\td", 1.0)
	f.Add("\u4e2d\u6587 \U0001f600\u0301", 0.0)
	f.Add("WWWWWWWWWWWWWWWWWW i", -5.0)
	f.Add("\n\n x \n", math.Inf(1))
	f.Fuzz(func(t *testing.T, s string, width float64) {
		if len(s) > 2000 {
			return
		}
		lines := Wrap(s, 2.5, width, false)
		bare := func(s string) string {
			return strings.NewReplacer(" ", "", "\t", "", "\r", "", "\n", "").Replace(s)
		}
		if got, want := bare(strings.Join(lines, "")), bare(strings.ToValidUTF8(s, "\ufffd")); got != want {
			t.Errorf("letters changed: %q became %q", want, got)
		}
		for _, l := range lines {
			if Width(l, 2.5, false) > width+1e-6 && utf8.RuneCountInString(l) > 1 {
				t.Errorf("%q is wider than %v", l, width)
			}
		}
	})
}

func TestFacesDiffer(t *testing.T) {
	if bytes.Equal(Regular(), Bold()) {
		t.Error("regular and bold are one file")
	}
}

func BenchmarkWidth(b *testing.B) {
	for range b.N {
		Width("BLOCK B3, 1'-4 1/2\" O.C.", 2.5, false)
	}
}
