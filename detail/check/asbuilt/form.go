package asbuilt

import (
	"fmt"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/unit"
)

// Form returns a field sheet to fill in: everything there is to measure on the assembly, with what is drawn and how
// near it must be beside each. As it stands it measures nothing. The title names the project.
func Form(title string, a *detail.Assembly, r *check.Report) []byte {
	var b strings.Builder
	line := func(depth int, key, about string) {
		fmt.Fprintln(&b, strings.TrimRight(fmt.Sprintf("%-28s # %s", strings.Repeat("  ", depth)+key+":", about), " #"))
	}
	sys := a.Spec.Project.System
	fmt.Fprintf(&b, "# FIELD SHEET OF %s\n#\n# Write beside each key what you measured, with its unit: %s. What stays empty says NOT CHECKED.\n# x runs right from the left end of the ledger seen from outside; heights from the finished floor, down is minus.\n# A block that is not there: B3: missing. A block that is not drawn: X1: {at: %s}.\n\n",
		title, pickText(sys, `7 1/2in, 14'-8", 1.375in`, "80mm, 1.2m"), pickText(sys, "40in", "1000mm"))
	fmt.Fprintf(&b, "parameters: %q      # of the drawings that were measured against\n", a.Spec.Hash())
	line(0, "measured_by", "")
	line(0, "date", "")
	section := ""
	for _, m := range measures(a) {
		if m.section != section {
			section = m.section
			fmt.Fprintf(&b, "\n%s:\n", section)
		}
		line(1, m.key, join("drawn "+m.drawnText(sys), m.nearText(sys), m.about))
	}
	fmt.Fprintf(&b, "\nblocks:\n")
	near := nearOf(a, r)
	for _, k := range a.Blocks {
		fmt.Fprintf(&b, "  %s:\n", k.Mark)
		line(2, "at", join("drawn "+unit.Length(k.X).Text(sys), within(near.at, sys), "centre of the block along the ledger"))
		line(2, "gap", join("drawn "+a.Spec.Blocks.Spacer.Text(sys), within(near.gap, sys), "open between block and ledger, greatest"))
		for _, name := range setNames(a.Spec) {
			set := setOf(a.Spec, name)
			var rows []string
			for _, z := range set.Rows {
				rows = append(rows, z.Text(sys))
			}
			fmt.Fprintf(&b, "    %s:\n", name)
			line(3, "count", fmt.Sprintf("drawn %d; fasteners of this block, seen and tight", perBlock(a, name)))
			line(3, "diameter", join("drawn "+set.Diameter.Text(sys), within(near.diameter, sys), "the thinnest"))
			line(3, "rows", join("drawn ["+strings.Join(rows, ", ")+"]", within(near.row, sys), "below the top of the "+pickText2(name == "to_rim", "block", "ledger")))
			line(3, "end", join("drawn "+endOf(a, name).Text(sys), within(near.end, sys), "outermost fastener to the end of the block, the least"))
		}
	}
	return []byte(b.String())
}

// within says how near a value must be.
func within(near unit.Length, sys unit.System) string { return "within " + NearText(near, sys) }

// NearText prints a tolerance: 1/32", 0.5 mm.
func NearText(near unit.Length, sys unit.System) string {
	if sys == unit.SI {
		return near.Q().Text(sys)
	}
	return near.FeetInches(unit.SixtyFourth)
}

func (m measure) nearText(sys unit.System) string {
	switch {
	case m.kind == unit.KPercent:
		return "dry is 19% or less"
	case m.exact:
		return ""
	}
	return within(m.near, sys)
}

// drawnText prints the drawn value.
func (m measure) drawnText(sys unit.System) string { return m.drawn.Text(m.kind, sys) }

// Text prints a value of a kind.
func (v Value) Text(kind unit.Kind, sys unit.System) string {
	switch {
	case v.Word != "":
		return v.Word
	case kind == unit.KLength:
		return unit.Length(v.V).Q().Text(sys)
	}
	return unit.Quantity{V: v.V, Kind: kind}.Text(sys)
}

func pickText(sys unit.System, ip, si string) string { return pickText2(sys == unit.IP, ip, si) }

func pickText2(is bool, yes, no string) string {
	if is {
		return yes
	}
	return no
}

// join joins what is not empty by semicolons.
func join(parts ...string) string {
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return strings.Join(out, "; ")
}
