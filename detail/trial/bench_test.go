package trial_test

import (
	"fmt"
	"testing"

	"standclear/detail"
	"standclear/detail/check/design"
	"standclear/detail/demo"
	"standclear/detail/spec"
	"standclear/detail/trial"
)

// One design of a sweep over spacings, of which most give blocks that another gave, and its three parts alone, new.
func BenchmarkTry(b *testing.B) {
	for _, name := range demo.Names() {
		src, _ := demo.File(name)
		b.Run(name, func(b *testing.B) {
			base := trial.Base{Name: name, Src: src}.Parsed()
			for i := 0; b.Loop(); i++ {
				if _, err := base.Try(fmt.Sprintf("blocks.max_spacing=%din", 20+i%40)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	src, _ := demo.File("deck")
	s, _ := spec.Read("deck", src, nil)
	a, err := detail.Build(s)
	if err != nil {
		b.Fatal(err)
	}
	b.Run("read", func(b *testing.B) {
		for b.Loop() {
			spec.Read("deck", src, nil)
		}
	})
	base := trial.Base{Name: "deck", Src: src}.Parsed()
	b.Run("reread", func(b *testing.B) {
		for b.Loop() {
			base.Read("blocks.max_spacing=30in")
		}
	})
	b.Run("build", func(b *testing.B) {
		for b.Loop() {
			detail.Build(s)
		}
	})
	b.Run("check", func(b *testing.B) {
		for b.Loop() {
			design.Check(a)
		}
	})
}
