package design

import (
	"math"

	"standclear/detail"
	"standclear/detail/check/strength"
	"standclear/detail/spec"
	"standclear/detail/stock"
	"standclear/detail/unit"
)

// Model measures an assembly for the strength checks.
func Model(a *detail.Assembly) strength.Model {
	s, f := a.Spec, a.Frame
	m := strength.Model{
		System:      s.Words(),
		Use:         use(s),
		Loads:       strength.Loads{Dead: s.Loads.Dead, Live: s.Loads.Live, Snow: s.Loads.Snow, GroundSnow: s.Site.GroundSnow},
		Joists:      joists(a),
		GuardPosts:  s.Deck.GuardPosts,
		HouseJoists: houseJoists(a),
		Plate:       strength.Plate{Thickness: s.Floor.Plate, Width: s.Floor.PlateWidth, FcPerp: plateBearing()},
		Sheathing:   sheathing(s),
		Rim:         rim(s, f),
		Backing:     backing(a),
		Ledger:      ledger(s, f),
		Blocks:      blocks(a),
		Fasteners:   fasteners(a),
		Tie:         tie(a),
		Assume:      assume(s),
	}
	if s.Loads.Basis == "ASCE" {
		m.Loads.Basis = strength.ASCE
	}
	for _, x := range s.Deck.GuardPosts {
		m.PointLoads = append(m.PointLoads, strength.PointLoad{Name: "guard post", X: x, Load: guardLoad})
	}
	for _, p := range s.Deck.PointLoads {
		m.PointLoads = append(m.PointLoads, strength.PointLoad{Name: p.Name, X: p.X, Load: p.Load})
	}
	return m
}

// guardLoad is the load on a guard post, in any direction: IRC R301.5, 200 lb (from memory, confirm).
const guardLoad = 200 * unit.Pound

func lengths(xs []float64) []unit.Length {
	out := make([]unit.Length, len(xs))
	for i, x := range xs {
		out[i] = unit.Length(x)
	}
	return out
}

func use(s *spec.Spec) strength.Use {
	u := strength.Use{
		Balcony: s.Deck.Kind == "balcony", UpperFloor: s.Deck.Storey == "upper", Seismic: s.Site.Seismic,
		Lateral: map[string]strength.Answer{"yes": strength.Yes, "no": strength.No}[s.Loads.Wind],
		Above:   map[string]strength.Above{"none": strength.OpenSky, "roof": strength.RoofOrWall, "wall": strength.RoofOrWall}[s.Site.RoofAbove],
	}
	switch s.Deck.Support {
	case "posts":
		u.Support = strength.Posts
	case "braces":
		u.Support = strength.Braces
	case "hung":
		u.Support = strength.Hung
	case "cantilever":
		u.Support = strength.Cantilever
	}
	if g := s.Foundation.Grade; g != nil {
		above := -s.Deck.Below - *g
		u.AboveGrade = &above
	}
	return u
}

// joists are those of the deck. Over the ledger the deck begins where its boards do; its joists end at the
// outer edge.
func joists(a *detail.Assembly) strength.Joists {
	s, f := a.Spec, a.Frame
	j := strength.Joists{Span: s.Deck.Span, Spacing: s.Deck.Joists.Spacing, At: lengths(a.DeckJoists), Seat: s.Deck.Joists.Seat, Hanger: s.Deck.Joists.Hanger,
		HangerLower: s.Deck.Joists.HangerDepth == "lower", Restrained: s.Deck.Joists.Restrained,
		Cantilever: s.Deck.Projection - unit.Length(f.LedgerFront) - s.Deck.Span}
	inner := f.LedgerFront
	for _, p := range a.Find(detail.Decking) {
		inner = math.Min(inner, p.Bounds().Min.Y)
	}
	j.Strip = unit.Length(f.LedgerFront - inner)
	return j
}

func houseJoists(a *detail.Assembly) strength.HouseJoists {
	s := a.Spec
	j := strength.HouseJoists{At: lengths(a.HouseJoists), Flange: s.Floor.Joists.Flange, Spacing: s.Floor.Joists.Spacing, Squash: s.Floor.Joists.Squash, Parallel: s.Floor.Joists.Direction == "parallel"}
	switch s.Floor.Joists.Kind {
	case "sawn":
		j.Kind = strength.SawnJoist
	case "i-joist":
		j.Kind = strength.IJoist
	case "truss":
		j.Kind = strength.Truss
	}
	return j
}

// wood turns stock values into what the checks use.
func wood(v stock.LumberValues, incised bool) strength.Lumber {
	return strength.Lumber{Name: v.Species + " " + v.Grade, Fb: v.Fb, Fv: v.Fv, FcPerp: v.FcPerp, E: v.E, G: v.G, CF: v.CF, Incised: incised}
}

func state(v string) strength.State {
	switch v {
	case "dry":
		return strength.Dry
	case "wet":
		return strength.Wet
	}
	return strength.Unknown
}

func moistureOf(m spec.Moisture) strength.Moisture {
	return strength.Moisture{Assembly: state(m.Assembly), Service: state(m.Service)}
}

func ledger(s *spec.Spec, f detail.Frame) strength.Ledger {
	v, _ := stock.Lumber(s.Ledger.Species, s.Ledger.Grade, s.Ledger.Height)
	return strength.Ledger{Wood: wood(v, s.Ledger.Incised), Moisture: moistureOf(s.Ledger.Moisture), Length: s.Ledger.Length, Thickness: s.Ledger.Thickness,
		Top: unit.Length(f.LedgerTopFront), Bottom: unit.Length(f.LedgerBottom), Splices: s.Ledger.Splices}
}

func blocks(a *detail.Assembly) strength.Blocks {
	s, f := a.Spec, a.Frame
	v, _ := stock.Lumber(s.Blocks.Species, s.Blocks.Grade, s.Blocks.Height)
	b := strength.Blocks{
		Wood: wood(v, s.Blocks.Incised), Moisture: moistureOf(s.Blocks.Moisture), Width: s.Blocks.Width,
		Top: unit.Length(f.BlockTopFront), Bottom: unit.Length(f.BlockBottom), TopAtWall: unit.Length(f.BlockTop), VerticalGrain: s.Blocks.Grain == "vertical",
		PliesFastened: s.Blocks.PliesFastened, PlyScrews: strength.PlyScrews{Count: s.Blocks.PlyScrews.Count, Diameter: s.Blocks.PlyScrews.Diameter, Length: s.Blocks.PlyScrews.Length},
		LedgerScrews: strength.PlyScrews{Count: s.Blocks.LedgerScrews.Count, Diameter: s.Blocks.LedgerScrews.Diameter, Length: s.Blocks.LedgerScrews.Length},
		Pad:          strength.Pad{Thickness: s.Blocks.Pad.Thickness, Strength: s.Blocks.Pad.Strength, After: s.Blocks.Pad.After, Foot: s.Blocks.Pad.Foot},
		FrontGap:     s.Blocks.Spacer,
	}
	for _, p := range a.Blocks {
		b.At = append(b.At, strength.Place{Mark: p.Mark, X: unit.Length(p.X)})
	}
	for i, t := range s.Blocks.Plies {
		ply := strength.Ply{Thickness: t, G: v.G, FcPerp: v.FcPerp, E: v.E}
		if i < len(s.Blocks.Material) {
			if p, ok := stock.PanelOf(s.Blocks.Material[i]); ok {
				ply.Panel, ply.G, ply.FcPerp = true, p.G, p.FcPerp
			}
		}
		b.Plies = append(b.Plies, ply)
	}
	return b
}

func fasteners(a *detail.Assembly) strength.Fasteners {
	set := func(s *spec.Set) *strength.Set {
		if s == nil {
			return nil
		}
		out := &strength.Set{Diameter: s.Diameter, Length: a.BoltLength(s), Thread: thread(s, a.BoltLength(s)), Hole: s.Hole, Yield: s.Yield, Lateral: s.Lateral, Withdrawal: s.Withdrawal, Report: s.Report,
			Washer: strength.Washer{Round: s.Washer.Kind != "plate", Size: s.Washer.Size, Thickness: s.Washer.Thickness}, Columns: lengths(s.Offsets())}
		out.Kind = kindOf(s.Kind)
		for _, r := range a.Rows {
			if r.Set == s {
				out.Rows = append(out.Rows, unit.Length(r.Z))
			}
		}
		return out
	}
	f := a.Spec.Fasteners
	return strength.Fasteners{Through: set(f.Through), ToRim: set(f.ToRim), ToBlock: set(f.ToBlock)}
}

// thread is the length of thread on a bolt: as stated, or by the standard of its size.
func thread(s *spec.Set, length unit.Length) unit.Length {
	b, ok := stock.BoltOf(s.Diameter)
	if s.Thread > 0 || !ok {
		return s.Thread
	}
	return b.Thread(length)
}

// tie measures the ties, two at each bay, where they run along their joists, and the devices apart from them.
func tie(a *detail.Assembly) strength.Tie {
	s := a.Spec
	t := strength.Tie{Rating: s.Tie.Rating, Lateral: strength.Lateral{Count: len(a.Tension), Rating: s.Tie.Lateral.Rating}}
	for _, p := range a.Find(detail.TieStrap) {
		box := p.Bounds()
		t.At = append(t.At, unit.Length(besideJoist(a, box.Min.X, box.Max.X)))
		if z := unit.Length((box.Min.Z + box.Max.Z) / 2); len(t.At) == 1 || z < t.Height {
			t.Height = z
		}
	}
	if len(a.Tension) > 0 { // the outermost at either end
		left, right := math.Inf(1), math.Inf(1)
		for _, d := range a.Tension {
			left, right = math.Min(left, d.X), math.Min(right, s.Ledger.Length.MM()-d.X)
		}
		t.Lateral.FromEnd = unit.Length(max(left, right))
	}
	switch s.Tie.Kind {
	case "strap":
		t.Kind = strength.Strap
	case "hold-down":
		t.Kind = strength.HoldDown
	}
	return t
}

// besideJoist is the end of a tie from x0 to x1 that stands at a house joist.
func besideJoist(a *detail.Assembly, x0, x1 float64) float64 {
	best, away := x0, math.Inf(1)
	for _, j := range a.HouseJoists {
		for _, x := range []float64{x0, x1} {
			if d := math.Abs(x - j); d < away {
				best, away = x, d
			}
		}
	}
	return best
}

func assume(s *spec.Spec) strength.Assume {
	v := s.Assume
	a := strength.Assume{FootDepth: v.FootDepth, GrossSection: !v.NetSection, NoTorsion: !v.Torsion, Cap: v.Cap, MaxGroup: v.MaxGroup, PlyCouple: v.PlyCouple, SupportSlip: v.SupportSlip}
	if v.LeverArm == "foot" {
		a.LeverArm = strength.Plain
	}
	if v.Reaction == "solved" {
		a.Reaction = strength.Plain
	}
	if v.RowsInTension == "stiffness" {
		a.Rows = strength.ByStiffness
	}
	a.Cap = math.Min(a.Cap, 1)
	return a
}

func kindOf(kind string) strength.Kind {
	switch kind {
	case "lag":
		return strength.Lag
	case "screw":
		return strength.Screw
	case "evaluated":
		return strength.Evaluated
	}
	return strength.Bolt
}
