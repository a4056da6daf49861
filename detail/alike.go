package detail

import (
	"standclear/detail/same"
	"standclear/detail/spec"
)

// plan returns what decides the parts of an assembly beside the places of its blocks: the project without what no
// part depends on, such as loads, climate, rates, names and what is known of the wood. A test changes every field of a
// project to hold it.
func plan(s *spec.Spec) spec.Spec {
	p := *s
	p.Project = spec.Project{System: s.Project.System}
	p.Site, p.Loads, p.Sheets, p.Rates, p.Assume = spec.Site{}, spec.Loads{}, spec.Sheets{}, nil, spec.Assume{}
	p.Deck.GuardPosts, p.Deck.PointLoads, p.Deck.Beam, p.Deck.Post = nil, nil, "", ""
	p.Deck.Span, p.Deck.Joists.Hanger, p.Deck.Joists.Restrained = 0, 0, false
	p.Floor.Rim.Gravity, p.Floor.Rim.Moisture, p.Floor.Backing.Gravity, p.Floor.Backing.Fixing = 0, "", 0, 0
	p.Ledger.Moisture, p.Ledger.Incised, p.Blocks.Moisture, p.Blocks.Incised = spec.Moisture{}, false, spec.Moisture{}, false
	p.Stock = spec.Stock{BoltStep: s.Stock.BoltStep}
	p.Blocks.MaxSpacing, p.Blocks.EndMin, p.Blocks.EndMax = 0, 0, 0
	p.Defaults, p.Warnings, p.Wording, p.Source = nil, nil, nil, ""
	return p
}

// Key is equal for assemblies, laid or filled, that have the same parts.
func (a *Assembly) Key() same.Sum { return same.Of(plan(a.Spec), a.Layout.X) }

// Adopt returns the assembly filled with the parts of one that has its Key, which both then share.
func (a *Assembly) Adopt(from *Assembly) *Assembly {
	s, b := *a.Spec, *from
	s.Fasteners = from.Spec.Fasteners // parts point to its sets
	b.Spec, b.Layout = &s, a.Layout
	return &b
}
