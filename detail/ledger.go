package detail

import (
	"fmt"
	"math"

	"standclear/detail/unit"
	"standclear/geom"
)

// ledger builds the beam on the blocks, one piece between splices, its top edge bevelled outward.
func (a *Assembly) ledger() {
	s, f := a.Spec, a.Frame
	ends := []float64{0}
	for _, x := range s.Ledger.Splices {
		ends = append(ends, x.MM())
	}
	ends = append(ends, s.Ledger.Length.MM())
	profile := geom.Region{geom.Polygon(
		geom.Vec{X: f.LedgerBack, Y: f.LedgerBottom}, geom.Vec{X: f.LedgerFront, Y: f.LedgerBottom},
		geom.Vec{X: f.LedgerFront, Y: f.LedgerTopFront}, geom.Vec{X: f.LedgerBack, Y: f.LedgerTop})}
	for i := 1; i < len(ends); i++ {
		mark := fmt.Sprintf("L%d", i)
		p := a.add(Part{ID: mark, Mark: mark, Name: "LEDGER", Role: Ledger, Material: s.Ledger.Species, Note: s.Ledger.Grade, Grain: geom.X, Block: -1,
			Size:   [3]unit.Length{s.Ledger.Thickness, s.Ledger.Height, unit.Length(ends[i] - ends[i-1])},
			Solids: []geom.Solid{geom.Prism(profile, geom.X, ends[i-1], ends[i])}})
		p.Bores = a.ledgerBores(ends[i-1], ends[i])
	}
}

func (a *Assembly) ledgerBores(x0, x1 float64) []geom.Solid {
	f := a.Frame
	var out []geom.Solid
	for i := range a.Blocks {
		for _, h := range a.holes(i) {
			if h.Set != a.Spec.Fasteners.ToRim && h.X > x0 && h.X < x1 {
				out = append(out, a.rod(h.X, h.Z, h.Dia/2, f.LedgerBack-1, f.LedgerFront+1))
			}
		}
	}
	return out
}

// Concealed is the mark of a hanger with its flanges turned in behind the joist, where the other ones, HG1, have
// theirs on the face of the ledger.
const Concealed = "HC1"

// pieceSpan returns the ends of the piece of the ledger that holds x.
func (a *Assembly) pieceSpan(x float64) (lo, hi float64) {
	hi = a.Spec.Ledger.Length.MM()
	for _, at := range a.Spec.Ledger.Splices {
		if at.MM() <= x {
			lo = math.Max(lo, at.MM())
		} else {
			hi = math.Min(hi, at.MM())
		}
	}
	return lo, hi
}

// HangerSpan returns where the hanger of deck joist i has its hold on the ledger, and whether its flanges are turned
// in: where the outer flanges of the others would run past an end of its piece, or where none has outer ones.
//
//	    |<- flange ->|joist|<- flange ->|        |joist|
//	====[============|     |============]====   [|_   _|====   turned in
func (a *Assembly) HangerSpan(i int) (lo, hi float64, turned bool) {
	j, x := a.Spec.Deck.Joists, a.DeckJoists[i]
	half, flange := j.Width.MM()/2, j.HangerFlange.MM()
	from, to := a.pieceSpan(x)
	if turned = flange <= 0 || x-half-flange < from-geom.Tol || x+half+flange > to+geom.Tol; turned {
		flange = 0
	}
	return x - half - flange, x + half + flange, turned
}

// HangerRoom is the least distance from where a hanger has its hold to the end of its piece of the ledger, negative
// past it, and the number of its joist from 0; -1 without joists.
func (a *Assembly) HangerRoom() (least float64, joist int) {
	joist = -1
	for i, x := range a.DeckJoists {
		lo, hi, _ := a.HangerSpan(i)
		from, to := a.pieceSpan(x)
		if room := math.Min(lo-from, to-hi); joist < 0 || room < least-geom.Tol {
			least, joist = room, i
		}
	}
	return least, joist
}

// hangers builds one hanger for every deck joist: a seat, two sides and two face flanges of sheet
// steel. No product: the schedule asks for a required allowable load.
func (a *Assembly) hangers() {
	s, f := a.Spec, a.Frame
	const t = 1.2
	j := s.Deck.Joists
	top, bottom := f.LedgerTop, f.LedgerTop-j.Depth.MM()
	high := bottom + 0.65*(top-bottom)
	if j.HangerDepth == "full" {
		high = bottom + 0.9*(top-bottom)
	}
	face := f.LedgerFront
	for i, x := range a.DeckJoists {
		h := j.Width.MM() / 2
		seat := face + j.Seat.MM()
		left := geom.Polyline(geom.Vec{X: x - h, Y: face}, geom.Vec{X: x - h, Y: seat})
		right := geom.Polyline(geom.Vec{X: x + h, Y: face}, geom.Vec{X: x + h, Y: seat})
		mark, note := "HG1", ""
		if lo, hi, turned := a.HangerSpan(i); !turned {
			left = geom.Polyline(geom.Vec{X: lo, Y: face}, geom.Vec{X: x - h, Y: face}, geom.Vec{X: x - h, Y: seat})
			right = geom.Polyline(geom.Vec{X: hi, Y: face}, geom.Vec{X: x + h, Y: face}, geom.Vec{X: x + h, Y: seat})
		} else if j.HangerFlange > 0 {
			mark, note = Concealed, "concealed flanges"
		}
		a.add(Part{ID: fmt.Sprintf("HG%d", i+1), Mark: mark, Name: "JOIST HANGER", Note: note, Role: Hanger, Material: "galvanized steel", Block: -1, Thin: true,
			Bends: []Bend{{geom.X, geom.Polyline(geom.Vec{X: face, Y: high}, geom.Vec{X: face, Y: bottom}, geom.Vec{X: seat, Y: bottom})}, {geom.Z, left}, {geom.Z, right}},
			Size:  [3]unit.Length{unit.Length(t), j.Width, j.Depth},
			Solids: []geom.Solid{
				geom.Sheet(left, t, 0, geom.Z, bottom, high), geom.Sheet(right, 0, t, geom.Z, bottom, high), box(x-h-t, x+h+t, face, seat, bottom-t, bottom),
			}})
	}
}

// deck builds the joists and the decking, both by others: context for the drawings.
func (a *Assembly) deck() {
	s, f := a.Spec, a.Frame
	j := s.Deck.Joists
	end := s.Deck.Projection.MM()
	for i, x := range a.DeckJoists {
		h := j.Width.MM() / 2
		a.add(Part{ID: fmt.Sprintf("J%d", i+1), Mark: "DK1", Name: "DECK JOIST", Role: DeckJoist, Material: j.Species, Grain: geom.Y, Block: -1, Existing: true,
			Size:   [3]unit.Length{j.Width, j.Depth, unit.Length(end - f.LedgerFront)},
			Solids: []geom.Solid{box(x-h, x+h, f.LedgerFront, end, f.LedgerTop-j.Depth.MM(), f.LedgerTop)}})
	}
	a.decking(end)
}

// decking lays boards along the ledger from the cladding gap outward.
func (a *Assembly) decking(end float64) {
	s, f := a.Spec, a.Frame
	width, gap := s.Pick(5.5*25.4, 140), 3.0
	y := max(f.CladOut+s.Deck.DeckGap.MM(), f.LedgerBack)
	if f.FlashAt(y) > f.LedgerTop+geom.Tol {
		y = f.LedgerBack
	}
	for n := 1; y+width/3 < end; n++ {
		y1 := min(y+width, end)
		a.add(Part{ID: fmt.Sprintf("DB%d", n), Mark: "DK2", Name: "DECKING", Role: Decking, Material: "decking", Grain: geom.X, Block: -1, Existing: true,
			Size:   [3]unit.Length{s.Deck.Decking, unit.Length(y1 - y)},
			Solids: []geom.Solid{box(0, s.Ledger.Length.MM(), y, y1, f.LedgerTop, f.DeckTop)}})
		y = y1 + gap
	}
}
