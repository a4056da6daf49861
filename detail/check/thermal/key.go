package thermal

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"

	"standclear/detail"
	"standclear/detail/heat"
)

// edition changes whenever the same boxes would give another result: a new solver, a new reading of a box.
const edition = 3

// Key names the result of an assembly by its content: assemblies with the same key have the same Result. It is
// the SHA-256 of all that is solved and of all that is printed with it.
func Key(a *detail.Assembly, opt Options) (string, error) {
	if len(a.Blocks) == 0 {
		return "", errNoBlock
	}
	r := newRun(a, opt)
	drawn, others := r.b.ways(r.out.Block)
	wall, _ := r.wallCase()
	type way struct {
		Way   Way
		Boxes []heat.Box
	}
	in := struct {
		Edition      int
		Error        float64
		Out          *Result
		Wall         heat.Case
		Boxes, Voids []heat.Box
		Mix          []heat.Material
		Places       []Spot
		Assumed      []string
		Ways         []way
	}{Edition: edition, Error: r.opt.Error, Out: r.out, Wall: wall, Boxes: r.b.wall, Voids: r.b.voids, Mix: r.b.mix.list, Places: r.b.places(), Assumed: r.b.assumed()}
	for _, v := range append(others, drawn) {
		in.Ways = append(in.Ways, way{v.Way, v.boxes})
	}
	text, err := json.Marshal(in)
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:]), nil
}
