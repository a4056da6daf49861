package asbuilt_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/asbuilt"
	"standclear/detail/check/design"
	"standclear/detail/demo"
	"standclear/detail/spec"
	"standclear/detail/unit"
)

// drawn returns a demo as a design.
func drawn(t testing.TB, name string) asbuilt.Design {
	t.Helper()
	return changed(t, name, nil)
}

// changed returns a demo with changes as a design.
func changed(t testing.TB, name string, sets []string) asbuilt.Design {
	t.Helper()
	src, ok := demo.File(name)
	if !ok {
		t.Fatalf("no demo %s", name)
	}
	again := func(changes ...string) (*spec.Spec, bool) {
		s, problems := spec.Read(name, src, slices.Concat(sets, changes))
		return s, len(problems) == 0
	}
	s, _ := again()
	a, err := detail.Build(s)
	if err != nil {
		t.Fatal(err)
	}
	r, _ := design.Check(a)
	return asbuilt.Design{Assembly: a, Report: &r, Again: again}
}

// verified reads a field sheet of a demo and verifies it.
func verified(t *testing.T, name, field string) (asbuilt.Design, *asbuilt.Result) {
	t.Helper()
	d := drawn(t, name)
	f, problems := asbuilt.Read("field.yaml", []byte(field), d.Assembly)
	if problems != nil {
		t.Fatalf("%s: %v", field, problems)
	}
	r, err := asbuilt.Verify(d, f)
	if err != nil {
		t.Fatal(err)
	}
	return d, r
}

// item returns the item with the key.
func item(t *testing.T, r *asbuilt.Result, key string) asbuilt.Item {
	t.Helper()
	i := slices.IndexFunc(r.Items, func(i asbuilt.Item) bool { return i.Key == key })
	if i < 0 {
		t.Fatalf("no item %s", key)
	}
	return r.Items[i]
}

// turn returns what became of a check, of the whole or at a block; nil when it did not change.
func turn(r *asbuilt.Result, id, where string) *asbuilt.Turn {
	for i := range r.Turns {
		if t := &r.Turns[i]; t.Step.ID == id && t.Where == where {
			return t
		}
	}
	return nil
}

// filled writes beside every key of a form what is drawn.
func filled(form []byte) string {
	line := regexp.MustCompile(`(?m)^( +)(\w+): +# drawn ([^;\n]*).*$`)
	return line.ReplaceAllStringFunc(string(form), func(s string) string {
		m := line.FindStringSubmatch(s)
		v := strings.TrimSpace(m[3])
		switch {
		case m[2] == "moisture":
			v = "15%"
		case v[0] == '[':
			var rows []string
			for _, z := range strings.Split(strings.Trim(v, "[]"), ",") {
				rows = append(rows, quoted(strings.TrimSpace(z)))
			}
			v = "[" + strings.Join(rows, ", ") + "]"
		default:
			v = quoted(v)
		}
		return m[1] + m[2] + ": " + v
	})
}

func quoted(s string) string { return "'" + strings.ReplaceAll(s, "'", "''") + "'" }

// Built as drawn, everything is within tolerance and no check turns, in both systems of units; a form that is
// filled in is a field sheet.
func TestBuiltAsDrawn(t *testing.T) {
	for _, name := range demo.Names() {
		d := drawn(t, name)
		_, r := verified(t, name, filled(asbuilt.Form(name, d.Assembly, d.Report)))
		if n := r.Count(asbuilt.OK); n != len(r.Items) || n < 60 {
			t.Errorf("%s: %d of %d are within tolerance", name, n, len(r.Items))
		}
		for _, k := range r.Turns {
			if k.Worse {
				t.Errorf("%s: %s turned to %v: %s", name, k.Step.ID, k.Step.Verdict, k.Step.Reason)
			}
		}
		if r.Bad() {
			t.Errorf("%s: fails as drawn", name)
		}
	}
}

// A form as it stands measures nothing, and is no field sheet.
func TestEmptyForm(t *testing.T) {
	d := drawn(t, "deck")
	if _, problems := asbuilt.Read("field.yaml", asbuilt.Form("X", d.Assembly, d.Report), d.Assembly); len(problems) != 1 || !strings.Contains(problems.Error(), "nothing is measured in it") {
		t.Errorf("%v", problems)
	}
}

// What is not measured says so.
func TestNotMeasured(t *testing.T) {
	_, r := verified(t, "deck", "rim: {thickness: 1 1/4in}")
	if ok, open := r.Count(asbuilt.OK), r.Count(asbuilt.NotChecked); ok != 1 || ok+open != len(r.Items) {
		t.Errorf("%d OK and %d NOT CHECKED of %d", ok, open, len(r.Items))
	}
	if i := item(t, r, "blocks.B3.through.count"); i.Verdict != asbuilt.NotChecked || i.Reason != "not measured" || i.Found != nil {
		t.Errorf("%+v", i)
	}
}

// By hand, deck: w = 418.203 plf; blocks at 12.5, 34.5, 55.75 in. Between blocks R = 1.25 w s (judgement of the
// design), s the half of both spaces: B2 has (55.75 - 12.5)/2 = 21.625 in and 1.25 x 418.203/12 x 21.625 = 942.05 lb.
// B3 found at 59.5 in makes that 23.5 in: the load grows by 23.5/21.625 to 1023.73 lb.
func TestSpacingGrown(t *testing.T) {
	d, r := verified(t, "deck", "blocks: {B3: {at: 59.5in}}")
	was, now := d.Report.Find("block_reaction_2").Value.V, r.Report.Find("block_reaction_2").Value.V
	if lb := float64(unit.Pound); math.Abs(was/lb-942.05) > 0.01 || math.Abs(now/lb-1023.73) > 0.05 {
		t.Errorf("load on B2 %.2f and %.2f lb, want 942.05 and 1023.73", was/lb, now/lb)
	}
	at := item(t, r, "blocks.B3.at")
	if at.Verdict != asbuilt.Fails || !strings.Contains(at.Reason, `off by 3 3/4", within 1/4" is asked`) {
		t.Errorf("%+v", at)
	}
	k := turn(r, "linear_interaction_top_bolt", "")
	// by hand: shear and pull both grow with the load: 0.8663 x 1023.73/957.48 = 0.9262, over the cap of 0.9
	if k == nil || math.Abs(k.Step.Value.V-0.9262) > 1e-3 || k.Step.Verdict != check.Fails || !slices.Contains(k.Causes, "blocks.B3.at") || !strings.Contains(k.Remedy, "set block B3 at 4'-7 3/4\"") {
		t.Errorf("%+v", k)
	}
}

// The same in a metric deck: the load of B2 is in proportion to half the spaces beside it.
func TestSpacingGrownMetric(t *testing.T) {
	d := drawn(t, "deck-metric")
	x1, x2, x3 := d.Assembly.Blocks[0].X, d.Assembly.Blocks[1].X, d.Assembly.Blocks[2].X
	_, r := verified(t, "deck-metric", fmt.Sprintf("blocks: {B3: {at: %gmm}}", x3+80))
	w := d.Report.Find("ledger_line_load").Value.V // N/mm
	if was, want := d.Report.Find("block_reaction_2").Value.V, 1.25*w*(x3-x1)/2; math.Abs(was-want) > 1 {
		t.Errorf("drawn %.0f N, by hand %.0f", was, want)
	}
	if now, want := r.Report.Find("block_reaction_2").Value.V, 1.25*w*(x3+80-x1)/2; math.Abs(now-want) > 1 {
		t.Errorf("found %.0f N at %.0f, %.0f, %.0f mm, by hand %.0f", now, x1, x2, x3+80, want)
	}
	if i := item(t, r, "blocks.B3.at"); i.Verdict != asbuilt.Fails || !strings.Contains(i.Reason, "off by 80 mm, within 6 mm is asked") {
		t.Errorf("%+v", i)
	}
}

// One of the four bolts of B3 is missing. One column counts: 2 bolts for 4, half of 1742 lb but for the group
// factor; B3 carries 1.25 x 418.203/12 x (77.125 - 34.5)/2 = 928.43 lb, over 0.9 of it. B3 alone is judged so.
func TestMissingBolt(t *testing.T) {
	d, r := verified(t, "deck", "blocks: {B3: {through: {count: 3}}, B4: {through: {count: 4}}}")
	k := turn(r, "plane1_rim_from_block", "B3")
	if k == nil || k.Step.Verdict != check.Fails {
		t.Fatalf("%+v", k)
	}
	lb := float64(unit.Pound)
	full := d.Report.Find("plane1_rim_from_block").Limit.V
	if math.Abs(k.Step.Value.V/lb-928.43) > 0.05 || math.Abs(k.Step.Limit.V/full-0.5) > 0.01 {
		t.Errorf("%.2f of %.2f lb, full %.2f", k.Step.Value.V/lb, k.Step.Limit.V/lb, full/lb)
	}
	if k.Remedy != `fit 1 more bolt 5/8" as drawn in block B3` || !slices.Equal(k.Causes, []string{"blocks.B3.through.count"}) {
		t.Errorf("%q by %v", k.Remedy, k.Causes)
	}
	if i := item(t, r, "blocks.B3.through.count"); i.Verdict != asbuilt.Fails || !strings.HasPrefix(i.Reason, "1 missing") {
		t.Errorf("%+v", i)
	}
	if i := item(t, r, "blocks.B4.through.count"); i.Verdict != asbuilt.OK {
		t.Errorf("%+v", i)
	}
	if r.Report.Count(check.Fails) != 0 {
		t.Error("the other blocks fail with it")
	}
}

// Nothing is left of two columns when two bolts are missing anywhere.
func TestTwoBoltsMissing(t *testing.T) {
	_, r := verified(t, "balcony-metric", "blocks: {B2: {through: {count: 2}}}")
	k := turn(r, "block_as_built", "B2")
	if k == nil || k.Step.Verdict != check.Fails || !strings.HasPrefix(k.Remedy, "fit 2 more bolts 12 mm as drawn") {
		t.Errorf("%+v", k)
	}
}

// A block 1/4 in off the ledger: its bolts bend across the gap and its loose parts bear nothing. A feeler's gap is none.
func TestGapBeforeABlock(t *testing.T) {
	_, r := verified(t, "deck", "blocks: {B5: {gap: 1/4in}, B7: {gap: 1/32in}}")
	k := turn(r, "many_layer_void", "B5")
	if k == nil || k.Step.Verdict != check.Fails || !slices.Contains(k.Causes, "blocks.B5.gap") || !strings.Contains(k.Remedy, "draw ledger and block B5 together") {
		t.Fatalf("%+v", k)
	}
	if i := item(t, r, "blocks.B7.gap"); i.Verdict != asbuilt.OK {
		t.Errorf("a feeler's gap: %+v", i)
	}
	if turn(r, "many_layer_void", "B7") != nil {
		t.Error("a gap within tolerance is taken for open")
	}
}

// The lowest row 1/16 in low is within what the sheets allow, yet leaves 2 7/16 in of the 2 1/2 in (4 D of 5/8 in)
// that the rim's loaded edge asks: the design keeps it to the last sixteenth, and it fails.
func TestNoRoomForTolerance(t *testing.T) {
	_, r := verified(t, "deck", "blocks: {B6: {through: {rows: [2 13/16in, 6 11/16in]}}}")
	k := turn(r, "edge_rim_loaded", "B6")
	if k == nil || k.Step.Verdict != check.Fails || math.Abs(k.Step.Value.V-2.4375*25.4) > 1e-6 {
		t.Fatalf("%+v", k)
	}
	low, top := item(t, r, "blocks.B6.through.rows.1"), item(t, r, "blocks.B6.through.rows.0")
	if low.Verdict != asbuilt.Fails || !strings.HasPrefix(low.Reason, "within tolerance, yet") || top.Verdict != asbuilt.OK {
		t.Errorf("%+v\n%+v", low, top)
	}
}

// A missing block: set as drawn, or one more between its neighbours, which is the same.
func TestMissingBlock(t *testing.T) {
	_, r := verified(t, "deck", "blocks: {B4: missing}")
	if n := len(r.Report.Steps); r.Report.Find("block_reaction_9") != nil || n == 0 {
		t.Error("nine blocks still carry")
	}
	k := turn(r, "block_spacing_max", "")
	if k == nil || k.Step.Where != "B3 to B5" || !strings.Contains(k.Remedy, "add a block between B3 and B5") || !strings.Contains(k.Remedy, "set block B4") {
		t.Errorf("%+v", k)
	}
	if i := item(t, r, "blocks.B4"); i.Verdict != asbuilt.Fails {
		t.Errorf("%+v", i)
	}
}

// A rim that nobody knows carries nothing, and the maker's gravity of the one drawn says nothing of another: a rim
// of OSB is taken at the floor of 0.42 (stock).
func TestAnotherRim(t *testing.T) {
	_, r := verified(t, "deck-metric", "rim: {material: unknown}")
	if i := item(t, r, "rim.material"); i.Verdict != asbuilt.Fails || !r.Bad() {
		t.Errorf("%+v", i)
	}
	d, r := verified(t, "deck-metric", "rim: {material: osb}")
	was, now := d.Report.Find("plane1_rim_from_block").Limit.V, r.Report.Find("plane1_rim_from_block").Limit.V
	if now >= was {
		t.Errorf("%.0f N in OSB, %.0f N in the rim drawn", now, was)
	}
}

// A rim 1/4 in thicker than drawn, with bolts of the drawn length: 1/4 in less thread past the nut.
func TestBoltsAreThereAlready(t *testing.T) {
	d, r := verified(t, "deck", "rim: {thickness: 1 1/2in}")
	was, now := d.Report.Find("bolt_length"), r.Report.Find("bolt_length")
	if now.Value != was.Value || math.Abs(now.Limit.V-was.Limit.V-unit.Inch.MM()/4) > 1e-6 {
		t.Errorf("%.2f of %.2f, drawn %.2f of %.2f mm", now.Value.V, now.Limit.V, was.Value.V, was.Limit.V)
	}
}

// Wet wood in place of dry takes the wet factor; the insulation found thicker takes the gap.
func TestWetWoodThickInsulation(t *testing.T) {
	d, r := verified(t, "balcony", "ledger: {moisture: 24%}\nblock: {moisture: 19%}\ninsulation: {thickness: 2 7/8in}")
	if i := item(t, r, "block.moisture"); i.Verdict != asbuilt.OK {
		t.Errorf("%+v", i)
	}
	if i := item(t, r, "ledger.moisture"); i.Verdict == asbuilt.OK {
		t.Errorf("%+v", i)
	}
	if was, now := d.Report.Find("gap_clear").Value.V, r.Report.Find("gap_clear").Value.V; math.Abs(was-now-12.7) > 1e-6 {
		t.Errorf("gap %.2f mm, drawn %.2f", now, was)
	}
}

// What is off holds only where the checks were done: on a deck whose loads nobody stated it is not known, and on one
// that rests with the engineer it is for the engineer.
func TestOffInAnOpenDesign(t *testing.T) {
	for _, c := range []struct {
		name    string
		changes []string
		want    asbuilt.Verdict
	}{
		{"deck", nil, asbuilt.Off},
		{"deck", []string{"loads.dead=", "loads.live=", "loads.snow="}, asbuilt.NotChecked},
		{"deck", []string{"tie.rating=500lb"}, asbuilt.NotChecked}, // the ties fail as drawn
		{"balcony", nil, asbuilt.Engineer},
	} {
		d := changed(t, c.name, c.changes)
		f, problems := asbuilt.Read("f.yaml", []byte("block: {width: "+(d.Assembly.Spec.Blocks.Width+unit.Inch/4).Text(unit.IP)+"}"), d.Assembly)
		if problems != nil {
			t.Fatal(problems)
		}
		r, err := asbuilt.Verify(d, f)
		if err != nil {
			t.Fatal(err)
		}
		if i := item(t, r, "block.width"); i.Verdict != c.want {
			t.Errorf("%s %v: %+v", c.name, c.changes, i)
		}
	}
}

// The outermost bolts 2 in from the block's end in place of 2 3/4 in: the end distance found is 2 in; 3 1/4 in from it
// the columns stand 8 3/4 - 2 x 3 1/4 = 2 1/4 in apart in place of 3 1/4 in.
func TestEndOfTheBlock(t *testing.T) {
	_, r := verified(t, "deck", "blocks: {B2: {through: {end: 2in}}, B3: {through: {end: 3 1/4in}}}")
	if i := item(t, r, "blocks.B2.through.end"); i.Verdict == asbuilt.OK || !strings.Contains(i.Reason, `off by -3/4"`) {
		t.Errorf("%+v", i)
	}
	k := turn(r, "washer_clear", "B3") // washers of 3 in, 2 1/4 in apart
	if k == nil || k.Step.Verdict != check.Fails {
		t.Errorf("%+v", k)
	}
	if turn(r, "washer_clear", "B2") != nil {
		t.Error("bolts nearer the end stand no closer together")
	}
}
