package spectest

import (
	"fmt"
	"strings"

	"standclear/detail/spec"
	"standclear/detail/stock"
	"standclear/detail/unit"
)

// change is one thing a user might do to a project.
type change func(g *maker, s *spec.Spec) []string

// changes are tried in any order.
var changes = []change{
	set("ledger.length", span(48, 440)), set("ledger.length", span(60, 240)), set("ledger.height", span(7, 14)), set("ledger.thickness", span(1.25, 3.5)), set("ledger.top_slope", word("1:8", "1:16", "1:4", "0")),
	set("ledger.species", species), set("ledger.treated", word("yes", "no")), splices,
	set("blocks.max_spacing", span(11, 34)), set("blocks.width", span(3.5, 16)), set("blocks.height", span(5, 14)), set("blocks.end_max", span(5, 24)), set("blocks.equal", word("yes", "no")),
	set("blocks.spacer", span(0, 2)), set("blocks.below", span(-2, 4)), set("blocks.grain", word("horizontal", "vertical")), set("blocks.top_slope", word("1:12", "1:4", "0")), plies, pad, set("blocks.ply_screws.count", word("0", "6", "15")),
	rows, diameter, twoSets, set("fasteners.through.columns", word("1", "2", "3")), set("fasteners.through.column_spacing", span(1.5, 5)), set("fasteners.through.washer", word("{kind: round}", "{kind: plate, size: 2in}", "{kind: plate, size: 100mm}")),
	set("fasteners.through.kind", word("bolt", "lag", "screw")),
	houseJoists, set("floor.joists.spacing", span(11, 32)), set("floor.joists.first", span(-10, 20)),
	rim, set("floor.rim.depth", span(7, 16)), backing, tie, set("tie.lateral.count", word("0", "1", "3", "4")), set("tie.lateral.from_end", span(8, 40)), set("floor.access", word("open", "finished", "strip")),
	set("floor.bearing", word("plate", "hangers", "nothing", "unknown")), set("floor.plate", span(0, 4)), set("floor.finish", span(0, 2)),
	layers, set("wall.cladding.behind_ledger", word("yes", "no")), set("wall.cladding.exposure", span(0, 12)), set("wall.stud_spacing", span(12, 30)),
	foundation, deckPlace, set("deck.below_floor", span(-2, 12)), set("deck.decking", span(0.75, 2)), set("deck.joists.spacing", span(9, 26)), deckJoist, set("deck.kind", word("deck", "balcony")),
	set("deck.support", word("posts", "braces", "hung", "cantilever", "unknown")), posts, pointLoads,
	doors, obstacles, water, set("water.screen", word("yes", "no")), set("water.patch.under", word("yes", "no")),
	set("project.units", word("inch", "metric")), paper, paper, set("sheets.section", scale), set("sheets.elevation", scale), set("sheets.plan", scale), set("sheets.shop", scale), names,
	set("site.above", word("none", "roof", "wall", "unknown")), set("loads.snow", word("", "90psf", "0.5kPa")), set("loads.basis", word("IRC", "ASCE")), set("stock.length", span(48, 240)),
}

// value makes the right side of a pair.
type value func(g *maker) string

func set(key string, v value) change {
	return func(g *maker, _ *spec.Spec) []string { return []string{key + "=" + v(g)} }
}

func span(lo, hi float64) value { return func(g *maker) string { return g.length(lo, hi) } }

func word(words ...string) value { return func(g *maker) string { return g.one(words...) } }

func species(g *maker) string {
	all := stock.SpeciesList()
	return all[g.IntN(len(all))].Key
}

// scale is one of the scales of either system, or none: the sheet chooses.
func scale(g *maker) string {
	if g.yes(40) {
		return ""
	}
	sys := unit.System(g.IntN(2))
	all := unit.Scales(sys)
	return unit.ScaleText(all[1+g.IntN(len(all)-2)], sys)
}

func paper(g *maker, _ *spec.Spec) []string {
	return []string{"sheets.size=" + g.one(stock.SheetNames()...)}
}

func length(s *spec.Spec) float64 { return s.Ledger.Length.Inches() }

func splices(g *maker, s *spec.Spec) []string {
	return []string{"ledger.splices=" + g.list(1, 2, 0.2*length(s), 0.8*length(s))}
}

func plies(g *maker, _ *spec.Spec) []string {
	n := 1 + g.IntN(4)
	out := make([]string, n)
	for i := range out {
		out[i] = g.one("1 1/2in", "45mm", "3/4in", "2 1/4in", "{thickness: 3/4in, material: plywood}")
	}
	return []string{"blocks.plies=[" + strings.Join(out, ", ") + "]"}
}

func pad(g *maker, _ *spec.Spec) []string {
	return []string{"blocks.pad={thickness: " + g.length(0.5, 2) + ", strength: 40psi, after: " + g.one("0", "1") + ", foot: " + g.one("yes", "no") + "}"}
}

func rows(g *maker, s *spec.Spec) []string {
	return []string{"fasteners.through.rows=" + g.list(1, 3, 1.5, s.Ledger.Height.Inches()-1.5)}
}

func diameter(g *maker, _ *spec.Spec) []string {
	return []string{"fasteners.through.diameter=" + g.one("1/2in", "3/4in", "M12", "M16", "M20"), "fasteners.through.hole=", "fasteners.through.washer="}
}

// twoSets bolts the blocks to the rim and the ledger to the blocks.
func twoSets(g *maker, s *spec.Spec) []string {
	h := s.Ledger.Height.Inches()
	one := func() string {
		return "{kind: " + g.one("bolt", "lag", "screw") + ", diameter: " + g.one("1/2in", "M12", "3/8in") + ", rows: " + g.list(1, 2, 1.5, h-2) + ", columns: " + g.one("1", "2") + "}"
	}
	return []string{"fasteners={to_rim: " + one() + ", to_block: " + one() + "}"}
}

func houseJoists(g *maker, _ *spec.Spec) []string {
	return []string{"floor.joists.kind=" + g.one("sawn", "i-joist", "truss", "parallel"), "floor.joists.direction=", "floor.joists.flange="}
}

func rim(g *maker, _ *spec.Spec) []string {
	return []string{"floor.rim.material=" + g.one(stock.RimKeys()...), "floor.rim.thickness=" + g.length(1, 4), "floor.rim.gravity="}
}

func backing(g *maker, _ *spec.Spec) []string {
	k := g.one("none", "loose", "carried")
	if k == "none" {
		return []string{"floor.backing={kind: none}"}
	}
	return []string{"floor.backing={kind: " + k + ", material: " + g.one(stock.RimKeys()...) + ", thickness: " + g.length(1.5, 5) + "}"}
}

func tie(g *maker, _ *spec.Spec) []string {
	return []string{"tie.kind=" + g.one("none", "strap", "hold-down"), "tie.length=" + g.length(10, 48)}
}

// layers turns single layers thicker or thinner, takes the insulation out or puts another on.
func layers(g *maker, s *spec.Spec) []string {
	var out []string
	for i, l := range s.Wall.Layers {
		key := fmt.Sprintf("wall.layers.%d.", i)
		switch {
		case l.Role == "insulation":
			out = append(out, key+"thickness="+g.length(0.25, 3), key+"material="+g.one("wood-fibre", "xps", "mineral-wool", "eps"), key+"name="+g.one("BOARD", "STIFF INSULATION BOARD WITH A LONG NAME"))
		case l.Role == "cladding" || l.Role == "cavity" || l.Role == "studs":
			out = append(out, key+"thickness="+g.length(0.5, 1+l.Thickness.Inches()))
		}
	}
	return out
}

func foundation(g *maker, _ *spec.Spec) []string {
	grade := g.length(24, 96)
	return []string{
		"foundation={kind: " + g.one("concrete", "masonry", "wall", "none") + "}", "foundation.grade=-" + grade,
		g.one("foundation.grade_high=", "foundation.grade_high=-"+grade, "foundation.grade_high=-"+g.length(12, 24)),
	}
}

func deckPlace(g *maker, _ *spec.Spec) []string {
	return []string{"deck.projection=", "deck.span=" + g.length(36, 168), "deck.storey=" + g.one("ground", "upper")}
}

func deckJoist(g *maker, _ *spec.Spec) []string {
	return []string{"deck.joists.size=" + g.one("2x6", "2x8", "2x10", "45x145mm", "45x220mm"), "deck.joists.hanger_seat=" + g.length(1.5, 3)}
}

func posts(g *maker, s *spec.Spec) []string {
	return []string{"deck.guard_posts=" + g.list(1, 3, 2, length(s)-2)}
}

func pointLoads(g *maker, s *spec.Spec) []string {
	return []string{"deck.point_loads=[{name: STAIR STRINGER, x: " + g.length(3, length(s)-3) + ", load: " + g.one("500lb", "2kN") + "}]"}
}

func doors(g *maker, s *spec.Spec) []string {
	var out []string
	for range g.IntN(3) {
		from := g.Float64() * length(s) * 0.7
		out = append(out, fmt.Sprintf("{from: %.0fin, to: %.0fin, threshold: %s}", from, from+30+g.Float64()*60, g.length(0, 3)))
	}
	return []string{"doors=[" + strings.Join(out, ", ") + "]"}
}

func obstacles(g *maker, s *spec.Spec) []string {
	var out []string
	for range g.IntN(4) {
		from := g.Float64() * length(s) * 0.95
		out = append(out, fmt.Sprintf("{kind: %s, name: %s, from: %.1fin, to: %.1fin, inside: %s}", g.one("duct", "pipe", "box", "other"), g.one("PIPE", "SUPPLY DUCT", "METER BOX WITH A LONG NAME OF ITS OWN"), from, from+2+g.Float64()*12, g.one("yes", "no")))
	}
	return []string{"obstacles=[" + strings.Join(out, ", ") + "]"}
}

func water(g *maker, _ *spec.Spec) []string {
	return []string{"water.flashing.up=" + g.length(2, 8), "water.flashing.lap=" + g.one("cladding", "wrb", "outside"), "water.flashing.out=" + g.length(1, 4), "water.patch.width=", "water.patch.height=", "water.wrap_lap=" + g.length(0.5, 4)}
}

func names(g *maker, _ *spec.Spec) []string {
	return []string{
		"project.name=" + g.one("A", strings.Repeat("LONG NAME ", 1+g.IntN(9))), "project.element=" + g.one("", strings.Repeat("ELEMENT ", 1+g.IntN(9))),
		"project.notes=" + g.one("", "[CALL BEFORE DIGGING]", "["+strings.TrimSuffix(strings.Repeat("A NOTE OF THE OWNER THAT RUNS OVER SEVERAL LINES OF THE STRIP, ", 4), ", ")+"]"),
		g.one("project.reviewer=", "project.reviewer={name: A. REVIEWER OF SOME NAME, licence: PE 12345, date: 2026-11-20}"),
	}
}
