package judge_test

import (
	"fmt"
	"testing"

	"standclear/detail"
	"standclear/detail/check/design"
	"standclear/detail/demo"
	"standclear/detail/sheet"
	"standclear/detail/sheet/judge"
	"standclear/detail/spec"
	"standclear/detail/spec/spectest"
	"standclear/render"
)

// drawn is a composed set with what it was composed from.
func drawn(s *spec.Spec) (a *detail.Assembly, sheets, pages []*render.Sheet, err error) {
	if a, err = detail.Build(s); err != nil {
		return nil, nil, nil, err
	}
	r, res := design.Check(a)
	o := sheet.Options{Version: "test"}
	set := sheet.Plan(a, &r, res, o)
	return a, set.Sheets(), append(set.Calculation(), set.ShopPages(nil)...), nil
}

// brokenOn lists the hard rules that some sheets of a project and their shop pages break.
func brokenOn(s *spec.Spec, names ...string) ([]judge.Violation, error) {
	a, err := detail.Build(s)
	if err != nil {
		return nil, err
	}
	r, res := design.Check(a)
	o := sheet.Options{Version: "test"}
	var all []judge.Violation
	for _, o.Sheet = range names {
		set := sheet.Plan(a, &r, res, o)
		for _, sh := range append(set.Sheets(), set.ShopPages(nil)...) {
			found, err := judge.Layout(sh)
			if err != nil {
				return nil, err
			}
			all = append(all, found...)
		}
	}
	return all, nil
}

// broken lists every hard rule that a set breaks.
func broken(s *spec.Spec) ([]judge.Violation, error) {
	a, sheets, pages, err := drawn(s)
	if err != nil {
		return nil, err
	}
	all, err := judge.Set(sheets, pages, a)
	return all, err
}

func TestDemosKeepTheHardRules(t *testing.T) {
	for _, name := range demo.Names() {
		if testing.Short() && name != "balcony-metric" {
			continue // the race detector is slow
		}
		src, _ := demo.File(name)
		s, problems := spec.Read(name, src, nil)
		if s == nil {
			t.Fatal(problems.Error())
		}
		all, err := broken(s)
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range all {
			t.Errorf("%s: %v", name, v)
		}
	}
}

// Random projects on which a sheet once broke a rule.
func TestWhatWasMended(t *testing.T) {
	for n, names := range map[uint64][]string{
		3320: {"A-301"}, 30007: {"G-003"}, 30010: {"S-501", "S-504"}, 30023: {"A-201", "S-504"}, 30036: {"S-504", "S-702"}, 30062: {"S-501"}, 30071: {"A-201", "S-702"},
		102663: {"S-501"}, 102886: {"A-402"}, 104176: {"A-303"}, 107948: {"A-303"}, 100889: {"S-504"}, 109975: {"A-301"}, 101354: {"G-003"}, 105035: {"S-702"}, 107504: {"S-501"},
	} {
		if all, err := brokenOn(spectest.Random(n).Spec, names...); err != nil || len(all) > 0 {
			t.Errorf("project %d, %v: %v%s", n, names, err, list(all, 6))
		}
	}
}

func list(all []judge.Violation, most int) string {
	s := ""
	for i, v := range all {
		if i == most {
			return s + "\n\t..."
		}
		s += fmt.Sprintf("\n\t%v", v)
	}
	return s
}
