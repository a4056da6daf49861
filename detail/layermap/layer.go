package layermap

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"

	"standclear/detail/keyfile"
	"standclear/detail/unit"
	"standclear/render"
)

// layer reads one row: a name alone, or a section.
func (r *reader) layer(p render.Pen, row keyfile.Row) {
	path := keyfile.Join("layers", row.Name)
	l := &r.layers[p]
	if row.Val.Kind == yaml.ScalarNode && !keyfile.Blank(row.Val) {
		r.name(l, row.Val, path)
		return
	}
	if row.Val.Kind != yaml.MappingNode {
		r.Fail(row.Val, path, "there is neither a name nor a section", "it holds {name, colour, weight, line, plot}, or is a name alone", "")
		return
	}
	keys := r.Keyed(row.Val, path, "name", "colour", "weight", "line", "plot")
	for _, k := range []struct {
		name string
		read func(l *render.Layer, n *yaml.Node, path string)
	}{{"name", r.name}, {"colour", r.colour}, {"weight", r.weight}, {"line", r.line}, {"plot", r.plot}} {
		if n := keys[k.name]; n != nil {
			k.read(l, n, keyfile.Join(path, k.name))
		}
	}
}

// names says what a layer or line type may be called.
func names() string {
	return fmt.Sprintf("allowed are 1 to %d bytes without any of %s, control characters, and blanks at the ends", render.MaxName, strings.Join(strings.Split(render.NotInNames, ""), " "))
}

func (r *reader) name(l *render.Layer, n *yaml.Node, path string) {
	if _, ok := r.One(n, path, "a name is needed"); !ok {
		return
	}
	on := render.Layer{Name: n.Value}.Of("A")
	switch {
	case !render.LegalName(on):
		do := ""
		if strings.Contains(on, "<") {
			do = render.DisciplineMark + " alone stands for the letter of the sheet"
		}
		r.Fail(n, path, fmt.Sprintf("%q cannot name a layer", keyfile.Cut(n.Value)), names(), do)
	case on == "0" || strings.EqualFold(on, "Defpoints"):
		r.Fail(n, path, fmt.Sprintf("%q is a layer of every file with a use of its own", n.Value), "any other name is allowed", "")
	default:
		l.Name = n.Value
	}
}

func (r *reader) colour(l *render.Layer, n *yaml.Node, path string) {
	const allowed = "an index from 1 to 255 is needed: 1 red, 2 yellow, 3 green, 4 cyan, 5 blue, 6 magenta, 7 black on white, 8 and 9 grey"
	text, ok := r.One(n, path, allowed)
	if !ok {
		return
	}
	v, err := strconv.Atoi(text)
	if err != nil || v < 1 || v > 255 {
		r.Fail(n, path, fmt.Sprintf("%q is not a colour index", keyfile.Cut(text)), allowed, "")
		return
	}
	if v != l.Index {
		l.Index, l.RGB = v, "" // an index that is theirs means what their plotting makes of it
	}
}

// nearWeight is how far a weight may lie from the plottable one: half a thousandth of an inch, 1/100 mm, since
// weights in inches are stated in thousandths.
const nearWeight = 1.27

func (r *reader) weight(l *render.Layer, n *yaml.Node, path string) {
	text, ok := r.One(n, path, "a line weight is written 0.35mm or 0.014in")
	if !ok {
		return
	}
	v, err := unit.ParseLength(text)
	if err != nil {
		r.Fail(n, path, err.Error(), "a line weight is written 0.35mm or 0.014in", "")
		return
	}
	best := 0
	var all []string
	for _, w := range render.PlotWeights {
		all = append(all, strings.TrimSuffix(weightText(w), "mm"))
		if math.Abs(v.MM()*100-float64(w)) < math.Abs(v.MM()*100-float64(best)) {
			best = w
		}
	}
	if math.Abs(v.MM()*100-float64(best)) > nearWeight {
		r.Fail(n, path, fmt.Sprintf("%q is not a line weight that a CAD file can hold", keyfile.Cut(text)), "allowed are "+strings.Join(all, ", ")+" mm", "the nearest is "+weightText(best))
		return
	}
	l.Weight = best
}

func (r *reader) line(l *render.Layer, n *yaml.Node, path string) {
	var known []string
	for _, t := range r.types {
		known = append(known, t.Name)
	}
	allowed := "allowed are " + strings.Join(known, ", ") + ", and those under line_types"
	text, ok := r.One(n, path, allowed)
	if !ok {
		return
	}
	for _, t := range r.types {
		if strings.EqualFold(t.Name, text) {
			l.Type = t
			return
		}
	}
	r.Fail(n, path, fmt.Sprintf("%q is not a line type", keyfile.Cut(text)), allowed, "")
}

func (r *reader) plot(l *render.Layer, n *yaml.Node, path string) {
	text, ok := r.One(n, path, "yes or no is needed")
	switch strings.ToLower(text) {
	case "yes", "true":
		l.NoPlot = false
	case "no", "false":
		l.NoPlot = true
	default:
		if ok {
			r.Fail(n, path, fmt.Sprintf("%q is not allowed", keyfile.Cut(text)), "yes or no is needed", "")
		}
	}
}
