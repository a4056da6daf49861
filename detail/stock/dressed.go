package stock

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"standclear/detail/unit"
)

// Size is a piece of sawn lumber: its nominal name and what it really measures.
type Size struct {
	Name             string      // "2x10"
	Thickness, Depth unit.Length // dressed
}

// Sizes returns 2x4 to 2x12, dressed dry. NDS 2018 Supplement, Table 1A; read.
func Sizes() []Size { return slices.Clone(sizes()) }

// sizes is made once and never changed.
var sizes = sync.OnceValue(func() []Size {
	return []Size{
		dressed(4, 3.5), dressed(6, 5.5), dressed(8, 7.25), dressed(10, 9.25), dressed(12, 11.25),
	}
})

func dressed(nominal int, depth unit.Length) Size {
	return Size{Name: fmt.Sprintf("2x%d", nominal), Thickness: 1.5 * unit.Inch, Depth: depth * unit.Inch}
}

// SizeOf finds a size by its nominal name: 2x10, 2 x 10, 2X10.
func SizeOf(name string) (Size, bool) {
	for _, s := range sizes() {
		if same(strings.ReplaceAll(name, "×", "x"), s.Name) {
			return s, true
		}
	}
	return Size{}, false
}

// NominalOf finds the size that measures thickness by depth to within 1/64 in.
func NominalOf(thickness, depth unit.Length) (Size, bool) {
	for _, s := range sizes() {
		if near(s.Thickness, thickness) && near(s.Depth, depth) {
			return s, true
		}
	}
	return Size{}, false
}

// TakenForActual finds the size whose nominal figures were written down as real ones: 2 in by 10 in.
func TakenForActual(thickness, depth unit.Length) (Size, bool) {
	for _, s := range sizes() {
		_, figure, _ := strings.Cut(s.Name, "x")
		d, _ := strconv.Atoi(figure)
		if near(thickness, 2*unit.Inch) && near(depth, unit.Length(d)*unit.Inch) {
			return s, true
		}
	}
	return Size{}, false
}

func near(a, b unit.Length) bool {
	d := (a - b).Inches()
	return -1.0/64 < d && d < 1.0/64
}
