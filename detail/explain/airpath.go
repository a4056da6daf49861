package explain

import (
	"fmt"
	"math"

	"standclear/detail/check/air"
)

// air draws the way of the air from the foot of the gap to the cavity above, each opening with its size and a bar
// beside it.
func (j *Job) air() []string {
	p := air.PathOf(j.Assembly)
	out := []string{
		`wall |#|      |cladding`,
		`     |#|      |____`,
		`     |#|   ^  _\___F1      head   ` + j.bar(p.Head),
		`     |#|   |  |ledger|`,
		`     |#|   |  |      |     gap    ` + j.bar(p.Gap),
		`     |#|   |  |______|`,
		`     |#|:::|:::            screen ` + fmt.Sprintf("%.0f %% free, leaves %s", 100*p.Screen, j.text(p.Gap*p.Screen)),
		`     |#|   ^  <---         foot   ` + j.bar(p.Foot),
		`     |#|      |cladding`,
	}
	state := "OPEN: air passes from foot to top"
	if p.Closed != "" {
		state = "CLOSED: " + p.Closed
	}
	out = append(out, fmt.Sprintf("least throat %s over a height of %s; blocks fill %.0f %% of the length", j.text(p.Throat()), j.text(p.Height), 100*p.Blocked))
	return append(out, state)
}

// bar prints a depth with a bar of it, one character for 2 mm.
func (j *Job) bar(mm float64) string {
	if math.IsInf(mm, 0) {
		return "none"
	}
	n := max(0, min(30, int(math.Round(mm/2))))
	return fmt.Sprintf("%-10s %s", j.text(mm), fmt.Sprintf("%.*s", n, "##############################"))
}
