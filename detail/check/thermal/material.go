package thermal

import (
	"fmt"
	"math"
	"strings"

	"standclear/detail"
	"standclear/detail/heat"
	"standclear/detail/stock"
	"standclear/geom"
)

// palette collects the materials of a case under names of their own.
type palette struct {
	list []heat.Material
	have map[string]bool
}

func (p *palette) add(m heat.Material) string {
	if p.have == nil {
		p.have = map[string]bool{}
	}
	if !p.have[m.Name] {
		p.have[m.Name] = true
		p.list = append(p.list, m)
	}
	return m.Name
}

// of returns the material of a part: wood along its grain and across it, everything else alike. Extra is
// added to the conductivity in depth, W/(m K).
func (p *palette) of(part *detail.Part, extra float64) string {
	m := conductor(part.Material)
	k := [3]float64{float64(m.Across), float64(m.Across), float64(m.Across)}
	name := m.Key
	if m.Along != m.Across {
		k[axisOf(part.Grain)] = float64(m.Along)
		name += " along " + axisOf(part.Grain).String()
	}
	if extra > 0 {
		k[heat.Y] += extra
		name += fmt.Sprintf(" screwed %.4f", extra)
	}
	return p.add(heat.Material{Name: name, K: k})
}

func axisOf(a geom.Axis) heat.Axis {
	switch a {
	case geom.Y:
		return heat.Y
	case geom.Z:
		return heat.Z
	}
	return heat.X
}

// conductor finds what a part's material conducts as: the material of that key, stainless or plain metal by
// its name, and softwood for every species of lumber.
func conductor(key string) stock.Material {
	if m, ok := stock.MaterialOf(key); ok {
		return m
	}
	plain := "softwood"
	switch {
	case strings.Contains(key, "stainless"):
		plain = "stainless"
	case strings.Contains(key, "alumin"):
		plain = "aluminium"
	case strings.Contains(key, "steel"), strings.Contains(key, "galvan"), strings.Contains(key, "copper"):
		plain = "steel"
	case strings.Contains(key, "strand"), strings.Contains(key, "lsl"):
		plain = "lsl"
	case strings.Contains(key, "veneer"), strings.Contains(key, "lvl"):
		plain = "lvl"
	}
	m, _ := stock.MaterialOf(plain)
	return m
}

// screwed returns how much n screws across a joint add to the conductivity in depth of the ply they run
// through, W/(m K): their steel over the face of the block, times how much of a short bar's conduction gets
// into the wood around it. That share is the shear-lag solution of a short fibre in a matrix (Cox 1952, for
// load; the equations of heat are the same):
//
//	share = 1 - tanh(b)/b   b = L/2 sqrt(2 pi kw / (ks A (ln(R/r) - 3/4)))
//
// with R the radius of the wood that each screw has to itself; less 3/4, to the mean of that wood and not to its
// edge. A solution in three dimensions is in the tests: the rule adds a tenth less than it.
func screwed(n int, d, length, face, kw, ks float64) float64 {
	if n == 0 || length <= 0 {
		return 0
	}
	r := d / 2
	own := math.Sqrt(face / float64(n) / math.Pi)
	if own <= r {
		return ks
	}
	area := math.Pi * r * r
	b := length / 2 * math.Sqrt(2*math.Pi*kw/(ks*area*max(math.Log(own/r)-0.75, 0.25)))
	return float64(n) * area * ks * (1 - math.Tanh(b)/b) / face
}
