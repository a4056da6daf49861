package strength

import (
	"math"
	"strings"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// Limits of what this package may judge; beyond them a professional decides. All are judgements.
const (
	scopeGap       = 4.0    // in of dowel without bearing
	scopeE         = 8.0    // in from rim face to load line
	scopeTension   = 1500.0 // lb of pull behind the rim at one block
	scopeRim       = 1.125  // in of rim
	scopeLineLoad  = 420.0  // plf on the ledger
	scopeHeight    = 30.0   // ft above ground
	scopeLive      = 60.0   // psf
	scopePad       = 25.0   // psi, ASTM C578 Type IV
	scopeBlocks    = 3      // at least
	scopePointAway = 2.0    // in from a point load to a block centre
	scopeClause    = "judgement"
)

// scope adds one step for everything that puts a design outside this program. Those that hold print as
// OK lines.
func (c *calc) scope() {
	c.scopeConnection()
	c.scopeRim()
	c.scopeLoads()
	c.scopeUse()
	c.scopePad()
	c.pointLoads()
	c.trusted()
}

// trigger adds an ENGINEER line, or OK.
func (c *calc) trigger(id, name string, bad bool, reason string) {
	c.verdictOf(check.Step{ID: id, Group: check.Scope, Name: name, Clause: scopeClause}, bad, check.Engineer, reason)
}

// bound adds an ENGINEER line when value misses limit, with both.
func (c *calc) bound(id, name string, value, limit unit.Quantity, sense check.Sense) {
	word := "; at most "
	if sense == check.AtLeast {
		word = "; at least "
	}
	c.engineer(check.Step{ID: id, Group: check.Scope, Name: name, Value: value, Limit: check.Limit(limit), Sense: sense,
		Clause: scopeClause},
		name+" is "+c.say(value)+word+c.say(limit)+" may be judged here")
}

// boundLoaded is bound for a number that rests on the loads.
func (c *calc) boundLoaded(s check.Step, value, limit unit.Quantity) {
	s.Value, s.Limit = value, check.Limit(limit)
	c.engineerLoaded(s, s.Name+" is "+c.say(value)+"; at most "+c.say(limit)+" may be judged here")
}

// engineerLoaded is engineer for a number that rests on the loads.
func (c *calc) engineerLoaded(s check.Step, reason string) {
	if s = s.Settled(); s.Verdict == check.Fails {
		s.Verdict, s.Reason = check.Engineer, reason
	}
	c.addLoaded(s)
}

func (c *calc) scopeConnection() {
	_, e := c.offsets()
	gap := 0.0
	groups := c.groups
	if groups == nil {
		groups = c.fastenerGroups()
	}
	for _, g := range groups {
		for _, l := range g.plane {
			gap = math.Max(gap, l.gap)
		}
	}
	c.bound("scope_gap", "longest dowel without bearing", inch(gap), inch(scopeGap), check.AtMost)
	c.bound("scope_eccentricity", "rim face to load line", inch(e), inch(scopeE), check.AtMost)
	switch pull := (check.Step{ID: "scope_tension", Group: check.Scope, Name: "pull behind the rim at one block", Clause: scopeClause}); {
	case len(c.solved) == 0:
	case !c.pulls(c.rimFace(groups[0])):
		c.notChecked(pull, noPull)
	default:
		c.boundLoaded(pull, c.res.Tension.Q(), lb(scopeTension))
	}
	n := len(c.m.Blocks.At)
	c.bound("scope_blocks", "number of blocks", unit.Number(n), unit.Number(scopeBlocks), check.AtLeast)
	standoff, _ := c.offsets()
	c.add(check.Step{ID: "prescriptive", Group: check.Scope, Name: "rim face to ledger",
		Value: inch(standoff + c.m.Sheathing.Thickness.Inches()), Clause: "IRC 2021 R507.9.1.3, R301.1.3, R104.11",
		Note: "over 1 in is no prescriptive ledger: an engineered connection that a design professional answers for"})
}

func (c *calc) scopeRim() {
	r, j := c.m.Rim, c.m.HouseJoists
	c.bound("scope_rim_thickness", "thickness of the rim", r.Thickness.Q(), inch(scopeRim), check.AtLeast)
	kind := r.Kind.String()
	if r.Kind == UnknownRim {
		kind = "of no kind known here"
	}
	c.trigger("scope_rim_kind", "kind of the rim", r.Kind != SawnRim && r.Kind != EngineeredRim,
		"the rim is "+kind+"; sawn lumber or engineered rim board may be judged here")
	wet := r.Kind == EngineeredRim && r.Service != Dry
	c.trigger("scope_rim_wet", "engineered rim in dry service", wet,
		"an engineered rim in wet or unknown service has no design values")
	c.trigger("scope_squash", "squash blocks at I-joists", j.Kind == IJoist && !j.Squash,
		"house I-joists bear beside the rim without squash blocks")
	c.trigger("scope_joist_kind", "kind of the house joists", j.Kind != SawnJoist && j.Kind != IJoist,
		"the house joists are trusses or not stated: a tie cannot be judged")
	c.trigger("scope_joist_direction", "house joists run onto the rim", j.Parallel,
		"the house joists run along the rim: the pull must cross several bays")
}

func (c *calc) scopeLoads() {
	if len(c.solved) > 0 {
		c.boundLoaded(check.Step{ID: "scope_line_load", Group: check.Scope, Name: "load along the ledger", Clause: scopeClause},
			c.res.LineLoad.Q(), perFoot(scopeLineLoad/12))
	}
	if p := c.m.Loads.Live; p != nil {
		c.bound("scope_live", "live load", psf(p.PSF()), psf(scopeLive), check.AtMost)
	} else {
		c.notChecked(check.Step{ID: "scope_live", Group: check.Scope, Name: "live load"}, "live load (loads.live) not stated")
	}
	c.answer("scope_lateral", "no wind or seismic force on the ledger", c.m.Use.Lateral,
		"wind or seismic force in the wall's plane goes through the same gap and is not worked out",
		"whether wind or seismic force is to be resisted here (loads.wind) is not stated")
	category := check.Step{ID: "scope_seismic", Group: check.Scope, Name: "seismic design category", Clause: scopeClause}
	switch s := strings.ToUpper(strings.TrimSpace(c.m.Use.Seismic)); s {
	case "", "UNKNOWN":
		c.notChecked(category, "seismic design category (site.seismic) not stated")
	default:
		reason := "seismic design category " + s + ": D and higher go to an engineer"
		if s == "C" {
			reason = "seismic design category C: townhouses in it are designed for earthquake (IRC 2021 R301.2.2, from memory, confirm), and an engineer must say whether this house is"
		}
		c.trigger(category.ID, category.Name, s != "LOW" && s != "A" && s != "B", reason)
	}
}

// answer adds a trigger that hangs on a question that may not have been answered.
func (c *calc) answer(id, name string, said Answer, reason, unsaid string) {
	if said != Yes && said != No {
		c.notChecked(check.Step{ID: id, Group: check.Scope, Name: name, Clause: scopeClause}, unsaid)
		return
	}
	c.trigger(id, name, said == Yes, reason)
}

func (c *calc) scopeUse() {
	u := c.m.Use
	c.trigger("scope_storey", "storey served", u.UpperFloor, "the ledger serves an upper storey: outside what may be judged here")
	if u.AboveGrade == nil {
		c.notChecked(check.Step{ID: "scope_height", Group: check.Scope,
			Name: "height above ground"}, "height above ground not stated (foundation.grade)")
	} else {
		c.bound("scope_height", "height above ground", u.AboveGrade.Q(), (unit.Length(scopeHeight) * unit.Foot).Q(),
			check.AtMost)
	}
	what := "deck"
	if u.Balcony {
		what = "balcony"
	}
	if u.Support == UnknownSupport {
		c.notChecked(check.Step{ID: "scope_support", Group: check.Scope, Name: "outer edge on posts", Clause: scopeClause},
			"what carries the outer edge of the "+what+" (deck.support) is not stated")
	} else {
		c.trigger("scope_support", "outer edge on posts", u.Support != Posts,
			"the "+what+" does not stand on posts at its outer edge ("+u.Support.String()+"): pull and lift on the ledger are not worked out")
	}
	c.tail()
	var posts []string
	for _, x := range c.m.GuardPosts {
		posts = append(posts, c.say(x.Q()))
	}
	c.trigger("scope_guard", "no guard post on ledger or blocks", len(posts) > 0,
		"guard posts fastened to the ledger or a block twist it: "+strings.Join(posts, ", ")+" from its left end; none may be judged here")
}

func (c *calc) scopePad() {
	p := c.m.Blocks.Pad
	switch {
	case p.Thickness <= 0:
		c.trigger("scope_pad", "strength of the pad", false, "")
	case p.Strength == nil:
		c.notChecked(check.Step{ID: "scope_pad", Group: check.Scope,
			Name: "strength of the pad", Clause: scopeClause}, "pad strength (blocks.pad.strength) not stated")
	default:
		c.bound("scope_pad", "strength of the pad", p.Strength.Stress(), psi(scopePad), check.AtLeast)
	}
}

// pointLoads sends a point load that stands on no block to an engineer. The beam carries it by statics, and
// every block is checked for its share; but the ledger tables of the code leave concentrated loads out.
func (c *calc) pointLoads() {
	s := check.Step{ID: "point_load_on_block", Group: check.Scope, Name: "point load to the nearest block",
		Limit: check.Limit(inch(scopePointAway)), Clause: "judgement; IRC 2021 R507.9.1.3 is for uniform load (from memory, confirm)"}
	worst, reason := -1.0, ""
	for _, p := range c.m.PointLoads {
		away := math.Inf(1)
		for _, b := range c.m.Blocks.At {
			away = math.Min(away, math.Abs((b.X - p.X).Inches()))
		}
		if away > worst {
			worst, s.Where, s.Value = away, p.Name, inch(away)
			reason = "no block within " + c.say(inch(scopePointAway)) + " of the load " + p.Name + " at " + c.say(p.X.Q()) + "; the nearest is " +
				c.say(inch(away)) + " away. The ledger carries it as a beam and is checked for it, but concentrated loads are outside the ledger tables of IRC R507.9.1.3: an engineer must look at it"
		}
	}
	if worst < 0 {
		s.Limit, s.Verdict, s.Note = nil, check.OK, "no point load"
	}
	c.engineer(s, reason)
}
