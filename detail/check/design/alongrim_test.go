package design_test

import (
	"math"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/design"
)

// With house joists along the rim the model has the pieces that were built, one a block, and no ties.
func TestBackingAlongTheRimIsMeasured(t *testing.T) {
	a, r := demoReport(t, "deck", "floor.joists.direction=parallel")
	m, pieces := design.Model(a), a.Find(detail.Backing)
	if len(pieces) != len(a.Blocks) || len(m.Backing.Pieces) != len(pieces) || len(m.Tie.At) != 0 {
		t.Fatalf("%d blocks, %d pieces built, %d pieces and %d ties in the model", len(a.Blocks), len(pieces), len(m.Backing.Pieces), len(m.Tie.At))
	}
	for i, p := range m.Backing.Pieces {
		if b := pieces[i].Bounds(); math.Abs(p.From.MM()-b.Min.X) > 1e-6 || math.Abs(p.To.MM()-b.Max.X) > 1e-6 {
			t.Errorf("piece %d from %.2f to %.2f in the model, %.2f to %.2f built", i+1, p.From.MM(), p.To.MM(), b.Min.X, b.Max.X)
		}
	}
	// Half a block of 8 3/4 in less half of 3 1/4 in between the columns: 2 3/4 in to the end of the piece.
	if s := r.Find("end_backing"); math.Abs(s.Value.V-2.75*25.4) > 1e-6 || s.Verdict != check.OK {
		t.Errorf("end of the backing: %v, %v", s.Value, s.Verdict)
	}
	for id, want := range map[string]check.Verdict{
		"backing_behind_bolts": check.OK, "rim_blocking": check.Engineer, "backing_fixing": check.Engineer, "scope_joist_direction": check.Engineer,
		"backing_bending": check.NotChecked, "tie_rating": check.NotChecked, "lateral_joists": check.Fails,
	} {
		if s := r.Find(id); s == nil || s.Verdict != want {
			t.Errorf("%s: %+v, want %v", id, s, want)
		}
	}
	if s := r.Find("joist_behind_rim"); s != nil {
		t.Errorf("no joist holds the foot of the backing: %+v", s)
	}
}

// No tie is offered where none would be built.
func TestNoTieIsOfferedAlongTheRim(t *testing.T) {
	read := again("deck", []string{"floor.joists.direction=parallel", "tie.kind=none"})
	s, ok := read()
	if !ok {
		t.Fatal("cannot be read")
	}
	a, r := built(t, s)
	best := design.Mend(a, &r, read)
	if all := strings.Join(best.Sets, " "); strings.Contains(all, "tie.kind") {
		t.Errorf("offered: %s", all)
	}
	if fix := r.Find("tie_rating").Fix; strings.Contains(fix, "tie.kind") || !strings.Contains(fix, "engineer") {
		t.Errorf("offered: %s", fix)
	}
}
