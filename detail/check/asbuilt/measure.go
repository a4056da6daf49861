package asbuilt

import (
	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/spec"
	"standclear/detail/stock"
	"standclear/detail/unit"
)

// measure is one thing to measure on the whole; the row drives form, reader, comparison and re-check.
type measure struct {
	section, key string
	name, about  string
	kind         unit.Kind
	words        []string // allowed; none for a number
	lo, hi       float64  // a number read, in the base unit of kind
	drawn        Value
	exact        bool // must be as drawn: words, counts, shares up to the drawn one
	near         unit.Length
	source       string
	apply        func(s *spec.Spec, v Value) // nil: not a value of the project, only counted
	right        string                      // how a builder puts it right; "" for what stood there before
}

func (m measure) path() string { return m.section + "." + m.key }

const (
	bySheets = "as the sheets say; site practice, no source"
	byJudge  = "judgement"
	byWood   = "judgement; EN 336 class 2 asks much the same of sawn wood, from memory, confirm"
	byCount  = "as drawn, none less"
	byDry    = "dry is 19 % or less, NDS 2018, from memory, confirm"
)

// dryLimit is the moisture up to which wood counts as dry (NDS 2018, from memory, confirm).
const dryLimit = 0.19

// measures lists what there is to measure on the whole of an assembly, sections together.
func measures(a *detail.Assembly) []measure {
	s, f := a.Spec, a.Frame
	sys := s.Project.System
	fine, wood, loose := check.HoleTolerance(sys), pick(sys, unit.Inch/16, 1.5), pick(sys, unit.Inch/8, 3)
	far := pick(sys, unit.Inch/4, 6)
	var out []measure
	length := func(section, key, name, about string, drawn float64, lo, hi unit.Length, near unit.Length, source, right string, apply func(s *spec.Spec, v Value)) {
		out = append(out, measure{section: section, key: key, name: name, about: about, kind: unit.KLength, lo: lo.MM(), hi: hi.MM(), drawn: Value{V: drawn}, near: near, source: source, apply: apply, right: right})
	}
	const in = unit.Inch
	out = append(out, measure{section: "rim", key: "material", name: "material of the rim", about: "what it is, by its stamp", words: stock.RimKeys(), drawn: Value{Word: s.Floor.Rim.Material}, exact: true, source: "as drawn", apply: rimMaterial})
	length("rim", "thickness", "thickness of the rim", "at a drilled hole", s.Floor.Rim.Thickness.MM(), in/4, 8*in, wood, byWood, "", func(s *spec.Spec, v Value) { s.Floor.Rim.Thickness = unit.Length(v.V) })
	length("rim", "depth", "depth of the rim", "top to bottom", s.Floor.Rim.Depth.MM(), 3*in, 30*in, loose, byJudge, "", func(s *spec.Spec, v Value) { s.Floor.Rim.Depth = unit.Length(v.V) })
	if s.Floor.Backing.Kind != "none" {
		length("backing", "thickness", "thickness of the backing", "behind the rim, at a bolt", s.Floor.Backing.Thickness.MM(), in/2, 12*in, wood, byWood, "put in backing as drawn", func(s *spec.Spec, v Value) { s.Floor.Backing.Thickness = unit.Length(v.V) })
	}
	if len(a.HouseJoists) > 0 {
		length("house_joists", "first", "axis of the first house joist", "from the left end of the ledger", s.Floor.Joists.First.MM(), -60*in, 60*in, far, byJudge, "", func(s *spec.Spec, v Value) { s.Floor.Joists.First = unit.Length(v.V) })
		length("house_joists", "spacing", "spacing of the house joists", "axis to axis, mean of five", s.Floor.Joists.Spacing.MM(), 4*in, 60*in, fine, byJudge, "", func(s *spec.Spec, v Value) { s.Floor.Joists.Spacing = unit.Length(v.V) })
	}
	length("sheathing", "thickness", "thickness of the sheathing", "at a drilled hole", -f.SheathIn, in/8, 4*in, fine, byJudge, "", sheathing)
	if f.InsulOut > 0 {
		length("insulation", "thickness", "thickness of the outside insulation", "sheathing to its outer face between blocks, greatest of five", f.InsulOut, 0, 24*in, loose, byJudge, "take the insulation back to its drawn thickness", func(s *spec.Spec, v Value) { insulationTo(s, v.V) })
	}
	length("gap", "clear", "clear gap behind the ledger", "insulation to ledger between blocks, least of five", f.Gap(), 0, 12*in, loose, byJudge, "take the insulation back until the gap is as drawn", gapOf)
	length("ledger", "length", "length of the ledger", "end to end", s.Ledger.Length.MM(), 12*in, 1200*in, far, byJudge, "", func(s *spec.Spec, v Value) { s.Ledger.Length = unit.Length(v.V) })
	length("ledger", "thickness", "thickness of the ledger", "", s.Ledger.Thickness.MM(), in/2, 8*in, wood, byWood, "put in a ledger as drawn", func(s *spec.Spec, v Value) { s.Ledger.Thickness = unit.Length(v.V) })
	length("ledger", "height", "height of the ledger", "at its back", s.Ledger.Height.MM(), 3*in, 24*in, wood, byWood, "put in a ledger as drawn", func(s *spec.Spec, v Value) { s.Ledger.Height = unit.Length(v.V) })
	length("ledger", "top", "top of the ledger from the finished floor", "at the wall side, down is minus, worst of both ends and middle", f.LedgerTop, -48*in, 24*in, fine, bySheets, "hang the ledger at its drawn height", func(s *spec.Spec, v Value) { s.Deck.Below = unit.Length(-v.V) - s.Deck.Decking })
	out = append(out, moisture("ledger", "the ledger", s.Ledger.Moisture.Assembly, func(s *spec.Spec) *spec.Moisture { return &s.Ledger.Moisture }))
	length("block", "height", "height of the blocks", "at the wall, the one farthest off", s.Blocks.Height.MM(), 2*in, 24*in, wood, byWood, "make blocks as drawn", func(s *spec.Spec, v Value) { s.Blocks.Height = unit.Length(v.V) })
	length("block", "width", "width of the blocks", "along the wall, the one farthest off", s.Blocks.Width.MM(), in, 48*in, wood, byWood, "make blocks as drawn", func(s *spec.Spec, v Value) { s.Blocks.Width = unit.Length(v.V) })
	length("block", "below", "top of the blocks below the top of the ledger", "at the wall side, the one farthest off", s.Blocks.Below.MM(), -6*in, 12*in, fine, bySheets, "hang the ledger at its drawn height on the blocks", func(s *spec.Spec, v Value) { s.Blocks.Below = unit.Length(v.V) })
	length("block", "depth", "depth of the blocks", "all plies together, the one farthest off", s.Blocks.Depth(), in/2, 24*in, fine, bySheets, "make blocks as drawn", blockDepth)
	out = append(out, moisture("block", "the blocks", s.Blocks.Moisture.Assembly, func(s *spec.Spec) *spec.Moisture { return &s.Blocks.Moisture }))
	out = append(out, hardware(s, fine)...)
	return append(out, counts(a)...)
}

func pick(sys unit.System, ip, si unit.Length) unit.Length {
	if sys == unit.SI {
		return si
	}
	return ip
}

// rimMaterial is a rim of another material: the gravity a maker stated of the one drawn says nothing of it, and the
// careful value takes its place.
func rimMaterial(s *spec.Spec, v Value) {
	if v.Word != s.Floor.Rim.Material {
		s.Floor.Rim.Material, s.Floor.Rim.Gravity = v.Word, 0
	}
}

func sheathing(s *spec.Spec, v Value) {
	for i, l := range s.Wall.Layers {
		if l.Role == "sheathing" {
			s.Wall.Layers[i].Thickness = unit.Length(v.V)
		}
	}
}

// insulationTo brings the outer face of the insulation to y by the thickness of its last layer.
func insulationTo(s *spec.Spec, y float64) {
	at := detail.NewFrame(s).InsulOut
	for i := len(s.Wall.Layers) - 1; i >= 0; i-- {
		if l := &s.Wall.Layers[i]; l.Role == "insulation" && at > 0 {
			l.Thickness = max(0, l.Thickness+unit.Length(y-at))
			return
		}
	}
}

// gapOf brings the insulation to where it leaves the gap found, unless it was found farther out still.
func gapOf(s *spec.Spec, v Value) {
	f := detail.NewFrame(s)
	if y := f.LedgerBack - v.V; y > f.InsulOut {
		insulationTo(s, y)
	}
}

// blockDepth gives the outermost ply what the block has more or less.
func blockDepth(s *spec.Spec, v Value) {
	if n := len(s.Blocks.Plies); n > 0 {
		s.Blocks.Plies[n-1] = max(unit.Inch/16, s.Blocks.Plies[n-1]+unit.Length(v.V-s.Blocks.Depth()))
	}
}

// moisture asks for the wettest of five readings. Wood drawn wet may be anything.
func moisture(section, of, drawn string, at func(s *spec.Spec) *spec.Moisture) measure {
	return measure{section: section, key: "moisture", name: "moisture of " + of + " when put up", about: "greatest of five readings", kind: unit.KPercent, lo: 0, hi: 2, drawn: Value{Word: drawn}, exact: true, source: byDry,
		apply: func(s *spec.Spec, v Value) {
			if v.V > dryLimit {
				at(s).Assembly = "wet"
			}
		}}
}

// setNames are the names of the fastener sets as the project file has them.
func setNames(s *spec.Spec) []string {
	if s.Fasteners.Through != nil {
		return []string{"through"}
	}
	return []string{"to_rim", "to_block"}
}

func setOf(s *spec.Spec, name string) *spec.Set {
	return map[string]*spec.Set{"through": s.Fasteners.Through, "to_rim": s.Fasteners.ToRim, "to_block": s.Fasteners.ToBlock}[name]
}

// hardware is what all fasteners of a set have alike.
func hardware(s *spec.Spec, near unit.Length) []measure {
	var out []measure
	for _, name := range setNames(s) {
		set := setOf(s, name)
		if set == nil || set.Kind != "bolt" {
			continue
		}
		for _, m := range []struct {
			key, what, about string
			drawn            unit.Length
			near             unit.Length
			at               func(w *spec.Washer) *unit.Length
		}{
			{"washer_size", "size of the washers", "side or diameter, the smallest", set.Washer.Size, near, func(w *spec.Washer) *unit.Length { return &w.Size }},
			{"washer_thickness", "thickness of the washers", "the thinnest", set.Washer.Thickness, near / 2, func(w *spec.Washer) *unit.Length { return &w.Thickness }},
		} {
			out = append(out, measure{section: name, key: m.key, name: m.what + ofSet(s, name), about: m.about, kind: unit.KLength, lo: 0.5, hi: 250, drawn: Value{V: m.drawn.MM()}, near: m.near, source: byJudge,
				right: "put in washers as drawn", apply: func(s *spec.Spec, v Value) { *m.at(&setOf(s, name).Washer) = unit.Length(v.V) }})
		}
	}
	return out
}

// ofSet tells two sets apart in print.
func ofSet(s *spec.Spec, name string) string {
	if len(setNames(s)) == 1 {
		return ""
	}
	return map[string]string{"to_rim": ", block to rim", "to_block": ", ledger to block"}[name]
}

// counts are the parts that are counted and nothing else.
func counts(a *detail.Assembly) []measure {
	var out []measure
	for _, c := range []struct {
		key, name, about string
		role             detail.Role
	}{
		{"nuts", "nuts seen inside", "tight, three threads past each", detail.Nut},
		{"washers", "washers", "under heads and nuts, flat on the wood", detail.Washer},
		{"backings", "backing pieces", "tight to the rim, fixed as their maker states", detail.Backing},
		{"ties", "floor ties", "every hole filled", detail.TieStrap},
		{"tension_devices", "lateral tension devices", "inside and outside made fast", detail.TensionRod},
		{"hangers", "joist hangers", "every hole filled", detail.Hanger},
		{"ply_screws", "screws of the blocks, all together", "", detail.PlyScrew},
	} {
		n := a.Count(c.role)
		if n == 0 {
			continue
		}
		out = append(out, measure{section: "counted", key: c.key, name: c.name, about: c.about, kind: unit.Count, lo: 0, hi: 1e5, drawn: Value{V: float64(n)}, exact: true, source: byCount, right: "fit what is missing, as drawn"})
	}
	return out
}
