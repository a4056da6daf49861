package design_test

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/design"
	"standclear/detail/demo"
	"standclear/detail/spec"
)

var update = flag.Bool("update", false, "rewrite the tables in testdata; look at every changed figure before committing it")

// blockType is a way to build the blocks, as changes of the inch deck with nothing in its way.
type blockType struct {
	name    string
	changes []string
}

// rowAt is a wall with nothing in its way and a block every s inches, in the middle of every n-th bay of
// house joists; hangers, ties and clips are strong enough not to decide.
func rowAt(s float64, n int) []string {
	const end = 7.6
	spaces := int(math.Round(168 / s))
	var x []string
	for i := range spaces + 1 {
		x = append(x, fmt.Sprintf("%gin", end+s*float64(i)))
	}
	bay := s / float64(n)
	return []string{"doors=", "obstacles=", fmt.Sprintf("ledger.length=%gin", 2*end+s*float64(spaces)), "blocks.positions=[" + strings.Join(x, ", ") + "]", "blocks.max_spacing=60in",
		fmt.Sprintf("floor.joists.spacing=%gin", bay), fmt.Sprintf("floor.joists.first=%gin", end+bay/2), "deck.joists.hanger=4000lb", "tie.rating=8000lb", "floor.backing.fixing=8000lb"}
}

// spacings are those a row is tried at, the widest first, with the bays from block to block.
func spacings() []struct {
	s float64
	n int
} {
	return []struct {
		s float64
		n int
	}{{48, 2}, {38.4, 2}, {32, 2}, {24, 1}, {19.2, 1}, {16, 1}}
}

// types are the ways that the levers of the trade lead through, the sketch first.
func types() []blockType {
	padded := []string{"blocks.plies=[1 1/2in, 1 1/2in]", "blocks.pad={thickness: 1/2in, material: xps, strength: 40psi, after: 1, foot: yes}"}
	return []blockType{
		{"padded, plies loose, two 1/2 in bolts, rim alone, no tie", append([]string{"blocks.plies_fastened=no", "floor.backing.kind=none", "tie.kind=none", "fasteners.through.columns=1", "fasteners.through.diameter=1/2in", "fasteners.through.hole=9/16in"}, padded...)},
		{"padded, four 5/8 in bolts, backed and tied", padded},
		{"solid, plies loose, four 5/8 in bolts, backed and tied", []string{"blocks.plies_fastened=no"}},
		{"solid, plies screwed, four 5/8 in bolts, backed and tied", nil},
		{"as d, six 5/8 in bolts, blocks 12 in wide, ledger 2 1/2 in thick", []string{"blocks.width=12in", "fasteners.through.columns=3", "blocks.ply_screws.count=30", "ledger.size=2 1/2in x 9 1/4in"}},
	}
}

// loaded is a deck of a span in ft under loads in psf.
func loaded(span, live, snow int) []string {
	return []string{fmt.Sprintf("deck.span=%dft", span), fmt.Sprintf("deck.projection=%dft", span+1), fmt.Sprintf("loads.live=%dpsf", live), fmt.Sprintf("loads.snow=%dpsf", snow), fmt.Sprintf("site.ground_snow=%dpsf", snow)}
}

// run builds and checks the inch deck with changes; ok is false when it cannot be built.
func run(t *testing.T, changes []string) (r check.Report, a *detail.Assembly, ok bool) {
	t.Helper()
	src, _ := demo.File("deck")
	s, problems := spec.Read("deck", src, changes)
	if len(problems) > 0 {
		t.Fatalf("%v: %v", changes, problems)
	}
	a, err := detail.Build(s)
	if err != nil {
		return r, nil, false
	}
	r, _ = design.Check(a)
	return r, a, true
}

// built builds and checks a project that can be built.
func built(t *testing.T, s *spec.Spec) (*detail.Assembly, check.Report) {
	t.Helper()
	a, err := detail.Build(s)
	if err != nil {
		t.Fatal(err)
	}
	r, _ := design.Check(a)
	return a, r
}

// worst returns the failing step of the strength groups with the greatest ratio; nil when none fails.
func worst(r *check.Report) *check.Step {
	var w *check.Step
	for i := range r.Steps {
		s := &r.Steps[i]
		strong := s.Group <= check.Floor
		if strong && s.Verdict == check.Fails && (w == nil || s.Ratio > w.Ratio) {
			w = s
		}
	}
	return w
}

// reached is the widest of the spacings at which no strength check fails, with a star when some are left
// to the engineer; "-" when there is none.
func reached(t *testing.T, changes []string) string {
	for _, c := range spacings() {
		r, _, ok := run(t, slices.Concat(rowAt(c.s, c.n), changes))
		if !ok || worst(&r) != nil {
			continue
		}
		star := ""
		for _, s := range r.Steps {
			if (s.Group <= check.Floor || s.Group == check.Scope) && s.Verdict == check.Engineer {
				star = "*"
			}
		}
		return fmt.Sprintf("%g%s", c.s, star)
	}
	return "-"
}

// The spacing each type of block reaches for ordinary decks, under the defaults: a table to look at
// whenever a judgement changes. It is no outside truth; that a useful design exists for every case is
// the check.
func TestSpacingReached(t *testing.T) {
	type load struct{ live, snow int }
	var b strings.Builder
	b.WriteString("# The widest spacing in inches, of 48, 38.4, 32, 24, 19.2 and 16, at which no strength check fails: the inch deck\n# with LSL rim and backing, dead load 12 psf, one block in the middle of a bay or of every second bay. - none of them;\n# * something beside is left to the engineer.\n")
	for i, ty := range types() {
		fmt.Fprintf(&b, "# %c  %s\n", 'a'+i, ty.name)
	}
	fmt.Fprintf(&b, "%-8s %-6s %-6s", "span ft", "live", "snow")
	for i := range types() {
		fmt.Fprintf(&b, " %6c", 'a'+i)
	}
	b.WriteString("\n")
	loads := []load{{40, 0}, {40, 30}, {40, 50}, {40, 70}, {60, 0}, {60, 50}}
	spans := []int{6, 8, 10, 12, 14}
	if testing.Short() {
		spans = []int{6, 14}
	}
	lines := make([]string, len(spans)*len(loads))
	var wait sync.WaitGroup
	for i, span := range spans {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for j, l := range loads {
				line := fmt.Sprintf("%-8d %-6d %-6d", span, l.live, l.snow)
				useful := false
				for _, ty := range types() {
					s := reached(t, slices.Concat(loaded(span, l.live, l.snow), ty.changes))
					useful = useful || s != "-"
					line += fmt.Sprintf(" %6s", s)
				}
				if !useful {
					t.Errorf("no type of block carries %d ft at %d psf live and %d psf snow", span, l.live, l.snow)
				}
				lines[i*len(loads)+j] = line
			}
		}()
	}
	wait.Wait()
	golden(t, "spacing_reached.txt", b.String()+strings.Join(lines, "\n")+"\n")
}

// "Blocks every 5 to 8 ft, padded" is a common claim of the trade. What the checks say to it: the load of
// the most loaded block, the check that is most overdrawn and how far, for the claim as it is made and for
// the strongest type of the table beside it.
func TestFarSpacingClaim(t *testing.T) {
	var b strings.Builder
	b.WriteString("# The claim: padded blocks (two plies, 1/2 in of foam between, spacer at the foot) with two bolts, every 5 to 8 ft.\n# Demand over what may be used, of the check most overdrawn; type letters as in spacing_reached.txt.\n")
	for _, l := range []struct{ span, live, snow int }{{6, 40, 0}, {8, 40, 0}, {10, 40, 30}, {10, 60, 0}, {12, 40, 50}, {14, 40, 70}} {
		for _, ft := range []float64{5, 8} {
			for _, i := range []int{0, 1, 4} {
				ty := types()[i]
				r, _, ok := run(t, slices.Concat(rowAt(12*ft, int(ft)), loaded(l.span, l.live, l.snow), ty.changes))
				if !ok {
					t.Fatalf("%v at %g ft cannot be built", l, ft)
				}
				w, load := worst(&r), r.Find("block_reaction_max")
				if w == nil {
					t.Errorf("%+v, %s every %g ft: nothing fails", l, ty.name, ft)
					continue
				}
				fmt.Fprintf(&b, "%2d ft, live %d psf, snow %2d psf, every %g ft, type %c: %5.0f lb on a block, %4.1f times too much in %q\n", l.span, l.live, l.snow, ft, 'a'+i, load.Value.V/4.4482216, w.Ratio/math.Max(w.Cap, 0.9), w.Name)
			}
		}
	}
	golden(t, "far_spacing_claim.txt", b.String())
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update && !testing.Short() {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(got, "\n") { // under -short only some of the lines are worked out
		if !strings.Contains(string(want), line+"\n") {
			t.Errorf("%s does not have the line\n%s", path, line)
		}
	}
	if !testing.Short() && len(got) != len(want) {
		t.Errorf("%s has %d bytes, it should have %d", path, len(want), len(got))
	}
}
