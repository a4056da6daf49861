package size

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"standclear/detail/spec"
	"standclear/detail/stock"
	"standclear/detail/sweep"
	"standclear/detail/unit"
)

// Free lists the keys that can be freed, for messages.
const Free = "blocks.max_spacing, blocks.plies, blocks.width, blocks.ply_screws.count, blocks.ledger_screws.count, " +
	"fasteners.SET.diameter and fasteners.SET.columns with SET through, to_rim or to_block"

// Stock lists what a parameter can be in steps that are sold or set out: spacings of 2 in (50 mm) and widths of
// 1/2 in (10 mm), as a tape is read (judgement); plies of lumber; bolt and lag sizes, each with its hole.
func Stock(key string, s *spec.Spec) (sweep.Axis, error) {
	sys := s.Project.System
	a := sweep.Axis{Key: key, Scaled: true}
	add := func(text string, at float64, sets ...string) {
		a.Points = append(a.Points, sweep.Point{Text: text, At: at, Sets: append([]string{key + "=" + text}, sets...)})
	}
	run := func(lo, hi, step int, suffix string, each float64) {
		for v := lo; v <= hi; v += step {
			add(strconv.Itoa(v)+suffix, float64(v)*each)
		}
	}
	set, field, isSet := setOf(key, s)
	switch {
	case key == "blocks.max_spacing" && sys == unit.SI:
		run(300, 1800, 50, "mm", 1)
	case key == "blocks.max_spacing":
		run(12, 72, 2, "in", 25.4)
	case key == "blocks.width" && sys == unit.SI:
		run(120, 300, 10, "mm", 1)
	case key == "blocks.width":
		for v := 5.0; v <= 12; v += 0.5 {
			add(inches(v), v*25.4)
		}
	case key == "blocks.ply_screws.count" || key == "blocks.ledger_screws.count":
		run(2, 20, 2, "", 1)
	case key == "blocks.plies":
		plies(s, add)
	case isSet && field == "columns":
		run(1, 3, 1, "", 1)
	case isSet && field == "diameter":
		return a, diameters(key, set, sys, add)
	default:
		return a, fmt.Errorf("%q cannot be freed; these can: %s", key, Free)
	}
	return a, nil
}

// setOf returns the set of fasteners of a key and what of it is meant.
func setOf(key string, s *spec.Spec) (*spec.Set, string, bool) {
	parts := strings.Split(key, ".")
	if len(parts) != 3 || parts[0] != "fasteners" {
		return nil, "", false
	}
	f := s.Fasteners
	set := map[string]*spec.Set{"through": f.Through, "to_rim": f.ToRim, "to_block": f.ToBlock}[parts[1]]
	return set, parts[2], set != nil
}

// diameters adds the sizes of the set's kind, each with the hole a drill leaves for it.
func diameters(key string, set *spec.Set, sys unit.System, add func(string, float64, ...string)) error {
	switch set.Kind {
	case "bolt":
		for _, b := range stock.Bolts() {
			if b.Metric != (sys == unit.SI) {
				continue
			}
			least, most := b.Hole()
			hole, text := inches(most.Inches()), b.Name+"in"
			if b.Metric {
				hole, text = strconv.FormatFloat((least+most).MM()/2, 'f', -1, 64)+"mm", b.Name
			}
			add(text, b.D.MM(), strings.TrimSuffix(key, "diameter")+"hole="+hole)
		}
	case "lag":
		for _, l := range stock.Lags() {
			add(l.Name+"in", l.D.MM())
		}
	default:
		return fmt.Errorf("%s: a %s has no list of sizes here; bolts and lags have", key, set.Kind)
	}
	return nil
}

// plies adds stacks of one thickness of lumber, alone and with one board, from half to half again the depth
// there is.
func plies(s *spec.Spec, add func(string, float64, ...string)) {
	thick, board, suffix, per := 1.5, 0.75, "in", 25.4
	if s.Project.System == unit.SI {
		thick, board, suffix, per = 45, 20, "mm", 1
	}
	now := s.Blocks.Depth() / per
	print := func(v float64) string {
		if suffix == "in" {
			return inches(v)
		}
		return strconv.FormatFloat(v, 'f', -1, 64) + suffix
	}
	for n := 1; n <= 8; n++ {
		for _, extra := range []float64{0, board} {
			depth := float64(n)*thick + extra
			if depth < now/2-1e-9 || depth > now*1.5+1e-9 {
				continue
			}
			all := make([]string, n)
			for i := range all {
				all[i] = print(thick)
			}
			if extra > 0 {
				all = append(all, print(extra))
			}
			add("["+strings.Join(all, ", ")+"]", depth*per)
		}
	}
}

// inches writes a length in sixteenths as a tape shows it: 8 3/4in.
func inches(v float64) string {
	n := int(math.Round(v * 16))
	whole, part, of := n/16, n%16, 16
	for part > 0 && part%2 == 0 {
		part, of = part/2, of/2
	}
	switch {
	case part == 0:
		return fmt.Sprintf("%din", whole)
	case whole == 0:
		return fmt.Sprintf("%d/%din", part, of)
	}
	return fmt.Sprintf("%d %d/%din", whole, part, of)
}
