package moisture

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/demo"
	"standclear/detail/spec"
)

// The wall of these tests is that of the metric demo deck: 12.5 gypsum, 145 cellulose, 12 OSB, barrier, 2 x 40
// wood-fibre board; zone 5, 20 C and 50 % inside, January at -6 C and 80 %, retarder of class II, rim of 45 mm
// LSL.
func project(t *testing.T, sets ...string) *spec.Spec {
	t.Helper()
	src, _ := demo.File("deck-metric")
	s, problems := spec.Read("deck-metric", src, sets)
	if s == nil {
		t.Fatalf("%v: %s", sets, problems.Error())
	}
	return s
}

func run(s *spec.Spec, heat *Solved) *check.Report {
	var r check.Report
	Run(s, heat, &r)
	return &r
}

// warm are places that pass everything.
func warm() []Place {
	return []Place{{Key: "corner", Name: "corner of the room", F: 0.9, Room: true}, {Key: "rim", Name: "rim, inner face", F: 0.9}}
}

// with replaces or adds places by their keys.
func with(places ...Place) *Solved {
	all := warm()
	for _, p := range places {
		if p.Name == "" {
			p.Name = p.Key
		}
		if i := find(all, p.Key); i >= 0 {
			all[i] = p
			continue
		}
		all = append(all, p)
	}
	return &Solved{Places: all}
}

func find(all []Place, key string) int {
	for i, p := range all {
		if p.Key == key {
			return i
		}
	}
	return -1
}

// clear is the sheathing of the clear wall.
func clear(f float64) Place { return Place{Key: "clear", F: f, Behind: Cavity} }

// Each check fails when it should, with its reason and a smallest change. Factors needed in January at 50 %:
// 0.587 for the dew point, 0.716 for 80 %; 0.718 on the design day of -18 C for surface water.
func TestVerdicts(t *testing.T) {
	xps := []string{"wall.layers.4.material=xps", "wall.layers.5.material=xps"}
	for _, c := range []struct {
		name    string
		sets    []string
		heat    *Solved
		id      string
		verdict check.Verdict
		reason  string
		fix     string
	}{
		{"all warm", nil, with(), "mould_room", check.OK, "", ""},
		{"mould in a corner", nil, with(Place{Key: "corner", F: 0.71, Err: 0.01, Room: true}), "mould_room", check.Fails, "above 80 % RH in 2 of 12 months: mould grows there", "site.inside_humidity: 48 % at most"}, // 0.8 p_sat(12.2)/p_sat(20) = 48.6 %
		{"water on the design day", nil, with(Place{Key: "corner", F: 0.717, Room: true}), "surface_water_room", check.Fails, "water stands on the surface", "site.inside_humidity: 49 % at most"},
		{"no design day", []string{"site.design_temperature="}, with(Place{Key: "corner", F: 0.717, Room: true}), "surface_water_room", check.OK, "", ""},
		{"grid error unknown", nil, with(Place{Key: "corner", F: 0.9, Err: -1, Room: true}), "mould_room", check.NotChecked, "could not be told", ""},
		{"grid error unknown and too cold", nil, with(Place{Key: "corner", F: 0.6, Err: -1, Room: true}), "mould_room", check.Fails, "mould grows", "site.inside_humidity"},
		{"not a number", nil, with(Place{Key: "corner", F: math.NaN(), Room: true}), "mould_room", check.NotChecked, "could not be told", ""},

		{"rim above the dew point", nil, with(Place{Key: "rim", F: 0.6}), "dew_rim", check.OK, "", ""},
		{"rim below it", nil, with(Place{Key: "rim", F: 0.59, Err: 0.01}), "dew_rim", check.Fails, "below dew point in 1 of 12 months; water condenses on it from the air of the room", "site.inside_humidity: 49 % at most"}, // p_sat(9.08)/p_sat(20) = 49.4 %
		{"rim damp", nil, with(Place{Key: "rim", F: 0.7}), "damp_rim", check.Engineer, "above 80 % RH in 2 of 12 months; not wet, but damp", "site.inside_humidity: 48 % at most"},
		{"bolt end below it", nil, with(Place{Key: "bolt", F: 0.5, Bolt: true, AtBlock: true}), "dew_bolt", check.Fails, "below dew point in 3 of 12 months", "site.inside_humidity: 42 % at most"}, // p_sat(7.0)/p_sat(20) = 42.8 %
		{"rim, error unknown", nil, with(Place{Key: "rim", F: 0.9, Err: -1}), "dew_rim", check.NotChecked, "could not be told", ""},
		{"rim, error unknown, too cold", nil, with(Place{Key: "rim", F: 0.4, Err: -1}), "dew_rim", check.Fails, "water condenses", ""},

		{"class II, open outside", nil, with(clear(0.36)), "dew_clear", check.OK, "below dew point in 4 of 12 months; with what diffusion lets through it stays below 100 % RH", ""},
		{"class III, table met, moist room", []string{"wall.retarder=class-3"}, with(clear(0.36)), "dew_clear", check.Engineer, "made for a room of 35 % RH", "wall.retarder: class-2, joints sealed"},
		{"class III, table met, dry room", []string{"wall.retarder=class-3", "site.inside_humidity=33%"}, with(clear(0.33)), "dew_clear", check.OK, "the mean of the three coldest months is above dew point", ""},                                                 // -4.47 + 0.33 x 24.47 = 3.6 C, dew point 3.3
		{"class III, table met, dry room, colder", []string{"wall.retarder=class-3", "site.inside_humidity=33%"}, with(clear(0.31)), "dew_clear", check.Engineer, "the mean of the three coldest months is below dew point", "site.inside_humidity: 32 % at most"}, // 3.1 C
		{"class III, table met, dry room, damp", []string{"wall.retarder=class-3", "site.inside_humidity=33%"}, with(clear(0.33)), "damp_clear", check.Engineer, "damp enough for mould", "wall.retarder: class-2"},
		{"class III, one month", []string{"wall.retarder=class-3", "site.months="}, with(clear(0.36)), "dew_clear", check.Engineer, "takes the 12 months", "wall.retarder: class-2"},
		{"class III, zone 6", []string{"wall.retarder=class-3", "site.zone=6"}, with(clear(0.36)), "dew_clear", check.Fails, "less than the table asks for", "wall.retarder: class-2"},
		{"class III, zone unknown", []string{"wall.retarder=class-3", "site.zone="}, with(clear(0.36)), "dew_clear", check.Fails, "site.zone is not stated", "wall.retarder: class-2"},
		{"class III at a block", []string{"wall.retarder=class-3"}, with(Place{Key: "clear", F: 0.36, Behind: Cavity, AtBlock: true}), "dew_clear", check.Fails, "at a block the table of outside insulation does not hold", "site.inside_humidity: 33 % at most"},
		{"no retarder", []string{"wall.retarder=none"}, with(clear(0.36)), "dew_clear", check.Fails, "nothing slows the vapour of the room", "wall.retarder: class-2"},
		{"retarder unknown", []string{"wall.retarder="}, with(clear(0.36)), "dew_clear", check.Fails, "wall.retarder is not stated and counts as none", "wall.retarder: class-2"},
		{"no retarder, damp", []string{"wall.retarder=none"}, with(clear(0.65)), "damp_clear", check.Engineer, "no retarder of class I or II", "site.inside_humidity: 44 % at most"}, // 0.8 p_sat(10.9)/p_sat(20) = 44.6 %
		{"class II between foam", xps, with(clear(0.2)), "dew_clear", check.Fails, "diffusion brings", "site.inside_humidity"},
		{"outer layer unknown", []string{"wall.layers.4.material=membrane"}, with(clear(0.36)), "dew_clear", check.Engineer, "their maker states it", ""},
		{"outer layer unknown, damp", []string{"wall.layers.4.material=membrane"}, with(clear(0.65)), "damp_clear", check.Engineer, "their maker states it", ""},
		{"one month, behind class II", []string{"site.months="}, with(clear(0.36)), "dew_clear", check.OK, "in the 1 month stated", ""},
		{"one month, at a block", []string{"site.months="}, with(Place{Key: "behind", F: 0.5, Behind: Rim, AtBlock: true}), "dew_behind", check.Engineer, "takes the 12 months", "site.inside_humidity: 42 % at most"},

		{"behind rim and backing", nil, with(Place{Key: "behind", F: 0.5, Behind: Rim, AtBlock: true}), "dew_behind", check.OK, "leaves within the year", ""},
		{"behind a thin rim", []string{"floor.rim.thickness=8mm", "floor.backing.kind=none"}, with(Place{Key: "behind", F: 0.4, Behind: Rim, AtBlock: true}), "dew_behind", check.Fails, "diffusion brings", "site.inside_humidity"},
		{"behind a rim, never dry", []string{"floor.backing.kind=none"}, with(Place{Key: "behind", F: 0.02, Behind: Rim, AtBlock: true}), "dew_behind", check.Fails, "diffusion brings", ""},
		{"behind a rim, damp", []string{"floor.backing.kind=none"}, with(Place{Key: "behind", F: 0.52, Behind: Rim, AtBlock: true}), "damp_behind", check.Engineer, "diffusion brings", "site.inside_humidity"},

		{"table met", []string{"wall.retarder=class-3"}, with(), "class3_exterior_r", check.OK, "", ""},
		{"table not met", []string{"wall.retarder=class-3", "site.zone=6"}, with(), "class3_exterior_r", check.Fails, "zone 6 asks for 2.04 m2 K/W outside", "wall.layers.5.thickness: 50 mm in place of 40 mm, with a stand-off 8 mm deeper; or wall.retarder: class-2"},
		{"no retarder in zone 5", []string{"wall.retarder=none"}, with(), "class3_exterior_r", check.Fails, "asks for a vapour retarder", "wall.retarder: class-3"},
		{"no retarder in zone 7", []string{"wall.retarder=none", "site.zone=7"}, with(), "class3_exterior_r", check.Fails, "asks for a vapour retarder", "wall.retarder: class-2"},
		{"no retarder in zone 3", []string{"wall.retarder=none", "site.zone=3"}, with(), "class3_exterior_r", check.OK, "", ""},
		{"zone unknown", []string{"site.zone="}, with(), "class3_exterior_r", check.NotChecked, "site.zone is not stated: fill in the climate zone; 3830 K.d of heating speak for 5", ""},
		{"retarder unknown, table", []string{"wall.retarder="}, with(), "class3_exterior_r", check.NotChecked, "wall.retarder is not stated", ""},
		{"two tight sides", append([]string{"wall.retarder=class-1", "site.zone=8"}, xps...), with(), "class3_exterior_r", check.Engineer, "leaves neither way", "wall.layers.5.thickness"},

		{"no heat", nil, nil, "dew_inside_wall", check.NotChecked, "no temperatures: the heat flow was not solved", ""},
		{"no humidity", []string{"site.inside_humidity="}, with(), "mould_room", check.NotChecked, "fill in site.inside_humidity", ""},
		{"no room temperature", []string{"site.inside_temperature="}, with(), "surface_water_room", check.NotChecked, "fill in site.inside_temperature", ""},
		{"no climate", []string{"site.months=", "site.cold_month_temperature="}, with(), "damp_inside_wall", check.NotChecked, "fill in site.months, or site.cold_month_temperature", ""},
		{"no climate, heat or humidity", []string{"site.months=", "site.cold_month_temperature=", "site.inside_humidity="}, nil, "dew_inside_wall", check.NotChecked, "site.inside_humidity; no temperatures: the heat flow was not solved", ""},
		{"no room surface", nil, &Solved{Places: warm()[1:]}, "mould_room", check.NotChecked, "names no surface of the room", ""},
		{"no place in the wall", nil, &Solved{Places: warm()[:1]}, "damp_inside_wall", check.NotChecked, "names no place inside the wall", ""},
	} {
		r := run(project(t, c.sets...), c.heat)
		s := r.Find(c.id)
		if s == nil {
			t.Errorf("%s: no step %s", c.name, c.id)
			continue
		}
		if s.Verdict != c.verdict || !strings.Contains(s.Reason, c.reason) || !strings.Contains(s.Fix, c.fix) || c.reason == "" && c.verdict == check.OK && s.Reason != "" {
			t.Errorf("%s: %s: %v, %q, %q; want %v, %q, %q", c.name, c.id, s.Verdict, s.Reason, s.Fix, c.verdict, c.reason, c.fix)
		}
	}
}

var promise = regexp.MustCompile(`(?i)\b(is|are|stays?|keeps?|remains?|:) dry\b`)

// The step says above or below dew point in how many months, and never that anything is dry.
func TestWords(t *testing.T) {
	for _, sets := range [][]string{nil, {"wall.retarder=class-3"}, {"wall.retarder=", "site.months="}} {
		for _, f := range []float64{0.2, 0.4, 0.6, 0.95} {
			r := run(project(t, sets...), with(clear(f), Place{Key: "rim", F: f}, Place{Key: "behind", F: f, Behind: Rim, AtBlock: true}))
			for _, s := range r.Steps {
				if all := s.Name + s.Reason + s.Note; promise.MatchString(all) {
					t.Errorf("%s: %q %q", s.ID, s.Reason, s.Note)
				}
				if strings.HasPrefix(s.ID, "dew_") && !strings.Contains(s.Note, "dew point in") {
					t.Errorf("%s says nothing of its months: %q", s.ID, s.Note)
				}
				if s.Group != check.Moisture || s.Clause == "" {
					t.Errorf("%s: group %v, clause %q", s.ID, s.Group, s.Clause)
				}
			}
		}
	}
}

// A place by hand, f 0.35: T = Te + 0.35 (20 - Te). January, -6 C outside, gives 3.10; February, -5.2: 3.62;
// March, 1.2: 7.78; April, 7.6: 11.94; November, 4.2: 9.73; December, -2.2: 5.57. Four are below 9.27 C, six
// below 12.62. October, 10.2 with the room at 20.1, gives 13.67 against 12.71.
func TestMonthsByHand(t *testing.T) {
	s := run(project(t), with(Place{Key: "rim", F: 0.35})).Find("dew_rim")
	if want := "below dew point in 4 of 12 months, above 80 % RH in 6 of 12 months, of room air; January: 3.1 C, 6.2 K below dew point"; !strings.HasPrefix(s.Note, want) {
		t.Errorf("%q", s.Note)
	}
	near(t, "f", s.Value.V, 0.35, 1e-9)
	near(t, "f needed, (9.27 + 6)/26", s.Limit.V, 0.5873, 2e-4)
	in := run(project(t, "project.units=inch"), with(Place{Key: "rim", F: 0.35})).Find("dew_rim")
	if !strings.Contains(in.Note, "January: 37.6 F, 11.1 F below dew point") {
		t.Errorf("%q", in.Note)
	}
}

// Months may have a room of their own, and a warm month has room air no drier than outside: August, 19.6 C at
// 76 %, holds 1733 Pa, more than half of saturation at 24.8 C, 1565 Pa.
func TestRoomOfTheMonth(t *testing.T) {
	c, lacking := climateOf(project(t, "site.months.0.inside=18C", "site.months.0.inside_humidity=30%"), 1)
	if len(lacking) > 0 {
		t.Fatal(lacking)
	}
	near(t, "January, room", c.months[0].in, 18, 0)
	near(t, "January, 30 % of 2063 Pa", c.months[0].p, 619, 1)
	near(t, "February, room", c.months[1].in, 20, 0)
	near(t, "October, 15 + 10.2/2", c.months[9].in, 20.1, 1e-9)
	near(t, "August, room", c.months[7].in, 24.8, 1e-9)
	near(t, "August, vapour", c.months[7].p, 1733, 2)
	near(t, "August, outside", c.months[7].pOut, c.months[7].p, 0)
}
