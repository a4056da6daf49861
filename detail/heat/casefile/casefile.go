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
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"

	"standclear/detail/heat"
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

// manyBytes is the most a case file may have.
const manyBytes = 1 << 20

// Read returns the case in src, or all problems with the file. The name stands in messages only.
func Read(name string, src []byte) (*File, spec.Problems) {
	r := &reader{name: name, file: &File{name: name, parts: map[heat.Part][]place{}}}
	if root := r.root(bytes.TrimPrefix(src, []byte("\ufeff"))); root != nil {
		r.read(root)
	}
	if len(r.problems) > 0 {
		slices.SortStableFunc(r.problems, func(a, b spec.Problem) int {
			return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Col, b.Col))
		})
		return nil, r.problems
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
	name     string
	file     *File
	problems spec.Problems
}

func (r *reader) fail(n *yaml.Node, path, given, allowed, do string) {
	r.problems = append(r.problems, spec.Problem{File: r.name, Line: max(n.Line, 1), Col: max(n.Column, 1), Key: path, Given: given, Allowed: allowed, Do: do})
}

// root reads src as one YAML document; nil when it is none.
func (r *reader) root(src []byte) *yaml.Node {
	top := &yaml.Node{Line: 1, Column: 1}
	switch {
	case len(src) > manyBytes:
		r.fail(top, "", fmt.Sprintf("the file has %d bytes", len(src)), fmt.Sprintf("at most %d are read", manyBytes), "")
		return nil
	case !utf8.Valid(src):
		r.fail(top, "", "this is not UTF-8 text", "", "save the file as UTF-8")
		return nil
	}
	dec := yaml.NewDecoder(bytes.NewReader(src))
	var doc, second yaml.Node
	switch err := dec.Decode(&doc); {
	case errors.Is(err, io.EOF):
		r.fail(top, "", "the file is empty", "a case begins with name:", "")
		return nil
	case err != nil:
		r.syntax(err)
		return nil
	}
	if err := dec.Decode(&second); !errors.Is(err, io.EOF) {
		r.fail(&second, "", "a second document begins after ---", "one file is one case", "put it in a file of its own")
		return nil
	}
	return doc.Content[0]
}

// syntax puts an error of the YAML reader to its line.
func (r *reader) syntax(err error) {
	text := strings.TrimPrefix(err.Error(), "yaml: ")
	at := &yaml.Node{Line: 1, Column: 1}
	if m := regexp.MustCompile(`^line (\d+): `).FindStringSubmatch(text); m != nil {
		at.Line, _ = strconv.Atoi(m[1])
		text = strings.TrimPrefix(text, m[0])
	}
	r.fail(at, "", "not readable as YAML: "+text, "", "look at the indent, the quotes and the brackets near this line")
}
