package strength

// cautions are what a reader must know whatever the numbers say.
func (c *calc) cautions() {
	c.rep.Cautions = []string{
		"People stand on this connection. These pages are an aid to calculation, not drawings for a permit.",
		"This is not the prescriptive ledger of IRC R507.9: it is an engineered connection, and a design professional answers for it.",
		"A ledger gives way at once and as a whole; nothing else holds the deck up on this side.",
		"Look at the rim from inside before building: what it is made of, its thickness, its joints, rot, and whether every nut can be reached.",
		"Keep joints of the rim away from the blocks by four bolt diameters and more.",
		"Bolts run through to a plate washer and a nut inside, secured against loosening; tighten again after the first year of drying.",
		"Nails carry nothing here.",
		"The rim must stand tight against the ends of the floor joists: the couple of the blocks goes into them by its foot (floor_couple). Shim every gap with steel or hardwood.",
		"Bolts through treated wood, foam and membranes: hot-dip galvanized or stainless steel, stainless at the coast, one metal throughout.",
		"Flash over the ledger, seal every bolt where it passes the water barrier, keep the gap behind the ledger open.",
		"Look the connection over every year: rust, cracks at the bolts, movement, water.",
		"Deck joists, beam, posts and footings, stairs and guards, and what the wall above puts on the rim and its plate are by others and not checked here.",
		"Not for hot tubs, roofs, planters, crowds, or a balcony without posts.",
		"Values of Southern Pine, fastener tables and factors marked from memory must be compared with the standard before use.",
	}
	if !c.m.Blocks.VerticalGrain {
		c.rep.Cautions = append(c.rep.Cautions,
			"The blocks are bent across their grain, for which no standard gives a strength (block_across_grain): an engineer must look at it.")
	}
}
