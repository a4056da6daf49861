package design_test

import (
	"testing"

	"standclear/detail"
	"standclear/detail/check/design"
	"standclear/detail/check/strength"
	"standclear/detail/demo"
	"standclear/detail/spec"
)

func BenchmarkCheck(b *testing.B) {
	src, _ := demo.File("deck")
	s, _ := spec.Read("deck", src, nil)
	a, err := detail.Build(s)
	if err != nil {
		b.Fatal(err)
	}
	b.Run("strength", func(b *testing.B) {
		m := design.Model(a)
		for b.Loop() {
			strength.Run(m)
		}
	})
	b.Run("all", func(b *testing.B) {
		for b.Loop() {
			design.Check(a)
		}
	})
}
