package sweep_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/design"
	"standclear/detail/check/thermal"
	"standclear/detail/demo"
	"standclear/detail/spec"
	"standclear/detail/sweep"
	"standclear/detail/trial"
	"standclear/detail/unit"
	"standclear/render/svg"
)

func base(t *testing.T, name string) trial.Base {
	t.Helper()
	src, ok := demo.File(name)
	if !ok {
		t.Fatal(name)
	}
	return trial.Base{Name: name, Src: src}
}

func axis(t *testing.T, text string) sweep.Axis {
	t.Helper()
	a, err := sweep.Parse(text, unit.IP)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text   string
		values []string
		scaled bool
	}{
		{"blocks.max_spacing=24in..36in/4in", []string{"24in", "28in", "32in", "36in"}, true},
		{"blocks.max_spacing=24in..35in/4in", []string{"24in", "28in", "32in"}, true},
		{"blocks.max_spacing=2ft..3ft/4in", []string{"24in", "28in", "32in", "36in"}, true},
		{"blocks.max_spacing=0.6m..0.7m/50mm", []string{"600mm", "650mm", "700mm"}, true},
		{"blocks.max_spacing=1/2in..1in/1/4in", []string{"0.5in", "0.75in", "1in"}, true},
		{"blocks.max_spacing=36in..24in/6in", []string{"36in", "30in", "24in"}, true},
		{"blocks.max_spacing=16in, 20in..24in/2in ,40in", []string{"16in", "20in", "22in", "24in", "40in"}, true},
		{"fasteners.through.diameter=M12,M16", []string{"M12", "M16"}, true},
		{"blocks.ply_screws.count=4..8/2", []string{"4", "6", "8"}, true},
		{"blocks.plies=[1 1/2in, 1 1/2in],[3in]", []string{"[1 1/2in, 1 1/2in]", "[3in]"}, false},
		{"blocks.species=hem-fir,southern pine", []string{"hem-fir", "southern pine"}, false},
		{"wall.layers.4.thickness=1in,2in", []string{"1in", "2in"}, true},
	} {
		a := axis(t, c.text)
		var got []string
		for _, p := range a.Points {
			got = append(got, p.Text)
		}
		if !reflect.DeepEqual(got, c.values) || a.Scaled != c.scaled {
			t.Errorf("%s: %q scaled %v", c.text, got, a.Scaled)
		}
	}
	a := axis(t, "fasteners.through.diameter=1/2in with fasteners.through.hole=9/16in and fasteners.through.columns=1,5/8in")
	if got := a.Points[0].Sets; len(got) != 3 || got[1] != "fasteners.through.hole=9/16in" || got[2] != "fasteners.through.columns=1" || len(a.Points[1].Sets) != 1 {
		t.Errorf("%q, %q", got, a.Points[1].Sets)
	}
}

// A row says what the same settings come to by themselves.
func TestRowsAsChecked(t *testing.T) {
	for _, name := range demo.Names() {
		b := base(t, name)
		axes := []sweep.Axis{axis(t, "blocks.max_spacing=20in..52in/16in"), axis(t, "blocks.width=7in,200mm")}
		rows, err := sweep.Run(context.Background(), b, axes, sweep.Options{})
		if err != nil || len(rows) != 6 {
			t.Fatal(err, len(rows))
		}
		for _, r := range rows {
			s, problems := spec.Read(b.Name, b.Src, r.Sets)
			if s == nil {
				t.Fatal(problems)
			}
			a, err := detail.Build(s)
			if err != nil {
				t.Fatal(err)
			}
			report, _ := design.Check(a)
			if r.Blocks != len(a.Blocks) || r.Fails != report.Count(check.Fails) || r.Engineer != report.Count(check.Engineer) || r.NotChecked != report.Count(check.NotChecked) || r.Verdict != report.Worst() {
				t.Errorf("%s %v: %+v", name, r.Sets, r)
			}
			if g := report.Find(r.Governs.ID); g == nil || g.Ratio != r.Governs.Ratio || r.Fails > 0 != (g.Verdict == check.Fails) {
				t.Errorf("%s %v: governed by %s", name, r.Sets, r.Governs.ID)
			}
		}
	}
}

// The same rows in the same order with one thread and with many; emitted in that order.
func TestThreads(t *testing.T) {
	axes := []sweep.Axis{axis(t, "blocks.max_spacing=16in..60in/4in"), axis(t, "blocks.width=7in,9in,99ft")}
	var want []sweep.Row
	for _, n := range []int{1, 2, 7} {
		i := 0
		rows, err := sweep.Run(context.Background(), base(t, "deck"), axes, sweep.Options{Threads: n, Emit: func(r *sweep.Row) error {
			if r.At[0]*3+r.At[1] != i {
				t.Errorf("row %v is the %d. one", r.At, i)
			}
			i++
			return nil
		}})
		if err != nil || i != 36 || !strings.Contains(rows[2].Problem, "99ft is outside") {
			t.Fatal(err, i, rows[2].Problem)
		}
		if want == nil {
			want = rows
		}
		if !reflect.DeepEqual(rows, want) {
			t.Errorf("other rows with %d threads", n)
		}
	}
}

// Broken off, the rows there are come back in order.
func TestBrokenOff(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	n := 0
	rows, err := sweep.Run(ctx, base(t, "balcony"), []sweep.Axis{axis(t, "blocks.max_spacing=20in..60in/0.1in")}, sweep.Options{Emit: func(*sweep.Row) error {
		if n++; n == 5 {
			cancel()
		}
		return nil
	}})
	if !errors.Is(err, context.Canceled) || len(rows) < 5 || len(rows) > 50 {
		t.Fatalf("%v, %d rows", err, len(rows))
	}
	for i := 1; i < len(rows); i++ {
		if rows[i].At[0] <= rows[i-1].At[0] {
			t.Errorf("row %d after %d", rows[i].At[0], rows[i-1].At[0])
		}
	}
	if s := sweep.Summary(rows, 401); !strings.HasPrefix(s, "BROKEN OFF") {
		t.Error(s)
	}
	stop := errors.New("full")
	if _, err := sweep.Run(context.Background(), base(t, "balcony"), []sweep.Axis{axis(t, "blocks.width=7in,8in")}, sweep.Options{Emit: func(*sweep.Row) error { return stop }}); !errors.Is(err, stop) {
		t.Errorf("%v", err)
	}
}

// Between solved designs the heat of a block runs straight. With chi = s^2 in metres over 0.4 to 0.8 m, solved at
// 0.4, 0.5, 0.6, 0.7 and 0.8: the line from 0.4 to 0.6 gives 0.26 at 0.5, 0.01 over 0.25, and as much at 0.7;
// at 0.45 the line from 0.4 to 0.5 gives (0.16 + 0.25)/2 = 0.205.
func TestHeatBetween(t *testing.T) {
	b := base(t, "deck")
	axes := []sweep.Axis{axis(t, "blocks.max_spacing=400mm..800mm/50mm")}
	rows, err := sweep.Run(context.Background(), b, axes, sweep.Options{})
	if err != nil {
		t.Fatal(err)
	}
	solved := 0
	solve := func(_ context.Context, a *detail.Assembly) (*thermal.Result, error) {
		solved++
		s := a.Spec.Blocks.MaxSpacing.MM() / 1e3
		n := float64(len(a.Blocks))
		return &thermal.Result{Ways: []thermal.Way{{Drawn: true, Bay: thermal.Value{V: s * s, Err: 0.002}, Run: thermal.Value{V: n * s * s, Err: n * 0.002}}}}, nil
	}
	if err := sweep.Warm(context.Background(), b, axes, rows, false, solve, nil); err != nil || solved != 5 {
		t.Fatal(err, solved)
	}
	for i, want := range []float64{0.16, 0.205, 0.25} {
		r := rows[i]
		err := 0.002
		if i == 1 {
			err += 0.01
		}
		if n := float64(r.Blocks); math.Abs(r.Heat.Run-n*want) > 1e-9 || math.Abs(r.Heat.Err-n*err) > 1e-9 || r.Heat.Solved != (i != 1) {
			t.Errorf("%v: %+v, want %g within %g for each of %d blocks", r.Values, *r.Heat, want, err, r.Blocks)
		}
	}
	solved = 0
	if err := sweep.Warm(context.Background(), b, axes, rows, true, solve, nil); err != nil || solved != 9 || !rows[1].Heat.Solved {
		t.Error(err, solved)
	}
	fail := func(context.Context, *detail.Assembly) (*thermal.Result, error) { return nil, errors.New("too large") }
	for i := range rows {
		rows[i].Heat = nil
	}
	if err := sweep.Warm(context.Background(), b, axes, rows, false, fail, nil); err != nil || rows[0].Cold != "too large" || rows[1].Cold == "" || rows[1].Heat != nil {
		t.Errorf("%v %+v", err, rows[1])
	}
	var table, sheet bytes.Buffer
	if err := errors.Join(sweep.WriteTable(&table, axes, rows, true, 0), sweep.WriteCSV(&sheet, axes, rows, true)); err != nil {
		t.Fatal(err)
	}
	want := "NOT CHECKED, heat of " + rows[0].Values[0] + "; "
	if !strings.Contains(table.String(), want) || !strings.Contains(table.String(), ": too large\n") || !strings.Contains(sheet.String(), ",,,,too large\n") {
		t.Errorf("%q is wanted in\n%s\n%s", want, table.String(), sheet.String())
	}
}

// What is printed for programs can be read, streamed or broken off; a plot is drawn of one or two parameters.
func TestWritten(t *testing.T) {
	axes := []sweep.Axis{axis(t, "blocks.max_spacing=20in..44in/8in"), axis(t, "fasteners.through.diameter=5/8in,9in")}
	rows, err := sweep.Run(context.Background(), base(t, "deck"), axes, sweep.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	j, err := sweep.NewJSON(&b, `THE "DECK"`, axes)
	if err != nil {
		t.Fatal(err)
	}
	for i := range rows {
		if err := j.Row(&rows[i]); err != nil {
			t.Fatal(err)
		}
	}
	if err := j.End(false); err != nil {
		t.Fatal(err)
	}
	var read struct {
		Project  string
		Vary     []string
		Designs  []struct{ Values map[string]string }
		Complete bool
	}
	if err := json.Unmarshal(b.Bytes(), &read); err != nil || read.Project != `THE "DECK"` || len(read.Designs) != 8 || read.Complete || read.Designs[2].Values["blocks.max_spacing"] != "28in" {
		t.Errorf("%v %+v", err, read)
	}
	for n := 1; n <= 2; n++ {
		s, err := sweep.Plot("DECK", axes[:n], rows)
		if err != nil {
			t.Fatal(err)
		}
		b.Reset()
		if err := svg.Write(&b, s, svg.Options{}); err != nil || !strings.Contains(b.String(), rows[2].Governs.Name) || !strings.Contains(b.String(), "no check fails") {
			t.Errorf("%d parameters: %v", n, err)
		}
	}
	if _, err := sweep.Plot("DECK", append(axes, axes[0]), rows); err == nil {
		t.Error("three parameters were drawn")
	}
}
