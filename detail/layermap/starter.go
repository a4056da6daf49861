package layermap

import (
	"fmt"
	"strings"

	"standclear/render"
)

// drawn says what stands on the layer of each role.
var drawn = [len(render.Layers{})]string{
	render.Cut:        "outline of a part that is cut",
	render.CutMain:    "the same for the parts the sheet is about",
	render.ThinCut:    "a thin sheet cut, drawn as one line: flashing, edge of a membrane",
	render.Profile:    "outline of a part in a pictorial view",
	render.Visible:    "edges seen beyond the cut",
	render.Fine:       "edges that only carry texture or faint steps",
	render.Existing:   "context that this job does not change",
	render.Hidden:     "edges behind something",
	render.Centre:     "bolt axes, symmetry",
	render.Phantom:    "removed, alternative or transparent parts",
	render.Pattern:    "hatch and texture",
	render.Membrane:   "water-control layer as a single line",
	render.Insulation: "texture of insulation",
	render.Fastener:   "bolts, nuts, washers",
	render.Water:      "flashing and drip edges seen, water and air arrows",
	render.Load:       "force arrows",
	render.Ground:     "earth line",
	render.Dimension:  "dimensions",
	render.Note:       "leaders and notes",
	render.Mark:       "marks, section arrows, level targets",
	render.CutLine:    "cutting plane of a section",
	render.Heading:    "titles of views and sheets",
	render.Grid:       "rules of schedules",
	render.Border:     "frame of the sheet",
	render.TitleText:  "title block",
	render.Status:     "review status and verdict stamps",
	render.Break:      "break lines",
	render.Revision:   "clouds round what was revised, with their marks",
	render.NoPlot:     "frames of viewports, helpers",
	render.HeatEdge:   "outline of a part under the colours of a temperature",
	render.Isotherm:   "line of one temperature",
	render.DewPoint:   "line where room air would drop its water",
	render.Heat1:      "ground of the coldest band of temperature",
	render.Heat2:      "a warmer one",
	render.Heat3:      "a warmer one",
	render.Heat4:      "a warmer one",
	render.Heat5:      "a warmer one",
	render.Heat6:      "a warmer one",
	render.Heat7:      "a warmer one",
	render.Heat8:      "ground of the warmest band",
}

const head = `# Layers of the DXF files, to change and use as: standclear draw --layers THIS_FILE --out DIR
# SVG, PDF and HTML keep their own look.
#
# Each row is a layer of ours by its name without the letter of the sheet, and what it becomes. A row or a value
# left out stays as it is; a row may be the new name alone.
#   name    any legal name; <D> stands for the letter of the sheet (A-301 gives A)
#   colour  index 1 to 255, as colour-dependent plotting wants it; the bands of temperature have a true colour
#           beside theirs, which another index takes away
#   weight  plotted: 0.35mm or 0.014in, a step that CAD files hold
#   line    Continuous, SC-HIDDEN, SC-CENTRE, SC-PHANTOM, SC-MEMBRANE, or one of line_types
#   plot    no keeps a layer off the print
# Several rows may have one name when they look alike.
#
# As printed, the names have the form of the US National CAD Standard: discipline, major and minor groups of four
# letters. The groups DETL, MCUT, MBND, PATT and ANNO are published codes, the others ours.

`

// Starter returns the map that changes nothing, with a word on each row.
func Starter() []byte {
	var b strings.Builder
	b.WriteString(head)
	b.WriteString("layers:\n")
	for p, l := range render.OwnLayers() {
		row := fmt.Sprintf("  %-15s {name: %s, colour: %d, weight: %s, line: %s", render.Pens[p].Layer+":", l.Name, l.Index, weightText(l.Weight), l.Type.Name)
		if l.NoPlot {
			row += ", plot: no"
		}
		fmt.Fprintf(&b, "%-92s # %s\n", row+"}", drawn[p])
	}
	b.WriteString(`
# Line types of your own: plotted lengths, a dash, then a gap with - before it, and so on; 0mm is a dot.
#line_types:
#  OFFICE-DASH: [3mm, -1.5mm]
#  OFFICE-DASH-DOT: [0.5in, -1/8in, 0mm, -1/8in]
`)
	return []byte(b.String())
}
