package spec_test

import (
	"flag"
	"os"
	"testing"

	"standclear/detail/spec"
)

var update = flag.Bool("update", false, "write the golden files anew")

// All mistakes of a file are shown at once, by position. The golden file is to be read aloud.
func TestMistakes(t *testing.T) {
	s, problems := spec.Read("mistakes.yaml", file(t, "mistakes.yaml"), nil)
	if s != nil {
		t.Fatal("the mistakes read")
	}
	got := problems.Error() + "\n"
	const golden = "testdata/mistakes.txt"
	if *update {
		if os.Getenv("CI") != "" {
			t.Fatal("golden files are not written in CI")
		}
		if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if want := string(file(t, "mistakes.txt")); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
