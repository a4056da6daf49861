package thermal

import (
	"fmt"
	"math"

	"standclear/detail/heat"
	"standclear/detail/unit"
)

// clearWall finds the U of the wall away from floor and deck.
func (r *run) clearWall() error {
	c, step := r.wallCase()
	res, err := r.one(c, care{1, 1})
	if err != nil {
		return err
	}
	r.out.Wall = value(res.Envs[0].Flow).Times(1e3 / step)
	return nil
}

// wallCase is the clear wall from above: one stud with half a bay to either side. It returns its width, mm.
func (r *run) wallCase() (heat.Case, float64) {
	b := r.b
	s, f := b.a.Spec, b.a.Frame
	step, half := s.Wall.StudSpacing.MM(), s.Wall.StudWidth.MM()/2
	still := rsVented
	if !b.vented() {
		still = rsOutside
	}
	c := heat.Case{Name: "the clear wall", Dim: 2, Envs: []heat.Env{{Name: room, T: 1, Rs: rsInside}, {Name: outside, T: 0, Rs: still}}}
	var mix palette
	y := f.FinishIn
	add := func(x0, x1, t float64, material string) {
		c.Boxes = append(c.Boxes, heat.Box{Lo: heat.Point{x0, y}, Hi: heat.Point{x1, y + t}, Material: material})
	}
	c.Boxes = append(c.Boxes, heat.Box{Lo: heat.Point{0, y - 10}, Hi: heat.Point{step, y}, Env: room})
	for i, l := range s.Wall.Layers {
		t := l.Thickness.MM()
		if l.Role == "wrb" || t <= 0 {
			continue
		}
		if l.Role == "cavity" {
			if !b.covered(i) {
				break
			}
			if m, ok := heat.AirLayer(fmt.Sprintf("air %.1f", t), t, heat.Sideways); ok {
				add(0, step, t, mix.add(m))
				y += t
			}
			continue
		}
		m := conductor(l.Material)
		add(0, step, t, mix.add(heat.Isotropic(m.Key, float64(m.Across))))
		if l.Role == "studs" {
			w := conductor("softwood")
			add(step/2-half, step/2+half, t, mix.add(heat.Isotropic("stud", float64(w.Across))))
		}
		y += t
	}
	c.Boxes = append(c.Boxes, heat.Box{Lo: heat.Point{0, y}, Hi: heat.Point{step, y + 10}, Env: outside})
	c.Materials = mix.list
	return c, step
}

// assumed lists what the model takes for granted.
func (b *bay) assumed() []string {
	sys := b.a.Spec.Project.System
	text := func(mm float64) string { return unit.Length(mm).Text(sys) }
	out := []string{
		fmt.Sprintf("one bay is solved, %s wide, cut planes let no heat pass; it stands for every block", text(math.Round(b.hi[0]-b.lo[0]))),
		"room air at one temperature above and below the floor and in the joist bays; the joist bay is not insulated",
		"surface resistances 0.13 inside, 0.04 outside, 0.13 m2K/W at the gap and behind ventilated cladding; 0.25 inside for the mould criterion (ISO 6946, ISO 13788)",
		"conductivities of the material table: dry to 12 % moisture, wood across and along its grain",
		"bolts as square bars of their section in full contact; washers drawn, heads and nuts not; screws of the plies spread over the ply by the shear-lag rule of a short fibre",
		"cladding, furring, membranes, screen, hangers, decking, ties and the screws of the cladding left out; deck joists cut " + text(joists) + " outside the ledger",
		"sloped tops of block and ledger at their mean height; faces nearer than " + text(near) + " along and up the wall taken as one, those of metal as they are",
		"no heat through doors; ground and what lies below the model left out",
		"wood treated or wet conducts more: a few per cent for each 10 % of moisture",
	}
	if !b.vented() {
		out[2] = "surface resistances 0.13 inside, 0.04 m2K/W outside; 0.25 inside for the mould criterion (ISO 6946, ISO 13788)"
	}
	return out
}
