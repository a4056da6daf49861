// Package heat finds the steady flow of heat through an assembly of boxes between rooms and the outside,
// and the temperatures in it.
//
// Lengths are millimetres, conductivities W/(m K), temperatures degrees Celsius. Flows are W in three
// dimensions, and W per metre of depth in two. A flow is positive from the environment into the
// assembly. The method and its tests are those of ISO 10211:2017; a value is given with the error
// that the grid leaves in it.
//
//	wall := heat.Case{
//		Dim:       2,
//		Materials: []heat.Material{heat.Isotropic("wood", 0.12)},
//		Envs:      []heat.Env{{Name: "room", T: 20, Rs: 0.13}, {Name: "outside", T: 0, Rs: 0.04}},
//		Boxes: []heat.Box{
//			{Lo: heat.Point{0, 0}, Hi: heat.Point{1000, 10}, Env: "room"},
//			{Lo: heat.Point{0, 10}, Hi: heat.Point{1000, 130}, Material: "wood"},
//			{Lo: heat.Point{0, 130}, Hi: heat.Point{1000, 140}, Env: "outside"},
//		},
//	}
//	r, err := heat.Solve(ctx, wall, heat.Options{}) // r.Envs[0].Flow.V is 20/(0.13+1+0.04) = 17.09 W/m
package heat

import "math"

// Point is x, y, z in millimetres; z is not read in two dimensions.
type Point [3]float64

// Case is one assembly with its surroundings.
//
// The domain is the box around all boxes; what bounds it lets no heat pass, so a cut plane or a plane of
// symmetry needs nothing, and a surface needs a box of its environment beyond it.
type Case struct {
	Name      string
	Dim       int // 2 or 3
	Materials []Material
	Envs      []Env
	Boxes     []Box // a later box paints over an earlier one, which still cuts the grid: see Added
	Probes    []Probe
	Cuts      []Cut // planes whose temperatures are wanted
}

// Material conducts heat, differently along x, y and z where it has a grain.
type Material struct {
	Name string
	K    [3]float64 // W/(m K), each more than 0
}

// Isotropic returns a material that conducts alike in every direction; k in W/(m K).
func Isotropic(name string, k float64) Material { return Material{name, [3]float64{k, k, k}} }

// Env is air of one temperature: a room, the outside.
type Env struct {
	Name string
	T    float64 // degrees C
	Rs   float64 // surface resistance, m2 K/W, of radiation and convection; 0 holds the surface at T
}

// FilmRs returns the surface resistance, m2 K/W, of a surface coefficient h, W/(m2 K).
func FilmRs(h float64) float64 { return 1 / h }

// Box is a block of the domain, filled with one of a material, an environment, or nothing.
type Box struct {
	Lo, Hi   Point
	Material string  // name of a material
	Env      string  // name of an environment
	Void     bool    // lets no heat in: a cut-out that is not part of the assembly
	Rs       float64 // of an environment's box: surface resistance where it touches, m2 K/W; 0: as the environment
}

// Probe is a point of the assembly, inside or on its surface, whose temperature is wanted.
type Probe struct {
	Name string
	At   Point
}

// Cut is a plane square to Axis; the cells it passes, or that end on it toward higher coordinates, are read.
type Cut struct {
	Axis Axis
	At   float64 // mm
}

// Axis is a direction: 0 x, 1 y, 2 z.
type Axis int

// The three directions.
const (
	X Axis = iota
	Y
	Z
)

// String returns the name of the axis.
func (a Axis) String() string { return [...]string{"x", "y", "z"}[a] }

// RodBox returns the square bar that stands for a round one, a bolt or a screw, of the same section:
// the bar conducts the same heat along itself. The rod runs along axis through the point at, from one
// coordinate to the other; d is its diameter in millimetres.
func RodBox(axis Axis, at Point, from, to, d float64, material string) Box {
	half := d * math.Sqrt(math.Pi) / 4
	b := Box{Material: material}
	for a := range at {
		b.Lo[a], b.Hi[a] = at[a]-half, at[a]+half
	}
	b.Lo[axis], b.Hi[axis] = from, to
	return b
}
