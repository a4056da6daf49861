package detail

import (
	"fmt"
	"math"
	"slices"

	"standclear/detail/layout"
	"standclear/detail/unit"
	"standclear/geom"
)

// rodBeside is the distance from the face of a joist to the axis of a tension rod beside it, mm: 1 1/4 in,
// usual for brackets on a joist's side (common practice, no source).
const rodBeside = 31.75

// deckBeside is that distance at a deck joist, past the flange of its hanger with 1/8 in to spare.
func (a *Assembly) deckBeside() float64 {
	return math.Max(rodBeside, a.Spec.Deck.Joists.HangerFlange.MM()+a.rodSize()/2+3.175)
}

func (a *Assembly) rodSize() float64 { return a.Spec.Pick(12.7, 12) }

// Device is one lateral tension device: a rod through ledger, gap, wall and rim, beside a deck joist
// outside and a house joist inside.
type Device struct {
	X           float64 // axis of the rod
	House, Deck float64 // axes of the joists it stands beside, NaN when there are none in reach
}

// FromEnd returns the distance of the device from the nearer end of a ledger of length l.
func (d Device) FromEnd(l float64) float64 { return math.Min(d.X, l-d.X) }

// placeTension shares the devices out to both ends: each beside a house joist, within its distance from
// the end, clear of blocks, with a deck joist beside it where that disturbs the deck joists least.
func (a *Assembly) placeTension() {
	t := a.Spec.Tie.Lateral
	for i := range t.Count {
		a.Tension = append(a.Tension, a.device(i%2 == 1))
	}
}

// device returns the next device at the left or right end.
func (a *Assembly) device(right bool) Device {
	l, reach := a.Spec.Ledger.Length.MM(), a.Spec.Tie.Lateral.FromEnd.MM()
	end := 0.0
	if right {
		end = l
	}
	best := Device{X: math.Abs(end - reach + float64(len(a.Tension)/2)*3*rodBeside), House: math.NaN(), Deck: math.NaN()}
	few, cost := math.MaxInt, math.Inf(1)
	rules := a.joistRules()
	with := rules.WithFixed()
	for _, h := range a.HouseJoists {
		for _, side := range []float64{-1, 1} {
			x := h + side*(a.Spec.Floor.Joists.Flange.MM()/2+rodBeside)
			if x < rodBeside || x > l-rodBeside || math.Abs(x-end) > reach+geom.Tol || !a.rodFree(x) {
				continue
			}
			if math.IsNaN(best.House) { // better than none, until a deck joist is found
				best = Device{X: x, House: h, Deck: math.NaN()}
			}
			for _, deck := range a.decksAt(rules, x) {
				n, c, ok := with.With(deck)
				if ok && (n < few || n == few && c < cost-geom.Tol) {
					few, cost, best = n, c, Device{X: x, House: h, Deck: deck}
				}
			}
		}
	}
	return best
}

// decksAt returns the axes on either side of a rod at x where a deck joist can stand clear of the bolts.
func (a *Assembly) decksAt(r layout.JoistRules, x float64) []float64 {
	beside := a.Spec.Deck.Joists.Width.MM()/2 + a.deckBeside()
	var out []float64
	for _, at := range []float64{x + beside, x - beside} {
		apart := !slices.ContainsFunc(append(r.Fixed, r.First, r.Last), func(o float64) bool { return math.Abs(o-at) > geom.Tol && math.Abs(o-at) < r.Least })
		if at >= r.First && at <= r.Last && apart && r.Free(at) {
			out = append(out, at)
		}
	}
	return out
}

// settleTension says of each device which deck joist it has got: none when the joists that were given, or
// that the bolts leave room for, stand elsewhere.
func (a *Assembly) settleTension() {
	beside := a.Spec.Deck.Joists.Width.MM()/2 + a.deckBeside()
	for i := range a.Tension {
		d := &a.Tension[i]
		d.Deck = math.NaN()
		for _, x := range a.DeckJoists {
			if off := math.Abs(x - d.X); off > beside-1 && off < beside+rodBeside/2 {
				d.Deck = x
			}
		}
	}
}

// rodFree reports whether a rod at x misses blocks, obstacles and the devices placed before it.
func (a *Assembly) rodFree(x float64) bool {
	for _, b := range a.Blocks {
		if x > b.Box.Min.X-rodBeside/2 && x < b.Box.Max.X+rodBeside/2 {
			return false
		}
	}
	for _, d := range a.Tension {
		if math.Abs(d.X-x) < 3*rodBeside {
			return false
		}
	}
	for _, o := range a.Spec.Obstacles {
		if x > o.From.MM()-a.rodSize() && x < o.To.MM()+a.rodSize() {
			return false
		}
	}
	return true
}

// tension builds the devices. No product: by required allowable load.
func (a *Assembly) tension() {
	s, f := a.Spec, a.Frame
	const reach = 300
	dia := a.rodSize()
	z := f.LedgerTop - s.Deck.Joists.Depth.MM()/2
	for i, d := range a.Tension {
		a.add(Part{ID: fmt.Sprintf("LT%d", i+1), Mark: "LT1", Name: "LATERAL TENSION DEVICE", Role: TensionRod, Material: "steel", Block: -1,
			Note:   s.Tie.Lateral.Rating.Q().Text(s.Project.System) + " allowable, fixings as its maker states",
			Size:   [3]unit.Length{0, 0, unit.Length(f.LedgerFront - f.RimIn + 2*reach)},
			Solids: []geom.Solid{geom.Cylinder(geom.Vec3{X: d.X, Y: f.RimIn - reach, Z: z}, geom.Y, dia/2, f.LedgerFront-f.RimIn+2*reach)}})
	}
}
