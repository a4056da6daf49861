package sheet

import (
	"fmt"
	"math"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
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
	c.callOn(s, c.spots(p, at, role, match), end, w.label(part, words...))
}

// atNotes names what the section at a block shows: inside on the left, outside on the right.
func (w *writer) atNotes(c *composer, p view.Picture, b int) {
	s := w.a.Spec
	above := func(q view.Piece) bool { return q.Region.Bounds().Min.Y > w.a.Frame.SubTop-1 || len(q.Lines) > 0 }
	w.sayOf(c, left, p, detail.Finish, 0.5, 0.75, above)
	w.sayOf(c, left, p, detail.Cavity, 0.3, 0.45, above)
	w.sayOf(c, left, p, detail.Stud, 0.5, 0.45, above)
	w.say(c, left, p, detail.Sheathing, 0.5, 0.93)
	w.sayOf(c, left, p, detail.Plate, 0.5, 0.5, above)
	if !w.sparse { // A-303 and S-504 name it too
		w.say(c, left, p, detail.Subfloor, 0.12, 0.5)
	}
	w.say(c, left, p, detail.Rim, 0.5, 0.2, materialName(s.Floor.Rim.Material)+", EXISTING: VERIFY")
	w.say(c, left, p, detail.Backing, 0.5, 0.3, materialName(s.Floor.Backing.Material), w.backingWords())
	w.tieNote(c, p)
	w.nutNote(c, b)
	below := func(q view.Piece) bool { return q.Region.Bounds().Max.Y < w.a.Frame.SubTop-50 }
	w.sayOf(c, left, p, detail.Plate, 0.25, 0.5, below, "BEARING OF THE RIM")
	w.say(c, left, p, detail.Footing, 0.4, 0.3, "EXISTING")
	w.sayOf(c, right, p, detail.Cladding, 0.5, 0.4, w.overDeck)
	w.insulationNote(c, p, "CUT CLOSE ROUND THE BLOCK")
	w.flashNote(c, p)
	w.say(c, right, p, detail.Decking, 0.6, 0.5, "BY OTHERS")
	w.say(c, right, p, detail.Ledger, 0.5, 0.78, s.Ledger.Species+" "+s.Ledger.Grade, treated(s.Ledger.Treated), w.bevelWords())
	w.plyNote(c, p, b)
	w.boltNotes(c, b)
	w.lapNotes(c, p, b)
	w.joistNotes(c, p)
	w.levels(c)
}

func treated(yes bool) string {
	if yes {
		return "PRESERVATIVE TREATED"
	}
	return "NOT TREATED"
}

// overDeck picks pieces that stand above the deck.
func (w *writer) overDeck(q view.Piece) bool { return q.Region.Bounds().Min.Y > w.a.Frame.LedgerTop }

// backingWords says how the backing takes its share.
func (w *writer) backingWords() string {
	b := w.a.Spec.Floor.Backing
	if len(w.a.HouseJoists) == 0 {
		words := either(b.Kind == "loose", "LOOSE: HELD BY THE BOLTS ALONE", "TIGHT TO THE RIM") + "; NO JOIST HOLDS IT: BLOCKING FROM THE RIM INTO THE FLOOR BY THE ENGINEER"
		if b.Kind == "carried" && b.Fixing > 0 {
			words += ", FIXINGS " + b.Fixing.Text(w.a.Spec.Project.System) + " UP OR DOWN AT EACH BLOCK"
		}
		return words
	}
	switch {
	case b.Kind == "loose":
		return "LOOSE: HELD BY THE BOLTS ALONE"
	case b.Fixing > 0:
		return "TIGHT TO THE RIM; OWN FIXINGS TO THE JOISTS " + b.Fixing.Text(w.a.Spec.Project.System) + " UP OR DOWN AT EACH BLOCK"
	}
	return "TIGHT TO THE RIM; OWN FIXINGS NOT STATED"
}

// bevelWords gives the ledger's height at back and face when its top is bevelled.
func (w *writer) bevelWords() string {
	f := w.a.Frame
	if f.LedgerTop-f.LedgerTopFront < 0.5 {
		return ""
	}
	return fmt.Sprintf("TOP BEVELLED %s OUTWARD: %s HIGH AT BACK, %s AT FACE", w.a.Spec.Ledger.TopSlope.Text(w.a.Spec.Project.System), w.text(f.LedgerTop-f.LedgerBottom), w.text(f.LedgerTopFront-f.LedgerBottom))
}

// insulationNote names the layers of outside insulation, equal neighbours as one.
func (w *writer) insulationNote(c *composer, p view.Picture, words string) {
	at, part, ok := spot(p, detail.OuterInsul, 0.5, 0.8, nil)
	if !ok {
		return
	}
	var marks []string
	for i, l := range w.a.Spec.Wall.Layers {
		if l.Role == "insulation" && l.Name == part.Name && l.Thickness == part.Size[0] {
			marks = append(marks, detail.LayerMark(i))
		}
	}
	if len(marks) < 2 {
		c.call(right, at, render.Dot, w.label(part, words))
		return
	}
	c.call(right, at, render.Dot, caps(fmt.Sprintf("%s %s %d x %s, JOINTS STAGGERED, %s", strings.Join(marks, ", "), part.Name, len(marks), w.text(part.Size[0].MM()), words)))
}

// lapNotes names the membranes where each lies alone, and the laps where they lie on each other.
func (w *writer) lapNotes(c *composer, p view.Picture, b int) {
	s, f := w.a.Spec, w.a.Frame
	w.filmNote(c, p, detail.Wrap, func(v geom.Vec) bool { return v.X > f.BlockOut*0.4 && v.Y > f.BlockBottom+50 }, "M2 CAP, FALLS "+s.Blocks.TopSlope.Text(s.Project.System)+" OUTWARD, UP THE WALL "+w.text(s.Water.WrapLap.MM())+", DOWN BOTH SIDES OVER M3; FOOT BARE: WATER LEAVES SIDEWAYS AND DOWN")
	if b < 0 {
		return
	}
	box := w.a.PatchBox(b)
	if box.Empty() {
		return
	}
	z := (box.Max.Y + f.BlockTop + s.Water.WrapLap.MM()) / 2
	words := fmt.Sprintf("LAPS %s OVER M1 AND OVER THE TURN-UP OF M2", w.text(box.Max.Y-f.BlockTop))
	if !s.Water.Patch.Under {
		words = "UNDER M1: REVERSED LAP"
	}
	w.filmNote(c, p, detail.Barrier, near(z), w.layerName("wrb")+", "+words)
	w.filmNote(c, p, detail.Patch, near((f.BlockBottom+box.Min.Y)/2), fmt.Sprintf("M1 MEMBRANE PATCH ON THE SHEATHING, AT THE FOOT %s OVER THE BARRIER", w.text(f.BlockBottom-box.Min.Y)))
}

// joistNotes names the deck joist and its hanger beyond the cut.
func (w *writer) joistNotes(c *composer, p view.Picture) {
	f, j := w.a.Frame, w.a.Spec.Deck.Joists
	sys := w.a.Spec.Project.System
	joist, hanger := false, ""
	for _, e := range p.Edges {
		joist = joist || e.Part.Role == detail.DeckJoist
		if e.Part.Role == detail.Hanger {
			hanger = e.Part.Mark
		}
	}
	low := f.LedgerTop - j.Depth.MM()
	if joist {
		var at []geom.Vec
		for _, t := range []float64{0.72, 0.9, 0.6, 0.5, 0.4, 0.3} {
			for _, u := range []float64{0.35, 0.5, 0.2, 0.65} {
				at = append(at, geom.Vec{X: f.LedgerFront + t*(p.Window.Max.X-f.LedgerFront), Y: low + u*j.Depth.MM()})
			}
		}
		c.callOn(right, at, render.Dot,
			caps(fmt.Sprintf("DK1 DECK JOIST %s x %s, BY OTHERS", w.text(j.Width.MM()), w.text(j.Depth.MM()))))
	}
	if hanger != "" {
		words := hanger + " JOIST HANGER, SEAT " + w.text(j.Seat.MM())
		if j.Hanger > 0 {
			words += ", " + j.Hanger.Text(sys) + " ALLOWABLE"
		}
		c.call(right, geom.Vec{X: f.LedgerFront + j.Seat.MM() - 4, Y: low + 6}, render.Dot, caps(words))
	}
}

// levels marks the floor, the decking and the ledger beside the chains.
func (w *writer) levels(c *composer) {
	f := w.a.Frame
	c.mark(0, "FIN. FLOOR "+w.signed(0))
	c.mark(f.LedgerTop, "T.O. LEDGER "+w.signed(f.LedgerTop))
	c.mark(f.LedgerBottom, "B.O. LEDGER "+w.signed(f.LedgerBottom))
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

// plyNote names the block by its make-up, piece by piece as built.
func (w *writer) plyNote(c *composer, p view.Picture, b int) {
	at, part, ok := spot(p, detail.BlockPly, 0.5, 0.12, nil)
	if !ok || b < 0 {
		return
	}
	s := w.a.Spec
	var pieces []string
	for _, q := range w.a.Blocks[b].Parts {
		switch q.Role {
		case detail.BlockPly:
			name := q.Mark
			if q.Material != s.Blocks.Species {
				name += " " + q.Material
			}
			pieces = append(pieces, w.text(q.Size[0].MM())+" "+name)
		case detail.BlockPad:
			pieces = append(pieces, w.text(q.Size[0].MM())+" "+q.Material+" PAD")
		case detail.FootPiece:
			pieces = append(pieces, "FT1 AT ITS FOOT")
		}
	}
	words := fmt.Sprintf("%s BLOCK %s x %s HIGH: %s, FROM THE SHEATHING OUT. %s %s, %s, GRAIN %s", w.a.Blocks[b].Mark, w.text(s.Blocks.Width.MM()), w.text(s.Blocks.Height.MM()),
		strings.Join(pieces, " + "), part.Material, s.Blocks.Grade, treated(s.Blocks.Treated), s.Blocks.Grain) + w.screwWords(b)
	c.call(right, at, render.Dot, caps(words))
}

// screwWords name the screws that hold a block together, and the ledger to it.
func (w *writer) screwWords(b int) string {
	t := ""
	for _, q := range w.a.Blocks[b].Parts {
		if q.Role == detail.PlyScrew && !strings.Contains(t, q.Mark) {
			t += ", " + q.Name + "S " + q.Mark
		}
	}
	return t
}

// boltNotes names every set by its lowest row.
func (w *writer) boltNotes(c *composer, b int) {
	if b < 0 {
		return
	}
	for i, set := range w.a.Spec.Fasteners.Sets() {
		z, n := math.Inf(1), 0
		for _, r := range w.a.Rows {
			if r.Set == set {
				z, n = math.Min(z, r.Z), n+max(1, set.Columns)
			}
		}
		washer := fmt.Sprintf("WS%d WASHER %s x %s %s", i+1, w.text(set.Washer.Size.MM()), w.text(set.Washer.Thickness.MM()), either(set.Kind == "bolt", "EACH END", "UNDER THE HEAD"))
		words := fmt.Sprintf("BT%d %s %s x %s, %d PER BLOCK, %s, HOLE %s; %s", i+1, boltWord(set.Kind), w.diameter(set.Diameter), w.bought(w.a.BoltLength(set)), n, set.Coating, w.text(set.Hole.MM()), washer)
		if i > 0 && set.Kind == "bolt" {
			words += fmt.Sprintf(", NT%d NUT", i+1)
		}
		at := []geom.Vec{{X: w.a.Grip(set).Outer + set.Washer.Thickness.MM() + 4, Y: z}}
		for _, r := range w.a.Rows {
			if r.Set == set && r.Z > z {
				at = append(at, geom.Vec{X: at[0].X, Y: r.Z})
			}
		}
		c.callOn(right, at, render.Arrow, caps(words))
	}
}

func either[T any](yes bool, a, b T) T {
	if yes {
		return a
	}
	return b
}

func boltWord(kind string) string {
	switch kind {
	case "lag":
		return "LAG SCREW"
	case "screw":
		return "WOOD SCREW"
	case "evaluated":
		return "FASTENER WITH EVALUATED VALUES"
	}
	return "HEX BOLT"
}

// retighten is said the same way wherever it is said.
const retighten = "RETIGHTEN AFTER THE FIRST YEAR"

func (w *writer) nutNote(c *composer, b int) {
	set := w.a.Rows[0].Set
	if b < 0 || set.Kind != "bolt" {
		return
	}
	words := "NT1 NUT ON WASHER, REACHED FROM INSIDE; " + retighten
	if !w.passes("nut_access") {
		words = "NT1 NUT ON WASHER: NOT REACHED FROM INSIDE"
	} else if w.a.Spec.Floor.Access == "strip" {
		words = fmt.Sprintf("NT1 NUT ON WASHER; OPEN A %s STRIP OF CEILING, REFIT WITH ACCESS; %s", w.text(w.a.Spec.Floor.Strip.MM()), retighten)
	}
	y := w.a.Grip(set).Inner - set.Washer.Thickness.MM() - 6
	low := w.a.Rows[0].Z
	for _, r := range w.a.Rows {
		if r.Set == set {
			low = math.Min(low, r.Z)
		}
	}
	c.call(left, geom.Vec{X: y, Y: low}, render.Arrow, words)
}

// passes reports whether the step with the id is OK.
func (w *writer) passes(id string) bool {
	for _, st := range w.report.Steps {
		if st.ID == id {
			return st.Verdict == check.OK
		}
	}
	return false
}

// tieNote states what the floor tie must carry, on the tie seen beyond the cut.
func (w *writer) tieNote(c *composer, p view.Picture) {
	for _, e := range p.Edges {
		if e.Part.Role != detail.TieStrap {
			continue
		}
		box := e.Part.Bounds()
		c.call(left, geom.Vec{X: box.Max.Y - 60, Y: (box.Min.Z + box.Max.Z) / 2}, render.Dot, w.tieWords())
		return
	}
}

// tieWords are the words of a floor tie on every sheet.
func (w *writer) tieWords() string {
	t, sys := w.a.Spec.Tie, w.a.Spec.Project.System
	words := fmt.Sprintf("TS1 FLOOR TIE, BACKING TO HOUSE JOIST, 2 IN EVERY BAY, EACH %s ALLOWABLE", t.Rating.Text(sys))
	return words + "; SCREWS OR BOLTS AS ITS MAKER STATES FOR PULL OFF THE BACKING, NO NAILS"
}

func (w *writer) flashNote(c *composer, p view.Picture) {
	f := w.a.Spec.Water.Flashing
	at, part, ok := spot(p, detail.Flashing, 0, 0.5, nil)
	if !ok {
		return
	}
	lap := map[string]string{"cladding": "CLADDING LAPS OVER IT", "wrb": "WATER BARRIER LAPS OVER IT"}[f.Lap]
	if lap == "" {
		lap = "OUTSIDE THE CLADDING: REVERSED LAP"
	}
	words := fmt.Sprintf("%s LEDGER FLASHING %s, %s UP x %s OUT x %s DRIP, %s, FALLS WITH THE LEDGER, LEG NOTCHED AT THE JOISTS, END DAMS %s", part.Mark, f.Material, w.text(f.Up.MM()), w.text(f.Out.MM()), w.text(f.Drip.MM()), lap, w.text(f.EndDam.MM()))
	c.call(right, at, render.Arrow, caps(words))
}

// betweenNotes names what differs between blocks.
func (w *writer) betweenNotes(c *composer, p view.Picture) {
	s, f := w.a.Spec, w.a.Frame
	w.sayOf(c, right, p, detail.Cladding, 0.5, 0.4, w.overDeck, "STOPS "+w.text(s.Wall.Cladding.AboveFlash.MM())+" ABOVE F1")
	w.sayOf(c, left, p, detail.Cavity, 0.3, 0.45, func(q view.Piece) bool { return q.Region.Bounds().Min.Y > f.SubTop-1 })
	w.insulationNote(c, p, "RUNS ON BEHIND THE LEDGER")
	if m := w.layerName("cavity"); m != "" {
		c.call(right, geom.Vec{X: (f.InsulOut + f.CavityOut) / 2, Y: p.Window.Max.Y * 0.55}, render.Dot, caps(m+" "+w.text(f.CavityOut-f.InsulOut)+", VENTILATED CAVITY BETWEEN"))
	}
	w.filmNote(c, p, detail.Barrier, w.atLedger(c, 0.7), w.layerName("wrb")+", CONTINUOUS")
	w.flashNote(c, p)
	w.say(c, right, p, detail.Decking, 0.6, 0.5, w.text(s.Deck.DeckGap.MM())+" OFF THE CLADDING")
	w.say(c, right, p, detail.Ledger, 0.5, 0.3)
	if f.Gap() > 0 {
		c.call(right, geom.Vec{X: w.inGap(), Y: f.LedgerBottom + 0.42*(f.LedgerTop-f.LedgerBottom)}, render.Dot, w.gapWords())
		w.airArrows(c)
	}
	w.say(c, right, p, detail.Screen, 0.5, 0.5, "STAINLESS, REMOVABLE")
	w.say(c, right, p, detail.Base, 0.5, 0.5)
	w.joistNotes(c, p)
	w.say(c, left, p, detail.Rim, 0.5, 0.35)
	w.say(c, left, p, detail.Sheathing, 0.5, 0.9)
	w.levels(c)
}
