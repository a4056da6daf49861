package geom_test

import (
	"fmt"

	"standclear/geom"
)

func ExampleSubtract() {
	plate := geom.Subtract(geom.Rect(0, 0, 100, 60), geom.Circle(geom.Vec{X: 50, Y: 30}, 8))
	fmt.Printf("%.1f mm2 in %d rings\n", plate.Area(), len(plate))
	// Output: 5798.9 mm2 in 2 rings
}

func ExampleSolid_Cut() {
	// A board with a bolt hole, cut through the middle of the hole and looked at from the left.
	board := geom.BoxSolid(geom.Box3{Max: geom.Vec3{X: 200, Y: 38, Z: 235}}).
		Bore(geom.Cylinder(geom.Vec3{X: 100, Y: -1, Z: 60}, geom.Y, 8, 40))
	for _, part := range board.Cut(geom.AxisView(geom.X, -1, 100)).Parts() {
		b := part.Bounds()
		fmt.Printf("%g to %g up, %g wide\n", b.Min.Y, b.Max.Y, b.W())
	}
	// Output:
	// 0 to 52 up, 38 wide
	// 68 to 235 up, 38 wide
}

func ExampleProject() {
	ledger := geom.BoxSolid(geom.Box3{Max: geom.Vec3{X: 400, Y: 38, Z: 235}})
	bolt := geom.Cylinder(geom.Vec3{X: 100, Y: -50, Z: 60}, geom.Y, 6, 100)
	for _, e := range geom.Project(geom.AxisView(geom.Z, 1, 0), []geom.Solid{ledger, bolt}, geom.ProjectOptions{}) {
		if e.Solid == 1 {
			a, b := e.Path.V[0], e.Path.V[1]
			fmt.Printf("%g,%g to %g,%g hidden %v\n", a.X, a.Y, b.X, b.Y, e.Hidden)
		}
	}
	// Output:
	// 94,-50 to 106,-50 hidden false
	// 94,-50 to 94,-38 hidden false
	// 106,-50 to 106,-38 hidden false
	// 94,-38 to 94,0 hidden true
	// 106,-38 to 106,0 hidden true
	// 94,0 to 94,50 hidden false
	// 106,0 to 106,50 hidden false
	// 94,50 to 106,50 hidden false
}
