package compare_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/thermal"
	"standclear/detail/compare"
	"standclear/detail/demo"
	"standclear/detail/trial"
)

// kept finds heat among the kept results alone.
func kept(a *detail.Assembly) (*thermal.Result, string, error) {
	key, err := thermal.Key(a, thermal.Options{})
	if err != nil {
		return nil, err.Error(), nil
	}
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "golden", "heat", key+".json"))
	if err != nil {
		return nil, "not kept", nil
	}
	r := &thermal.Result{}
	return r, "", json.Unmarshal(text, r)
}

func jobOf(name string, sets ...string) compare.Job {
	src, _ := demo.File(name)
	return compare.Job{Base: trial.Base{Name: "demo " + name, Src: src, Sets: sets}, Heat: kept}
}

func drawnOf(t *testing.T, j compare.Job) *compare.Design {
	t.Helper()
	d, err := j.Design("drawn", "AS DRAWN")
	if err != nil {
		t.Fatal(err)
	}
	return d
}

const rates = "rates={currency: thalers, block: 20, lumber: 1.50/ft, fastener: 8, hour: 60, block_hours: 0.75, fastener_hours: 0.1}"

// By hand, from the schedule and the cut list of the deck demo: 9 blocks at 20 are 180; 36 bolts at 8 are 288; 66 ft of
// sticks at 1.50 are 99; 9 x 0.75 h and 36 x 0.1 h at 60 are 621; together 1188. A tight ledger has a bolt every 27 in of
// 176 in (40 psf of live and 45 of ground snow, 12 ft of span: the row of 50 psf), 7 spaces and so 8 bolts at 8, 64, and
// 14.667 ft of lumber, 22; its bolts take 0.8 h at 60, 48; together 134.
func TestCostByHand(t *testing.T) {
	j := jobOf("deck", rates)
	d := drawnOf(t, j)
	c := d.Cost()
	for _, w := range []struct {
		name string
		got  *float64
		want float64
	}{{"blocks", c.Blocks, 180}, {"fasteners", c.Fasteners, 288}, {"wood", c.Wood, 99}, {"work", c.Work, 621}, {"sum", c.Sum, 1188}} {
		if w.got == nil || math.Abs(*w.got-w.want) > 0.005 {
			t.Errorf("%s: %v; by hand %.2f", w.name, w.got, w.want)
		}
	}
	for _, u := range j.Usual(d) {
		if c := u.Cost(); u.Key == "tight" && (c.Sum == nil || math.Abs(*c.Sum-134) > 0.005) {
			t.Errorf("tight ledger: %v; by hand 134", c)
		}
	}
}

// A rate that is not given leaves its line and the sum open, and says which key it lacks; without rates nothing has a
// cost.
func TestCostWithoutRates(t *testing.T) {
	d := drawnOf(t, jobOf("deck", "rates={block: 20, fastener: 8}"))
	if c := d.Cost(); c.Blocks == nil || c.Wood != nil || c.Sum != nil || !reflect.DeepEqual(c.Lacks, []string{"rates.lumber", "rates.block_hours", "rates.fastener_hours"}) {
		t.Errorf("%+v", c)
	}
	for _, r := range compare.TableOf([]*compare.Design{drawnOf(t, jobOf("deck"))}).Rows {
		if r.Group == "cost" && (r.Cells[0].Text != "NOT CHECKED" || !strings.Contains(r.Cells[0].Open, "no rates given")) {
			t.Errorf("%s: %+v", r.Key, r.Cells[0])
		}
	}
}

// Counts of the deck demo against its schedule: 9 blocks, 36 bolts and as many nuts inside, 72 washers, 360 screws; 36
// bolts and 2 rods pass the barrier.
func TestPartsOfTheDeck(t *testing.T) {
	p := drawnOf(t, jobOf("deck")).Parts
	if p.Blocks != 9 || p.Fasteners != 36 || p.Washers != 72 || p.Screws != 360 || p.Holes != 38 || p.Inside != 36 || p.Bays != 9 {
		t.Errorf("%+v", p)
	}
}

// On every demo the usual ways stand in the table; what is open has a reason, and no way whose structure was not checked
// shows a check that holds. The share saved is 1 - H/H tight.
func TestUsualWays(t *testing.T) {
	for _, name := range demo.Names() {
		j := jobOf(name)
		drawn := drawnOf(t, j)
		if drawn.Heat == nil {
			t.Fatalf("%s: its heat is not kept", name)
		}
		all := append([]*compare.Design{drawn}, j.Usual(drawn)...)
		keys := map[string]*compare.Design{}
		for _, d := range all {
			keys[d.Key] = d
			if d.Way == nil {
				t.Errorf("%s: %s has no heat: %s", name, d.Key, d.NoHeat)
			}
			if d.Says(drawn) == "" {
				t.Errorf("%s: nothing is said of %s", name, d.Key)
			}
			if (d.Trial == nil) == (d.Why == "") {
				t.Errorf("%s: %s: built %v, why not %q", name, d.Key, d.Trial != nil, d.Why)
			}
		}
		for _, k := range []string{"tight", "spacers", "freestanding"} {
			if keys[k] == nil || keys[k].Trial != nil {
				t.Errorf("%s: %s: %v", name, k, keys[k])
			}
		}
		table := compare.TableOf(all)
		for _, r := range table.Rows {
			if len(r.Cells) != len(all) {
				t.Fatalf("%s: %s has %d cells for %d designs", name, r.Key, len(r.Cells), len(all))
			}
			for i, c := range r.Cells {
				if (c.Text == "NOT CHECKED") != (c.Open != "") || c.Text == "" {
					t.Errorf("%s: %s of %s: %+v", name, r.Key, all[i].Key, c)
				}
				if r.Key == "ok" && all[i].Trial == nil && c.Open == "" {
					t.Errorf("%s: checks of %s hold that were not done", name, all[i].Key)
				}
				if want := 1 - all[i].Way.Run.V/keys["tight"].Way.Run.V; r.Key == "heat_saved" && math.Abs(c.Q.V-want) > 1e-9 {
					t.Errorf("%s: %s saves %.4f; want %.4f", name, all[i].Key, c.Q.V, want)
				}
			}
		}
	}
}

// Foam takes the place of wood: the stand-off stays what it was to the last bit of a hundredth of a millimetre.
func TestPadKeepsTheStandoff(t *testing.T) {
	for _, name := range demo.Names() {
		j := jobOf(name)
		drawn := drawnOf(t, j)
		n := 0
		for _, d := range j.Usual(drawn) {
			if !strings.HasPrefix(d.Key, "pad_") {
				continue
			}
			if d.Trial == nil {
				t.Errorf("%s: %s: %s", name, d.Key, d.Why)
				continue
			}
			n++
			if got, want := d.Trial.Assembly.Frame.LedgerBack, drawn.Trial.Assembly.Frame.LedgerBack; math.Abs(got-want) > 0.01 {
				t.Errorf("%s: %s: stand-off %.3f mm; %.3f drawn", name, d.Key, got, want)
			}
			if d.Report.Count(check.Fails) == 0 && d.Report.Find("scope_pad") == nil {
				t.Errorf("%s: %s: nothing is said of the pad", name, d.Key)
			}
		}
		if n == 0 {
			t.Errorf("%s: no pads", name)
		}
	}
}

// A drawn pad gives way to wood, and back.
func TestSolidInPlaceOfPad(t *testing.T) {
	j := jobOf("deck", "blocks.plies=[1 1/2in, 1 1/2in]", "blocks.pad={thickness: 3/4in, strength: 40psi, after: 1}")
	drawn := drawnOf(t, j)
	for _, d := range j.Usual(drawn) {
		if d.Key == "solid" && (d.Trial == nil || d.Trial.Spec.Blocks.Pad.Thickness != 0 || len(d.Trial.Spec.Blocks.Plies) != 3 || math.Abs(d.Trial.Assembly.Frame.BlockOut-3.75*25.4) > 0.01) {
			t.Errorf("%+v %s", d.Changes, d.Why)
		}
	}
}

func TestVariant(t *testing.T) {
	for _, c := range []struct {
		text, name string
		changes    []string
	}{
		{"wide: blocks.width=10in, blocks.max_spacing=28in", "wide", []string{"blocks.width=10in", "blocks.max_spacing=28in"}},
		{"blocks.width=10in", "blocks.width=10in", []string{"blocks.width=10in"}},
		{"ledger.top_slope=1:8", "ledger.top_slope=1:8", []string{"ledger.top_slope=1:8"}},
		{"rows: fasteners.through.rows=[3in, 6in], tie={kind: strap, rating: 1kip}", "rows", []string{"fasteners.through.rows=[3in, 6in]", "tie={kind: strap, rating: 1kip}"}},
		{`long: ledger.length=14'-8 1/2"`, "long", []string{`ledger.length=14'-8 1/2"`}},
	} {
		name, changes, err := compare.Variant(c.text)
		if err != nil || name != c.name || !reflect.DeepEqual(changes, c.changes) {
			t.Errorf("%s: %q %q %v", c.text, name, changes, err)
		}
	}
	for _, bad := range []string{"", "wide", "wide:", "a=1,", "=3", "a: b"} {
		if _, _, err := compare.Variant(bad); err == nil {
			t.Errorf("%q was read", bad)
		}
	}
}

// Between a design and itself nothing differs; a weaker tie shows as the one input, the check that turned with its
// ratio, and nothing else.
func TestDiff(t *testing.T) {
	j := jobOf("deck")
	a := drawnOf(t, j)
	if c := compare.Diff(a, a); len(c) != 0 {
		t.Errorf("%+v", c)
	}
	b, err := j.Design("variant_1", "weak", "tie.rating=1000lb")
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, c := range compare.Diff(a, b) {
		got = append(got, c.Kind+" "+c.Key+" "+c.Old+" "+c.New)
	}
	want := []string{`input tie.rating 1,250 lb 1,000 lb`, `check tie_rating OK 0.81 of 0.90 FAILS 1.01 of 0.90`}
	if len(got) < 2 || got[0] != want[0] || got[len(got)-1] != want[1] {
		t.Errorf("got %q; want %q", got, want)
	}
}

// The forms agree with each other and are the same on every run.
func TestWritten(t *testing.T) {
	write := func() (text, list, object bytes.Buffer) {
		j := jobOf("balcony", rates)
		drawn := drawnOf(t, j)
		table := compare.TableOf(append([]*compare.Design{drawn}, j.Usual(drawn)...))
		for _, err := range []error{table.WriteText(&text), table.WriteCSV(&list), table.WriteJSON(&object, "standclear")} {
			if err != nil {
				t.Fatal(err)
			}
		}
		return
	}
	text, list, object := write()
	text2, list2, object2 := write()
	if text.String() != text2.String() || list.String() != list2.String() || object.String() != object2.String() {
		t.Error("two runs differ")
	}
	rows, err := csv.NewReader(&list).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out struct {
		Designs []struct{ Key string }
		Rows    []struct {
			Key     string
			Designs map[string]struct{ Text, Reason string }
		}
	}
	if err := json.Unmarshal(object.Bytes(), &out); err != nil {
		t.Fatal(err)
	}
	if len(rows) != len(out.Rows)+2 || len(rows[0]) != len(out.Designs)+4 {
		t.Errorf("CSV has %d x %d, JSON %d rows and %d designs", len(rows), len(rows[0]), len(out.Rows), len(out.Designs))
	}
	for _, r := range out.Rows {
		if len(r.Designs) != len(out.Designs) {
			t.Errorf("%s: %d of %d designs", r.Key, len(r.Designs), len(out.Designs))
		}
	}
	if !strings.Contains(text.String(), "NOT CHECKED, structure of B") || !strings.Contains(text.String(), "licensed engineer") {
		t.Error(text.String())
	}
}
