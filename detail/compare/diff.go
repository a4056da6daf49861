package compare

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strings"
	"text/tabwriter"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// Change is one thing that differs between two designs.
type Change struct {
	Kind string `json:"kind"` // input, dimension, check, heat
	Key  string `json:"key"`
	Name string `json:"name"`
	Old  string `json:"old"`
	New  string `json:"new"`
}

// Diff lists what differs between two designs that are built: inputs, then dimensions and counts, then checks that
// turned, then heat. Nothing else is in it.
func Diff(a, b *Design) []Change {
	var out []Change
	add := func(kind, key, name, old, now string) {
		if old != now {
			out = append(out, Change{kind, key, name, orNone(old), orNone(now)})
		}
	}
	for _, p := range inputs(a, b) {
		add("input", p.key, p.name, p.old, p.now)
	}
	for _, p := range dimensions(a, b) {
		add("dimension", p.key, p.name, p.old, p.now)
	}
	for _, p := range turned(a, b) {
		add("check", p.key, p.name, p.old, p.now)
	}
	t := TableOf([]*Design{a, b})
	for _, r := range t.Rows {
		if r.Group == groupHeat {
			name := r.Name
			if r.Unit != "" && r.Unit != "%" {
				name += ", " + r.Unit
			}
			add("heat", r.Key, name, r.Cells[0].Text, r.Cells[1].Text)
		}
	}
	return out
}

func orNone(s string) string {
	if s == "" {
		return "none"
	}
	return s
}

// pair is one thing in both designs.
type pair struct{ key, name, old, now string }

// merge puts two lists of things together by key, in the order of the first, what only the second has after them.
func merge(a, b []pair) []pair {
	out := slices.Clone(a)
	at := map[string]int{}
	for i, p := range out {
		at[p.key] = i
	}
	for _, p := range b {
		if i, ok := at[p.key]; ok {
			out[i].now = p.old
			continue
		}
		at[p.key] = len(out)
		out = append(out, pair{p.key, p.name, "", p.old})
	}
	return out
}

func inputs(a, b *Design) []pair {
	list := func(d *Design) (out []pair) {
		for _, e := range d.Trial.Spec.Entries() {
			out = append(out, pair{key: e.Key, name: e.About, old: e.Value})
		}
		return out
	}
	return merge(list(a), list(b))
}

// dimensions are where things stand, how many there are and how large they are.
func dimensions(a, b *Design) []pair {
	list := func(d *Design) (out []pair) {
		as, f := d.Trial.Assembly, d.Trial.Assembly.Frame
		text := func(mm float64) string { return unit.Length(mm).Text(d.sys) }
		for _, p := range []struct {
			key, name string
			mm        float64
		}{
			{"standoff", "stand-off, sheathing to ledger", f.LedgerBack}, {"gap", "gap behind the ledger", f.Gap()}, {"eccentricity", "rim face to the load line", f.LoadLine - f.RimOut},
			{"lever_arm", "lever arm of the couple", d.Trial.Results.LeverArm.MM()}, {"ledger_top", "top of the ledger from the floor", f.LedgerTop}, {"ledger_bottom", "underside of the ledger from the floor", f.LedgerBottom},
		} {
			out = append(out, pair{key: p.key, name: p.name, old: text(p.mm)})
		}
		out = append(out, pair{key: "blocks", name: "blocks", old: fmt.Sprint(len(as.Blocks))})
		for i, blk := range as.Blocks {
			out = append(out, pair{key: "x_" + strings.ToLower(blk.Mark), name: "axis of " + blk.Mark, old: text(blk.X)})
			if i > 0 {
				out = append(out, pair{key: fmt.Sprintf("space_%d", i), name: "space " + as.Blocks[i-1].Mark + " to " + blk.Mark, old: text(blk.X - as.Blocks[i-1].X)})
			}
		}
		seen := map[string]int{}
		for _, l := range as.Schedule() {
			if l.Existing {
				continue
			}
			var size []string
			for _, v := range l.Size {
				if v > 0 {
					size = append(size, v.Text(d.sys))
				}
			}
			key := "part_" + strings.ToLower(l.Mark)
			if seen[key]++; seen[key] > 1 {
				key += fmt.Sprintf("_%d", seen[key])
			}
			out = append(out, pair{key: key, name: l.Mark + " " + strings.ToLower(l.Name), old: strings.TrimSpace(fmt.Sprintf("%d of %s", l.Qty, strings.Join(size, " x ")))})
		}
		for _, l := range as.CutList() {
			if !l.Sheet {
				sum := unit.Length(0)
				for _, s := range l.Sticks {
					sum += s.Length
				}
				name := l.Material + " " + l.Thickness.Text(d.sys) + " x " + l.Height.Text(d.sys)
				out = append(out, pair{key: "lumber_" + name, name: "bought, " + name, old: sum.Text(d.sys)})
			}
		}
		return out
	}
	return merge(list(a), list(b))
}

// turned are the checks whose verdict differs, with their ratios.
func turned(a, b *Design) []pair {
	list := func(d *Design) (out []pair) {
		for _, s := range d.Report.Steps {
			out = append(out, pair{key: s.ID, name: s.Name, old: s.Verdict.String()})
		}
		return out
	}
	var out []pair
	for _, p := range merge(list(a), list(b)) {
		if p.old != p.now {
			p.old, p.now = withRatio(a, p.key, p.old), withRatio(b, p.key, p.now)
			out = append(out, p)
		}
	}
	return out
}

func withRatio(d *Design, id, verdict string) string {
	s := d.Report.Find(id)
	if s == nil || s.Limit == nil || s.Verdict == check.Info {
		return verdict
	}
	return verdict + " " + s.RatioText() + s.CapText()
}

// WriteDiff writes the changes for a terminal.
func WriteDiff(w io.Writer, a, b *Design, changes []Change) error {
	p := &printer{w: w}
	p.f("%s -> %s\n", a.Name, b.Name)
	heads := map[string]string{"input": "INPUTS", "dimension": "DIMENSIONS AND COUNTS", "check": "CHECKS THAT TURNED", "heat": "HEAT"}
	for _, kind := range []string{"input", "dimension", "check", "heat"} {
		tab := tabwriter.NewWriter(p, 0, 0, 2, ' ', 0)
		n := 0
		for _, c := range changes {
			if c.Kind != kind {
				continue
			}
			name := c.Name
			if kind == "input" || kind == "check" {
				name = c.Key
			}
			fmt.Fprintf(tab, "  %s\t%s\t-> %s\n", name, c.Old, c.New)
			n++
		}
		p.f("\n%s\n", heads[kind])
		switch {
		case n == 0 && kind == "heat" && (a.Way == nil || b.Way == nil):
			p.f("  %s: %s\n", notChecked, max(a.NoHeat, b.NoHeat))
		case n == 0:
			p.f("  no change\n")
		}
		if err := tab.Flush(); err != nil {
			return err
		}
	}
	p.f("\n%s\n%s\n", b.Says(a), "A calculation aid: local code and a licensed engineer decide.")
	return p.err
}

// WriteDiffCSV writes the changes as CSV.
func WriteDiffCSV(w io.Writer, changes []Change) error {
	rows := [][]string{{"kind", "key", "name", "old", "new"}}
	for _, c := range changes {
		rows = append(rows, []string{c.Kind, c.Key, c.Name, c.Old, c.New})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// WriteDiffJSON writes the changes as JSON.
func WriteDiffJSON(w io.Writer, program string, a, b *Design, changes []Change) error {
	return encode(w, struct {
		Program string   `json:"program"`
		Old     string   `json:"old"`
		New     string   `json:"new"`
		Changes []Change `json:"changes"`
	}{program, a.Name, b.Name, append([]Change{}, changes...)})
}
