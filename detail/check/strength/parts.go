package strength

import (
	"slices"

	"standclear/detail/unit"
)

// Blocks are the short pieces that hold the ledger off the wall, all alike but for their place.
//
//	|<- plies, from the sheathing outward ->|
//	|  1   | pad |  2   |  gap  | ledger    Top is the lowest top edge, at the front
//	|      |#####|      |       |
//	|      |foot |      |       |           Bottom is the foot
type Blocks struct {
	At            []Place // left to right
	Alone         string  // mark of the one block whose fasteners, body and floor are checked, under its own load; "" is all
	Wood          Lumber  // of the lumber plies
	Moisture      Moisture
	Width         unit.Length
	Top, Bottom   unit.Length // z; Top at the lowest point of a sloped top
	TopAtWall     unit.Length // z of the top edge at the wall; used only to find the top third
	VerticalGrain bool
	Plies         []Ply
	PliesFastened bool // the plies of one piece are fixed to each other by PlyScrews
	PlyScrews     PlyScrews
	Pad           Pad
	FrontGap      unit.Length // open gap between block and ledger, kept by spacers on the bolts
	LedgerScrews  PlyScrews   // from the ledger face into the front ply of one block; a count of 0 is none
}

// Place is where one block stands.
type Place struct {
	Mark string
	X    unit.Length // centre
}

// Ply is one layer of a block.
type Ply struct {
	Thickness unit.Length
	Panel     bool // plywood; false: lumber of the block's grain
	G         float64
	FcPerp    unit.Pressure
	E         unit.Pressure
}

// PlyScrews are the screws through each joint between plies, or between ledger and front ply, in one
// block, driven from the outer piece of the joint inward.
type PlyScrews struct {
	Count            int // crossing each joint
	Diameter, Length unit.Length
}

// Pad is the stiff foam in the block. Thickness 0 is no pad.
type Pad struct {
	Thickness unit.Length
	Strength  *unit.Pressure // compressive strength, 10 % strain or yield; nil = not stated
	After     int            // number of plies between it and the sheathing
	Foot      bool           // a solid spacer at its foot takes the compression
}

// Kind is the kind of a fastener.
type Kind int

// The kinds. Evaluated fasteners bring their own allowable loads.
const (
	Bolt Kind = iota
	Lag
	Screw
	Evaluated
)

// String returns the kind as printed.
func (k Kind) String() string {
	return word(int(k), "bolt", "lag screw", "wood screw", "evaluated fastener")
}

// Fasteners are one set through everything, or one from block to rim and one from ledger to block.
type Fasteners struct {
	Through, ToRim, ToBlock *Set
}

// Set is a pattern of fasteners, the same at every block.
type Set struct {
	Kind       Kind
	Diameter   unit.Length // nominal
	Length     unit.Length // under the head; needed for lags and screws, and for where a bolt's threads stand
	Rows       []unit.Length
	Columns    []unit.Length
	Thread     unit.Length // length of a bolt's thread; 0 = not stated
	Hole       unit.Length // 0 is the diameter plus 1/16 in
	Washer     Washer
	Yield      unit.Pressure // bending yield strength; 0 = by kind and diameter
	Lateral    unit.Force    // Evaluated: allowable per fastener at this stand-off
	Withdrawal unit.Force    // Evaluated: allowable per fastener
	Report     string        // Evaluated: what the values rest on
}

// Washer is the plate under head and nut; Size is a side or a diameter.
type Washer struct {
	Round           bool
	Size, Thickness unit.Length
}

// Count returns the number of fasteners of the set at one block.
func (s *Set) Count() int { return len(s.Rows) * len(s.Columns) }

// left and right are the outermost columns from the block centre.
func (s *Set) left() unit.Length  { return slices.Min(s.Columns) }
func (s *Set) right() unit.Length { return slices.Max(s.Columns) }
