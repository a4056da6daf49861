package compare_test

import (
	"strings"
	"testing"
	"unicode"

	"standclear/detail/compare"
)

// FuzzVariant reads any text as a way: refused, or a name of one line that prints, and changes that are those of the
// text, in order.
func FuzzVariant(f *testing.F) {
	for _, s := range []string{"wide: blocks.width=10in, blocks.max_spacing=28in", "blocks.plies=[1in, 2in]", "a", ":", "=", "a:b", "x: a=b:c", "a=[,", "a=],b=1", " : a=1", "\x1b[31mred: a=1", "a\nb: a=1", "\xff: a=1", "a={b: c, d: e}, f=1"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		name, changes, err := compare.Variant(text)
		if err != nil {
			if s := err.Error(); s == "" || strings.ContainsFunc(s, unicode.IsControl) {
				t.Errorf("refused as %q", s)
			}
			return
		}
		if name == "" || len(changes) == 0 || strings.ContainsFunc(name, func(r rune) bool { return !unicode.IsPrint(r) }) {
			t.Errorf("name %q of %q", name, changes)
		}
		rest := text
		for _, c := range changes {
			_, after, found := strings.Cut(rest, c)
			if key, _, ok := strings.Cut(c, "="); !found || !ok || strings.TrimSpace(key) == "" {
				t.Errorf("change %q is not in %q", c, text)
			}
			rest = after
		}
	})
}
