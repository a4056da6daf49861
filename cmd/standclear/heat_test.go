package main

import (
	"bytes"
	"encoding/json"
	"io"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"standclear/detail/heat"
)

// The JSON of a case holds what the text says, in numbers.
func TestHeatJSON(t *testing.T) {
	var out, errs bytes.Buffer
	name := filepath.Join("..", "..", "testdata", "heat", "iso10211-case2.yaml")
	if code := run([]string{"heat", name, "--json"}, env{strings.NewReader(""), &out, &errs}); code != exitOK {
		t.Fatalf("exit %d: %s", code, &errs)
	}
	var r heatReport
	if err := json.Unmarshal(out.Bytes(), &r); err != nil {
		t.Fatal(err)
	}
	// ISO 10211:2017 annex C, case 2: 9.5 W/m within 0.1, point A 7.1 C within 0.1 K.
	if q := r.Environments[1].Flow; math.Abs(q.Value-9.5) > 0.1 || q.Error == nil || *q.Error > 0.095 || r.Unit != "W/m" || !r.Met {
		t.Errorf("flow %+v %s, met %v", q, r.Unit, r.Met)
	}
	if p := r.Probes[0]; p.Name != "A" || math.Abs(p.Temperature.Value-7.1) > 0.1 || math.Abs(p.Weights["room"]+p.Weights["outside"]-1) > 1e-9 {
		t.Errorf("%+v", p)
	}
}

// A value is written to two figures of its error.
func TestHeatFigures(t *testing.T) {
	for _, c := range []struct {
		v     heat.Value
		blind bool
		want  string
	}{
		{heat.Value{V: 9.4902, Err: 0.0318}, false, "9.490 ± 0.032"},
		{heat.Value{V: 1234.5, Err: 12}, false, "1234 ± 12"},
		{heat.Value{V: -0.0004, Err: 0.02}, false, "0.000 ± 0.020"},
		{heat.Value{V: -9.48, Err: 0.02}, false, "-9.480 ± 0.020"},
		{heat.Value{V: 17.094017, Err: 0}, false, "17.09402"},
		{heat.Value{V: 3.25, Err: math.Inf(1)}, false, "no end (two fixed surface temperatures meet)"},
		{heat.Value{V: 3.25, Err: math.Inf(1)}, true, "3.25, error unknown"},
	} {
		if got := figures(c.v, c.blind); got != c.want {
			t.Errorf("%+v: %q, want %q", c.v, got, c.want)
		}
	}
}

// What cannot be written is said, with its own exit code.
func TestHeatWriteFails(t *testing.T) {
	var errs bytes.Buffer
	name := filepath.Join("..", "..", "testdata", "heat", "iso10211-case1.yaml")
	for _, args := range [][]string{{"heat", name}, {"heat", name, "--json"}} {
		if code := run(args, env{strings.NewReader(""), shut{}, &errs}); code != exitWrite || !strings.Contains(errs.String(), "could not write") {
			t.Errorf("%v: exit %d: %s", args, code, &errs)
		}
	}
}

// shut is a pipe whose reader went away.
type shut struct{}

func (shut) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }
