package stock

import (
	"slices"
	"strings"
	"sync"
)

// Species is a group of woods graded and designed alike.
type Species struct {
	Key     string // as the project file writes it
	Name    string // as printed
	Incised bool   // treated stock of it is incised so that it takes the preservative
	Grades  []string
	aliases []string
}

// SpeciesList returns the woods this tool holds values for.
//
// Incising: southern pine takes treatment without it, hem-fir and Douglas fir do not (common
// practice, no source).
func SpeciesList() []Species { return slices.Clone(species()) }

// species is made once and never changed.
var species = sync.OnceValue(func() []Species {
	visual := []string{"No.1", "No.2"}
	return []Species{
		{Key: "southern pine", Name: "SOUTHERN PINE", Grades: visual, aliases: []string{"SP", "SYP", "southern yellow pine"}},
		{Key: "hem-fir", Name: "HEM-FIR", Incised: true, Grades: visual, aliases: []string{"HF", "hemlock"}},
		{
			Key: "douglas fir-larch", Name: "DOUGLAS FIR-LARCH", Incised: true, Grades: visual,
			aliases: []string{"DF-L", "DF", "douglas fir"},
		},
		{
			Key: "spruce-pine-fir", Name: "SPRUCE-PINE-FIR", Incised: true, Grades: visual,
			aliases: []string{"SPF", "spruce"},
		},
		{
			Key: "european softwood", Name: "EUROPEAN SOFTWOOD", Grades: []string{"C24"},
			aliases: []string{"C24", "european spruce", "european pine", "redwood whitewood"},
		},
	}
})

// SpeciesOf finds a species by its key, its printed name or a usual short form.
func SpeciesOf(name string) (Species, bool) {
	for _, s := range species() {
		if same(name, s.Key) {
			return s, true
		}
		for _, a := range s.aliases {
			if same(name, a) {
				return s, true
			}
		}
	}
	return Species{}, false
}

// Grade finds a grade of s by its name or a usual short form: No.2, #2, no 2, 2.
func (s Species) Grade(name string) (string, bool) {
	for _, g := range s.Grades {
		if same(name, g) || strings.HasPrefix(g, "No.") && same(name, g[len("No."):]) || same(name, "No.1/No.2") && g == "No.2" {
			return g, true
		}
	}
	return "", false
}
