package spec_test

import (
	"strings"
	"testing"

	"standclear/detail/spec"
)

// year writes twelve months, the first as given.
func year(first string) string {
	return "site.months=[" + first + strings.Repeat(", {outside: 50F, humidity: 70%}", 11) + "]"
}

func TestMonthsRead(t *testing.T) {
	s := readDeck(t, year("{outside: 21F, humidity: 80%, inside: 68F, inside_humidity: 35%}"), "site.zone=4c", "wall.retarder=class 2")
	m := s.Site.Months
	if len(m) != 12 || m[0].Inside == nil || m[0].InsideHumidity == nil || m[1].Inside != nil || m[1].InsideHumidity != nil {
		t.Fatalf("%+v", m)
	}
	for _, c := range []struct{ got, want float64 }{
		{float64(m[0].Outside), -55.0 / 9}, {float64(m[0].Humidity), 0.8}, {float64(*m[0].Inside), 20}, {float64(*m[0].InsideHumidity), 0.35}, {float64(m[11].Outside), 10},
	} {
		if d := c.got - c.want; d > 1e-9 || d < -1e-9 {
			t.Errorf("%v; want %v", c.got, c.want)
		}
	}
	if s.Site.Zone != "4C" || s.Wall.Retarder != "class-2" {
		t.Errorf("zone %s, retarder %s", s.Site.Zone, s.Wall.Retarder)
	}
	if d := readDeck(t); len(d.Site.Months) != 0 || d.Site.Zone != "unknown" || d.Wall.Retarder != "unknown" {
		t.Errorf("%+v", d.Site)
	}
}

func TestMonthsProblems(t *testing.T) {
	for _, c := range []struct{ name, set, want string }{
		{"one", "site.months=[{outside: 21F, humidity: 80%}]", "site.months: the list has 1; 12 months are wanted, January first, or none"},
		{"no humidity", year("{outside: 21F}"), "site.months.0.humidity: missing; a share in % of 5..100 %"},
		{"too hot", year("{outside: 210F, humidity: 80%}"), "site.months.0.outside: 210F is outside"},
		{"no zone", "site.zone=9", `site.zone: "9" is not allowed; one of 1, 2, 3, 4, 4C`},
		{"no class", "wall.retarder=poly", `wall.retarder: "poly" is not allowed; one of class-1`},
	} {
		s, problems := spec.Read("deck.yaml", deckFile(t), []string{c.set})
		if s != nil || len(problems) != 1 || !strings.Contains(problems.Error(), c.want) {
			t.Errorf("%s: %s", c.name, problems.Error())
		}
	}
}

// Two coldest months that do not agree are a warning; the deck states 21 F.
func TestColdestMonth(t *testing.T) {
	if s := readDeck(t, year("{outside: 22F, humidity: 80%}"), "site.cold_month_temperature=21F"); len(s.Warnings) > 0 {
		t.Error(s.Warnings.Error())
	}
	s := readDeck(t, year("{outside: 25F, humidity: 80%}"), "site.cold_month_temperature=21F")
	if len(s.Warnings) != 1 || !strings.Contains(s.Warnings.Error(), "site.cold_month_temperature: 21 F, but the coldest of site.months has 25 F; look which of the two holds") {
		t.Error(s.Warnings.Error())
	}
}
