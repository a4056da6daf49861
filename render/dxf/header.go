package dxf

import (
	"standclear/geom"
	"standclear/render"
)

// header returns the variables of the file, each under its own group code: a reader skips a name it
// does not know but gives up at a wrong code. No dates, no identifiers, no user names.
func (d *document) header() tags {
	x := d.extent()
	units, metric, display, places := 4, 1, 2, 0 // millimetre: decimal, whole
	if d.unit == render.Inch {
		units, metric, display, places = 1, 0, 4, 4 // feet and inches, sixteenths
	}
	style, k := "Standard", d.scale()
	for _, s := range d.names.dimStyles {
		if s.k == k {
			style = s.name
		}
	}
	notes := "Standard"
	if d.names.notes {
		notes = noteStyle
	}
	set := func(name string) tags { return tags{}.str(9, name) }
	var t tags
	for _, v := range []tags{
		set("$ACADVER").str(1, "AC1024"),
		set("$DWGCODEPAGE").str(3, "ANSI_1252"), // text is UTF-8 all the same, by the version
		set("$INSBASE").point(10, geom.Vec{}),
		set("$EXTMIN").point(10, x.Min),
		set("$EXTMAX").point(10, x.Max),
		set("$LTSCALE").real(40, 1),
		set("$TEXTSIZE").real(40, d.textSize(k)),
		set("$TEXTSTYLE").str(7, notes),
		set("$CLAYER").str(8, "0"),
		set("$CELTYPE").str(6, "ByLayer"),
		set("$CECOLOR").int(62, 256),
		set("$DIMSCALE").real(40, k),
		set("$DIMSTYLE").str(2, style),
		set("$LUNITS").int(70, display),
		set("$LUPREC").int(70, places),
		set("$AUNITS").int(70, 0),
		set("$TILEMODE").int(70, 1), // opens in model space
		set("$MEASUREMENT").int(70, metric),
		set("$PSLTSCALE").int(70, 1), // line types plot at their length at any scale
		set("$HANDSEED").ref(5, d.last+1),
		set("$CELWEIGHT").int(370, -1),
		set("$LWDISPLAY").int(290, 1),
		set("$INSUNITS").int(70, units),
		set("$PSTYLEMODE").int(290, 1),
	} {
		t = append(t, v...)
	}
	return t
}

// scale returns the scale of the first view.
func (d *document) scale() float64 {
	for _, l := range d.layouts {
		for _, v := range drawn(l.sheet.Views) {
			return v.Scale.K
		}
	}
	return 1
}

// textSize returns the height of notes in model space at scale k, in the file's unit.
func (d *document) textSize(k float64) float64 { return d.unit.Style().Text * k * d.unit.PerMM() }

// classes returns the kinds of object that newer files declare.
func classes() tags {
	var t tags
	for _, c := range [][2]string{
		{"ACDBDICTIONARYWDFLT", "AcDbDictionaryWithDefault"},
		{"ACDBPLACEHOLDER", "AcDbPlaceHolder"},
		{"LAYOUT", "AcDbLayout"},
	} {
		t = t.str(0, "CLASS").str(1, c[0]).str(2, c[1]).str(3, "ObjectDBX Classes").int(90, 0).int(91, 1).int(280, 0).int(281, 0)
	}
	return t
}
