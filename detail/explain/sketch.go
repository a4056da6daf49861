package explain

import (
	"fmt"
	"strings"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// wide is how many characters a sketch may take.
const wide = 76

// Sketch draws what a check is about in plain characters, from the parts and results of this design: a title and
// lines. There are none where nothing was built or computed that could be drawn.
func (j *Job) Sketch(s *check.Step) (title string, lines []string) {
	switch s.Group {
	case check.Loads:
		return "deck and what it loads, from the side", j.loads()
	case check.Beam:
		return "ledger on its blocks, seen from outside", j.beam(s.ID)
	case check.Connection:
		return j.fastener(s.ID)
	case check.Block:
		return "one block as a free body, inside of the house on the left", j.block()
	case check.Floor:
		return "force path behind one block, seen from above", j.floor()
	case check.Water:
		return "way of the air behind the ledger", j.air()
	case check.Heat, check.Moisture:
		return "temperature through the wall, inside on the left", j.profile()
	}
	return "depths from the wall, inside on the left", j.depths()
}

// value prints what a check found, or that it was not checked.
func (j *Job) value(id string) string {
	s := j.Report.Find(id)
	if s == nil || s.Verdict == check.NotChecked {
		return "NOT CHECKED"
	}
	return s.Value.Text(j.sys())
}

// text prints a length in millimetres.
func (j *Job) text(mm float64) string { return unit.Length(mm).Text(j.sys()) }

// loads draws the deck from the wall to its beam.
//
//	 v v v v v v q
//	=|============^
func (j *Job) loads() []string {
	s := j.Assembly.Spec
	c := newCanvas(wide, 6)
	r := ruler{0, max(s.Deck.Span.MM(), s.Deck.Projection.MM()) * 1.02, wide - 14}
	at := func(mm float64) int { return 6 + r.at(mm) }
	end := at(max(s.Deck.Span.MM(), s.Deck.Projection.MM()-j.Assembly.Frame.LedgerFront))
	for x := 8; x <= end; x += 3 {
		c.put(x, 0, "v")
	}
	c.put(end+2, 0, "q")
	c.across(6, end, 1, '=')
	c.down(2, 0, 4, '#')
	c.across(3, 5, 1, ':')
	c.put(6, 1, "L")
	beam := at(s.Deck.Span.MM())
	c.down(beam, 2, 3, '|')
	c.put(beam-2, 4, "beam")
	c.across(6, 6+(beam-6)/2, 3, '-')
	c.put(6, 3, "<")
	c.put(6+(beam-6)/2, 3, ">")
	c.put(8, 4, "b "+j.value("tributary_width"))
	c.put(0, 5, "wall")
	out := c.lines()
	return append(out,
		fmt.Sprintf("q %s on the deck; span L %s; the ledger carries the width b of it: w %s", j.value("total_load"), s.Deck.Span.Text(j.sys()), j.value("ledger_line_load")),
		fmt.Sprintf("one joist on its hanger: %s", j.value("joist_reaction")))
}

// depths draws the layers of the wall at a block and between blocks, to scale.
func (j *Job) depths() []string {
	f := j.Assembly.Frame
	type edge struct {
		mm   float64
		name string
	}
	rows := []struct {
		head  string
		edges []edge
	}{
		{"at a block", []edge{{f.BackingIn, "backing"}, {f.RimIn, "rim"}, {f.RimOut, "sheathing"}, {0, "block"}, {f.BlockOut, "spacer"}, {f.LedgerBack, "ledger"}, {f.LedgerFront, ""}}},
		{"between", []edge{{f.RimIn, "rim"}, {f.RimOut, "sheathing"}, {0, "insulation"}, {f.InsulOut, "gap"}, {f.LedgerBack, "ledger"}, {f.LedgerFront, ""}}},
	}
	r := ruler{f.BackingIn, f.LedgerFront, wide}
	var out []string
	for _, row := range rows {
		c := newCanvas(wide, 4)
		var names []string
		n := 0
		for i := 0; i+1 < len(row.edges); i++ {
			e, next := row.edges[i], row.edges[i+1]
			if next.mm-e.mm < 0.01 {
				continue
			}
			c.box(r.at(e.mm), 0, r.at(next.mm), 3)
			mark := string(rune('a' + n))
			n++
			if r.at(next.mm)-r.at(e.mm) > 1 {
				c.put((r.at(e.mm)+r.at(next.mm)+1)/2, 1, mark)
			}
			names = append(names, mark+" "+e.name+" "+j.text(next.mm-e.mm))
		}
		out = append(out, row.head+":")
		out = append(out, c.lines()...)
		out = append(out, folded(strings.Join(names, "; "))...)
	}
	return append(out, folded(fmt.Sprintf("stand-off, sheathing to ledger %s; rim face to the load line %s; top of the ledger %s from the floor, underside %s", j.text(f.LedgerBack), j.text(f.LoadLine-f.RimOut), j.text(f.LedgerTop), j.text(f.LedgerBottom)))...)
}

// folded breaks a text to the width of a sketch.
func folded(text string) []string {
	var out []string
	line := ""
	for _, w := range strings.Fields(text) {
		if line != "" && len(line)+1+len(w) > wide {
			out = append(out, line)
			line = "  "
		} else if line != "" {
			line += " "
		}
		line += w
	}
	return append(out, line)
}
