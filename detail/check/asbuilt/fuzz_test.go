package asbuilt

import (
	"math"
	"strings"
	"testing"
	"unicode"

	"standclear/detail"
	"standclear/detail/check"
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
// itself, or cannot be drawn. What was not measured says so, and no check passes on no number.
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
		for _, p := range problems {
			if text := p.Error(); p.File != "f.yaml" || p.Line < 1 || p.Col < 1 || p.Given == "" || len(text) > 2000 || strings.ContainsFunc(text, unicode.IsControl) {
				t.Errorf("%d bytes: %+v", len(text), p)
			}
		}
		if field == nil {
			return
		}
		b := built{d: d, f: field}
		report, err := b.check()
		if err != nil {
			if err.Error() == "" {
				t.Error("not drawn, without a word")
			}
			return
		}
		sound(t, report)
		r := Result{Items: b.compare()}
		for _, i := range r.Items {
			if i.Verdict.rank() < 0 || i.Found == nil && i.Verdict != NotChecked || i.Verdict == Fails && i.Reason == "" || i.Found != nil && math.IsNaN(i.Found.V) {
				t.Errorf("%+v", i)
			}
		}
		for _, p := range b.at() {
			if len(r.moved(p.mark)) > 0 {
				if now, err := b.checkBlock(p.mark); err == nil {
					if len(now.Steps) == 0 {
						t.Errorf("%s: no check at all", p.mark)
					}
					sound(t, now)
				}
			}
		}
	})
}

// sound holds that every verdict but OK has a reason, and every number is one.
func sound(t *testing.T, r check.Report) {
	t.Helper()
	for _, s := range r.Steps {
		if s.Verdict > check.OK && s.Reason == "" {
			t.Errorf("%s is %v without a reason", s.ID, s.Verdict)
		}
		if math.IsNaN(s.Ratio) || math.IsInf(s.Ratio, 0) || math.IsNaN(s.Value.V) || math.IsInf(s.Value.V, 0) || s.Limit != nil && math.IsNaN(s.Limit.V) {
			t.Errorf("%s holds no number: %+v", s.ID, s)
		}
	}
}
