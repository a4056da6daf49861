package spec

import (
	"fmt"
	"strconv"
	"strings"

	"standclear/detail/stock"
	"standclear/detail/unit"
)

// warn notes what reads but is likely not meant. Decimal feet are noted where a length is read.
func (r *reader) warn() {
	s := r.spec
	r.dressing("ledger.thickness", s.Ledger.Thickness, "ledger.height", s.Ledger.Height)
	r.dressing("deck.joists.width", s.Deck.Joists.Width, "deck.joists.depth", s.Deck.Joists.Depth)
	if _, sawn := stock.SpeciesOf(s.Floor.Rim.Material); sawn {
		r.dressing("floor.rim.thickness", s.Floor.Rim.Thickness, "floor.rim.depth", s.Floor.Rim.Depth)
	}
	if s.Floor.Joists.Kind == "sawn" {
		r.dressing("floor.joists.flange", s.Floor.Joists.Flange, "floor.joists.depth", s.Floor.Joists.Depth)
	}
	r.dressedPlies()
	r.layerOrder()
	r.coldestMonth()
}

// dressing warns of nominal figures written as real ones.
func (r *reader) dressing(tKey string, t unit.Length, dKey string, d unit.Length) {
	n, taken := stock.TakenForActual(t, d)
	if !taken || !r.good(tKey, dKey) {
		return
	}
	given := fmt.Sprintf("%s x %s is not a dressed size", said(t), said(d))
	r.caution(r.at(tKey), tKey, given, fmt.Sprintf("a %s is %s x %s", n.Name, figure(n.Thickness), figure(n.Depth)))
}

// dressedPlies warns of lumber plies 2 in thick.
func (r *reader) dressedPlies() {
	for i, t := range r.spec.Blocks.Plies {
		path := "blocks.plies." + strconv.Itoa(i)
		if _, taken := stock.TakenForActual(t, 4*unit.Inch); taken && r.spec.Blocks.Material[i] == "lumber" && r.good(path) {
			r.caution(r.at(path), path, "2 in is not a dressed thickness", "a 2x is 1 1/2 thick")
		}
	}
}

// said writes inches in running text: 2 in, 9 1/4 in, and feet as they are.
func said(l unit.Length) string { return figure(l) + " in" }

// figure writes inches without a mark.
func figure(l unit.Length) string {
	if l < unit.Foot {
		return strings.TrimSuffix(l.FeetInches(unit.Sixteenth), `"`)
	}
	return strconv.FormatFloat(l.Inches(), 'g', 6, 64)
}

// layerOrder warns of a wall written from outside to inside.
func (r *reader) layerOrder() {
	layers := r.spec.Wall.Layers
	if !r.good("wall.layers") || len(layers) < 2 {
		return
	}
	sheathing := -1
	for i, l := range layers {
		if l.Role == "sheathing" {
			sheathing = i
		}
	}
	for i, l := range layers {
		inner := l.Role == "finish" || l.Role == "studs"
		outer := l.Role == "cladding" || l.Role == "cavity"
		if sheathing >= 0 && (inner && i > sheathing || outer && i < sheathing) {
			path := "wall.layers." + strconv.Itoa(i)
			r.caution(r.at(path), path, fmt.Sprintf("%s stands %s the sheathing", l.Role, either(inner, "outside", "inside")), "write the layers from inside to outside")
			return
		}
	}
}
