package dxf

import (
	"strconv"

	"standclear/render"
)

// dimStyle is a dimension style of the file: the plotted sizes of the unit, times a scale.
type dimStyle struct {
	name string
	k    float64
}

// dimStyle returns the name of the style for a scale: SC-DIM-IN-4.
func (d *document) dimStyle(k float64) string {
	n := "SC-DIM-MM-"
	if d.unit == render.Inch {
		n = "SC-DIM-IN-"
	}
	n += strconv.FormatFloat(k, 'f', -1, 64)
	for _, s := range d.names.dimStyles {
		if s.name == n {
			return n
		}
	}
	d.names.dimStyles = append(d.names.dimStyles, dimStyle{n, k})
	return n
}

// record returns the entry of the style, plotted sizes in the file's unit. The same table draws the
// pictures, so that a program that draws a dimension anew changes nothing.
func (s dimStyle) record(u render.Unit, text handle) tags {
	st, n := u.Style(), usualNumbering(u)
	size := func(mm float64) float64 { return round(mm * u.PerMM()) }
	kind := 2 // decimal
	if u == render.Inch {
		kind = 4 // feet and inches
	}
	return tags{}.str(2, s.name).int(70, 0).
		real(40, s.k).                       // all sizes times this
		real(41, size(st.Arrow)).            // of leaders
		real(42, size(st.Offset)).           // object to extension line
		real(43, size(st.Step)).             // line to line
		real(44, size(st.Over)).             // extension line past dimension line
		real(46, 0).                         // dimension line ends at the extension lines
		real(140, size(st.Text)).            // height
		real(141, 0).                        // no centre marks
		real(142, size(st.Tick)).            // ticks, not arrows
		real(144, 1).                        // lengths are true
		real(147, size(st.Gap)).             // line to text
		int(73, 0).int(74, 0).               // text along the line
		int(77, 1).                          // and above it
		int(78, n.zeros).                    // which zeros are printed
		int(172, 1).                         // always a line between the extension lines
		int(174, 0).                         // text may stand outside the extension lines
		int(176, 0).int(177, 0).int(178, 0). // colours of lines and text from the block
		int(179, 0).                         // whole degrees
		int(271, n.precision).               // places
		int(275, 0).                         // decimal degrees
		int(276, 2).                         // fractions in line with the text
		int(277, kind).                      // feet and inches, or decimal
		int(278, '.').                       // decimal point
		int(279, 2).                         // moved text has no leader
		int(280, 0).                         // no lines suppressed outside
		int(289, 3).                         // text or lines move out, whichever fits
		ref(340, text).                      // text style
		int(371, -2).int(372, -2)            // line weights from the block
}
