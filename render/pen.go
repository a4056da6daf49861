package render

// Pen is the role of a line, fill or text on a sheet. A role decides layer, weight, line type and
// colour, in every format alike; see Pens.
type Pen int

// The roles, heaviest use first.
const (
	Cut        Pen = iota // outline of a part that is cut
	CutMain               // the same for the parts the sheet is about
	ThinCut               // a thin sheet cut, drawn as one line: flashing, membrane edge
	Profile               // outline of a part in a pictorial view
	Visible               // edges seen beyond the cut
	Fine                  // edges that only carry texture or faint steps
	Existing              // context that this job does not change
	Hidden                // edges behind something
	Centre                // bolt axes, symmetry
	Phantom               // removed, alternative, or transparent parts
	Pattern               // hatch and texture
	Membrane              // water-control layer as a single line
	Insulation            // texture of insulation
	Fastener              // bolts, nuts, washers
	Water                 // flashing and drip edges seen, water and air arrows
	Load                  // force arrows
	Ground                // earth line
	Dimension             // dimension, extension line and its text
	Note                  // leaders and notes
	Mark                  // marks, section arrows, level targets
	CutLine               // cutting plane of a section
	Heading               // view and sheet titles
	Grid                  // schedule rules
	Border                // frame of the sheet
	TitleText             // text in the title block
	Status                // review status and verdict stamps
	Break                 // break lines
	Revision              // clouds round what was revised, with their marks
	NoPlot                // helpers that are not printed
	HeatEdge              // outline of a part under the colours of a temperature
	Isotherm              // line of one temperature
	DewPoint              // line where room air would drop its water
	Heat1                 // ground of the coldest band of temperature; Heat2 and on are warmer
	Heat2
	Heat3
	Heat4
	Heat5
	Heat6
	Heat7
	Heat8 // the warmest
	penCount
)

// LineType is a dash pattern; lengths are plotted millimetres.
type LineType struct {
	Name   string
	Text   string    // how the pattern looks, in characters
	Dashes []float64 // + dash, - gap, 0 dot; none is a solid line
}

// The line types by drafting convention (logic of ISO 128-2; plotted lengths are our choice).
var (
	Solid    = LineType{Name: "Continuous", Text: "Solid line"}
	Dashed   = LineType{"SC-HIDDEN", "Hidden __ __ __", []float64{3, -1.5}}
	Chain    = LineType{"SC-CENTRE", "Centre ____ _ ____", []float64{12, -2, 3, -2}}
	DblChain = LineType{"SC-PHANTOM", "Phantom ____ _ _ ____", []float64{12, -2, 3, -2, 3, -2}}
	DashDot  = LineType{"SC-MEMBRANE", "Membrane __ . __ . __", []float64{6, -1.5, 0.5, -1.5}}
)

// PenDef is what a role looks like.
type PenDef struct {
	Layer  string   // layer name after the discipline letter: "DETL-MCUT"
	Weight int      // line weight in 1/100 mm, one of the plottable steps
	Type   LineType // dash pattern
	Index  int      // colour index of the layer, 7 = black on white paper; past 9 only the nearest to RGB
	RGB    string   // the same for screens and PDF, "#rrggbb"
	NoPlot bool     // on screen only
}

const (
	black  = "#000000"
	grey   = "#707070"
	light  = "#8c8c8c"
	blue   = "#0b4a8f"
	red    = "#9c1c1c"
	dimInk = "#1a1a1a"
	dark   = "#404040"
	plum   = "#8a1a78"
)

// Pens holds one definition per role. Widths follow the 1 : 1.4 series 0.18-0.25-0.35-0.50-0.70-1.00.
var Pens = [penCount]PenDef{
	Cut:        {"DETL-MCUT", 50, Solid, 7, black, false},
	CutMain:    {"DETL-MCUT-MAIN", 70, Solid, 7, black, false},
	ThinCut:    {"DETL-WATR", 70, Solid, 5, blue, false},
	Profile:    {"DETL-OTLN", 50, Solid, 7, black, false},
	Visible:    {"DETL-MBND", 35, Solid, 7, black, false},
	Fine:       {"DETL-FINE", 18, Solid, 8, grey, false},
	Existing:   {"DETL-EXST", 25, Solid, 8, grey, false},
	Hidden:     {"DETL-HIDD", 25, Dashed, 7, black, false},
	Centre:     {"DETL-CNTR", 25, Chain, 7, black, false},
	Phantom:    {"DETL-PHAN", 25, DblChain, 7, black, false},
	Pattern:    {"DETL-PATT", 18, Solid, 8, grey, false},
	Membrane:   {"DETL-WATR-MEMB", 50, DashDot, 5, blue, false},
	Insulation: {"DETL-INSL-PATT", 18, Solid, 9, light, false},
	Fastener:   {"DETL-FAST", 35, Solid, 7, black, false},
	Water:      {"DETL-WATR-FLOW", 35, Solid, 5, blue, false},
	Load:       {"DETL-LOAD", 50, Solid, 1, red, false},
	Ground:     {"DETL-GRND", 100, Solid, 7, black, false},
	Dimension:  {"ANNO-DIMS", 25, Solid, 7, dimInk, false},
	Note:       {"ANNO-NOTE", 25, Solid, 7, black, false},
	Mark:       {"ANNO-SYMB", 35, Solid, 7, black, false},
	CutLine:    {"ANNO-CUTL", 25, Chain, 7, black, false},
	Heading:    {"ANNO-TITL", 70, Solid, 7, black, false},
	Grid:       {"ANNO-TABL", 25, Solid, 7, black, false},
	Border:     {"ANNO-TTLB", 100, Solid, 7, black, false},
	TitleText:  {"ANNO-TTLB-TEXT", 25, Solid, 7, black, false},
	Status:     {"ANNO-STAT", 50, Solid, 1, red, false},
	Break:      {"DETL-BRKL", 25, Solid, 7, black, false},
	Revision:   {"ANNO-REVS", 50, Solid, 6, plum, false},
	NoPlot:     {"ANNO-NPLT", 18, Solid, 8, grey, true},

	HeatEdge: {"DETL-HEAT-EDGE", 18, Solid, 8, dark, false},
	Isotherm: {"DETL-HEAT-ISOT", 25, Solid, 7, black, false},
	DewPoint: {"DETL-HEAT-DEWP", 70, Solid, 7, black, false},

	// From blue over green to yellow, as colour-blind eyes keep it apart, and lighter by 6 of 100 CIELAB
	// lightness from each to the next, 54 to 95: a grey print keeps the order, and black letters and lines
	// stand out on all of them. Our own values.
	Heat1: {"DETL-HEAT-B1", 18, Solid, 153, "#5085bb", false},
	Heat2: {"DETL-HEAT-B2", 18, Solid, 143, "#5a98bd", false},
	Heat3: {"DETL-HEAT-B3", 18, Solid, 133, "#6da9bc", false},
	Heat4: {"DETL-HEAT-B4", 18, Solid, 151, "#84babd", false},
	Heat5: {"DETL-HEAT-B5", 18, Solid, 141, "#9acbbe", false},
	Heat6: {"DETL-HEAT-B6", 18, Solid, 121, "#b4dbbd", false},
	Heat7: {"DETL-HEAT-B7", 18, Solid, 61, "#d7e9b7", false},
	Heat8: {"DETL-HEAT-B8", 18, Solid, 51, "#fff3b2", false},
}

// Def returns the look of the role.
func (p Pen) Def() PenDef { return Pens[p] }
