package detail

import (
	"math"

	"standclear/detail/spec"
)

// Frame holds the heights and depths everything else is placed by, in millimetres.
//
//	     inside |rim|sh|#insulation#| cavity |sd|
//	y:  RimIn   RimOut 0        InsulOut  CavityOut CladOut
//	                   |##block##|sp|[ledger]
//	                   0      BlockOut  LedgerBack LedgerFront
type Frame struct {
	Left, Right float64 // ends of the wall drawn
	Top, Bottom float64 // and its heights

	SheathIn  float64 // inner face of sheathing, negative
	StudIn    float64 // inner face of studs
	FinishIn  float64 // room face
	InsulOut  float64
	CavityOut float64 // back of the cladding
	CladOut   float64

	SubTop, RimTop, RimBottom, PlateBottom float64
	RimOut, RimIn, BackingIn               float64

	BlockIn, BlockOut       float64 // depth of the block, pad included
	LedgerBack, LedgerFront float64
	LoadLine                float64 // y of the middle of the hanger seats
	DeckTop                 float64
	LedgerTop, LedgerBottom float64 // at the back of the ledger
	LedgerTopFront          float64 // after the bevel
	BlockTop, BlockBottom   float64 // at the wall
	BlockTopFront           float64 // after the slope
	BandTop, BandBottom     float64 // the stretch without cladding
}

// Standoff is the clear distance from sheathing to ledger.
func (f Frame) Standoff() float64 { return f.LedgerBack }

// Gap is the clear depth behind the ledger, between blocks; negative when the ledger is buried.
func (f Frame) Gap() float64 { return f.LedgerBack - f.InsulOut }

// NewFrame computes the heights and depths of a spec.
func NewFrame(s *spec.Spec) Frame {
	var f Frame
	f.depths(s)
	f.levels(s)
	f.extent(s)
	return f
}

func (f *Frame) depths(s *spec.Spec) {
	in, out := 0.0, 0.0
	beyond := false
	for _, l := range s.Wall.Layers {
		if l.Role == "sheathing" {
			f.SheathIn = -l.Thickness.MM()
			beyond = true
			continue
		}
		t := l.Thickness.MM()
		if !beyond {
			in += t
			continue
		}
		switch l.Role {
		case "insulation":
			out += t
			f.InsulOut = out
		case "cavity", "other":
			out += t
		case "cladding":
			f.CavityOut = out
			out += t
			f.CladOut = out
		}
	}
	f.interior(s)
	f.RimOut = f.SheathIn
	f.RimIn = f.RimOut - s.Floor.Rim.Thickness.MM()
	f.BackingIn = f.RimIn
	if s.Floor.Backing.Kind != "none" {
		f.BackingIn -= s.Floor.Backing.Thickness.MM()
	}
	f.BlockOut = s.Blocks.Depth()
	f.LedgerBack = f.BlockOut + s.Blocks.Spacer.MM()
	f.LedgerFront = f.LedgerBack + s.Ledger.Thickness.MM()
	f.LoadLine = f.LedgerFront + s.Deck.Joists.Seat.MM()/2
}

// interior stacks the layers inside the sheathing, from the sheathing inward.
func (f *Frame) interior(s *spec.Spec) {
	y := f.SheathIn
	f.StudIn = y
	for i := len(s.Wall.Layers) - 1; i >= 0; i-- {
		l := s.Wall.Layers[i]
		if l.Role != "studs" && l.Role != "finish" {
			continue
		}
		y -= l.Thickness.MM()
		if l.Role == "studs" {
			f.StudIn = y
		}
	}
	f.FinishIn = y
}

func (f *Frame) levels(s *spec.Spec) {
	f.SubTop = -s.Floor.Finish.MM()
	f.RimTop = f.SubTop - s.Floor.Subfloor.MM()
	f.RimBottom = f.RimTop - s.Floor.Rim.Depth.MM()
	f.PlateBottom = f.RimBottom - s.Floor.Plate.MM()
	f.DeckTop = -s.Deck.Below.MM()
	f.LedgerTop = f.DeckTop - s.Deck.Decking.MM()
	f.LedgerBottom = f.LedgerTop - s.Ledger.Height.MM()
	f.LedgerTopFront = f.LedgerTop - float64(s.Ledger.TopSlope)*s.Ledger.Thickness.MM()
	f.BlockTop = f.LedgerTop - s.Blocks.Below.MM()
	f.BlockBottom = f.BlockTop - s.Blocks.Height.MM()
	f.BlockTopFront = f.BlockTop - float64(s.Blocks.TopSlope)*f.BlockOut
	f.BandTop = f.FlashAt(f.CavityOut) + s.Wall.Cladding.AboveFlash.MM()
	f.BandBottom = math.Min(f.LedgerBottom, f.BlockBottom) - s.Wall.Cladding.BelowLedger.MM()
}

// FlashAt returns the height of the flashing plane at depth y: the bevel of the ledger, carried on.
func (f *Frame) FlashAt(y float64) float64 {
	slope := 0.0
	if d := f.LedgerFront - f.LedgerBack; d > 0 {
		slope = (f.LedgerTop - f.LedgerTopFront) / d
	}
	return f.LedgerTop + slope*(f.LedgerBack-y)
}

// extent sets how much of the wall is modelled: two feet beyond the ledger, up to above the floor
// by the height of a sill, down to the base of the cladding.
func (f *Frame) extent(s *spec.Spec) {
	const beyond, above = 600, 900
	f.Left, f.Right = -beyond, s.Ledger.Length.MM()+beyond
	f.Top = above
	f.Bottom = math.Min(f.BandBottom, f.PlateBottom) - beyond
	if s.Foundation.Kind == "wall" || s.Foundation.GradeHigh == nil {
		return
	}
	const base = 200 // cladding stays 8 in (200 mm) off the ground (IRC R317.1: 6 in least)
	f.Bottom = math.Min(f.Bottom+beyond/2, s.Foundation.GradeHigh.MM()+base)
}
