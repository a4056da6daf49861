package stock

import "strings"

// VapourFactor returns how many times more a damp layer of the material resists water vapour than as much
// still air: mu of ISO 10456:2007 tables 3 and 4, wet cup (from memory, confirm). It is false for a
// membrane and for what is not listed: their makers state it.
func VapourFactor(material string) (mu float64, ok bool) {
	for _, f := range vapourFactors() {
		if strings.EqualFold(f.key, material) {
			return f.mu, true
		}
	}
	return 0, false
}

type vapourFactor struct {
	key string
	mu  float64
}

// vapourTight stands for metal and other layers that pass nothing worth counting.
const vapourTight = 1e6

func vapourFactors() []vapourFactor {
	return []vapourFactor{
		{"softwood", 20}, {"hardwood", 50},
		{"plywood", 70}, {"lsl", 70}, {"lvl", 70}, // laminated wood as plywood: judgement
		{"osb", 30}, {"fibreboard", 5},
		{"cellulose", 2}, {"batt", 1}, {"wood-fibre", 3}, {"mineral-wool", 1}, {"glass-fibre", 1}, // wood-fibre: EN 13171
		{"xps", 150}, {"eps", 60},
		{"polyiso", vapourTight}, // its foil facers
		{"gypsum", 4}, {"gypsum-sheathing", 4},
		{"cement-board", 30}, {"stucco", 6}, {"concrete", 80}, {"masonry", 10}, {"brick", 10}, // cement board: common practice, no source
		{"steel", vapourTight}, {"stainless", vapourTight}, {"aluminium", vapourTight}, {"pvc", 50000},
		{"air", 1},
	}
}
