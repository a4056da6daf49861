package spec_test

import (
	"fmt"
	"os"
	"strings"

	"standclear/detail/spec"
	"standclear/detail/unit"
)

func ExampleRead() {
	src, err := os.ReadFile("testdata/deck.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	s, _ := spec.Read("deck.yaml", src, []string{"blocks.max_spacing=18in"})
	fmt.Println(s.Ledger.Length.Text(unit.IP), s.Blocks.MaxSpacing.Text(unit.IP))

	_, problems := spec.Read("deck.yaml", src, []string{"floor.rim.thickness=89in"})
	fmt.Println(problems.Error())
	// Output:
	// 14'-8" 1'-6"
	// --set: floor.rim.thickness: 89in is outside 0.25..8 in; 89 mm would be 3 1/2 in
}

func ExampleKeys() {
	for _, k := range spec.Keys(unit.IP) {
		if strings.HasPrefix(k.Path, "ledger.top") {
			fmt.Println(k.Path, k.Default, k.About)
		}
	}
	// Output: ledger.top_slope 1:8 bevel of the top edge, falling outward
}

func ExampleStarter() {
	_, problems := spec.Read("new.yaml", []byte(spec.Starter(unit.SI)), nil)
	fmt.Println(problems[10].Error())
	// Output: new.yaml:67:16: floor.rim.thickness: not surveyed yet; a length of 6.35..203.2 mm; write for instance 45mm
}
