package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"standclear/detail/check/design"
	"standclear/detail/demo"
	"standclear/detail/sheet"
	"standclear/detail/sheet/judge"
)

// How well the sheets of the demos read, in percent, rule by rule, is kept: a change for the worse is seen.
func TestSoftRules(t *testing.T) {
	var b bytes.Buffer
	fmt.Fprintln(&b, "# How well the sheets of the demos read, percent: sheet, mean, then the soft rules of detail/sheet/judge.")
	for _, name := range demo.Names() {
		a := demoAssembly(name)
		r, res := design.Check(a)
		fmt.Fprintf(&b, "\n%s\n", name)
		for _, s := range sheet.Compose(a, &r, res, sheet.Options{Version: version}) {
			score, err := judge.Soft(s)
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprintln(&b, score)
		}
	}
	drawn := filepath.Join(t.TempDir(), "soft.txt")
	if err := os.WriteFile(drawn, b.Bytes(), 0o666); err != nil {
		t.Fatal(err)
	}
	same(t, filepath.Join("..", "..", "testdata", "golden", "soft.txt"), drawn)
}
