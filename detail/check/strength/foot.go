package strength

import "standclear/detail/check"

// footStress checks the bearing at the foot of a face; it takes no load duration factor.
func (c *calc) footStress(f face) {
	step := check.Step{ID: "foot_peak_stress" + f.id, Group: check.Block, Symbol: "fc", Name: "bearing at the foot, " + f.name,
		Formula: "2T/(c b) <= least Fc-perp CM", Cap: c.a.Cap,
		Clause: "NDS 2018 3.10.2", Where: c.worstMark()}
	if f.spacers {
		step.Formula, step.Note = "T/(columns A) <= least Fc-perp CM",
			"spacers on the lowest bolts, as large as the washers, push"
	}
	if f.lack != "" {
		c.notChecked(step, f.lack)
		return
	}
	c.worst(func(k solution) check.Step {
		p := c.whole(f, k.most())
		s := step
		s.Value, s.Limit = psi(p.peak), check.Limit(psi(f.limit))
		s.With = []check.Arg{arg("T", lb(p.t)), arg("c", inch(p.depth)), arg("b", c.m.Blocks.Width.Q())}
		s.Note = join(s.Note, "limit of the "+f.of)
		return s
	})
}

// footStands checks that something solid stands behind the foot, and that the sheathing there is wood.
func (c *calc) footStands() {
	b, r := c.m.Blocks, c.m.Rim
	s := check.Step{ID: "foot_on_rim", Group: check.Block, Name: "foot of the block below the bottom of the rim",
		Clause: "judgement", Where: "all blocks", Verdict: check.OK}
	if below := (r.Bottom - b.Bottom).Inches(); below > 0 {
		s.Value = inch(below)
	}
	switch {
	case b.Bottom >= r.Bottom:
		s.Note = "the foot bears against the rim"
	case r.Bearing == OnPlate && b.Bottom >= r.Bottom-c.m.Plate.Thickness:
		s.Note = "part of the foot bears against the plate below the rim"
	default:
		s.Verdict, s.Reason = check.Fails,
			"the foot reaches "+c.say(s.Value)+" below the rim, past any plate: nothing known stands behind it"
	}
	c.add(s)
	sheath := check.Step{ID: "foot_sheathing", Group: check.Block, Name: "sheathing at the foot carries bearing",
		Clause: "judgement", Where: "all blocks", Verdict: check.OK}
	if c.m.Sheathing.Thickness > 0 && !c.m.Sheathing.Structural {
		sheath.Verdict, sheath.Reason = check.Fails,
			"the sheathing is not a wood panel or lumber: it is crushed at the foot of the block"
	}
	c.add(sheath)
}
