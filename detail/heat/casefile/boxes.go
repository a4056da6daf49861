package casefile

import (
	"fmt"
	"strconv"

	"go.yaml.in/yaml/v3"

	"standclear/detail/heat"
	"standclear/detail/keyfile"
)

func (r *reader) boxes(n *yaml.Node) {
	for i, item := range r.List(n, "boxes", "a box is {x: [0mm, 1m], y: [0mm, 38mm], material: wood}") {
		path := keyfile.Join("boxes", strconv.Itoa(i))
		r.note(heat.InBox, item, path)
		r.file.Case.Boxes = append(r.file.Case.Boxes, r.box(item, path))
	}
}

func (r *reader) box(n *yaml.Node, path string) heat.Box {
	dim := r.file.Case.Dim
	keys := r.Keyed(n, path, append(axes(dim), "material", "environment", "void", "resistance")...)
	var b heat.Box
	for a, name := range axes(dim) {
		if keys[name] == nil {
			if n.Kind == yaml.MappingNode {
				r.Fail(n, keyfile.Join(path, name), "it is not given", "from and to are needed, as [0mm, 38mm]", "")
			}
			continue
		}
		b.Lo[a], b.Hi[a] = r.span(keys[name], keyfile.Join(path, name))
	}
	if m := keys["material"]; m != nil {
		b.Material, _ = r.One(m, keyfile.Join(path, "material"), "the name of a material is needed")
	}
	if e := keys["environment"]; e != nil {
		b.Env, _ = r.One(e, keyfile.Join(path, "environment"), "the name of an environment is needed")
	}
	if v := keys["void"]; v != nil {
		b.Void = v.Value == "true"
		if v.Value != "true" && v.Value != "false" {
			r.Fail(v, keyfile.Join(path, "void"), fmt.Sprintf("%q is not allowed", keyfile.Cut(v.Value)), "true or false is needed", "")
		}
	}
	if rs := keys["resistance"]; rs != nil {
		b.Rs = r.figure(rs, keyfile.Join(path, "resistance"), resistance())
		if b.Rs == 0 {
			r.Fail(rs, keyfile.Join(path, "resistance"), "it is 0", "more than 0 is needed in a box", "state a surface held at its temperature as an environment of its own")
		}
	}
	return b
}

// span reads [from, to], mm.
func (r *reader) span(n *yaml.Node, path string) (lo, hi float64) {
	const wanted = "from and to are needed, as [0mm, 38mm]"
	items := r.List(n, path, wanted)
	if len(items) != 2 {
		if n.Kind == yaml.SequenceNode {
			r.Fail(n, path, fmt.Sprintf("a list of %d", len(items)), wanted, "")
		}
		return 0, 0
	}
	return r.length(items[0], keyfile.Join(path, "0")), r.length(items[1], keyfile.Join(path, "1"))
}

func (r *reader) rods(n *yaml.Node) {
	const form = "a rod is {x: 0mm, y: [0mm, 38mm], z: 70mm, diameter: 1/2in, material: steel}"
	if r.file.Case.Dim != 3 {
		r.Fail(n, "rods", "the case has two dimensions", "rods stand in three", "a bolt is no plate: set dimensions: 3")
		return
	}
	lo, hi := domain(r.file.Case.Boxes)
	for i, item := range r.List(n, "rods", form) {
		path := keyfile.Join("rods", strconv.Itoa(i))
		b, ok := r.rod(item, path, form)
		if !ok {
			continue
		}
		for a := range lo {
			b.Lo[a], b.Hi[a] = max(b.Lo[a], lo[a]), min(b.Hi[a], hi[a]) // a plane of symmetry may cut it
		}
		if b.Lo[0] >= b.Hi[0] || b.Lo[1] >= b.Hi[1] || b.Lo[2] >= b.Hi[2] {
			r.Fail(item, path, "the rod lies outside all boxes", "", "look at its coordinates; from comes before to")
			continue
		}
		r.note(heat.InBox, item, path)
		r.file.Case.Boxes = append(r.file.Case.Boxes, b)
	}
}

// rod reads one rod: the axis given as a span is its own.
func (r *reader) rod(n *yaml.Node, path, form string) (b heat.Box, ok bool) {
	before := len(r.Problems)
	keys := r.Keyed(n, path, "x", "y", "z", "diameter", "material")
	var at heat.Point
	var from, to float64
	along := -1
	for a, name := range axes(3) {
		v := keys[name]
		switch {
		case v == nil:
			r.Fail(n, keyfile.Join(path, name), "it is not given", form, "")
		case v.Kind == yaml.SequenceNode && along < 0:
			from, to = r.span(v, keyfile.Join(path, name))
			along = a
		default:
			at[a] = r.length(v, keyfile.Join(path, name))
		}
	}
	if along < 0 && len(r.Problems) == before {
		r.Fail(n, path, "no coordinate is given from and to", form, "")
	}
	var d float64
	var material string
	if v := keys["diameter"]; v != nil {
		if d = r.length(v, keyfile.Join(path, "diameter")); d <= 0 && len(r.Problems) == before {
			r.Fail(v, keyfile.Join(path, "diameter"), fmt.Sprintf("%q is not more than 0", keyfile.Cut(v.Value)), "", "")
		}
	}
	if v := keys["material"]; v != nil {
		material, _ = r.One(v, keyfile.Join(path, "material"), "the name of a material is needed")
	}
	if (d == 0 || material == "") && len(r.Problems) == before {
		r.Fail(n, path, "diameter or material is not given", form, "")
	}
	if len(r.Problems) > before {
		return heat.Box{}, false
	}
	return heat.RodBox(heat.Axis(along), at, from, to, d, material), true
}

// domain returns the box around all boxes.
func domain(boxes []heat.Box) (lo, hi heat.Point) {
	for i, b := range boxes {
		for a := range lo {
			if i == 0 {
				lo[a], hi[a] = b.Lo[a], b.Hi[a]
			}
			lo[a], hi[a] = min(lo[a], b.Lo[a]), max(hi[a], b.Hi[a])
		}
	}
	return lo, hi
}
