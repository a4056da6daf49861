package explain

import (
	"fmt"
	"math"

	"standclear/detail"
)

// block draws the eccentric block to scale, its row of bolts, and the forces on it: the load at the hanger seats, the
// pull of the top row, the push at the foot.
//
//	T <--|-----------|
//	     |           | R
//	C -->|           v
func (j *Job) block() []string {
	f := j.Assembly.Frame
	if len(j.Assembly.Blocks) == 0 || len(j.Assembly.Rows) == 0 {
		return nil
	}
	const left, high = 8, 16
	x := ruler{f.BackingIn, f.LoadLine, wide - left - 10}
	top, foot := math.Max(f.LedgerTop, f.RimTop), math.Min(f.BlockBottom, f.LedgerBottom)
	z := ruler{foot, top, high}
	col := func(mm float64) int { return left + x.at(mm) }
	row := func(mm float64) int { return high - 1 - z.at(mm) }
	c := newCanvas(wide, high+2)
	outline := func(y0, y1, z0, z1 float64) {
		if y1-y0 > 0.01 {
			c.box(col(y0), row(z1), col(y1), row(z0))
		}
	}
	outline(f.BackingIn, f.RimIn, foot, math.Min(top, f.RimTop))
	outline(f.RimIn, f.RimOut, foot, math.Min(top, f.RimTop))
	outline(0, f.BlockOut, f.BlockBottom, f.BlockTop)
	outline(f.LedgerBack, f.LedgerFront, f.LedgerBottom, f.LedgerTop)
	for _, r := range j.Assembly.Rows {
		g := j.Assembly.Grip(r.Set)
		c.across(col(g.Inner), col(g.Outer), row(r.Z), '=')
	}
	t := j.Assembly.Rows[0].Z
	c.put(0, row(t), "T <----")
	if arm := j.Results.LeverArm.MM(); arm > 0 {
		c.put(0, row(t-arm), "C ---->")
		c.put(0, (row(t)+row(t-arm))/2, "  z")
	}
	c.down(col(f.LoadLine), row(f.LedgerTop), row(f.LedgerBottom)-1, '|')
	c.put(col(f.LoadLine), row(f.LedgerBottom)-1, "v")
	c.put(col(f.LoadLine)+2, row((f.LedgerTop+f.LedgerBottom)/2), "R")
	c.across(col(f.RimOut), col(f.LoadLine), high, '-')
	c.put(col(f.RimOut), high, "<")
	c.put(col(f.LoadLine), high, ">")
	c.put((col(f.RimOut)+col(f.LoadLine))/2, high, " e ")
	out := c.lines()
	out = append(out, fmt.Sprintf("R %s at e %s from the rim: M = R e = %s", j.value("block_reaction_max"), j.value("eccentricity_rim_face_to_ledger_front"), j.value("moment_at_rim_face")))
	return append(out, fmt.Sprintf("z %s: T = C = M/z = %s; %s on one bolt of the top row", j.value("lever_arm"), j.value("top_row_tension"), j.value("tension_per_top_bolt")))
}

// floor draws the bay behind the most loaded block from above: joists, backing with its ties, rim, block.
//
//	|##|~~~~~~~~~~~~~|##|   house joists, ties ~
//	|##|  O       O  |##|   backing, nuts O
//	=====================   rim
//	    [    B1     ]
//
// Where the joists run along the rim there are neither joists nor ties, and the backing is as long as it is built.
func (j *Job) floor() []string {
	a := j.Assembly
	if len(a.Blocks) == 0 {
		return nil
	}
	b := a.Blocks[max(0, min(j.Results.Worst, len(a.Blocks)-1))]
	lo, hi := b.Box.Min.X-300, b.Box.Max.X+300
	half := a.Spec.Floor.Joists.Flange.MM() / 2
	for _, x := range a.HouseJoists {
		if x < b.X {
			lo = math.Min(b.Box.Min.X-20, x-2*half)
		}
	}
	for i := len(a.HouseJoists) - 1; i >= 0; i-- {
		if a.HouseJoists[i] > b.X {
			hi = math.Max(b.Box.Max.X+20, a.HouseJoists[i]+2*half)
		}
	}
	r := ruler{lo, hi, wide}
	c := newCanvas(wide, 9)
	left, right := 0, wide-1
	for _, x := range a.HouseJoists {
		if x+half < lo || x-half > hi {
			continue
		}
		x0, x1 := r.at(x-half), r.at(x+half)
		c.box(x0, 0, x1, 4)
		c.fill(x0, 0, x1, 4, '#')
		if x < b.X {
			left = x1
		} else {
			right = min(right, x0)
		}
	}
	along := len(a.HouseJoists) == 0
	switch {
	case along:
		for _, p := range a.Find(detail.Backing) {
			x := p.Bounds()
			c.box(r.at(x.Min.X), 1, r.at(x.Max.X), 4)
			c.put(r.at(x.Min.X)+2, 2, "backing, "+a.Spec.Floor.Backing.Kind)
		}
	case a.Spec.Floor.Backing.Kind != "none":
		c.box(left, 1, right, 4)
		c.put(left+2, 2, "backing, "+a.Spec.Floor.Backing.Kind)
	}
	if a.Spec.Tie.Kind != "none" && !along {
		c.across(left+1, left+6, 0, '~')
		c.across(right-6, right-1, 0, '~')
	}
	c.across(0, wide-1, 5, '=')
	c.put(wide/2-2, 5, " rim ")
	c.box(r.at(b.Box.Min.X), 6, r.at(b.Box.Max.X), 8)
	c.put(r.at(b.X)-1, 7, b.Mark)
	for _, at := range b.Bolts {
		c.put(r.at(at.X), 3, "O")
		c.put(r.at(at.X), 4, "|")
		c.put(r.at(at.X), 5, "|")
		c.put(r.at(at.X), 6, "|")
	}
	out := c.lines()
	path := fmt.Sprintf("by %s (~) into the house joists (#)", either(a.Spec.Tie.Kind == "none", "no tie", "ties"))
	if along {
		path = "no tie: house joists run along the rim"
	}
	out = append(out, fmt.Sprintf("pull T %s of the top bolts (O nuts) into %s, %s", j.value("top_row_tension"), either(a.Spec.Floor.Backing.Kind == "none", "the rim", "the backing"), path))
	out = append(out, fmt.Sprintf("one tie: %s; push of the foot into %s, couple on the floor %s", j.value("tie_rating"), either(along, "the rim", "rim and joist ends"), j.value("floor_couple")))
	return append(out, fmt.Sprintf("load down on rim and plate: R %s", j.value("block_reaction_max")))
}

func either(yes bool, a, b string) string {
	if yes {
		return a
	}
	return b
}
