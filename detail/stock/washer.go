package stock

import "standclear/detail/unit"

// Washer is a round plate with a hole.
type Washer struct {
	For                      string // name of its bolt
	Series                   string // narrow, wide (inch); normal, large (metric)
	Hole, Outside, Thickness unit.Length
	Source                   string
}

// Washers returns the standard round washers of a bolt, the smaller first; none when there is no
// standard one here.
func (b Bolt) Washers() []Washer {
	var all []Washer
	for _, w := range append(inchWashers(), metricWashers()...) {
		if w.For == b.Name {
			all = append(all, w)
		}
	}
	return all
}

// inchWashers: ASME B18.22.1 type A, narrow (N) and wide (W), basic thickness.
func inchWashers() []Washer {
	const source = "ASME B18.22.1 type A; " + memory
	var all []Washer
	for _, r := range []struct {
		name, series       string
		hole, outside, thk float64 // in
	}{
		{"1/4", "narrow", 0.281, 0.625, 0.065}, {"1/4", "wide", 0.312, 0.734, 0.065},
		{"5/16", "narrow", 0.344, 0.688, 0.065}, {"5/16", "wide", 0.375, 0.875, 0.083},
		{"3/8", "narrow", 0.406, 0.812, 0.065}, {"3/8", "wide", 0.438, 1, 0.083},
		{"7/16", "narrow", 0.469, 0.922, 0.065}, {"7/16", "wide", 0.5, 1.25, 0.083},
		{"1/2", "narrow", 0.531, 1.062, 0.095}, {"1/2", "wide", 0.562, 1.375, 0.109},
		{"5/8", "narrow", 0.656, 1.312, 0.095}, {"5/8", "wide", 0.688, 1.75, 0.134},
		{"3/4", "narrow", 0.812, 1.469, 0.134}, {"3/4", "wide", 0.812, 2, 0.148},
		{"7/8", "narrow", 0.938, 1.75, 0.134}, {"7/8", "wide", 0.938, 2.25, 0.165},
		{"1", "narrow", 1.062, 2, 0.134}, {"1", "wide", 1.062, 2.5, 0.165},
	} {
		all = append(all, Washer{r.name, r.series, in(r.hole), in(r.outside), in(r.thk), source})
	}
	return all
}

// metricWashers: ISO 7089 (normal) and ISO 7093-1 (large).
func metricWashers() []Washer {
	const normal, large = "ISO 7089; " + memory, "ISO 7093-1; " + memory
	return []Washer{
		{"M10", "normal", 10.5, 20, 2, normal}, {"M10", "large", 10.5, 30, 2.5, large},
		{"M12", "normal", 13, 24, 2.5, normal}, {"M12", "large", 13, 37, 3, large},
		{"M16", "normal", 17, 30, 3, normal}, {"M16", "large", 17, 50, 3, large},
		{"M20", "normal", 21, 37, 3, normal}, {"M20", "large", 22, 60, 4, large},
		{"M24", "normal", 25, 44, 4, normal}, {"M24", "large", 26, 72, 5, large},
	}
}

// PlateWasher returns the square plate used under head and nut where wood must not be crushed: 3 x 3 x
// 1/4 in, or 80 x 80 x 6 mm for a metric bolt (common practice, no source).
func (b Bolt) PlateWasher() (size, thickness unit.Length) {
	if b.Metric {
		return 80, 6
	}
	return 3 * unit.Inch, unit.Inch / 4
}
