package fit

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"standclear/detail/check"
)

// durable checks what is to last outside: treated wood, metal that the treatment does not eat, steel of
// a known grade.
func (c *fitter) durable() {
	s := c.a.Spec
	treated := "IRC 2021 R317.1 (from memory, confirm): wood in the weather is treated or durable by nature"
	c.holds(check.Step{ID: "treated_ledger", Group: check.Fit, Name: "ledger treated against decay", Clause: treated, Where: "ledger",
		Reason: "ledger.treated: no, and " + s.Ledger.Species + " is not durable by nature", Fix: "ledger.treated: yes"}, s.Ledger.Treated)
	c.holds(check.Step{ID: "treated_blocks", Group: check.Fit, Name: "blocks treated against decay", Clause: treated, Where: "all blocks",
		Reason: "blocks.treated: no, and " + s.Blocks.Species + " is not durable by nature", Fix: "blocks.treated: yes"}, s.Blocks.Treated)
	for i, set := range s.Fasteners.Sets() {
		suffix := []string{"", "_2"}[min(i, 1)]
		c.holds(check.Step{ID: "coating" + suffix, Group: check.Fit, Name: "fasteners safe in treated wood", Clause: "IRC 2021 R317.3 (from memory, confirm): hot-dip galvanized, stainless steel, silicon bronze or copper",
			Where: "all blocks", Reason: fmt.Sprintf("coating %q is none of those that last in treated wood: hot-dip galvanized, stainless steel, silicon bronze, copper", set.Coating), Fix: c.key(set) + ".coating: hot-dip galvanized"}, suits(set.Coating))
		if set.Kind == "evaluated" || knownSteel(set.Grade) {
			continue
		}
		c.r.Add(check.Step{ID: "steel" + suffix, Group: check.Fit, Name: "grade of the fasteners' steel", Verdict: check.NotChecked, Where: "all blocks", Clause: "project: fasteners grade",
			Reason: "\"" + set.Grade + "\" is no grade this program knows: the bending yield strength rests on A307 or 4.6"})
	}
}

// hazards checks what the site asks beyond loads: metal on treated wood, wildfire, termites.
func (c *fitter) hazards() {
	s := c.a.Spec
	metal := check.Step{ID: "flashing_material", Group: check.Water, Name: "flashing metal safe on treated wood", Clause: "IRC 2021 R317.3, R507.2.4 (from memory, confirm): galvanized or stainless steel, copper; not bare aluminum on copper-treated wood", Where: "F1", Verdict: check.OK}
	switch k := strings.ToLower(s.Water.Flashing.Material); {
	case strings.Contains(k, "alumin"):
		metal.Verdict, metal.Reason, metal.Fix = check.Fails, "\""+s.Water.Flashing.Material+"\" lies on treated wood and corrodes", "water.flashing.material: galvanized steel"
	case !suits(k) && !strings.Contains(k, "galvani"):
		metal.Verdict, metal.Reason = check.NotChecked, "\""+s.Water.Flashing.Material+"\" is no metal this program knows; galvanized steel, stainless steel and copper are"
	}
	c.r.Add(metal)
	if s.Site.FireInterface {
		fire := check.Step{ID: "ember_screen", Group: check.Water, Name: "openings of the gap in a zone of wildfire", Clause: "local wildland code; common practice, no source: ember-resistant mesh of 1/8 in (3 mm) at most", Where: "under the ledger",
			Verdict: check.Engineer, Reason: "the mesh, the decking and the wood-fibre behind the gap are for the local authority to judge"}
		if !s.Water.Screen {
			fire.Verdict, fire.Reason, fire.Fix = check.Fails, "embers enter the open gap", "water.screen: yes"
		}
		c.r.Add(fire)
	}
	if s.Site.Termites == "heavy" {
		c.r.Add(check.Step{ID: "termites", Group: check.Fit, Name: "termites", Verdict: check.Engineer, Where: "wall below the ledger", Clause: "IRC 2021 R318 (from memory, confirm)",
			Reason: "heavy hazard: barrier, inspection strip and insulation near the ground need a decision"})
	}
}

// suits reports whether a coating stands up to copper in the treatment.
func suits(coating string) bool {
	words := strings.FieldsFunc(strings.ToLower(coating), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	for _, no := range []string{"not", "no", "non", "without", "or"} {
		if slices.Contains(words, no) {
			return false // not a plain statement of one coating
		}
	}
	k := " " + strings.Join(words, " ") + " "
	return slices.ContainsFunc([]string{" hot dip ", " hot dipped ", " hdg ", " stainless ", " silicon bronze ", " copper ", " a2 ", " a4 ", " 304 ", " 316 "}, func(w string) bool { return strings.Contains(k, w) })
}

// knownSteel reports whether a grade is one of the common ones at least as strong in bending as A307.
func knownSteel(grade string) bool {
	k := strings.ToUpper(strings.ReplaceAll(grade, " ", ""))
	return slices.Contains([]string{"A307", "A325", "A449", "F1554", "SAE2", "SAE5", "A2", "A4", "A2-70", "A4-70", "304", "316", "4.6", "4.8", "5.6", "5.8", "8.8", "STEEL"}, k)
}
