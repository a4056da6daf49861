// Package demo holds the projects that come with the program: one invented house, its rear deck and
// its front balcony, each in inches and in millimetres.
//
//	src, ok := demo.File("deck")
package demo

import _ "embed"

//go:embed deck.yaml
var deck string

//go:embed balcony.yaml
var balcony string

//go:embed deck-metric.yaml
var deckMetric string

//go:embed balcony-metric.yaml
var balconyMetric string

// Names returns the names of the projects, in the order they are best shown.
func Names() []string { return []string{"deck", "balcony", "deck-metric", "balcony-metric"} }

// File returns the project file of that name, with or without .yaml.
func File(name string) ([]byte, bool) {
	switch name {
	case "deck", "deck.yaml":
		return []byte(deck), true
	case "balcony", "balcony.yaml":
		return []byte(balcony), true
	case "deck-metric", "deck-metric.yaml":
		return []byte(deckMetric), true
	case "balcony-metric", "balcony-metric.yaml":
		return []byte(balconyMetric), true
	}
	return nil, false
}
