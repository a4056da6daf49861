package demo_test

import (
	"bytes"
	"math"
	"os"
	"testing"

	"standclear/detail/demo"
	"standclear/detail/spec"
	"standclear/detail/unit"
)

// Every project reads without a problem, a warning or a survey left open, and says what it is.
func TestProjectsRead(t *testing.T) {
	for _, name := range demo.Names() {
		src, ok := demo.File(name)
		if !ok {
			t.Fatalf("no %s", name)
		}
		s, problems := spec.Read(name+".yaml", src, nil)
		if s == nil || len(s.Warnings) > 0 {
			t.Errorf("%s: %s", name, problems.Error())
			continue
		}
		if metric := len(name) > 7 && name[len(name)-7:] == "-metric"; metric != (s.Project.System == unit.SI) {
			t.Errorf("%s is in %v", name, s.Project.System)
		}
		for _, d := range s.Defaults {
			if d.Why == "the careful side" {
				t.Errorf("%s leaves %s to the program: a demo states what matters", name, d.Key)
			}
		}
	}
}

// The gap behind the ledger is what the stand-off leaves of the insulation: 1 1/2 + 1 1/2 + 3/4 - 2 3/8 =
// 1 3/8 in, 110 - 80 = 30 mm, whatever is tuned in the blocks.
func TestGap(t *testing.T) {
	for _, c := range []struct {
		name          string
		standoff, gap float64 // mm
	}{
		{"deck", 3.75 * 25.4, 1.375 * 25.4}, {"balcony", 3.75 * 25.4, 1.375 * 25.4}, {"deck-metric", 110, 30}, {"balcony-metric", 110, 30},
	} {
		src, _ := demo.File(c.name)
		s, problems := spec.Read(c.name, src, nil)
		if s == nil {
			t.Fatal(problems.Error())
		}
		gap := s.Standoff()
		for _, l := range s.Wall.Layers {
			if l.Role == "insulation" {
				gap -= l.Thickness
			}
		}
		if math.Abs(s.Standoff().MM()-c.standoff) > 1e-6 || math.Abs(gap.MM()-c.gap) > 1e-6 {
			t.Errorf("%s: stand-off %v, gap %v mm", c.name, s.Standoff().MM(), gap.MM())
		}
	}
}

// The months of the invented climate come to the degree-days stated, on a base of 18.3 C, within 2 %: the sum
// over months of days x (18.3 - mean). Their coldest is the coldest month stated.
func TestMonths(t *testing.T) {
	days := [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
	for _, name := range demo.Names() {
		src, _ := demo.File(name)
		s, problems := spec.Read(name, src, nil)
		if s == nil {
			t.Fatal(problems.Error())
		}
		sum, least := 0.0, math.Inf(1)
		for i, m := range s.Site.Months {
			sum += days[i] * math.Max(0, 18.3-float64(m.Outside))
			least = math.Min(least, float64(m.Outside))
		}
		if stated := float64(*s.Site.DegreeDays); math.Abs(sum/stated-1) > 0.02 || stated != 3830 {
			t.Errorf("%s: the months have %.0f K d, the project %.0f", name, sum, stated)
		}
		if least != -6 || float64(*s.Site.ColdMonth) != -6 {
			t.Errorf("%s: coldest month %v, stated %v", name, least, *s.Site.ColdMonth)
		}
	}
}

// What is handed out is the file, and changing it changes nothing here.
func TestFile(t *testing.T) {
	for _, name := range demo.Names() {
		onDisk, err := os.ReadFile(name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		src, _ := demo.File(name + ".yaml")
		if !bytes.Equal(src, onDisk) {
			t.Errorf("%s differs from the file", name)
		}
		src[0] = 'x'
		if again, _ := demo.File(name); again[0] == 'x' {
			t.Errorf("%s can be changed from outside", name)
		}
	}
	if _, ok := demo.File("nothing"); ok {
		t.Error("a project of no name was found")
	}
}
