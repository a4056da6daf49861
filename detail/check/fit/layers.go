package fit

import (
	"fmt"
	"math"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/geom"
)

// layers checks that the layers that shed water are there, whole, and in the order of the wall: what is
// further in is built first and lapped over by what comes after.
func (c *fitter) layers() {
	c.barrierWhole()
	c.barrierPlace()
	c.wallOrder()
	c.notBuilt()
	c.insulationWhole()
	c.claddingThere()
	c.blockFilms()
	c.blockFaces()
	c.filmLaps()
	c.order()
	c.lapList()
}

// lapList states the laps in order, from the cladding down and in.
func (c *fitter) lapList() {
	var laps []string
	for _, id := range []string{"flashing_over", "flashing_cover", "wrap_turn_up", "patch_lap", "cap_side_lap", "side_piece_lap", "patch_foot"} {
		if s := c.r.Find(id); s != nil {
			laps = append(laps, s.Where+" "+s.Value.Text(c.words))
		}
	}
	c.r.Add(check.Step{ID: "water_layers", Group: check.Water, Name: "laps of the water layers, from the cladding down and in", Clause: "geometry of the parts", Where: "all blocks", Note: strings.Join(laps, "; ")})
}

// marks lists the layers with the role, by mark, and where the first stands in the list; -1 for none.
func (c *fitter) marks(role string) (marks []string, first int) {
	first = -1
	for i, l := range c.a.Spec.Wall.Layers {
		if l.Role == role {
			if first < 0 {
				first = i
			}
			marks = append(marks, detail.LayerMark(i))
		}
	}
	return marks, first
}

// depthAt returns how far out the part stands at x and z, the middle of its thickness there; false where it is not.
func (c *fitter) depthAt(p *detail.Part, x, z float64) (y float64, ok bool) {
	for _, b := range c.level(p, z) {
		if b.Min.X <= x && x <= b.Max.X {
			return -b.Center().Y, true
		}
	}
	return 0, false
}

// level returns the boxes of what the level plane at z cuts of a part, in x and -y.
func (c *fitter) level(p *detail.Part, z float64) []geom.Box {
	at := level{p, z}
	if boxes, ok := c.cuts[at]; ok {
		return boxes
	}
	v := geom.AxisView(geom.Z, 1, z)
	var boxes []geom.Box
	for _, s := range p.Solids {
		if b := s.Bounds(); b.Min.Z > z || b.Max.Z < z {
			continue
		}
		for _, r := range s.Cut(v).Parts() {
			boxes = append(boxes, r.Bounds())
		}
	}
	if c.cuts == nil {
		c.cuts = map[level][]geom.Box{}
	}
	c.cuts[at] = boxes
	return boxes
}

// level is a part and the height at which it is cut.
type level struct {
	part *detail.Part
	z    float64
}

// missing lists the places between blocks, behind the ledger, where none of the parts stands.
func (c *fitter) missing(parts []*detail.Part) []string {
	z := (c.a.Frame.LedgerTop + c.a.Frame.LedgerBottom) / 2
	var out []string
	for _, s := range c.a.Between() {
		x, there := (s[0]+s[1])/2, false
		for _, p := range parts {
			_, ok := c.depthAt(p, x, z)
			there = there || ok
		}
		if !there {
			out = append(out, c.text(x))
		}
	}
	return out
}

func (c *fitter) barrierWhole() {
	parts := c.a.Find(detail.Barrier)
	step := check.Step{ID: "layer_barrier", Group: check.Water, Name: "water barrier whole behind ledger and cladding", Clause: "IRC 2024 R703.2: continuous behind deck ledgers", Where: "sheathing",
		Reason: "no layer of role wrb stands outside the sheathing", Fix: "wall.layers: a layer of role wrb on the sheathing"}
	if len(parts) == 0 {
		c.holds(step, false)
		return
	}
	open := c.missing(parts)
	step.Where, step.Reason, step.Fix = parts[0].Mark, parts[0].Mark+" is interrupted between blocks, at "+few(open)+" from the left end", ""
	c.holds(step, len(open) == 0)
}

// barrierPlace: blocks, patch and cap are flashed to a barrier on the sheathing; one further out is joined to nothing.
func (c *fitter) barrierPlace() {
	w, at := c.marks("wrb")
	if at < 0 {
		return
	}
	var under []string
	for i, l := range c.a.Spec.Wall.Layers[:at] {
		if l.Role == "insulation" || l.Role == "cavity" || l.Role == "cladding" || l.Role == "other" {
			if c.outside(i) {
				under = append(under, detail.LayerMark(i))
			}
		}
	}
	c.holds(check.Step{ID: "layer_barrier_place", Group: check.Water, Name: "water barrier where the blocks are flashed to it", Clause: "IRC R703.4: flashing laps with the water barrier, shingle fashion", Where: w[0],
		Reason: fmt.Sprintf("%s lies outside %s, while M1 and M2 lap with a barrier on the sheathing: no lap joins them, and the drawings show it on the sheathing", w[0], list(under)),
		Fix:    "wall.layers: the wrb straight on the sheathing"}, len(under) == 0)
}

// outside reports whether layer i stands outside the sheathing.
func (c *fitter) outside(i int) bool {
	_, s := c.marks("sheathing")
	return i > s
}

// wallOrder: outside the sheathing come insulation, cavity and cladding in this order, and nothing of a room.
func (c *fitter) wallOrder() {
	var odd []string
	layers := c.a.Spec.Wall.Layers
	for i, l := range layers {
		if !c.outside(i) {
			continue
		}
		if l.Role == "finish" || l.Role == "studs" {
			odd = append(odd, fmt.Sprintf("%s (%s) outside the sheathing", detail.LayerMark(i), l.Role))
		}
		for k := i + 1; k < len(layers); k++ {
			if l.Role == "cladding" && (layers[k].Role == "insulation" || layers[k].Role == "cavity" || layers[k].Role == "wrb") {
				odd = append(odd, fmt.Sprintf("%s (%s) outside %s (cladding)", detail.LayerMark(k), layers[k].Role, detail.LayerMark(i)))
			}
		}
	}
	c.holds(check.Step{ID: "layer_order", Group: check.Water, Name: "layers outside the sheathing in order", Clause: "IRC R703.1: barrier, then insulation, cavity and cladding outward", Where: "wall",
		Reason: "odd order: " + few(odd), Fix: "wall.layers: from inside to outside"}, len(odd) == 0)
}

// notBuilt names layers that are listed where this program builds nothing.
func (c *fitter) notBuilt() {
	var in []string
	for i, l := range c.a.Spec.Wall.Layers {
		if !c.outside(i) && l.Role != "finish" && l.Role != "studs" && l.Role != "sheathing" {
			in = append(in, fmt.Sprintf("%s (%s)", detail.LayerMark(i), l.Role))
		}
	}
	if len(in) == 0 {
		return
	}
	c.r.Add(check.Step{ID: "layer_inside", Group: check.Water, Name: "layers inside the sheathing", Clause: "project: wall.layers", Where: "wall", Verdict: check.NotChecked,
		Reason: list(in) + " inside the sheathing: neither drawn nor checked"})
}

// insulationWhole: the insulation runs on between the blocks, layer by layer.
func (c *fitter) insulationWhole() {
	marks, _ := c.marks("insulation")
	step := check.Step{ID: "insulation_between", Group: check.Water, Name: "outside insulation whole between blocks", Clause: "geometry; the detail is for a wall insulated outside", Where: "between blocks"}
	var open []string
	n := 0
	for _, m := range marks {
		var parts []*detail.Part
		for _, p := range c.a.Find(detail.OuterInsul) {
			if p.Mark == m {
				parts = append(parts, p)
			}
		}
		n += len(parts)
		if out := c.missing(parts); len(parts) > 0 && len(out) > 0 {
			open = append(open, fmt.Sprintf("%s at %s", m, few(out)))
		}
	}
	if n == 0 {
		step.Verdict, step.Reason, step.Fix = check.Engineer, "no insulation stands outside the sheathing: between the blocks the barrier lies open to the gap", "wall.layers: a layer of role insulation outside the sheathing"
		c.r.Add(step)
		return
	}
	step.Reason, step.Fix = "insulation missing between blocks: "+strings.Join(open, "; "), "let it run on behind the ledger"
	c.holds(step, len(open) == 0)
}

func (c *fitter) claddingThere() {
	c.holds(check.Step{ID: "layer_cladding", Group: check.Water, Name: "cladding before the insulation", Clause: "IRC R703.1: exterior wall covering", Where: "wall",
		Reason: "no layer of role cladding: rain strikes what stands outermost", Fix: "wall.layers: cavity and cladding outside the insulation"}, c.a.Count(detail.Cladding) > 0)
}

// films of one block: patch, cap, side pieces.
type films struct {
	patch, cap *detail.Part
	sides      []*detail.Part
}

func filmsOf(b *detail.Block) (f films) {
	for _, p := range b.Parts {
		switch p.Mark {
		case "M1":
			f.patch = p
		case "M2":
			f.cap = p
		case "M3":
			f.sides = append(f.sides, p)
		}
	}
	return f
}

// blockFilms: the barrier is cut at every block, and made good there.
func (c *fitter) blockFilms() {
	var bare []string
	for i := range c.a.Blocks {
		f, lacks := filmsOf(&c.a.Blocks[i]), []string(nil)
		if f.patch == nil {
			lacks = append(lacks, "M1")
		}
		if f.cap == nil {
			lacks = append(lacks, "M2")
		}
		if len(f.sides) < 2 {
			lacks = append(lacks, "M3")
		}
		if len(lacks) > 0 {
			bare = append(bare, c.mark(i)+" without "+strings.Join(lacks, " and "))
		}
	}
	c.holds(check.Step{ID: "block_films", Group: check.Water, Name: "barrier made good at every block: patch M1, cap M2, side pieces M3", Clause: "IRC R703.4: flashing where decks attach", Where: "all blocks",
		Reason: "barrier interrupted: " + few(bare)}, len(bare) == 0)
}

// blockFaces: top and sides of the block are covered to its front; the front stays open, for the fasteners
// enter there and the ledger covers it, and the foot, so that water can leave.
func (c *fitter) blockFaces() {
	var open []string
	for i := range c.a.Blocks {
		b := &c.a.Blocks[i]
		f := filmsOf(b)
		if f.cap == nil || len(f.sides) < 2 {
			continue // reported as missing
		}
		if k := f.cap.Bounds(); k.Min.X > b.Box.Min.X+touch || k.Max.X < b.Box.Max.X-touch || k.Max.Y < b.Box.Max.Y-touch {
			open = append(open, c.mark(i)+": top")
		}
		front := c.a.Frame.BlockTopFront
		for k, x := range []float64{b.Box.Min.X, b.Box.Max.X} {
			if s := f.sides[k].Bounds(); math.Abs(s.Center().X-x) > s.Size().X || s.Min.Z > b.Box.Min.Z+touch || s.Max.Z < front-touch || s.Max.Y < b.Box.Max.Y-touch {
				open = append(open, c.mark(i)+": "+either(k == 0, "left", "right")+" side")
			}
		}
	}
	c.holds(check.Step{ID: "block_faces", Group: check.Water, Name: "block wrapped, open only in front and at its foot", Clause: "judgement: open where the fasteners enter, behind the ledger, and below, so that water can leave", Where: "all blocks",
		Reason: "bare: " + few(open)}, len(open) == 0)
}

// filmLaps: how far the cap hangs down over the side pieces, and those lie out on the patch.
func (c *fitter) filmLaps() {
	down, out := math.Inf(1), math.Inf(1)
	for i := range c.a.Blocks {
		b := &c.a.Blocks[i]
		f := filmsOf(b)
		if f.cap == nil || f.patch == nil || len(f.sides) < 2 {
			return
		}
		patch := f.patch.Bounds()
		front := c.a.Frame.BlockTopFront
		for k, x := range []float64{b.Box.Min.X, b.Box.Max.X} {
			s := f.sides[k].Bounds()
			wing := math.Min(s.Max.X, patch.Max.X) - x
			if k == 0 {
				wing = x - math.Max(s.Min.X, patch.Min.X)
			}
			out = math.Min(out, wing)
		}
		for _, s := range f.cap.Solids[1:] {
			down = math.Min(down, front-s.Bounds().Min.Z)
		}
	}
	if math.IsInf(out, 1) {
		return
	}
	c.atLeast(check.Step{ID: "cap_side_lap", Group: check.Water, Symbol: "l", Name: "cap over the side pieces", Formula: "z block top - z cap", Clause: "judgement: 2 in (50 mm), as for a horizontal lap", Where: "M2 over M3",
		Reason: c.lapOf(down)}, down, c.round(2, 50))
	c.atLeast(check.Step{ID: "side_piece_lap", Group: check.Water, Symbol: "l", Name: "side pieces out on the patch", Formula: "x side piece - x block", Clause: "judgement: 2 in (50 mm), as for a horizontal lap", Where: "M3 over M1",
		Reason: c.lapOf(out), Fix: fmt.Sprintf("water.patch.width: %s", c.text(c.a.Spec.Blocks.Width.MM()+2*50.8))}, out, c.round(2, 50))
}

// order looks at the films on the wall above and below every block: what is higher up the wall laps over
// what is lower.
func (c *fitter) order() {
	var wrong []string
	barrier := c.a.Find(detail.Barrier)
	for i := range c.a.Blocks {
		b := &c.a.Blocks[i]
		f, box := filmsOf(b), c.a.PatchBox(i)
		if f.patch == nil || f.cap == nil || len(barrier) == 0 || box.Empty() {
			continue // reported as missing
		}
		over := b.Box.Max.Z + math.Min(c.a.Spec.Water.WrapLap.MM(), box.Max.Y-b.Box.Max.Z)/2
		under := (b.Box.Min.Z + box.Min.Y) / 2
		for _, pair := range []struct {
			upper, lower *detail.Part
			z            float64
		}{{barrier[0], f.cap, over}, {f.cap, f.patch, over}, {barrier[0], f.patch, over}, {f.patch, barrier[0], under}} {
			up, ok1 := c.depthAt(pair.upper, b.X, pair.z)
			low, ok2 := c.depthAt(pair.lower, b.X, pair.z)
			if ok1 && ok2 && up <= low {
				wrong = append(wrong, fmt.Sprintf("%s under %s at %s", pair.upper.Mark, pair.lower.Mark, c.mark(i)))
			}
		}
	}
	c.holds(check.Step{ID: "patch_order", Group: check.Water, Name: "films on the wall, upper over lower", Clause: "IRC R703.2: upper over lower", Where: "barrier over M2 over M1, M1 over the barrier below",
		Reason: "reversed lap: " + few(wrong), Fix: "water.patch.under: yes"}, len(wrong) == 0)
}

func either[T any](yes bool, a, b T) T {
	if yes {
		return a
	}
	return b
}
