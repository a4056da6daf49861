package air_test

import (
	"math"
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/detailtest"
)

// The inch deck in its cold month of -6 C and 80 %, worked by hand. Drive: 9.81 x 0.235 x (1.3213 - 1.3164) = 0.0114 Pa of
// warmth and 1.3213/2 x 0.05 x 2^2 = 0.1321 Pa of wind. At 0.0817 m/s the gap of 34.9 mm takes 0.0032 Pa of friction
// and 0.0066 at its ends, the foot of 12.7 mm 0.0925, the top of 19.05 mm 0.0411: 0.1434 Pa, and 3600 x 0.0817/0.235
// = 1252 changes an hour. Room for vapour 368.1/(461.5 x 267.15) x 0.20 = 0.597 g/m3, beta = 4.86 x 2.219e-5/(2 x
// 0.0349) = 1.544e-3 m/s, NTU = 1.544e-3 x 0.235/0.00285 = 0.127: 17.6 g a day for a metre.
// Rain: 44 in = 1117.6 mm, a wall gets 0.2 x 4/pi of it, 1 % of that gets in, on a strip of 0.078 + 1/2 + 9 1/4 + 1/2 in:
// 1117.6 x 0.2546 x 0.01/365 x 262.3 mm = 2.05 g a day for a metre.
func TestDryingOfTheDeck(t *testing.T) {
	r := report(detailtest.Demo(t, "deck"))
	for id, want := range map[string]float64{"gap_air_change": 1252, "drying_rate": 17.6, "rain_entry": 2.05} {
		if got := found(t, r, id).Value.V; math.Abs(got-want) > 0.02*want {
			t.Errorf("%s is %.4g, want %.4g", id, got, want)
		}
	}
	// The run: 176 - 9 x 8 3/4 in = 2.47 m of gap, a little less under the door; rain on 4.47 m. 43.2 / 9.14 = 4.7.
	if s := found(t, r, "drying_ratio"); s.Verdict != check.OK || math.Abs(s.Value.V-4.72) > 0.1 || !strings.Contains(s.Note, "no moisture simulation") {
		t.Errorf("ratio %.3f, %v, %q", s.Value.V, s.Verdict, s.Note)
	}
}

// Twice the rain halves the ratio; wider blocks, colder air and a finer screen lower it; each project changes one thing.
func TestRatioRanks(t *testing.T) {
	ratio := func(sets ...string) float64 {
		return found(t, report(detailtest.Demo(t, "deck", sets...)), "drying_ratio").Value.V
	}
	base := ratio()
	if got := ratio("site.rain=88in"); math.Abs(got-base/2) > 1e-9 {
		t.Errorf("twice the rain: %.4f of %.4f", got, base)
	}
	for _, worse := range []string{"blocks.width=9 1/2in", "site.cold_month_temperature=-12C", "water.screen_free=30%", "wall.cladding.below_ledger=3/8in"} {
		if got := ratio(worse); got >= base {
			t.Errorf("%s: %.4f, no less than %.4f", worse, got, base)
		}
	}
}

// Without rain there is no ratio, and no verdict that all is well.
func TestNoRainIsNoRatio(t *testing.T) {
	s := found(t, report(detailtest.Demo(t, "deck", "site.rain=0in")), "drying_ratio")
	if s.Verdict != check.NotChecked || s.Value.V != 0 || !strings.Contains(s.Reason, "no rain gets in") {
		t.Errorf("%v, %v, %q", s.Verdict, s.Value, s.Reason)
	}
}

// What the verdict rests on is printed as a judgement.
func TestAssumptionsArePrinted(t *testing.T) {
	r := report(detailtest.Demo(t, "deck"))
	all := ""
	for _, a := range r.Assumptions {
		if a.Source != "judgement" {
			t.Errorf("%q rests on %q", a.Text, a.Source)
		}
		all += a.Text + "\n"
	}
	for _, say := range []string{"80 % relative humidity", "wind of 2 m/s", "open at its head"} {
		if !strings.Contains(all, say) {
			t.Errorf("not said: %s", say)
		}
	}
}

// The spread of the deck by hand. A dull still day: 9.81 x 0.235 x (1.3213 - 1.3188) = 0.0057 Pa and no wind move 0.01554 m/s, as
// 0.0019 Pa of it go at the walls and ends and 0.0038 at foot and top: 238 changes an hour, 0.543 l/s a metre at NTU 0.668: 13.7 g
// a day. Sun and wind: 0.0341 + 1.3213/2 x 0.2 x 4 = 0.5623 Pa move 0.1626 m/s, 2491 changes, 18.1 g.
func TestSpreadOfTheDeck(t *testing.T) {
	r := report(detailtest.Demo(t, "deck"))
	if note := found(t, r, "gap_air_change").Note; !strings.HasPrefix(note, "from 238 on a dull still day") || !strings.Contains(note, "to 2491 in sun and wind") {
		t.Errorf("%q, want 238 and 2491", note)
	}
	// 13.65 and 18.13 g/(m day) are 0.147 and 0.195 oz/(ft day).
	if note := found(t, r, "drying_rate").Note; note != "from 0.15 oz/(ft day) to 0.19 oz/(ft day)" {
		t.Errorf("%q", note)
	}
}
