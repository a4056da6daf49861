// Package layermap reads how an office names and draws the layers of the DXF files.
//
//	layers:
//	  DETL-MCUT: {name: <D>-WALL-CUT, colour: 2, weight: 0.35mm, line: Continuous}
//	  ANNO-NOTE: S-TEXT                         # a name alone: colour, weight and line stay
//	  ANNO-NPLT: {plot: no}
//	line_types:                                 # the office's own, plotted lengths: dash, -gap, 0mm a dot
//	  OFFICE-DASH: [3mm, -1.5mm]
//
// The keys are our layers by their names without the letter of the sheet; <D> in a name stands for that letter.
// What is left out stays as it is. Two keys may have one layer when it looks the same for both.
//
//	layers, problems := layermap.Read("office.yaml", src)
package layermap

import (
	_ "embed"
	"fmt"
	"strings"

	"go.yaml.in/yaml/v3"

	"standclear/detail/keyfile"
	"standclear/detail/spec"
	"standclear/render"
)

// Own is the name of the map that changes nothing.
const Own = "default"

//go:embed iso13567.yaml
var iso13567 []byte

// Names returns the names of the maps that are built in.
func Names() []string { return []string{Own, "iso13567"} }

// Named returns a built-in map as a file.
func Named(name string) ([]byte, bool) {
	switch name {
	case Own:
		return Starter(), true
	case "iso13567":
		return iso13567, true
	}
	return nil, false
}

// Read returns the layers by the map in src, or all problems with it. The name stands in messages only.
func Read(name string, src []byte) (*render.Layers, spec.Problems) {
	r := &reader{Reader: keyfile.Reader{File: name, What: "a layer map", Begins: "layers:"}, layers: render.OwnLayers()}
	if root := r.Root(src); root != nil {
		r.read(root)
	}
	if problems := r.Sorted(); problems != nil {
		return nil, problems
	}
	return &r.layers, nil
}

// reader fills the layers from a tree.
type reader struct {
	keyfile.Reader
	layers render.Layers
	types  []render.LineType
	rows   []keyfile.Row // of the section layers
	at     [len(render.Layers{})]*yaml.Node
}

func (r *reader) read(root *yaml.Node) {
	keys := r.Keyed(root, "", "layers", "line_types")
	r.types = ownTypes()
	if n := keys["line_types"]; n != nil {
		r.lineTypes(n)
	}
	switch n := keys["layers"]; {
	case n != nil:
		r.rows = r.Section(n, "layers", "it holds "+example)
	case root.Kind == yaml.MappingNode:
		r.Fail(root, "layers", "it is not given", "it holds "+example, "standclear layers prints a map to begin from")
	}
	for _, row := range r.rows {
		p, ok := r.pen(row)
		if !ok {
			continue
		}
		r.at[p] = row.Key
		r.layer(p, row)
	}
	if len(r.Problems) == 0 {
		r.clashes()
	}
}

const example = "rows such as DETL-MCUT: {name: <D>-DETL-MCUT, colour: 7, weight: 0.50mm, line: Continuous}"

// pen returns the role whose layer a row names.
func (r *reader) pen(row keyfile.Row) (render.Pen, bool) {
	for p, d := range render.Pens {
		if d.Layer == row.Name {
			return render.Pen(p), true
		}
	}
	r.Fail(row.Key, keyfile.Join("layers", keyfile.Cut(row.Name)), fmt.Sprintf("%q is no layer of ours", keyfile.Cut(row.Name)),
		"allowed are "+strings.Join(ours(), ", "), meant(row.Name))
	return 0, false
}

// ours lists our layers in the order of the pens.
func ours() []string {
	var out []string
	for _, d := range render.Pens {
		out = append(out, d.Layer)
	}
	return out
}

// meant guesses what a name that is none of ours should be: ours in other letters, or with the letter of a sheet.
func meant(name string) string {
	up := strings.ToUpper(strings.TrimSpace(name))
	_, rest, _ := strings.Cut(up, "-")
	for _, d := range render.Pens {
		switch d.Layer {
		case up:
			return "did you mean " + d.Layer + "?"
		case rest:
			return "write " + d.Layer + ": the letter of the sheet is no part of the key"
		}
	}
	return "standclear layers prints all of them"
}

// clashes finds layers of one name that do not look alike, on the sheets of any discipline, and names that differ
// in capitals only.
func (r *reader) clashes() {
	said := map[render.Pen]bool{}
	for c := 'A'; c <= 'Z'; c++ {
		first := map[string]render.Pen{}
		for p, l := range r.layers {
			name := l.Of(string(c))
			q, met := first[strings.ToLower(name)]
			if !met {
				first[strings.ToLower(name)] = render.Pen(p)
				continue
			}
			r.clash(render.Pen(p), q, string(c), said)
		}
	}
}

// clash says what is wrong with two roles on one layer, at the later of those that stand in the file.
func (r *reader) clash(p, q render.Pen, discipline string, said map[render.Pen]bool) {
	a, b := r.layers[p], r.layers[q]
	same := a.Of(discipline) == b.Of(discipline)
	if r.at[p] == nil || r.at[q] != nil && r.at[q].Line > r.at[p].Line {
		p, q = q, p
	}
	if same && a.SameLook(b) || said[p] {
		return
	}
	said[p] = true
	path := keyfile.Join("layers", p.Def().Layer)
	name := r.layers[p].Of(discipline)
	if !same {
		r.Fail(r.at[p], path, fmt.Sprintf("the name %s differs from that of %s in capitals only", name, q.Def().Layer), "a CAD file takes both for one layer", "write both alike")
		return
	}
	r.Fail(r.at[p], path, fmt.Sprintf("the layer %s is that of %s, which is %s; here it is %s", name, q.Def().Layer, look(r.layers[q]), look(r.layers[p])),
		"a layer has one look", "make them alike or give another name")
}

// look says in words how a layer looks.
func look(l render.Layer) string {
	t := fmt.Sprintf("colour %d, %s, %s", l.Index, weightText(l.Weight), l.Type.Name)
	if l.NoPlot {
		t += ", not plotted"
	}
	return t
}

func weightText(w int) string { return fmt.Sprintf("%d.%02dmm", w/100, w%100) }
