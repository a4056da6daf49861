package render

import "strings"

// Layer is how a layer stands in a CAD file.
type Layer struct {
	Name   string   // DisciplineMark in it stands for the letter of the sheet: "<D>-DETL-MCUT"
	Index  int      // colour index, 1 to 255
	RGB    string   // the colour meant where the index is only near it, "#rrggbb", else ""
	Weight int      // line weight in 1/100 mm, one of PlotWeights
	Type   LineType // dash pattern
	NoPlot bool     // on screen only
}

// Layers holds the layer of each role, in the order of the pens. Two roles may share a layer when it looks the
// same for both.
type Layers [penCount]Layer

// DisciplineMark stands in the name of a layer for the letter that opens the sheet's number.
const DisciplineMark = "<D>"

// lastNamed is the last colour index that has a name and one meaning.
const lastNamed = 9

// OwnLayers returns the layers by Pens: discipline, major and minor group with dashes between, the form of the
// US National CAD Standard.
func OwnLayers() Layers {
	var out Layers
	for p, d := range Pens {
		out[p] = Layer{Name: DisciplineMark + "-" + d.Layer, Index: d.Index, Weight: d.Weight, Type: d.Type, NoPlot: d.NoPlot}
		if d.Index > lastNamed {
			out[p].RGB = d.RGB
		}
	}
	return out
}

// On returns the name of the layer on a sheet.
func (l Layer) On(s *Sheet) string { return l.Of(s.Discipline()) }

// Of returns the name of the layer for a discipline.
func (l Layer) Of(discipline string) string {
	return strings.ReplaceAll(l.Name, DisciplineMark, discipline)
}

// SameLook reports whether the layers differ in their names at most.
func (l Layer) SameLook(o Layer) bool {
	return l.Index == o.Index && l.RGB == o.RGB && l.Weight == o.Weight && l.NoPlot == o.NoPlot && strings.EqualFold(l.Type.Name, o.Type.Name)
}

// PlotWeights are the line weights that CAD files can hold, in 1/100 mm; the published list of the format.
var PlotWeights = []int{0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211}

// No name of a layer, block, style or line type in a CAD file holds one of these, or more than MaxName bytes.
// The caret is ours: it starts a control character in some readers.
const (
	NotInNames = "<>/\\\":;?*|,=`^"
	MaxName    = 200
)

// LegalName reports whether s can name a layer as it stands.
func LegalName(s string) bool {
	return s != "" && len(s) <= MaxName && s == strings.TrimSpace(Clean(s)) && !strings.ContainsAny(s, NotInNames+"\ufffd")
}
