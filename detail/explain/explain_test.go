package explain_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/check/design"
	"standclear/detail/check/thermal"
	"standclear/detail/demo"
	"standclear/detail/explain"
	"standclear/detail/trial"
	"standclear/detail/unit"
)

// jobOf builds a demo with changes; its heat is the kept one where the assembly is the demo's.
func jobOf(t *testing.T, name string, sets ...string) *explain.Job {
	t.Helper()
	src, _ := demo.File(name)
	b := trial.Base{Name: name, Src: src, Sets: sets}
	tr, err := b.Try()
	if err != nil {
		t.Fatal(err)
	}
	j := &explain.Job{Base: b, Assembly: tr.Assembly, Report: &tr.Report, Results: tr.Results, NoHeat: "left out by --no-heat"}
	key, err := thermal.Key(tr.Assembly, thermal.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "golden", "heat", key+".json")); err == nil {
		j.Heat = &thermal.Result{}
		if err := json.Unmarshal(text, j.Heat); err != nil {
			t.Fatal(err)
		}
	}
	design.Heat(tr.Assembly, j.Heat, j.NoHeat, j.Report)
	return j
}

// Every check of every demo can be explained: it names itself, has a sketch, and says what mends it. A line is never
// longer than a terminal of 100 characters but where one word is.
func TestEveryCheck(t *testing.T) {
	for _, name := range demo.Names() {
		j := jobOf(t, name)
		if j.Heat == nil {
			t.Fatalf("%s: its heat is not kept", name)
		}
		for _, id := range j.IDs() {
			var b bytes.Buffer
			if err := j.Write(&b, id, nil, 10); err != nil {
				t.Fatalf("%s: %s: %v", name, id, err)
			}
			text := b.String()
			if !strings.Contains(text, "["+id+"]") || !strings.Contains(text, "SMALLEST CHANGE") {
				t.Errorf("%s: %s: %s", name, id, text)
			}
			title, lines := j.Sketch(j.Report.Find(id))
			if title == "" || len(lines) < 3 {
				t.Errorf("%s: %s has no sketch: %q", name, id, lines)
			}
			for _, l := range strings.Split(text, "\n") {
				if len([]rune(l)) > 100 && !strings.Contains(l, "=") {
					t.Errorf("%s: %s: %d characters: %s", name, id, len([]rune(l)), l)
				}
			}
			for _, l := range lines {
				for _, c := range l {
					if c < ' ' || c > '~' {
						t.Errorf("%s: %s: the sketch has %q", name, id, c)
					}
				}
			}
		}
	}
}

// A check that was not done stays so, with its reason.
func TestNotCheckedStays(t *testing.T) {
	j := jobOf(t, "deck", "loads.live=", "loads.dead=")
	n := 0
	for _, s := range j.Report.Steps {
		if s.Verdict != check.NotChecked {
			continue
		}
		n++
		var b bytes.Buffer
		if err := j.Write(&b, s.ID, nil, 10); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(b.String(), "NOT CHECKED") || !strings.Contains(b.String(), "why: ") || strings.Contains(b.String(), "none is needed") {
			t.Errorf("%s:\n%s", s.ID, b.String())
		}
	}
	if n == 0 {
		t.Error("nothing was left unchecked")
	}
}

func effect(t *testing.T, j *explain.Job, id, key string) explain.Effect {
	t.Helper()
	sw := j.Sweep(context.Background(), id, nil, key)
	for _, e := range sw.Effects(j.Report.Find(id), unit.IP) {
		if e.Key == key {
			return e
		}
	}
	t.Fatalf("%s does not move %s", key, id)
	return explain.Effect{}
}

// By hand. The width of deck on the ledger is b = L/2 + strip, 130/2 + 1.25 in for the demo: a change of the span L
// changes it by (L/2)/(L/2 + strip) = 65/66.25 = 0.981 of that. The inertia is b d^3/12, and d is the height less the
// bevel, 9.25 - 1.5/8 = 9.0625 in: power 3 x 9.25/9.0625 = 3.06 of the height. A tie rated higher by p is used less by
// p: power -1.
func TestPowersByHand(t *testing.T) {
	j := jobOf(t, "deck")
	for _, c := range []struct {
		id, key string
		power   float64
	}{
		{"tributary_width", "deck.span", 65 / 66.25},
		{"ledger_i", "ledger.height", 3 * 9.25 / 9.0625},
		{"tie_rating", "tie.rating", -1},
	} {
		if e := effect(t, j, c.id, c.key); math.Abs(e.Power-c.power) > 0.01 {
			t.Errorf("%s goes with %s to the %.3f; by hand %.3f", c.id, c.key, e.Power, c.power)
		}
	}
}

// A beam under its own spread of loads: with every length along it drawn out by a share, loads of joists too, the
// moment goes with the square, M = w s^2/k, and bending with it. Joists every 4 in stand for w.
func TestBendingIsQuadraticInTheSpan(t *testing.T) {
	moment := func(by float64) float64 {
		var blocks, joists []string
		for i := range 5 {
			blocks = append(blocks, fmt.Sprintf("%.6fin", (8+20*float64(i))*by))
		}
		for i := range 23 {
			joists = append(joists, fmt.Sprintf("%.6fin", (4+4*float64(i))*by))
		}
		src, _ := demo.File("deck")
		tr, err := trial.Base{Name: "deck", Src: src, Sets: []string{
			fmt.Sprintf("ledger.length=%.6fin", 96*by), "blocks.positions=[" + strings.Join(blocks, ", ") + "]", "deck.joists.positions=[" + strings.Join(joists, ", ") + "]",
			fmt.Sprintf("deck.joists.spacing=%.6fin", 4*by), "doors=", "obstacles=", "assume.net_section=no",
		}}.Try()
		if err != nil {
			t.Fatal(err)
		}
		s := tr.Report.Find("ledger_fb")
		if s == nil || s.Limit == nil {
			t.Fatalf("bending is not checked: %+v", s)
		}
		return s.Ratio
	}
	if got := moment(1.05) / moment(1); math.Abs(got-1.05*1.05) > 0.002 {
		t.Errorf("5 %% more in every length makes bending %.4f times; 1.05^2 = 1.1025", got)
	}
}

// The formula of bending in the ledger with its numbers: M/S of the demo.
func TestPutIn(t *testing.T) {
	s := &check.Step{Formula: "max(M block/S net, M span/S) <= Fb CD", With: []check.Arg{
		{Symbol: "M block", Value: (1000 * unit.PoundInch).Q()}, {Symbol: "S net", Value: unit.Ratio(20)}, {Symbol: "M span", Value: (500 * unit.PoundInch).Q()},
		{Symbol: "S", Value: unit.Ratio(25)}, {Symbol: "CD", Value: unit.Ratio(1.15)}}}
	if got, want := explain.PutIn(s, unit.IP), "max((1,000 lb-in)/20.00, (500 lb-in)/25.00) <= Fb 1.150"; got != want {
		t.Errorf("got %q; want %q", got, want)
	}
	s = &check.Step{Formula: "pulls of the top bolts by position", With: []check.Arg{{Symbol: "bolts", Value: unit.Number(2)}}}
	if got := explain.PutIn(s, unit.IP); got != "" {
		t.Errorf("a word of the sentence was replaced: %q", got)
	}
}
