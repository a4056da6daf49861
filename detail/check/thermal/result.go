// Package thermal finds what an attachment costs in heat: it builds the boxes of one bay of wall from the
// assembly that is drawn, solves the flow of heat through it with and without the attachment and with the
// usual alternatives, and reads off the temperatures that decide whether the wall stays dry.
//
//	r, err := thermal.Solve(ctx, assembly, thermal.Options{})
//	chi := r.Drawn().Bay // W/K that one block with its bolts, ledger and joists adds
//
// All is SI. A temperature is given as its factor f = (T - Te)/(Ti - Te): one solution serves every
// climate (ISO 10211:2017).
package thermal

import (
	"fmt"

	"standclear/detail/heat"
)

// Value is a figure with the error the grid leaves in it; Err is negative where it could not be told.
type Value struct{ V, Err float64 }

// Least returns the value less its error.
func (v Value) Least() float64 { return v.V - max(v.Err, 0) }

// Times returns the value and its error multiplied by a factor.
func (v Value) Times(k float64) Value { return Value{v.V * k, v.Err * k} }

// Spot is a named place with its temperature factor.
type Spot struct {
	Key   string // stable, lower case, words joined by underscores
	Name  string
	Where string     // part marks
	At    heat.Point // mm, in the frame of the job
	F     Value
	Room  bool // a surface of the room, solved with the surface resistance of the mould criterion
	Bolt  bool // the inner end of a bolt
}

// Way is one way to hang the deck on the wall, or not to.
type Way struct {
	Key    string  // stable
	Name   string  // as printed on a sheet
	Note   string  // what was taken for it
	Drawn  bool    // it is the attachment of the project
	Blocks bool    // extra heat comes at each block; else along the whole ledger
	Pad    float64 // mm of foam in the block
	Bay    Value   // W/K that the attachment adds to one bay
	Run    Value   // W/K that it adds along the whole ledger
	Low    Value   // temperature factor of the coldest spot that room air touches
	Spots  []Spot  // inside the wall
}

// Field is the temperature factor over a vertical section across the wall.
type Field struct {
	X    float64     // of the section, mm
	Y, Z []float64   // where the cells begin, mm; one more for the end
	F    [][]float64 // of each cell, F[z][y]; -1 where there is air
}

// Result is what heat does at the attachment.
type Result struct {
	Asked   float64    // error asked for in each flow
	Error   float64    // the worst that was left
	Block   string     // mark of the block in the bay
	Bay     [2]float64 // x of its ends, mm
	Length  float64    // of the ledger, mm
	Blocks  int        // along the whole ledger
	Wall    Value      // U of the clear wall, W/(m2 K)
	Low     Value      // temperature factor of the coldest inner surface of the wall without attachment
	Bolts   Value      // W/K of the fasteners of one block, part of its Bay
	Ways    []Way      // the drawn one among them
	Spots   []Spot     // of the drawn attachment
	AtBlock Field      // through the middle of the first column of bolts
	Between Field      // at the end of the bay
	Cells   int        // of the finest grid
	Balance float64    // heat missing over heat passing, the worst
	Assumed []string   // what the model takes for granted
}

// Drawn returns the attachment of the project.
func (r *Result) Drawn() *Way {
	for i := range r.Ways {
		if r.Ways[i].Drawn {
			return &r.Ways[i]
		}
	}
	return nil
}

// Way returns the way of that key, or nil.
func (r *Result) Way(key string) *Way {
	for i := range r.Ways {
		if r.Ways[i].Key == key {
			return &r.Ways[i]
		}
	}
	return nil
}

// PerMetre returns the extra heat of a way over the length of the ledger, W/(m K).
func (r *Result) PerMetre(w *Way) Value { return w.Run.Times(1e3 / r.Length) }

// Saved returns the part of the extra heat of a tight ledger that a way does without; 0.8 is four fifths.
func (r *Result) Saved(w *Way) float64 {
	tight := r.Way("tight")
	if tight == nil || tight.Run.V <= 0 {
		return 0
	}
	return 1 - w.Run.V/tight.Run.V
}

// Wall area that the effective resistance is given for: a storey of this height along the ledger, mm.
const storey = 2440

// Area returns the area of wall the effective U is given for, m2: the ledger's length by a storey of 2.44 m
// (8 ft).
func (r *Result) Area() float64 { return r.Length * storey / 1e6 }

// Effective returns the U of that wall with a way on it, W/(m2 K).
func (r *Result) Effective(w *Way) Value {
	extra := w.Run.Times(1 / r.Area())
	return Value{r.Wall.V + extra.V, r.Wall.Err + extra.Err}
}

// Season returns the heat a way costs in a heating season of so many degree-days (K d), kWh.
func (w *Way) Season(degreeDays float64) Value { return w.Run.Times(24 * degreeDays / 1e3) }

func (v Value) String() string { return fmt.Sprintf("%.4g ± %.2g", v.V, v.Err) }
