package strength

import (
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// through returns the model with its through set changed, leaving the original's alone.
func through(m *Model, f func(*Set)) {
	s := *m.Fasteners.Through
	f(&s)
	m.Fasteners.Through = &s
}

// padded gives the block of scenario B a pad with a foot between its plies.
func padded(strength *unit.Pressure) func(*Model) {
	return func(m *Model) {
		m.Blocks.Pad = Pad{Thickness: 0.5 * in, Strength: strength, After: 1, Foot: true}
	}
}

// lowRows puts every bolt row under the top third of the block.
func lowRows(m *Model) { through(m, func(s *Set) { s.Rows = lengths(-3.2, -6.375) }) }

// Every trigger, on the model that passes: with the change it speaks, without it the line is OK.
func TestTriggers(t *testing.T) {
	for _, c := range []struct {
		name, id string
		change   func(*Model)
		want     check.Verdict
	}{
		{"dowel over 4 in without bearing", "scope_gap", func(m *Model) { m.Blocks.FrontGap = 4.1 * in }, check.Engineer},
		{"load line over 8 in out", "scope_eccentricity", func(m *Model) { m.Joists.Seat = 6.1 * in }, check.Engineer},
		{"pull over 1500 lb", "scope_tension", func(m *Model) { m.Joists.Seat = 6 * in; m.Loads.Live = psfp(60) }, check.Engineer},
		{"rim under 1 1/8", "scope_rim_thickness", func(m *Model) { m.Rim.Thickness = in }, check.Engineer},
		{"I-joist rim", "scope_rim_kind", func(m *Model) { m.Rim.Kind = IJoistRim }, check.Engineer},
		{"truss rim", "scope_rim_kind", func(m *Model) { m.Rim.Kind = TrussRim }, check.Engineer},
		{"unknown rim", "scope_rim_kind", func(m *Model) { m.Rim.Kind = UnknownRim }, check.Engineer},
		{"rim on hangers fails", "rim_on_plate", func(m *Model) { m.Rim.Bearing = OnHangers }, check.Fails},
		{"rim over an opening fails", "rim_on_plate", func(m *Model) { m.Rim.Bearing = OnNothing }, check.Fails},
		{"wet engineered rim", "scope_rim_wet", func(m *Model) { m.Rim.Kind = EngineeredRim; m.Rim.Service = Wet }, check.Engineer},
		{"line load over 420 plf", "scope_line_load", func(m *Model) { m.Joists.Span = 14 * unit.Foot }, check.Engineer},
		{"live over 60", "scope_live", func(m *Model) { m.Loads.Live = psfp(61) }, check.Engineer},
		{"live not stated", "scope_live", func(m *Model) { m.Loads.Live = nil }, check.NotChecked},
		{"wind on the ledger", "scope_lateral", func(m *Model) { m.Use.Lateral = Yes }, check.Engineer},
		{"seismic D", "scope_seismic", func(m *Model) { m.Use.Seismic = "d" }, check.Engineer},
		{"seismic C", "scope_seismic", func(m *Model) { m.Use.Seismic = "C" }, check.Engineer},
		{"seismic D2", "scope_seismic", func(m *Model) { m.Use.Seismic = "D2" }, check.Engineer},
		{"seismic not stated", "scope_seismic", func(m *Model) { m.Use.Seismic = "" }, check.NotChecked},
		{"upper storey", "scope_storey", func(m *Model) { m.Use.UpperFloor = true }, check.Engineer},
		{"over 30 ft", "scope_height", func(m *Model) { m.Use.AboveGrade = ptr(31 * unit.Foot) }, check.Engineer},
		{"height not stated", "scope_height", func(m *Model) { m.Use.AboveGrade = nil }, check.NotChecked},
		{"braced", "scope_support", func(m *Model) { m.Use.Support = Braces }, check.Engineer},
		{"hung", "scope_support", func(m *Model) { m.Use.Support = Hung }, check.Engineer},
		{"cantilevered balcony", "scope_support", func(m *Model) { m.Use.Balcony = true; m.Use.Support = Cantilever }, check.Engineer},
		{"support not stated", "scope_support", func(m *Model) { m.Use.Support = UnknownSupport }, check.NotChecked},
		{"joists past the beam", "scope_joist_cantilever", func(m *Model) { m.Joists.Cantilever = 5 * unit.Foot }, check.Engineer},
		{"guard post", "scope_guard", func(m *Model) { m.GuardPosts = lengths(20) }, check.Engineer},
		{"soft pad", "scope_pad", padded(psip(15)), check.Engineer},
		{"pad of unknown strength", "scope_pad", padded(nil), check.NotChecked},
		{"rows over 5 in apart", "scope_group", func(m *Model) { through(m, func(s *Set) { s.Rows = lengths(-2.5, -7.6) }) }, check.Engineer},
		{"two blocks", "scope_blocks", func(m *Model) { m.Blocks.At = marks(8, 52) }, check.Engineer},
		{"I-joists without squash blocks", "scope_squash", func(m *Model) { m.HouseJoists.Kind = IJoist }, check.Engineer},
		{"floor trusses", "scope_joist_kind", func(m *Model) { m.HouseJoists.Kind = Truss }, check.Engineer},
		{"joists along the rim", "scope_joist_direction", func(m *Model) { m.HouseJoists.Parallel = true }, check.Engineer},
		{"point load off the blocks", "point_load_on_block", func(m *Model) { m.PointLoads = []PointLoad{{"stair", 19 * in, 100 * unit.Pound}} }, check.Engineer},
		{"snow from a roof above", "snow_drift", func(m *Model) { m.Use.Above = RoofOrWall }, check.Engineer},
		{"what stands above not stated", "snow_drift", func(m *Model) { m.Use.Above = UnknownAbove }, check.NotChecked},
		{"snow under the ground's", "snow_minimum", func(m *Model) { m.Loads.GroundSnow = psfp(31) }, check.Fails},
		{"ground snow not stated", "snow_minimum", func(m *Model) { m.Loads.GroundSnow = nil }, check.NotChecked},
		{"snow not stated, beside the ground's", "snow_minimum", func(m *Model) { m.Loads.Snow = nil }, check.NotChecked},
		{"wind not answered", "scope_lateral", func(m *Model) { m.Use.Lateral = NotSaid }, check.NotChecked},
		{"seismic unknown", "scope_seismic", func(m *Model) { m.Use.Seismic = "unknown" }, check.NotChecked},
		{"projection too short for the span", "scope_joist_cantilever", func(m *Model) { m.Joists.Cantilever = -in }, check.NotChecked},
		{"snow not stated", "combination_ds", func(m *Model) { m.Loads.Snow = nil }, check.NotChecked},
		{"snow not stated, with live", "combination_dls", func(m *Model) { m.Loads.Snow = nil }, check.NotChecked},
		{"live not stated, combination", "combination_dl", func(m *Model) { m.Loads.Live = nil }, check.NotChecked},
		{"dead not stated", "strength", func(m *Model) { m.Loads.Dead = nil }, check.NotChecked},
		{"live below the code", "live_minimum", func(m *Model) { m.Loads.Live = psfp(30) }, check.Fails},
		{"live below ASCE", "live_minimum", func(m *Model) { m.Loads.Basis = ASCE }, check.Fails},
		{"dead below 10", "dead_minimum", func(m *Model) { m.Loads.Dead = psfp(8) }, check.Engineer},
		{"hanger not stated", "hanger", func(m *Model) { m.Joists.Hanger = 0 }, check.NotChecked},
		{"weak hanger", "hanger", func(m *Model) { m.Joists.Hanger = 500 * unit.Pound }, check.Fails},
		{"thin ledger", "ledger_thickness", func(m *Model) { m.Ledger.Thickness = 37.9 * unit.MM }, check.Fails},
		{"short seat", "hanger_seat", func(m *Model) { m.Joists.Seat = 1.4375 * in }, check.Fails},
		{"no seat", "hanger_seat", func(m *Model) { m.Joists.Seat = 0 }, check.Fails},
		{"hangers in the lower half", "hanger_depth", func(m *Model) { m.Joists.HangerLower = true }, check.Fails},
		{"no tie", "tie_rating", func(m *Model) { m.Tie.Kind = NoTie }, check.Fails},
		{"weak tie", "tie_rating", func(m *Model) { m.Tie.Rating = 550 * unit.Pound }, check.Fails},
		{"one lateral device", "lateral_count", func(m *Model) { m.Tie.Lateral.Count = 1 }, check.Fails},
		{"weak lateral devices", "lateral_rating", func(m *Model) { m.Tie.Lateral.Rating = 1400 * unit.Pound }, check.Fails},
		{"lateral devices not measured", "lateral_from_end", func(m *Model) { m.Tie.Lateral.FromEnd = 0 }, check.NotChecked},
		{"lateral devices far in", "lateral_from_end", func(m *Model) { m.Tie.Lateral.FromEnd = 25 * in }, check.Fails},
		{"no blocking", "rim_blocking", func(m *Model) { m.Backing.Kind = NoBacking }, check.Fails},
		{"veneer", "rim_attachable", func(m *Model) { m.Rim.NotAttachable = "brick veneer" }, check.Fails},
		{"gypsum at the foot", "foot_sheathing", func(m *Model) { m.Sheathing.Structural = false }, check.Fails},
		{"foot below the plate", "foot_on_rim", func(m *Model) { m.Rim.Bottom = -7.5 * in }, check.Fails},
		{"pad as foot", "pad_foot", func(m *Model) { padded(psip(40))(m); m.Blocks.Pad.Foot = false }, check.Fails},
		{"pad strength", "pad_long_term_limit", padded(nil), check.NotChecked},
		{"screws not stated", "ply_screws", func(m *Model) { m.Blocks.PlyScrews.Count = 0 }, check.NotChecked},
		{"few screws", "ply_screws_1", func(m *Model) { m.Blocks.PlyScrews.Count = 6 }, check.Fails},
		{"short screws", "ply_screws_1_penetration", func(m *Model) { m.Blocks.PlyScrews.Length = 2.5 * in }, check.Fails},
		{"washers overlap", "washer_clear", func(m *Model) { through(m, func(s *Set) { s.Columns = lengths(-1.4, 1.4) }) }, check.Fails},
		{"washers not stated", "washer_clear", func(m *Model) { through(m, func(s *Set) { s.Washer = Washer{} }) }, check.NotChecked},
		{"bolts near the block top", "edge_block_top", func(m *Model) { m.Blocks.Top = -0.6 * in }, check.Fails},
		{"bolts near the rim bottom", "edge_rim_loaded", func(m *Model) { m.Rim.Bottom = -8.5 * in }, check.Fails},
		{"bolts near the ledger top", "edge_ledger_loaded", func(m *Model) { m.Ledger.Top = -1 * in }, check.Fails},
		{"bolts near the block end", "end_block", func(m *Model) { m.Blocks.Width = 5.9 * in }, check.Fails},
		{"rows close", "spacing_in_row", func(m *Model) { through(m, func(s *Set) { s.Rows = lengths(-3, -4.8) }) }, check.Fails},
		{"no bolt in the top third", "lever_arm", func(m *Model) { through(m, func(s *Set) { s.Rows = lengths(-3.2, -6.375) }) }, check.Fails},
		{"splice off the blocks", "splice_1", func(m *Model) { m.Ledger.Splices = lengths(20) }, check.Fails},
		{"splice over an end block", "splice_1", func(m *Model) { m.Ledger.Splices = lengths(8) }, check.Fails},
		{"bolt at a ledger joint", "end_splice", func(m *Model) { m.Ledger.Splices = lengths(31) }, check.Fails},
		{"rim bearing not stated", "rim_on_plate", func(m *Model) { m.Rim.Bearing = UnknownBearing }, check.NotChecked},
		{"play and slip over 1/8 in", "ledger_drop", func(m *Model) { through(m, func(s *Set) { s.Hole = 0.75 * in }) }, check.Engineer},
		{"block on small bolts", "many_layer_held", func(m *Model) { through(m, func(s *Set) { s.Diameter = 0.375 * in }) }, check.Fails},
		{"backing may not be fastened to", "backing_attachable", func(m *Model) { m.Backing.NotAttachable = "brick veneer" }, check.Fails},
		{"plate not stated", "rim_on_plate", func(m *Model) { m.Plate.Thickness = 0 }, check.NotChecked},
		{"plate width not stated", "rim_bearing", func(m *Model) { m.Plate.Width = 0 }, check.NotChecked},
		{"fixings of the backing not stated", "backing_fixing", func(m *Model) { m.Backing.Fixing = 0 }, check.NotChecked},
		{"weak fixings of the backing", "backing_fixing", func(m *Model) { m.Backing.Fixing = 400 * unit.Pound }, check.Fails},
		{"pieces of backing not measured", "backing_behind_bolts", func(m *Model) { m.Backing.Pieces = nil }, check.NotChecked},
		{"pieces of backing not measured, tie", "tie_rating", func(m *Model) { m.Backing.Pieces = nil }, check.NotChecked},
		{"ties not measured", "tie_rating", func(m *Model) { m.Tie.At = nil }, check.NotChecked},
		{"tie rating not stated", "tie_rating", func(m *Model) { m.Tie.Rating = 0 }, check.NotChecked},
		{"one tie at a bay", "backing_ties", func(m *Model) { m.Tie.At = m.Tie.At[1:] }, check.Fails},
		{"thin backing", "backing_bending", func(m *Model) { m.Backing.Thickness = 1.25 * in }, check.Fails},
		{"no row high enough, tie", "tie_rating", lowRows, check.NotChecked},
		{"no row high enough, backing", "backing_bending", lowRows, check.NotChecked},
		{"no row high enough, scope", "scope_tension", lowRows, check.NotChecked},
		{"no row high enough, drop", "ledger_drop", lowRows, check.NotChecked},
		{"dense rim by report", "scope_gravity", func(m *Model) { m.Rim.Kind, m.Rim.Reported, m.Rim.Wood.G = EngineeredRim, true, 0.51 }, check.Engineer},
		{"dense backing by report", "scope_gravity", func(m *Model) { m.Backing.Panel, m.Backing.Reported, m.Backing.Wood.G = true, true, 0.6 }, check.Engineer},
		{"hard bolts", "scope_fyb", func(m *Model) { through(m, func(s *Set) { s.Yield = 92000 * unit.PSI }) }, check.Engineer},
		{"ledger said to stay dry", "scope_dry", func(m *Model) { m.Ledger.Moisture.Service = Dry }, check.Engineer},
		{"blocks said to stay dry", "scope_dry", func(m *Model) { m.Blocks.Moisture.Service = Dry }, check.Engineer},
		{"thin washers", "washer_bending", func(m *Model) { through(m, func(s *Set) { s.Washer.Thickness = 0.09 * in }) }, check.Fails},
		{"length of bolts not stated", "threads", func(m *Model) { through(m, func(s *Set) { s.Length = 0 }) }, check.NotChecked},
		{"columns over 5 in apart across upright grain", "scope_group", func(m *Model) {
			m.Blocks.VerticalGrain = true
			through(m, func(s *Set) { s.Columns = lengths(-2.6, 2.6) })
		}, check.Engineer},
		{"load left out", "tie_rating", func(m *Model) { m.Loads.Snow = nil }, check.NotChecked},
		{"load left out, ledger", "ledger_fb", func(m *Model) { m.Loads.Live = nil }, check.NotChecked},
		{"load left out, scope", "scope_line_load", func(m *Model) { m.Loads.Snow = nil }, check.NotChecked},
		{"ledger of unknown wood", "ledger_fb", func(m *Model) { m.Ledger.Wood.Fb = 0 }, check.NotChecked},
		{"ledger shear not known", "ledger_fv", func(m *Model) { m.Ledger.Wood.Fv = 0 }, check.NotChecked},
		{"ledger modulus not known", "ledger_defl_live", func(m *Model) { m.Ledger.Wood.E = 0 }, check.NotChecked},
		{"gravity not known", "fasteners", func(m *Model) { m.Rim.Wood.G = 0 }, check.NotChecked},
		{"bolt over an inch", "fasteners", func(m *Model) { through(m, func(s *Set) { s.Diameter = 1.25 * in }) }, check.NotChecked},
		{"couple of the block trusted, not shown", "block_couple", func(m *Model) { m.Blocks.FrontGap = 0.75 * in; m.Assume.PlyCouple = true }, check.Engineer},
		{"plies loose", "many_layer_held", func(m *Model) { m.Blocks.PliesFastened = false }, check.Fails},
		{"a gap in front of the block", "many_layer_void", func(m *Model) { m.Blocks.FrontGap = 0.75 * in }, check.Fails},
	} {
		t.Run(c.name, func(t *testing.T) {
			quiet, _ := Run(scenarioB())
			if s := quiet.Find(c.id); s != nil && s.Verdict > check.OK {
				t.Errorf("%s speaks without the change: %v, %s", c.id, s.Verdict, s.Reason)
			}
			m := scenarioB()
			c.change(&m)
			r, _ := Run(m)
			s := r.Find(c.id)
			switch {
			case s == nil:
				t.Fatalf("no step %s", c.id)
			case s.Verdict != c.want:
				t.Errorf("%s is %v (%v), want %v", c.id, s.Verdict, s.Value, c.want)
			case s.Reason == "":
				t.Errorf("%s is %v without a reason", c.id, s.Verdict)
			}
			if r.Worst() < c.want {
				t.Errorf("worst verdict %v is milder than %v", r.Worst(), c.want)
			}
		})
	}
}

// Values at a limit hold: the limits are the last that may be judged.
func TestTriggersAtTheirLimit(t *testing.T) {
	for _, c := range []struct {
		id     string
		change func(*Model)
	}{
		{"scope_gap", func(m *Model) { m.Blocks.FrontGap = 4 * in }},
		{"scope_eccentricity", func(m *Model) { m.Joists.Seat = 6 * in }},
		{"scope_rim_thickness", func(m *Model) { m.Rim.Thickness = 1.125 * in }},
		{"scope_live", func(m *Model) { m.Loads.Live = psfp(60) }},
		{"scope_height", func(m *Model) { m.Use.AboveGrade = ptr(30 * unit.Foot) }},
		{"scope_pad", padded(psip(25))},
		{"ledger_thickness", func(m *Model) { m.Ledger.Thickness = 38 * unit.MM }},
		{"hanger_seat", func(m *Model) { m.Joists.Seat = 38 * unit.MM }},
		{"scope_seismic", func(m *Model) { m.Use.Seismic = "B" }},
		{"point_load_on_block", func(m *Model) { m.PointLoads = []PointLoad{{"stair", 28 * in, 100 * unit.Pound}} }},
		{"scope_group", func(m *Model) { through(m, func(s *Set) { s.Rows = lengths(-2.625, -7.625) }) }},
	} {
		t.Run(c.id, func(t *testing.T) {
			m := scenarioB()
			c.change(&m)
			r, _ := Run(m)
			if s := r.Find(c.id); s == nil || s.Verdict != check.OK {
				t.Errorf("at its limit: %+v, want OK", s)
			}
		})
	}
}

// A rim or backing without values for a reason says that reason in every line it leaves open.
func TestUnlistedWood(t *testing.T) {
	const why = "11 7/8 in is no listed size"
	for _, c := range []struct {
		name   string
		change func(*Model)
		ids    []string
	}{
		{"rim", func(m *Model) { m.Rim.Wood, m.Rim.Unlisted = Lumber{}, why }, []string{"fasteners", "rim_bearing", "foot_peak_stress"}},
		{"bare rim", func(m *Model) {
			m.Rim.Wood, m.Rim.Unlisted, m.Backing = Lumber{}, why, Backing{}
		}, []string{"fasteners", "rim_out_of_plane", "rim_washer_bearing"}},
		{"backing", func(m *Model) { m.Backing.Wood, m.Backing.Unlisted = Lumber{}, why }, []string{"fasteners", "backing_bending", "rim_washer_bearing"}},
	} {
		m := scenarioB()
		c.change(&m)
		r, _ := Run(m)
		for _, id := range c.ids {
			if s := r.Find(id); s == nil || s.Verdict != check.NotChecked || s.Reason != why {
				t.Errorf("%s: %s is %+v, want NOT CHECKED with the reason", c.name, id, s)
			}
		}
	}
}
