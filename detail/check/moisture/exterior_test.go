package moisture

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"standclear/detail/unit"
)

// IRC table R702.7 for class III retarders: over 2x4 studs with R-13 and over 2x6 with R-20, and the share of
// the total that this is.
func TestClass3Table(t *testing.T) {
	for _, c := range []struct {
		zone     string
		r24, r26 float64
		s24, s26 float64
	}{{"4C", 2.5, 3.75, 0.16, 0.16}, {"4", 2.5, 3.75, 0.16, 0.16}, {"5", 5, 7.5, 0.28, 0.27}, {"6", 7.5, 11.25, 0.37, 0.36}, {"7", 10, 15, 0.43, 0.43}, {"8", 10, 15, 0.43, 0.43}} {
		r24, ok24 := class3Need(c.zone, 3.5*unit.Inch, rValue(13))
		r26, ok26 := class3Need(c.zone, 5.5*unit.Inch, rValue(20))
		if !ok24 || !ok26 {
			t.Fatalf("zone %s is not in the table", c.zone)
		}
		near(t, c.zone+" 2x4", r24.RValue(), c.r24, 1e-9)
		near(t, c.zone+" 2x6", r26.RValue(), c.r26, 1e-9)
		near(t, c.zone+" 2x4 share", r24.RValue()/(13+r24.RValue()), c.s24, 0.006)
		near(t, c.zone+" 2x6 share", r26.RValue()/(20+r26.RValue()), c.s26, 0.006)
		better, _ := class3Need(c.zone, 5.5*unit.Inch, rValue(30))
		near(t, c.zone+" same share of R-30", better.RValue(), 1.5*c.r26, 1e-9)
		less, _ := class3Need(c.zone, 5.5*unit.Inch, rValue(15))
		near(t, c.zone+" R-15, no less than the table", less.RValue(), c.r26, 1e-9)
	}
	for _, zone := range []string{"1", "2", "3"} {
		if _, asked := class3Need(zone, 5.5*unit.Inch, rValue(20)); asked {
			t.Errorf("zone %s asks for outside insulation", zone)
		}
	}
}

// Zones by degree-days below 65 F, IECC (from memory): 4 from 3,600, 5 from 5,400, 6 from 7,200, 7 from 9,000, 8
// from 12,600.
func TestZoneHint(t *testing.T) {
	for days, zone := range map[string]string{"3500 F.d": "3 or less", "6900 F.d": "5", "7300 F.d": "6", "12700 F.d": "8", "5000 F.d": "4", "9100 F.d": "7"} {
		c := of(t, project(t, "site.degree_days="+days))
		if hint := c.zoneHint(); !strings.HasSuffix(hint, " speak for "+zone) {
			t.Errorf("%s: %s", days, hint)
		}
	}
	if hint := of(t, project(t, "site.degree_days=")).zoneHint(); hint != "" {
		t.Error(hint)
	}
}

// The clear wall by hand, m2 K/W. Inside the sheathing: 0.13 + 0.0125/0.25 + 0.145/0.040 = 3.805. Outside:
// 0.012/0.13 + 0.0005/0.25 + 0.080/0.043 + 0.13 = 2.0848. f = 2.0848/5.8898 = 0.3540; boards 1.860, 10.56 in
// h ft2 F/Btu. A block of three plies of wood: 0.110/0.13 = 0.846.
func TestClearWallByHand(t *testing.T) {
	c := of(t, project(t))
	near(t, "series", c.series(), 0.3540, 1e-4)
	near(t, "outside", float64(c.outsideR()), 1.8605, 1e-4)
	r := run(project(t), with())
	near(t, "plies", r.Find("block_exterior_r").Value.V, 0.110/0.13, 1e-9)
	near(t, "plies and pad", run(project(t, "blocks.pad.thickness=20mm"), with()).Find("block_exterior_r").Value.V, 0.110/0.13+0.020/0.035, 1e-9)
}

// Thicker boards by hand, class III: the three coldest months are at -4.47 C in the mean, so f 13.74/24.47 =
// 0.5615 is asked for, R outside 0.5615/0.4385 x 3.805 = 4.872, 2.787 more, 119.9 mm of wood-fibre: 40 + 120 in
// steps of 10. The gap of 28 mm then asks for 200 + 28 - 110 = 118 mm of stand-off more.
func TestThickerByHand(t *testing.T) {
	s := run(project(t, "wall.retarder=class-3"), with(clear(0.3540))).Find("dew_clear")
	if want := "wall.layers.5.thickness: 160 mm in place of 40 mm, with a stand-off 118 mm deeper (by the ratio of the layers); or wall.retarder"; !strings.HasPrefix(s.Fix, want) {
		t.Errorf("%q", s.Fix)
	}
}

// The thinnest pad whose place passes is offered; f 0.5873 is needed.
func TestPads(t *testing.T) {
	heat := with(Place{Key: "bolt", F: 0.5, Bolt: true, AtBlock: true})
	for mm, f := range map[float64]float64{60: 0.7, 20: 0.55, 40: 0.6} {
		heat.Pads = append(heat.Pads, Padded{Thickness: unit.Length(mm), Places: []Place{{Key: "bolt", F: f}, {Key: "rim", F: 0.9}}})
	}
	s := run(project(t), heat).Find("dew_bolt")
	if !strings.HasPrefix(s.Fix, "blocks.pad.thickness: 40 mm") {
		t.Errorf("%q", s.Fix)
	}
	heat.Pads = heat.Pads[:0]
	if s := run(project(t), heat).Find("dew_bolt"); strings.Contains(s.Fix, "pad") {
		t.Errorf("%q offers a pad nobody solved", s.Fix)
	}
}

var offer = regexp.MustCompile(`site\.inside_humidity: (\d+) % at most`)

// The humidity offered passes, and one per cent more does not.
func TestGreatestHumidity(t *testing.T) {
	places := []Place{
		{Key: "corner", F: 0.65, Room: true}, {Key: "rim", F: 0.45}, {Key: "bolt", F: 0.55, Bolt: true, AtBlock: true},
		{Key: "clear", F: 0.25, Behind: Cavity}, {Key: "behind", F: 0.3, Behind: Rim, AtBlock: true},
	}
	tried := 0
	for _, retarder := range []string{"class-1", "class-2", "class-3", "none", "unknown"} {
		house := project(t, "wall.retarder="+retarder)
		for _, s := range run(house, &Solved{Places: places}).Steps {
			m := offer.FindStringSubmatch(s.Fix)
			if m == nil {
				continue
			}
			tried++
			n, _ := strconv.Atoi(m[1])
			at := func(n int) bool {
				*house.Site.Humidity = unit.Percent(n) / 100
				again := run(house, &Solved{Places: places}).Find(s.ID)
				return again.Verdict.String() == "OK"
			}
			if !at(n) || at(n+1) {
				t.Errorf("%s %s: %d %% passes %v, %d %% %v", retarder, s.ID, n, at(n), n+1, at(n+1))
			}
		}
	}
	if tried < 20 {
		t.Errorf("%d offers", tried)
	}
}

// Warmer places and drier rooms never get a worse verdict.
func TestMilder(t *testing.T) {
	house := project(t)
	rank := map[string]int{"OK": 0, "ENGINEER": 1, "FAILS": 2, "-": 1}
	for _, p := range []Place{{Key: "x"}, {Key: "x", Behind: Cavity}, {Key: "x", Behind: Rim}, {Key: "x", Behind: Rim, AtBlock: true}, {Key: "x", Room: true}} {
		id := "dew_x"
		if p.Room {
			id = "mould_room"
		}
		for _, retarder := range []string{"class-1", "class-2", "class-3", "none"} {
			for rh := 20; rh <= 70; rh += 10 {
				house.Wall.Retarder, *house.Site.Humidity = retarder, unit.Percent(rh)/100
				worst := 2
				for f := 0.0; f <= 1; f += 0.1 {
					p.F = f
					s := run(house, &Solved{Places: []Place{p}}).Find(id)
					if got := rank[s.Verdict.String()]; got > worst {
						t.Errorf("%s behind %d, %s, %d %%: %v at f %.2f", id, p.Behind, retarder, rh, s.Verdict, f)
					} else {
						worst = got
					}
				}
			}
		}
	}
}
