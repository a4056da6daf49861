package spec

import (
	"fmt"
	"math"

	"standclear/detail/unit"
)

// monthKeys are the means of the months.
func monthKeys(s *Site) key {
	return key{name: "months", about: "means of the 12 months, January first", kind: aList, series: &series{
		grow:  func(n int) { s.Months = make([]Month, n) },
		count: func() int { return len(s.Months) },
		each:  func(i int) []key { return oneMonth(&s.Months[i]) },
		rows: func() []pair {
			rows := []pair{{"{outside: 21F, humidity: 80%, inside: 68F, inside_humidity: 35%}", "{outside: -6C, humidity: 80%, inside: 20C, inside_humidity: 35%}"}}
			for _, m := range []struct{ f, c, rh int }{
				{23, -5, 78}, {34, 1, 74}, {46, 8, 69}, {55, 13, 69}, {64, 18, 72}, {69, 21, 73}, {67, 19, 76}, {60, 15, 78}, {50, 10, 76}, {40, 4, 79}, {28, -2, 82},
			} {
				rows = append(rows, pair{fmt.Sprintf("{outside: %dF, humidity: %d%%}", m.f, m.rh), fmt.Sprintf("{outside: %dC, humidity: %d%%}", m.c, m.rh)})
			}
			return rows
		},
	}}
}

func oneMonth(m *Month) []key {
	return []key{
		value(aTemp, "outside", field[unit.Temp]{&m.Outside}, "mean of the month").within(-60, 45).survey("21F", "-6C"),
		value(aShare, "humidity", field[unit.Percent]{&m.Humidity}, "outside, mean of the month").within(0.05, 1).survey("80%", "80%"),
		value(aTemp, "inside", maybe[unit.Temp]{&m.Inside}, "room air; else inside_temperature, more in warm months").within(5, 35).eg("68F", "20C"),
		value(aShare, "inside_humidity", maybe[unit.Percent]{&m.InsideHumidity}, "room air; else that of the winter, no drier than outside").within(0.05, 0.95).eg("35%", "35%"),
	}
}

// checkMonths asks for a whole year or nothing.
func (r *reader) checkMonths() {
	if n := len(r.spec.Site.Months); n != 0 && n != 12 && r.good("site.months") {
		r.fail(r.at("site.months"), "site.months", fmt.Sprintf("the list has %d", n), "12 months are wanted, January first, or none", "")
	}
}

// coldestMonth warns where the list of months and the coldest month stated apart do not agree.
func (r *reader) coldestMonth() {
	s := r.spec.Site
	if len(s.Months) == 0 || s.ColdMonth == nil || !r.good("site.months", "site.cold_month_temperature") {
		return
	}
	least := s.Months[0].Outside
	for _, m := range s.Months {
		least = min(least, m.Outside)
	}
	if math.Abs(float64(least-*s.ColdMonth)) > 0.6 {
		given := fmt.Sprintf("%s, but the coldest of site.months has %s", s.ColdMonth.Text(r.sys()), least.Text(r.sys()))
		r.caution(r.at("site.cold_month_temperature"), "site.cold_month_temperature", given, "look which of the two holds")
	}
}
