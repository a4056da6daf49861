package spec

import "testing"

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"abc", "abc", 0}, {"abc", "", 3}, {"", "abc", 3}, {"materal", "material", 1}, {"untis", "units", 1},
		{"kitten", "sitting", 3}, {"ca", "abc", 3}, {"lsl", "lvl", 1},
	} {
		if got := distance(c.a, c.b); got != c.want {
			t.Errorf("%s to %s: %d; want %d", c.a, c.b, got, c.want)
		}
		if got := distance(c.b, c.a); got != c.want {
			t.Errorf("%s to %s: %d; want %d", c.b, c.a, got, c.want)
		}
	}
}

func TestMeant(t *testing.T) {
	words := []string{"thickness", "depth", "material", "in"}
	for _, c := range []struct{ in, want string }{
		{"thikness", "did you mean thickness?"}, {"Thick-ness", "did you mean thickness?"}, {"depht", "did you mean depth?"},
		{"colour", ""}, {"xx", ""}, {"", ""},
	} {
		if got := meant(c.in, words); got != c.want {
			t.Errorf("%q: %q; want %q", c.in, got, c.want)
		}
	}
}

func TestFigureOf(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"89in", "89"}, {"3 1/2 in", "3 1/2"}, {"-6.5mm", "-6.5"}, {"45kN/m2", "45"}, {"3830 K.d", "3830"}, {"60%", "60"},
		{`14'-8"`, ""}, {"14ft 8in", ""}, {"M16", ""}, {"in", ""}, {"", ""}, {"½in", ""},
	} {
		if got := figureOf(c.in); got != c.want {
			t.Errorf("%q: %q; want %q", c.in, got, c.want)
		}
	}
}

func TestReadSize(t *testing.T) {
	for _, c := range []struct {
		in   string
		t, d float64 // mm
		ok   bool
	}{
		{"2x10", 38.1, 234.95, true}, {"2 X 8", 38.1, 184.15, true}, {"45x220mm", 45, 220, true}, {"45 x 220 mm", 45, 220, true},
		{`1 1/2" x 9 1/4"`, 38.1, 234.95, true}, {"1 1/2in×9 1/4in", 38.1, 234.95, true}, {"2 x 10 in", 50.8, 254, true},
		{"45x220", 0, 0, false}, {"2x9", 0, 0, false}, {"x", 0, 0, false}, {"10mm", 0, 0, false}, {"0x10mm", 0, 0, false}, {"", 0, 0, false},
	} {
		th, d, ok := readSize(c.in)
		if ok != c.ok || ok && (th.Round(0.01).Metric(2) != plain2(c.t) || d.Round(0.01).Metric(2) != plain2(c.d)) {
			t.Errorf("%q: %v x %v, %t", c.in, float64(th), float64(d), ok)
		}
	}
}

func plain2(v float64) string { return plainNumber(v) }
