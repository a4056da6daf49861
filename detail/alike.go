package detail

import (
	"standclear/detail/same"
	"standclear/detail/spec"
)

// Plan returns what decides the parts of an assembly beside the places of its blocks: the project without what no
// part depends on, such as loads, climate, rates and names. A test changes every key of a project to hold it.
func Plan(s *spec.Spec) spec.Spec {
	p := *s
	p.Project = spec.Project{System: s.Project.System}
	p.Site, p.Loads, p.Sheets, p.Rates, p.Assume = spec.Site{}, spec.Loads{}, spec.Sheets{}, nil, spec.Assume{}
	p.Deck.GuardPosts, p.Deck.PointLoads = nil, nil
	p.Blocks.MaxSpacing, p.Blocks.EndMin, p.Blocks.EndMax = 0, 0, 0
	p.Defaults, p.Warnings, p.Wording, p.Hash, p.Source = nil, nil, nil, "", ""
	return p
}

// Key is equal for assemblies, laid or filled, that have the same parts.
func (a *Assembly) Key() same.Sum { return same.Of(Plan(a.Spec), a.Layout.X) }

// Adopt returns the assembly filled with the parts of one that has its Key, which both then share.
func (a *Assembly) Adopt(from *Assembly) *Assembly {
	s, b := *a.Spec, *from
	s.Fasteners = from.Spec.Fasteners // parts point to its sets
	b.Spec, b.Layout = &s, a.Layout
	return &b
}
