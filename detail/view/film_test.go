package view_test

import (
	"math"
	"slices"
	"testing"

	"standclear/detail"
	"standclear/detail/demo"
	"standclear/detail/spec"
	"standclear/detail/view"
)

// crossed lists the membranes that a level line at z crosses near the wall, from inside to outside, as they are
// drawn at 1:k: role and distance from the sheathing in plotted millimetres.
func crossed(p *view.Picture, z, k float64) (roles []detail.Role, at []float64) {
	type hit struct {
		role detail.Role
		y    float64
	}
	var hits []hit
	for _, c := range p.Pieces {
		if c.Part.Role != detail.Barrier && c.Part.Role != detail.Patch && c.Part.Role != detail.Wrap {
			continue
		}
		for _, l := range p.Films(c, k) {
			for i := 1; i < len(l.V); i++ {
				a, b := l.V[i-1].Vec, l.V[i].Vec
				if a.Y == b.Y || z < math.Min(a.Y, b.Y) || z >= math.Max(a.Y, b.Y) {
					continue
				}
				if y := a.Lerp(b, (z-a.Y)/(b.Y-a.Y)).X; y < 10*k {
					hits = append(hits, hit{c.Part.Role, y / k})
				}
			}
		}
	}
	slices.SortStableFunc(hits, func(a, b hit) int { return int(math.Copysign(1, a.y-b.y)) })
	for _, h := range hits {
		roles, at = append(roles, h.role), append(at, h.y)
	}
	return roles, at
}

// In the section at a block the membranes are drawn apart, 0.7 mm on paper or more, in the order they lie:
// over the block patch, wrap and barrier, under its foot barrier and patch, beyond the patch the barrier alone.
func TestMembranesReadInOrder(t *testing.T) {
	for _, name := range demo.Names() {
		src, _ := demo.File(name)
		s, problems := spec.Read(name, src, nil)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		a, err := detail.Build(s)
		if err != nil {
			t.Fatal(err)
		}
		b := a.Blocks[0].Box
		patch := a.PatchBox(0)
		for _, k := range []float64{2, 4, 5} {
			p := view.Cut(a, view.AcrossWall(a.Blocks[0].X), view.Options{Window: window()})
			for _, c := range []struct {
				where string
				z     float64
				want  []detail.Role
			}{
				{"over the patch", patch.Max.Y + 2, []detail.Role{detail.Barrier}},
				{"between wrap and edge of the patch", patch.Max.Y - 5, []detail.Role{detail.Patch, detail.Barrier}},
				{"on the wrap's lap", b.Max.Z + 25, []detail.Role{detail.Patch, detail.Wrap, detail.Barrier}},
				{"under the foot", b.Min.Z - 25, []detail.Role{detail.Barrier, detail.Patch}},
				{"under the patch", patch.Min.Y - 5, []detail.Role{detail.Barrier}},
			} {
				roles, at := crossed(&p, c.z, k)
				if !slices.Equal(roles, c.want) {
					t.Errorf("%s at 1:%.0f, %s: %v at %.2f, want %v", name, k, c.where, roles, at, c.want)
					continue
				}
				for i := 1; i < len(at); i++ {
					if at[i]-at[i-1] < 0.7 {
						t.Errorf("%s at 1:%.0f, %s: %v lie %.2f mm apart on paper", name, k, c.where, roles[i-1:i+1], at[i]-at[i-1])
					}
				}
			}
		}
	}
}
