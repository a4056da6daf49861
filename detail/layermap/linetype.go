package layermap

import (
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"

	"standclear/detail/keyfile"
	"standclear/detail/unit"
	"standclear/render"
)

// ownTypes returns the line types that our pens use, in their order.
func ownTypes() []render.LineType {
	var out []render.LineType
	for _, d := range render.Pens {
		if !slices.ContainsFunc(out, func(t render.LineType) bool { return t.Name == d.Type.Name }) {
			out = append(out, d.Type)
		}
	}
	return out
}

// Bounds of a dash pattern. The format takes twelve pieces (from memory, confirm); a piece longer than the side
// of a sheet is a mistake.
const (
	manyPieces   = 12
	longestPiece = 1500 // mm
)

func patterns() string {
	return fmt.Sprintf("a line type is 2 to %d plotted lengths, each up to %d mm: a dash, then a gap with - before it, and so on, 0mm a dot, as [3mm, -1.5mm]", manyPieces, longestPiece)
}

func (r *reader) lineTypes(n *yaml.Node) {
	own := len(r.types)
	for _, row := range r.Section(n, "line_types", "it holds rows such as OFFICE-DASH: [3mm, -1.5mm]") {
		path := keyfile.Join("line_types", keyfile.Cut(row.Name))
		i := slices.IndexFunc(r.types, func(t render.LineType) bool { return strings.EqualFold(t.Name, row.Name) })
		switch {
		case !render.LegalName(row.Name):
			r.Fail(row.Key, path, fmt.Sprintf("%q cannot name a line type", keyfile.Cut(row.Name)), names(), "")
		case i >= 0 && i < own, strings.EqualFold(row.Name, "ByLayer"), strings.EqualFold(row.Name, "ByBlock"):
			r.Fail(row.Key, path, fmt.Sprintf("%q is there already", keyfile.Cut(row.Name)), "any other name is allowed", "a name that means two patterns would draw the wrong one in another drawing")
		case i >= 0:
			r.Fail(row.Key, path, fmt.Sprintf("%q is there already with other capitals", keyfile.Cut(row.Name)), "", "keep one of the two")
		default:
			t := render.LineType{Name: row.Name, Dashes: r.dashes(row.Val, path)}
			t.Text = picture(t)
			r.types = append(r.types, t)
		}
	}
}

func (r *reader) dashes(n *yaml.Node, path string) []float64 {
	before, allowed := len(r.Problems), patterns()
	var out []float64
	sum := 0.0
	items := r.List(n, path, allowed)
	for i, item := range items {
		at := keyfile.Join(path, fmt.Sprint(i))
		text, ok := r.One(item, at, allowed)
		if !ok {
			continue
		}
		v, err := unit.ParseLength(text)
		switch {
		case err != nil:
			r.Fail(item, at, err.Error(), allowed, "")
		case v.MM() < -longestPiece || v.MM() > longestPiece, (i%2 == 1) != (v.MM() < 0):
			r.Fail(item, at, fmt.Sprintf("%q cannot stand here", keyfile.Cut(text)), allowed, "")
		}
		out = append(out, v.MM())
		sum += max(v.MM(), -v.MM())
	}
	if len(r.Problems) == before && (len(out) < 2 || len(out) > manyPieces || len(out)%2 != 0 || sum < 0.1) {
		r.Fail(n, path, fmt.Sprintf("a pattern of %d lengths, %g mm in all", len(out), sum), allowed, "end with a gap")
	}
	return out
}

// picture shows a pattern in characters, as the file's own description of it.
func picture(t render.LineType) string {
	s := t.Name + " "
	for _, d := range t.Dashes {
		switch {
		case d == 0:
			s += "."
		case d < 0:
			s += " "
		case d < 5:
			s += "__"
		default:
			s += "____"
		}
	}
	return strings.TrimSpace(s)
}
