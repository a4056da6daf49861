package detail

import (
	"math"
	"slices"

	"standclear/detail/cutting"
	"standclear/detail/stock"
	"standclear/detail/unit"
)

// Lumber is what is cut from one section of wood.
type Lumber struct {
	Material, Note    string      // key of the species or board, and its grade
	Treated           bool        // with preservative
	Thickness, Height unit.Length // of the section as bought
	Ripped            unit.Length // height the pieces need, where the section bought is higher; 0 for none
	Sheet             bool        // cut from a sheet: its pieces stand in one stick without length
	Sticks            []Stick     // the longest first, full ones before
	Least             int         // sticks of any plan, by proof
	Exact             bool        // there is no plan with fewer sticks
}

// Stick is one bought length and what is cut from it, in cutting order from the trimmed end.
type Stick struct {
	Length unit.Length
	Cuts   []Cut
	Left   unit.Length // offcut
}

// Cut is a run of equal pieces of a stick.
type Cut struct {
	Mark string
	Each unit.Length // along the stick
	IDs  []string    // of the parts
}

// Pieces returns how many pieces are cut from the stick.
func (s Stick) Pieces() int {
	n := 0
	for _, c := range s.Cuts {
		n += len(c.IDs)
	}
	return n
}

// Waste returns the share of the length bought that ends in no piece, offcuts counted; 0 for a sheet.
func (l Lumber) Waste() unit.Percent {
	var bought, used unit.Length
	for _, s := range l.Sticks {
		bought += s.Length
		for _, c := range s.Cuts {
			used += unit.Length(len(c.IDs)) * c.Each
		}
	}
	if bought <= 0 || l.Sheet {
		return 0
	}
	return unit.Percent(1 - used/bought)
}

// CutList cuts ledger, blocks and backing from the fewest sticks: a piece too long for the stock length
// comes from the shortest stick that holds it, what is left of that is used first, and a kerf goes between
// pieces. The length of a piece lies along its grain. Plywood comes from sheets and is only counted.
func (a *Assembly) CutList() []Lumber {
	var out []Lumber
	var parts [][]*Part
	for _, p := range a.Find(Backing, BlockPly, FootPiece, Ledger) {
		l := a.sectionOf(p)
		i := slices.IndexFunc(out, func(o Lumber) bool { return o.same(l) })
		if i < 0 {
			i = len(out)
			out, parts = append(out, l), append(parts, nil)
		}
		parts[i] = append(parts[i], p)
	}
	for i := range out {
		a.cut(&out[i], parts[i])
	}
	return out
}

func (l Lumber) same(o Lumber) bool {
	return l.Material == o.Material && l.Note == o.Note && l.Treated == o.Treated && l.Sheet == o.Sheet && micron(l.Thickness) == micron(o.Thickness) && micron(l.Height) == micron(o.Height)
}

// sectionOf returns the section a part is cut from. The plies of a block come from one height, whatever the
// fall of its top takes off them.
func (a *Assembly) sectionOf(p *Part) Lumber {
	s := a.Spec
	l := Lumber{Material: p.Material, Note: p.Note, Thickness: p.Size[0], Height: p.Size[1]}
	switch p.Role {
	case Backing:
		l.Note = "" // how it is carried, not what it is
	case Ledger:
		l.Treated = s.Ledger.Treated
	case BlockPly, FootPiece:
		l.Treated, l.Sheet = s.Blocks.Treated, p.Material != s.Blocks.Species
	}
	if p.Role == BlockPly {
		l.Height = s.Blocks.Height
		if s.Blocks.Grain == "vertical" {
			l.Height = s.Blocks.Width
		}
	}
	if h, ok := bought(l.Thickness, l.Height); ok && !l.Sheet {
		l.Height, l.Ripped = h, l.Height
	}
	return l
}

// bought returns the dressed height of lumber that a height is ripped from, false where it is sold as it is
// or comes in no section of the table.
func bought(thickness, height unit.Length) (unit.Length, bool) {
	if _, ok := stock.NominalOf(thickness, height); ok {
		return 0, false
	}
	for _, s := range stock.Sizes() {
		if math.Abs((s.Thickness-thickness).MM()) < 0.1 && s.Depth > height {
			return s.Depth, true
		}
	}
	return 0, false
}

// along returns the length of a part along its grain.
func (a *Assembly) along(p *Part) unit.Length {
	if p.Role == BlockPly && a.Spec.Blocks.Grain == "vertical" {
		return p.Size[1]
	}
	return p.Size[2]
}

// cut plans the sticks of one section.
func (a *Assembly) cut(l *Lumber, parts []*Part) {
	st := a.Spec.Stock
	groups := a.alike(parts)
	if l.Sheet {
		l.Sticks, l.Exact = []Stick{{Cuts: groups}}, true
		return
	}
	job := cutting.Job{Stock: whole(st.Length), Kerf: whole(st.Kerf), Trim: whole(st.Trim)}
	var order []int // pieces of the job, as groups
	for i, g := range groups {
		if g.Each+st.Trim <= st.Length {
			order = append(order, i)
			job.Pieces = append(job.Pieces, cutting.Piece{Length: whole(g.Each), Count: len(g.IDs)})
			continue
		}
		for k := range g.IDs {
			long := a.LongStick(g.Each + st.Trim)
			l.Sticks = append(l.Sticks, Stick{Length: long, Cuts: []Cut{{g.Mark, g.Each, g.IDs[k : k+1]}}})
			job.Begun = append(job.Begun, whole(long-st.Trim-g.Each))
		}
	}
	plan := cutting.Solve(job)
	l.Least, l.Exact = len(l.Sticks)+plan.Least, plan.Exact
	taken := make([]int, len(groups))
	for i, row := range plan.Sticks {
		if i >= len(l.Sticks) {
			l.Sticks = append(l.Sticks, Stick{Length: st.Length})
		}
		for k, n := range row {
			if g := order[k]; n > 0 {
				ids := groups[g].IDs[taken[g] : taken[g]+n]
				taken[g] += n
				l.Sticks[i].Cuts = append(l.Sticks[i].Cuts, Cut{groups[g].Mark, groups[g].Each, ids})
			}
		}
	}
	for i := range l.Sticks {
		l.Sticks[i].Left = a.leftOf(l.Sticks[i])
	}
}

// alike collects parts of one mark and length, the longest first.
func (a *Assembly) alike(parts []*Part) []Cut {
	var out []Cut
	for _, p := range parts {
		each := a.along(p)
		i := slices.IndexFunc(out, func(c Cut) bool { return c.Mark == p.Mark && micron(c.Each) == micron(each) })
		if i < 0 {
			i = len(out)
			out = append(out, Cut{Mark: p.Mark, Each: each})
		}
		out[i].IDs = append(out[i].IDs, p.ID)
	}
	slices.SortStableFunc(out, func(x, y Cut) int { return int(micron(y.Each) - micron(x.Each)) })
	return out
}

// leftOf is what is left of a stick past the trim, the pieces and the kerfs between them.
func (a *Assembly) leftOf(s Stick) unit.Length {
	st := a.Spec.Stock
	left := s.Length - st.Trim - unit.Length(max(0, s.Pieces()-1))*st.Kerf
	for _, c := range s.Cuts {
		left -= unit.Length(len(c.IDs)) * c.Each
	}
	if left < 1e-6 {
		return 0
	}
	return left
}

// LongStick returns the shortest stick that is long enough: lumber comes in steps of 2 ft or 300 mm (common
// practice, no source).
func (a *Assembly) LongStick(need unit.Length) unit.Length {
	step := unit.Length(a.Spec.Pick(609.6, 300))
	return unit.Length(math.Ceil(float64(need/step)-1e-9)) * step
}

// whole returns a length in whole nanometres: a sixty-fourth of an inch is a whole number of them.
func whole(l unit.Length) int64 { return int64(math.Round(l.MM() * 1e6)) }
