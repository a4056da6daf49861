package same_test

import (
	"math"
	"testing"

	"standclear/detail/same"
)

type inner struct {
	Name   string
	at     float64
	Next   *inner
	Points []float64
}

type value struct {
	On     bool
	Many   int
	Parts  []inner
	Either [2]string
}

func make1() value {
	return value{true, 3, []inner{{"a", 1, &inner{Name: "b"}, []float64{1, 2}}}, [2]string{"x", "yz"}}
}

// Every change, however deep, must show; nothing else may.
func TestOf(t *testing.T) {
	first := same.Of(make1())
	if second := same.Of(make1()); first != second {
		t.Error("two values that are alike have different sums")
	}
	for name, change := range map[string]func(v *value){
		"a flag":                      func(v *value) { v.On = false },
		"a count":                     func(v *value) { v.Many++ },
		"a text":                      func(v *value) { v.Parts[0].Name = "c" },
		"where a text ends":           func(v *value) { v.Either = [2]string{"xy", "z"} },
		"a field nobody exports":      func(v *value) { v.Parts[0].at = math.Nextafter(1, 2) },
		"the sign of nothing":         func(v *value) { v.Parts[0].Next.at = math.Copysign(0, -1) },
		"behind a pointer":            func(v *value) { v.Parts[0].Next.Name = "" },
		"a pointer to nothing":        func(v *value) { v.Parts[0].Next = nil },
		"a pointer where none was":    func(v *value) { v.Parts[0].Next.Next = &inner{} },
		"an item more":                func(v *value) { v.Parts = append(v.Parts, inner{}) },
		"an item of a list of a list": func(v *value) { v.Parts[0].Points[1] = 3 },
		"items that change places":    func(v *value) { v.Parts[0].Points = []float64{2, 1} },
		"an empty list for none":      func(v *value) { v.Parts[0].Next.Points = []float64{} },
	} {
		v := make1()
		change(&v)
		if same.Of(v) == first {
			t.Errorf("%s: the sum does not tell", name)
		}
	}
	if same.Of(1, 2) == same.Of(2, 1) {
		t.Error("the order of values does not count")
	}
}

func TestOfWhatCannotBeTold(t *testing.T) {
	for name, v := range map[string]any{"a map": map[string]int{}, "a function": func() {}, "an interface": struct{ E error }{}} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s was told", name)
				}
			}()
			same.Of(v)
		}()
	}
}
