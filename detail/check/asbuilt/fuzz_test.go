package asbuilt

import (
	"testing"

	"standclear/detail"
	"standclear/detail/check/design"
	"standclear/detail/demo"
	"standclear/detail/spec"
)

// deck is the demo as a design.
func deck(t testing.TB) Design {
	t.Helper()
	src, _ := demo.File("deck")
	again := func(changes ...string) (*spec.Spec, bool) {
		s, problems := spec.Read("deck", src, changes)
		return s, len(problems) == 0
	}
	s, _ := again()
	a, err := detail.Build(s)
	if err != nil {
		t.Fatal(err)
	}
	report, _ := design.Check(a)
	return Design{a, &report, again}
}

// Whatever stands in a field sheet, it reads or has problems; what reads is compared, and checked with every block by
// itself, or cannot be drawn.
func FuzzRead(f *testing.F) {
	for _, s := range []string{"rim: {thickness: 1in}", "blocks: {B3: missing, X1: {at: 40in, through: {count: 3}}}", "gap: {clear: 0in}\nledger: {top: -5in}",
		"blocks: {B1: {through: {rows: [1in, 2in], end: 1in}}}", "house_joists: {first: 0in, spacing: 12in}", "blocks: {B1: {at: 0in}, B9: {at: 176in, gap: 4in}}", "block: {width: 1in, depth: 1/2in, height: 2in}"} {
		f.Add(s)
	}
	d := deck(f)
	f.Fuzz(func(t *testing.T, s string) {
		field, problems := Read("f.yaml", []byte(s), d.Assembly)
		if (field == nil) != (len(problems) > 0) {
			t.Fatalf("%v with %v", field, problems)
		}
		if field == nil {
			return
		}
		b := built{d: d, f: field}
		if _, err := b.check(); err != nil {
			return
		}
		r := Result{Items: b.compare()}
		for _, p := range b.at() {
			if len(r.moved(p.mark)) > 0 {
				if now, err := b.checkBlock(p.mark); err == nil && len(now.Steps) == 0 {
					t.Errorf("%s: no check at all", p.mark)
				}
			}
		}
	})
}
