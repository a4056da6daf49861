// Package casefile reads a case of heat flow from a YAML file.
//
//	name: a wall
//	dimensions: 2                # flows are then W per metre
//	materials:
//	  wood: 0.12 W/mK            # or along x, y, z: [0.23 W/mK, 0.12 W/mK, 0.12 W/mK]
//	  cavity: {air: 25mm, flow: sideways}
//	environments:
//	  room: {temperature: 20C, resistance: 0.13 m2K/W}
//	  outside: {temperature: 0C, coefficient: 25 W/m2K}
//	boxes:                       # a later one paints over an earlier one
//	  - {x: [0mm, 1m], y: [-10mm, 0mm], environment: room}
//	  - {x: [0mm, 1m], y: [0mm, 120mm], material: wood}
//	  - {x: [0mm, 1m], y: [120mm, 130mm], environment: outside, resistance: 0.13 m2K/W}
//	  - {x: [0mm, 10mm], y: [0mm, 10mm], void: true}
//	rods:                        # bolts and screws, three dimensions only; they paint over the boxes
//	  - {x: 100mm, y: [0mm, 120mm], z: 0mm, diameter: 1/2in, material: steel}
//	probes:
//	  A: [500mm, 0mm]
//
// Surfaces are where a material touches a box of an environment. Planes around all boxes let no heat
// pass.
package casefile

import (
	"go.yaml.in/yaml/v3"

	"standclear/detail/heat"
	"standclear/detail/keyfile"
	"standclear/detail/spec"
)

// File is a case with the places in its file.
type File struct {
	Case heat.Case

	name  string
	parts map[heat.Part][]place
}

// place is where a part of the case stands.
type place struct {
	node *yaml.Node
	path string
}

// Read returns the case in src, or all problems with the file. The name stands in messages only.
func Read(name string, src []byte) (*File, spec.Problems) {
	r := &reader{Reader: keyfile.Reader{File: name, What: "a case", Begins: "name:"}, file: &File{name: name, parts: map[heat.Part][]place{}}}
	if root := r.Root(src); root != nil {
		r.read(root)
	}
	if problems := r.Sorted(); problems != nil {
		return nil, problems
	}
	return r.file, nil
}

// Problems puts faults found in the case to their places in the file.
func (f *File) Problems(faults heat.Faults) spec.Problems {
	var out spec.Problems
	for _, t := range faults {
		p := spec.Problem{File: f.name, Line: 1, Col: 1, Given: t.Given, Allowed: t.Allowed, Do: t.Do}
		if at := f.parts[t.Part]; t.Index < len(at) {
			p.Line, p.Col, p.Key = at[t.Index].node.Line, at[t.Index].node.Column, at[t.Index].path
		}
		out = append(out, p)
	}
	return out
}

// reader fills a File from a tree.
type reader struct {
	keyfile.Reader
	file *File
}
