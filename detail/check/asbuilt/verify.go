package asbuilt

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// Verify compares what was measured with the design and checks the design anew with the measured values. It fails
// only when what was measured cannot be drawn at all.
func Verify(d Design, f *Field) (*Result, error) {
	r := &Result{System: d.Assembly.Spec.Words(), By: f.By, Date: f.Date}
	for _, s := range d.Report.Steps {
		if s.Verdict == check.Fails {
			r.Already = append(r.Already, s.Name)
		}
	}
	b := built{d: d, f: f}
	var err error
	if r.Report, err = b.check(); err != nil {
		return nil, fmt.Errorf("as measured it cannot be drawn: %w", err)
	}
	r.Items = b.compare()
	r.turned(b)
	r.atBlocks(b)
	r.blame()
	r.doubt()
	slices.SortStableFunc(r.Turns, func(x, y Turn) int {
		if x.Worse != y.Worse {
			return pickInt(x.Worse, -1, 1)
		}
		if x.Step.Verdict != y.Step.Verdict && x.Worse {
			return int(y.Step.Verdict - x.Step.Verdict)
		}
		return pickInt(x.Step.Ratio > y.Step.Ratio, -1, pickInt(x.Step.Ratio < y.Step.Ratio, 1, 0))
	})
	r.notes(b)
	return r, nil
}

func pickInt(is bool, yes, no int) int {
	if is {
		return yes
	}
	return no
}

// compare lists every item with its deviation judged by tolerance alone.
func (b built) compare() []Item {
	var out []Item
	sys := b.d.Assembly.Spec.Words()
	for _, m := range measures(b.d.Assembly) {
		i := Item{Key: m.path(), Name: m.name, Kind: m.kind, Word: len(m.words) > 0, Drawn: m.drawn, Exact: m.exact, Tolerance: m.near, Source: m.source, Remedy: m.right}
		if v, ok := b.f.whole[m.path()]; ok {
			i.Found = &v
		}
		out = append(out, i.judged(sys))
	}
	near := nearOf(b.d.Assembly, b.d.Report)
	for _, k := range b.d.Assembly.Blocks {
		out = append(out, b.blockItems(k.Mark, k.X, near)...)
	}
	for _, k := range b.f.blocks {
		if b.drawnX(k.mark) < 0 {
			v := Value{V: k.at.MM()}
			out = append(out, Item{Key: "blocks." + k.mark, Name: "block that is not drawn", Where: k.mark, Kind: unit.KLength, Drawn: Value{Word: "none"}, Found: &v, Exact: true, Source: "as drawn", Verdict: Off})
			out = append(out, b.blockItems(k.mark, k.at.MM(), near)[1:]...)
		}
	}
	return out
}

// blockItems are the items of one block.
func (b built) blockItems(mark string, x float64, near blockNear) []Item {
	a, k := b.d.Assembly, b.f.block(mark)
	sys, path := a.Spec.Words(), "blocks."+mark
	if k.missing {
		none := Value{Word: "missing"}
		return []Item{{Key: path, Name: "block", Where: mark, Kind: unit.KLength, Drawn: Value{V: x}, Found: &none, Exact: true, Source: "as drawn", Verdict: Fails, Reason: "block " + mark + " is not there",
			Remedy: "set block " + mark + " at " + unit.Length(x).Text(sys) + " as drawn"}}
	}
	item := func(key, name string, drawn float64, found *unit.Length, near unit.Length, source, right string) Item {
		i := Item{Key: path + "." + key, Name: name, Where: mark, Kind: unit.KLength, Drawn: Value{V: drawn}, Tolerance: near, Source: source, Remedy: right}
		if found != nil {
			i.Found = &Value{V: found.MM()}
		}
		return i.judged(sys)
	}
	out := []Item{
		item("at", "centre of the block", x, k.at, near.at, byJoists, "set block "+mark+" at "+unit.Length(x).Text(sys)+" as drawn"),
		item("gap", "gap between block and ledger", a.Spec.Blocks.Spacer.MM(), k.gap, near.gap, byJudge, "draw ledger and block "+mark+" together"),
	}
	for _, name := range setNames(a.Spec) {
		set, found := setOf(a.Spec, name), k.sets[name]
		of, n := ofSet(a.Spec, name), perBlock(a, name)
		c := Item{Key: path + "." + name + ".count", Name: "fasteners" + of, Where: mark, Kind: unit.Count, Drawn: Value{V: float64(n)}, Exact: true, Source: byCount}
		if found.count != nil {
			c.Found = &Value{V: float64(*found.count)}
			c.Remedy = fmt.Sprintf("fit %s %s as drawn in block %s", plural(n-*found.count, "more "+kindWord(set.Kind)), set.Diameter.Text(sys), mark)
		}
		out = append(out, c.judged(sys), item(name+".diameter", "diameter"+of, set.Diameter.MM(), found.diameter, near.diameter, byJudge, "change the fasteners of block "+mark+" for "+set.Diameter.Text(sys)))
		for i, z := range set.Rows {
			var at *unit.Length
			if found.rows != nil {
				at = &found.rows[i]
			}
			row := item(rowKey(name, i), fmt.Sprintf("row %d below the top%s", i+1, of), z.MM(), at, near.row, bySheets, "")
			out = append(out, row)
		}
		out = append(out, item(name+".end", "outermost fastener to the block's end"+of, endOf(a, name).MM(), found.end, near.end, bySheets, ""))
	}
	return out
}

func kindWord(kind string) string {
	if kind == "lag" || kind == "screw" || kind == "bolt" {
		return kind
	}
	return "fastener"
}

func plural(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %ss", n, one)
}

// judged fills in what tolerance alone says.
func (i Item) judged(sys unit.System) Item {
	switch {
	case i.Found == nil:
		i.Verdict, i.Reason, i.Remedy = NotChecked, "not measured", ""
	case i.Word:
		i.Verdict = verdictOf(i.Found.Word == i.Drawn.Word)
	case i.Kind == unit.KPercent:
		i.Verdict = verdictOf(i.Drawn.Word == "wet" || i.Found.V <= dryLimit)
	case i.Kind == unit.Count:
		i = i.counted()
	default:
		off := math.Abs(i.Found.V - i.Drawn.V)
		i.Verdict = verdictOf(off <= i.Tolerance.MM()+1e-6)
	}
	if i.Verdict != Off {
		return i
	}
	switch {
	case i.Word:
		i.Reason = "it is " + i.Found.Word + ", drawn is " + i.Drawn.Word
	case i.Kind == unit.KPercent:
		i.Reason = "wetter than 19 %"
	default:
		i.Reason = "off by " + unit.Length(i.Found.V-i.Drawn.V).Q().Text(sys) + ", " + within(i.Tolerance, sys) + " is asked"
	}
	return i
}

func verdictOf(near bool) Verdict {
	if near {
		return OK
	}
	return Off
}

// counted judges a count: fewer fail; of more fasteners at a block nothing is known.
func (i Item) counted() Item {
	switch lost := i.Drawn.V - i.Found.V; {
	case lost > 0:
		i.Verdict, i.Reason = Fails, fmt.Sprintf("%.0f missing: what is drawn is not left out without the engineer", lost)
	case lost < 0 && strings.HasPrefix(i.Key, "blocks."):
		i.Verdict, i.Reason, i.Remedy = NotChecked, fmt.Sprintf("%.0f more than drawn: their places are not known here", -lost), ""
	default:
		i.Verdict = OK
	}
	return i
}

// moved are the keys of what was found otherwise than drawn, of the whole (mark "") or of one block; each once.
func (r *Result) moved(mark string) []string {
	var out []string
	for _, i := range r.Items {
		at := i.Where != "" && !strings.HasSuffix(i.Key, ".at") && i.Key != "blocks."+i.Where // by the block alone
		if at != (mark != "") || at && i.Where != mark || i.Found == nil || *i.Found == i.Drawn || i.Source == byCount && !at || slices.Contains(out, i.Key) {
			continue
		}
		if i.Kind == unit.KLength && !i.Word && i.Found.Word == "" && i.Drawn.Word == "" && math.Abs(i.Found.V-i.Drawn.V) < 1e-6 {
			continue
		}
		out = append(out, i.Key)
	}
	return out
}

// notes says what the re-check takes for granted.
func (r *Result) notes(b built) {
	near := nearOf(b.d.Assembly, b.d.Report).at
	r.Notes = append(r.Notes, "what was not measured stands as drawn; bolts have their drawn length, deck joists their drawn places",
		"the greatest spacing and the end range that the project asks for may be missed by the tolerance of a block's place, "+near.Q().Text(r.System)+" (judgement)",
		"a block is checked under its own load as if every block had its measures; where fasteners are missing only whole columns count (judgement)",
		"heat, damp and mould are not checked anew")
	if now := b.d.Assembly.Spec.Hash(); b.f.Parameters != "" && b.f.Parameters != now {
		r.Notes = append(r.Notes, "measured against the drawings "+b.f.Parameters+"; the project is now "+now)
	}
}
