package spec

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"standclear/detail/unit"
)

// As written, the starter file has one problem for every SURVEY and no other.
func TestStarterAsWritten(t *testing.T) {
	for _, sys := range systems() {
		text := Starter(sys)
		s, problems := Read("new.yaml", []byte(text), nil)
		body := text[strings.Index(text, "\n\n"):]
		if want := strings.Count(body, placeholder); s != nil || len(problems) != want || want < 15 {
			t.Fatalf("%v: %d problems for %d placeholders\n%s", sys, len(problems), want, problems.Error())
		}
		for _, p := range problems {
			if p.Given != "not surveyed yet" || p.Do == "" {
				t.Errorf("%v: %s", sys, p.Error())
			}
		}
	}
}

// filledIn is the starter file with the sample that stands behind each placeholder put in its place.
func filledIn(sys unit.System) string {
	return regexp.MustCompile(`(?m): SURVEY(.*such as (.*))$`).ReplaceAllString(Starter(sys), ": $2$1")
}

// With the samples put in, and nothing else, it reads; what is commented out is a default.
func TestStarterFilledIn(t *testing.T) {
	for _, sys := range systems() {
		s, problems := Read("new.yaml", []byte(filledIn(sys)), nil)
		if s == nil || len(s.Warnings) > 0 || s.Project.System != sys || len(s.Defaults) < 60 {
			t.Fatalf("%v: %s", sys, problems.Error())
		}
	}
}

// By hand: the plies are 3 in, the ledger 1 1/2, insulation and cavity 1 1/2 and 3/4: 2 1/4 and 3 mm are 2.37, to the
// next eighth 2 3/8 in. With cladding of 5/8 behind the flashing 1.74: 2 in at least. In metric 90 + 45 + 3 - 40 - 28
// = 70 mm.
func TestFlashingReachesPastTheLedger(t *testing.T) {
	for _, c := range []struct {
		sys  unit.System
		set  string
		want unit.Length
	}{
		{unit.IP, "water.flashing.lap=cladding", 2.375 * unit.Inch},
		{unit.IP, "water.flashing.lap=outside", 2 * unit.Inch},
		{unit.IP, "water.flashing.out=3in", 3 * unit.Inch},
		{unit.SI, "water.flashing.lap=cladding", 70 * unit.MM},
	} {
		s, problems := Read("new.yaml", []byte(filledIn(c.sys)), []string{c.set})
		if s == nil {
			t.Fatal(problems.Error())
		}
		if got := s.Water.Flashing.Out; math.Abs(float64(got-c.want)) > 1e-6 {
			t.Errorf("%v %s: %s", c.sys, c.set, got.Text(c.sys))
		}
	}
}

// IECC zones carry a letter of moisture, A moist, B dry, C marine; the table of retarders has 4C apart and the letters
// A and B nowhere.
func TestWaysToWriteWords(t *testing.T) {
	for _, c := range []struct {
		set, want string
		of        func(s *Spec) string
	}{
		{"site.zone=5A", "5", func(s *Spec) string { return s.Site.Zone }},
		{"site.zone=6b", "6", func(s *Spec) string { return s.Site.Zone }},
		{"site.zone=4C", "4C", func(s *Spec) string { return s.Site.Zone }},
		{"site.above=open", "none", func(s *Spec) string { return s.Site.RoofAbove }},
		{"site.above=Open sky", "none", func(s *Spec) string { return s.Site.RoofAbove }},
	} {
		s, problems := Read("new.yaml", []byte(filledIn(unit.IP)), []string{c.set})
		if s == nil || c.of(s) != c.want {
			t.Errorf("%s: %v", c.set, problems.Error())
		}
	}
	for _, set := range []string{"site.zone=9A", "site.zone=5AB", "site.zone=A", "site.zone=5C"} {
		if s, _ := Read("new.yaml", []byte(filledIn(unit.IP)), []string{set}); s != nil {
			t.Errorf("%s reads", set)
		}
	}
}

// Every key and section is in it, but the two sets that are the same as the one.
func TestStarterHasEveryKey(t *testing.T) {
	for _, sys := range systems() {
		text := Starter(sys)
		for _, k := range Keys(sys) {
			name := k.Path[strings.LastIndexByte(k.Path, '.')+1:]
			if !strings.Contains(text, name+":") && !strings.Contains(k.Path, ".N") {
				t.Errorf("%v: no %s", sys, k.Path)
			}
		}
		for i, line := range strings.Split(text, "\n") {
			if strings.HasSuffix(line, " ") || strings.Contains(line, "\t") || strings.Contains(line, ";  ") {
				t.Errorf("%v: line %d: %q", sys, i+1, line)
			}
		}
	}
}
