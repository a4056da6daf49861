package sheet

import (
	"fmt"
	"strings"

	"standclear/detail"
	"standclear/detail/stock"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// say registers a note on a part of a picture when the picture shows it.
func (w *writer) say(c *composer, s side, p view.Picture, role detail.Role, fx, fy float64, words ...string) {
	w.sayOf(c, s, p, role, fx, fy, nil, words...)
}

func (w *writer) sayOf(c *composer, s side, p view.Picture, role detail.Role, fx, fy float64, match func(view.Piece) bool, words ...string) {
	at, part, ok := spot(p, role, fx, fy, match)
	if !ok {
		return
	}
	end := render.Dot
	if part.Thin {
		end = render.Arrow
	}
	c.call(s, at, end, w.label(part, words...))
}

// atNotes names what the section at a block shows: inside on the left, outside on the right.
func (w *writer) atNotes(c *composer, p view.Picture, b int) {
	s := w.a.Spec
	above := func(q view.Piece) bool { return q.Region.Bounds().Min.Y > w.a.Frame.SubTop-1 || len(q.Lines) > 0 }
	w.sayOf(c, left, p, detail.Finish, 0.5, 0.75, above)
	w.sayOf(c, left, p, detail.Cavity, 0.3, 0.45, above)
	w.say(c, left, p, detail.Sheathing, 0.5, 0.93)
	w.sayOf(c, left, p, detail.Plate, 0.5, 0.5, above)
	w.say(c, left, p, detail.Subfloor, 0.12, 0.5)
	w.say(c, left, p, detail.Rim, 0.5, 0.2, materialName(s.Floor.Rim.Material)+", EXISTING: VERIFY")
	w.say(c, left, p, detail.Backing, 0.5, 0.3, materialName(s.Floor.Backing.Material), "CARRIED ON THE PLATE, TIGHT TO THE RIM")
	w.tieNote(c, p, b)
	w.nutNote(c, p, b)
	below := func(q view.Piece) bool { return q.Region.Bounds().Max.Y < w.a.Frame.SubTop-50 }
	w.sayOf(c, left, p, detail.Plate, 0.25, 0.5, below, "BEARING OF THE RIM")
	w.say(c, left, p, detail.Footing, 0.4, 0.3, "EXISTING")
	w.say(c, right, p, detail.Cladding, 0.5, 0.6)
	w.say(c, right, p, detail.OuterInsul, 0.5, 0.8, "CUT CLOSE ROUND THE BLOCK")
	w.say(c, right, p, detail.Barrier, 0.5, 0.25, "LAPS OVER THE PATCH "+w.text((s.Water.Patch.Height-s.Blocks.Height).MM()/2))
	w.flashNote(c, p)
	w.say(c, right, p, detail.Wrap, 0.5, 0.5, "TOP FALLS "+s.Blocks.TopSlope.Text(s.Project.System)+" OUTWARD")
	w.say(c, right, p, detail.Decking, 0.6, 0.5, "BY OTHERS")
	w.say(c, right, p, detail.Ledger, 0.5, 0.78, s.Ledger.Species+" "+s.Ledger.Grade+" TREATED")
	w.plyNote(c, p, b)
	w.boltNote(c, b)
	w.say(c, right, p, detail.Patch, 0.5, 0.1, "ON THE SHEATHING BEHIND THE BLOCK")
}

func materialName(key string) string {
	if m, ok := stock.MaterialOf(key); ok {
		return m.Name
	}
	if b, ok := stock.Rim(key, 0); ok {
		return b.Name
	}
	return key
}

// plyNote names the block by its make-up.
func (w *writer) plyNote(c *composer, p view.Picture, b int) {
	at, part, ok := spot(p, detail.BlockPly, 0.5, 0.12, nil)
	if !ok || b < 0 {
		return
	}
	s := w.a.Spec
	var plies []string
	for i, t := range s.Blocks.Plies {
		name := "PLY"
		if i < len(s.Blocks.Material) && s.Blocks.Material[i] != "" && s.Blocks.Material[i] != "lumber" {
			name = s.Blocks.Material[i]
		}
		plies = append(plies, w.text(t.MM())+" "+name)
	}
	if s.Blocks.Pad.Thickness > 0 {
		plies = append(plies, w.text(s.Blocks.Pad.Thickness.MM())+" "+s.Blocks.Pad.Material+" PAD")
	}
	words := fmt.Sprintf("%s BLOCK %s x %s HIGH: %s, FROM THE SHEATHING OUT. %s %s, GRAIN %s", w.a.Blocks[b].Mark, w.text(s.Blocks.Width.MM()), w.text(s.Blocks.Height.MM()),
		strings.Join(plies, " + "), part.Material, part.Note, s.Blocks.Grain)
	c.call(right, at, render.Dot, caps(words))
}

// boltNote names the bolts of the section by the lowest row.
func (w *writer) boltNote(c *composer, b int) {
	if b < 0 || len(w.a.Rows) == 0 {
		return
	}
	row := w.a.Rows[len(w.a.Rows)-1]
	set := row.Set
	words := fmt.Sprintf("BT1 %d %s x %s %s PER BLOCK, %s, HOLE %s; WASHER %s x %s EACH END", len(w.a.Blocks[b].Bolts), w.diameter(set.Diameter), w.text(w.a.BoltLength(set).MM()),
		boltWord(set.Kind), set.Coating, w.text(set.Hole.MM()), w.text(set.Washer.Size.MM()), w.text(set.Washer.Thickness.MM()))
	c.call(right, geom.Vec{X: w.a.Frame.LedgerFront + set.Washer.Thickness.MM() + 4, Y: row.Z}, render.Arrow, caps(words))
}

func boltWord(kind string) string {
	switch kind {
	case "lag":
		return "LAG SCREWS"
	case "screw":
		return "WOOD SCREWS"
	case "evaluated":
		return "FASTENERS WITH EVALUATED VALUES"
	}
	return "HEX BOLTS"
}

func (w *writer) nutNote(c *composer, p view.Picture, b int) {
	if b < 0 || len(w.a.Rows) == 0 {
		return
	}
	set := w.a.Rows[0].Set
	if set.Kind != "bolt" {
		return
	}
	y := w.a.Grip(set).Inner - set.Washer.Thickness.MM() - 6
	c.call(left, geom.Vec{X: y, Y: w.a.Rows[len(w.a.Rows)-1].Z}, render.Arrow, "NT1 NUT ON WASHER, REACHED FROM INSIDE; RETIGHTEN AFTER THE FIRST HEATING SEASON")
}

// tieNote states what the floor tie must carry.
func (w *writer) tieNote(c *composer, p view.Picture, b int) {
	for _, part := range w.a.Find(detail.TieStrap) {
		if part.Block != b {
			continue
		}
		box := part.Bounds()
		words := fmt.Sprintf("TS1 2 FLOOR TIES PER BLOCK, BACKING TO JOISTS, TOGETHER %s ALLOWABLE", w.a.Spec.Tie.Rating.Text(w.a.Spec.Project.System))
		c.call(left, geom.Vec{X: box.Max.Y - 60, Y: (box.Min.Z + box.Max.Z) / 2}, render.Arrow, words)
		return
	}
}

func (w *writer) flashNote(c *composer, p view.Picture) {
	f := w.a.Spec.Water.Flashing
	at, part, ok := spot(p, detail.Flashing, 0, 0.5, nil)
	if !ok {
		return
	}
	words := fmt.Sprintf("%s LEDGER FLASHING %s, %s UP x %s OUT x %s DRIP, %s LAPS OVER IT, END DAMS %s", part.Mark, f.Material, w.text(f.Up.MM()), w.text(f.Out.MM()), w.text(f.Drip.MM()), f.Lap, w.text(f.EndDam.MM()))
	c.call(right, at, render.Arrow, caps(words))
}

// betweenNotes names what differs between blocks.
func (w *writer) betweenNotes(c *composer, p view.Picture) {
	s, f := w.a.Spec, w.a.Frame
	w.say(c, right, p, detail.Cladding, 0.5, 0.6, "STOPS "+w.text(s.Wall.Cladding.AboveFlash.MM())+" ABOVE F1")
	w.say(c, right, p, detail.OuterInsul, 0.5, 0.5, "RUNS ON BEHIND THE LEDGER")
	w.say(c, right, p, detail.Barrier, 0.5, 0.55, "CONTINUOUS")
	w.flashNote(c, p)
	w.say(c, right, p, detail.Decking, 0.6, 0.5, w.text(s.Deck.DeckGap.MM())+" OFF THE CLADDING")
	w.say(c, right, p, detail.Ledger, 0.5, 0.3)
	if f.Gap() > 0 {
		c.call(right, geom.Vec{X: (f.InsulOut + f.LedgerBack) / 2, Y: f.LedgerBottom + 0.4*(f.LedgerTop-f.LedgerBottom)}, render.Dot,
			fmt.Sprintf("OPEN GAP %s, DRAINED AND AIRED: DO NOT FILL. OPEN AT TOP INTO THE CAVITY, AT FOOT THROUGH THE SCREEN", w.text(f.Gap())))
		c.airArrows(f)
	}
	w.say(c, right, p, detail.Screen, 0.5, 0.5, "STAINLESS, REMOVABLE")
	w.say(c, left, p, detail.Rim, 0.5, 0.35)
	w.say(c, left, p, detail.Sheathing, 0.5, 0.9)
}

// airArrows shows the way of the air through the gap.
func (c *composer) airArrows(f detail.Frame) {
	x := (f.InsulOut + f.LedgerBack) / 2
	h := f.LedgerTop - f.LedgerBottom
	for _, z := range []float64{f.LedgerBottom + 0.15*h, f.LedgerBottom + 0.62*h} {
		a, b := geom.Vec{X: x, Y: z}, geom.Vec{X: x, Y: z + 0.2*h}
		c.put(render.Leader{Pen: render.Water, Points: []geom.Vec{b, a}, End: render.Arrow})
	}
}
