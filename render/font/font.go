// Package font holds the lettering of the drawings: one embedded sans-serif face, regular and bold,
// and the widths of its characters. Its advance widths are those of Arial, so text set in Arial or
// Helvetica takes the same room.
//
// Sizes are cap heights, as drafters state them, in any unit; widths come out in the same unit.
//
//	w := font.Width("LEDGER", 2.5, false) // mm, for letters 2.5 mm tall
package font

import (
	"sync"
	"unicode"

	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Family is the name of the embedded face.
const Family = "Liberation Sans"

// CapRatio is the cap height over the em (the font size of SVG and PDF), regular and bold alike:
// table OS/2 of the face, sCapHeight 1409 of 2048.
const CapRatio = 1409.0 / 2048

// Em returns the font size that makes capitals height tall.
func Em(height float64) float64 { return height / CapRatio }

// Regular returns the TrueType file of the regular face. The caller must not change it.
func Regular() []byte { return liberationsansregular.TTF }

// Bold returns the TrueType file of the bold face. The caller must not change it.
func Bold() []byte { return liberationsansbold.TTF }

// Width returns the advance width of s, kerning left out, for capitals height tall. Control and
// format characters have no width; a character that the face lacks takes that of the empty box
// drawn in its place.
func Width(s string, height float64, bold bool) float64 {
	f := of(bold)
	units := 0
	for _, r := range s {
		units += f.advance(r)
	}
	return float64(units) * Em(height) / float64(f.em)
}

// Has reports whether both faces hold a figure for r.
func Has(r rune) bool {
	return of(false).glyph(r) != missing && of(true).glyph(r) != missing
}

// missing is the glyph drawn for characters that the face lacks.
const missing sfnt.GlyphIndex = 0

// face is a parsed font, read-only once made.
type face struct {
	sfnt *sfnt.Font
	em   int       // units per em
	low  [low]int  // advances of the characters below low, units
	bufs sync.Pool // *sfnt.Buffer, scratch for look-ups
}

// low bounds the characters whose advances are kept: Latin letters and common signs.
const low = 0x250

var (
	regular = sync.OnceValue(func() *face { return parse(Regular()) })
	bold    = sync.OnceValue(func() *face { return parse(Bold()) })
)

func of(isBold bool) *face {
	if isBold {
		return bold()
	}
	return regular()
}

// parse reads an embedded font; a test holds that it can be read.
func parse(ttf []byte) *face {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic("font: embedded face: " + err.Error())
	}
	p := &face{sfnt: f, em: int(f.UnitsPerEm())}
	p.bufs.New = func() any { return new(sfnt.Buffer) }
	for r := range rune(low) {
		p.low[r] = p.lookup(r)
	}
	return p
}

func (f *face) advance(r rune) int {
	if r >= 0 && r < low {
		return f.low[r]
	}
	return f.lookup(r)
}

func (f *face) lookup(r rune) int {
	if unicode.In(r, unicode.Cc, unicode.Cf) {
		return 0
	}
	b := f.bufs.Get().(*sfnt.Buffer)
	defer f.bufs.Put(b)
	g, err := f.sfnt.GlyphIndex(b, r)
	if err != nil {
		g = missing
	}
	a, err := f.sfnt.GlyphAdvance(b, g, fixed.I(f.em), font.HintingNone)
	if err != nil {
		return f.em / 2
	}
	return a.Round()
}

func (f *face) glyph(r rune) sfnt.GlyphIndex {
	b := f.bufs.Get().(*sfnt.Buffer)
	defer f.bufs.Put(b)
	g, err := f.sfnt.GlyphIndex(b, r)
	if err != nil {
		return missing
	}
	return g
}
