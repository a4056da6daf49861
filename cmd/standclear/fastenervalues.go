package main

import (
	"encoding/json"
	"fmt"
	"strings"

	"standclear/detail/check/strength"
	"standclear/detail/unit"
)

// wetService is CM of a dowel fastener in service above 19 % moisture, across a shear plane and pulled
// out alike: NDS 2018 table 11.3.3.
const wetService = 0.7

// fastenerValues is what the command prints.
type fastenerValues struct {
	GoverningMode string             `json:"governing_mode,omitempty"`
	ReferenceLb   float64            `json:"reference_lateral_lb,omitempty"`
	ReferenceN    float64            `json:"reference_lateral_n,omitempty"`
	Modes         map[string]float64 `json:"modes,omitempty"`
	ModesN        map[string]float64 `json:"modes_n,omitempty"`
	AdjustedLb    float64            `json:"adjusted_lateral_lb,omitempty"`
	AdjustedN     float64            `json:"adjusted_lateral_n,omitempty"`
	Factors       map[string]float64 `json:"factors"`
	WithdrawLbIn  float64            `json:"reference_withdrawal_lb_per_in,omitempty"`
	WithdrawNmm   float64            `json:"reference_withdrawal_n_per_mm,omitempty"`
	WithdrawLb    float64            `json:"reference_withdrawal_lb,omitempty"`
	WithdrawN     float64            `json:"reference_withdrawal_n,omitempty"`
	WithdrawAdjLb float64            `json:"adjusted_withdrawal_lb,omitempty"`
	WithdrawAdjN  float64            `json:"adjusted_withdrawal_n,omitempty"`
	Notes         []string           `json:"notes"`
	order         []strength.Mode
}

// values works the case out. The factors are those of one fastener in full edge, end and spacing
// distances at ordinary temperature: NDS 2018 table 11.3.1.
func (c fastenerCase) values() fastenerValues {
	v := fastenerValues{Factors: map[string]float64{"CD": c.duration, "CM": 1, "Ct": 1, "Cg": 1, "Cdelta": 1}}
	if c.wet {
		v.Factors["CM"] = wetService
	}
	k := c.duration * v.Factors["CM"]
	if c.lateral {
		v.order = c.dowel.Yield(c.side, c.main, c.gap)
		least := strength.Least(v.order)
		v.GoverningMode, v.ReferenceLb, v.ReferenceN = least.Name, least.Z.Pounds(), least.Z.Newtons()
		v.Modes, v.ModesN = map[string]float64{}, map[string]float64{}
		for _, m := range v.order {
			v.Modes[m.Name], v.ModesN[m.Name] = m.Z.Pounds(), m.Z.Newtons()
		}
		v.AdjustedLb, v.AdjustedN = k*v.ReferenceLb, k*v.ReferenceN
	}
	if c.pulled {
		w := strength.LagWithdrawal(c.gravity, c.dowel.Nominal)
		if c.dowel.Kind == strength.Screw {
			w = strength.ScrewWithdrawal(c.gravity, c.dowel.Nominal)
		}
		total := unit.Force(float64(w) * float64(c.thread))
		v.WithdrawLbIn, v.WithdrawNmm = w.PLF()/12, float64(w)
		v.WithdrawLb, v.WithdrawN = total.Pounds(), total.Newtons()
		v.WithdrawAdjLb, v.WithdrawAdjN = k*v.WithdrawLb, k*v.WithdrawN
	}
	v.Notes = c.notes()
	return v
}

func (c fastenerCase) notes() []string {
	n := []string{"one fastener with full edge, end and spacing distances, not in end grain, at ordinary temperature"}
	if c.lateral && c.penetrationMin > c.main.Bearing {
		n = append(n, fmt.Sprintf("main bearing %s is under the least penetration %s: the value may not be used (NDS 2018 12.1.4, 12.1.5)", c.main.Bearing.Text(unit.IP), c.penetrationMin.Text(unit.IP)))
	}
	if usual, ok := strength.DowelOf(c.dowel.Kind, c.dowel.Nominal, 0); c.lateral && ok && c.dowel.Fyb > usual.Fyb*1.001 {
		n = append(n, fmt.Sprintf("Fyb as given is above the %s of the standard for this kind and size: show the test or the grade (NDS 2018 appendix I)", usual.Fyb.Stress().Text(unit.IP)))
	}
	if c.gap > 0 {
		n = append(n, "nothing bears on the fastener across the gap; no prescriptive table covers it (AWC TR12-2015 table 1-1)")
	}
	return append(n, "a calculation aid: local code and a licensed engineer decide")
}

func (v fastenerValues) write(e env, asJSON bool, c fastenerCase) error {
	if asJSON {
		enc := json.NewEncoder(e.out)
		enc.SetIndent("", "  ")
		return enc.Encode(v)
	}
	var b strings.Builder
	if c.lateral {
		fmt.Fprintf(&b, "bearing strength: side %s, main %s; Fyb %s, bearing diameter %.3f in\n\n", c.side.Fe.Stress().Text(unit.IP), c.main.Fe.Stress().Text(unit.IP), c.dowel.Fyb.Stress().Text(unit.IP), c.dowel.Root.Inches())
		fmt.Fprintf(&b, "MODE  YIELD LOAD   Rd     REFERENCE\n")
		for _, m := range v.order {
			mark := ""
			if m.Name == v.GoverningMode {
				mark = "governs"
			}
			fmt.Fprintf(&b, "%-5s %9.0f lb  %5.3f  %s\n", m.Name, m.P.Pounds(), m.Rd, strings.TrimSpace(fmt.Sprintf("%5.0f lb  %7.0f N  %s", m.Z.Pounds(), m.Z.Newtons(), mark)))
		}
		fmt.Fprintf(&b, "\nreference lateral value  %.0f lb  %.0f N  (NDS 2018 12.3, TR12-2015 table 1-1)\n", v.ReferenceLb, v.ReferenceN)
		fmt.Fprintf(&b, "adjusted lateral value   %.0f lb  %.0f N  = reference x %s\n", v.AdjustedLb, v.AdjustedN, factorText(v.Factors))
	}
	if c.pulled {
		fmt.Fprintf(&b, "reference withdrawal     %.0f lb/in  %.1f N/mm of thread  (NDS 2018 12.2)\n", v.WithdrawLbIn, v.WithdrawNmm)
		if c.thread > 0 {
			fmt.Fprintf(&b, "over the thread          %.0f lb  %.0f N\nadjusted withdrawal      %.0f lb  %.0f N  = over the thread x %s\n", v.WithdrawLb, v.WithdrawN, v.WithdrawAdjLb, v.WithdrawAdjN, factorText(v.Factors))
		}
	}
	for _, n := range v.Notes {
		fmt.Fprintf(&b, "note: %s\n", n)
	}
	_, err := e.out.Write([]byte(b.String()))
	return err
}

func factorText(f map[string]float64) string {
	var t []string
	for _, n := range []string{"CD", "CM", "Ct", "Cg", "Cdelta"} {
		t = append(t, fmt.Sprintf("%s %g", n, f[n]))
	}
	return strings.Join(t, " ")
}
