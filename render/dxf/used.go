package dxf

import (
	"maps"
	"slices"

	"standclear/render"
)

// used collects what the entities refer to, so that the tables hold that and no more.
type used struct {
	layers    map[string]render.Layer
	named     map[placed]string       // the layer of a pen, once it was asked for
	told      map[render.Tag][]string // what is remembered of a part
	dimStyles []dimStyle
	notes     bool // text styles
	bold      bool
	remember  bool // extended data
}

// tally notes what the entities that stay refer to; layers and dimension styles that only a
// dropped one would have used go.
func (d *document) tally() {
	layers, styles, dims := map[string]bool{}, map[string]bool{}, map[string]bool{}
	d.each(func(e *entity) {
		layers[e.layer] = true
		d.names.remember = d.names.remember || len(e.remember) > 0
		for _, g := range e.data {
			switch {
			case g.code == 7:
				styles[g.value] = true
			case g.code == 3 && (e.kind == "DIMENSION" || e.kind == "LEADER"):
				dims[g.value] = true
			}
		}
	})
	maps.DeleteFunc(d.names.layers, func(n string, _ render.Layer) bool { return !layers[n] })
	d.names.dimStyles = slices.DeleteFunc(d.names.dimStyles, func(s dimStyle) bool { return !dims[s.name] })
	d.names.notes = styles[noteStyle] || len(dims) > 0
	d.names.bold = styles[boldStyle]
}

// each calls fn for every entity of the file, attributes after their insert.
func (d *document) each(fn func(*entity)) {
	for _, b := range d.blocks {
		for _, e := range b.items {
			fn(e)
			for _, p := range e.parts {
				fn(p)
			}
		}
	}
}

// placed is a pen on a sheet.
type placed struct {
	sheet *render.Sheet
	pen   render.Pen
}

// layer returns the layer of the pen on a sheet.
func (d *document) layer(s *render.Sheet, p render.Pen) string {
	if n, ok := d.names.named[placed{s, p}]; ok {
		return n
	}
	l := d.layers[p]
	n := name(l.On(s))
	if _, ok := d.names.layers[n]; !ok {
		d.names.layers[n] = l
	}
	d.names.named[placed{s, p}] = n
	return n
}

// textStyle returns the name of the style of a text.
func textStyle(bold bool) string {
	if bold {
		return boldStyle
	}
	return noteStyle
}

// facts returns extended data for key and value pairs, empty values left out. What is longer than
// one value goes on in the next under the same key.
func facts(pairs ...[2]string) []string {
	var out []string
	for _, p := range pairs {
		key := clean(p[0]) + "="
		if p[1] == "" {
			continue
		}
		for _, v := range pack(atoms(p[1], nil), maxString-len(key)) {
			out = append(out, key+v)
		}
	}
	return out
}

// tagged returns what an entity remembers of its part.
func (d *document) tagged(t *render.Tag) []string {
	if t == nil {
		return nil
	}
	out, ok := d.names.told[*t]
	if !ok {
		out = slices.Clip(facts([2]string{"mark", t.Mark}, [2]string{"material", t.Material}, [2]string{"size", t.Size}, [2]string{"role", t.Role}))
		d.names.told[*t] = out
	}
	return out
}
