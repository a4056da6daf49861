package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"text/tabwriter"
	"time"

	"github.com/spf13/pflag"

	"standclear/detail/heat"
	"standclear/detail/heat/casefile"
)

// solveHeat finds the heat flow through the assembly of a case file.
func solveHeat(e env, args []string) int {
	f := pflag.NewFlagSet("heat", pflag.ContinueOnError)
	var how printing
	how.flags(f)
	percent := f.String("error", "1%", "the most, as a `SHARE`, the grid may leave in a flow, or in a temperature of the span of all, 0.01% to 20%")
	most := f.Int("cells", 12e6, "the most cells of the finest grid, a `NUMBER`")
	holds(f, "error")
	holds(f, "cells")
	if code, ok := parse(e, f, "standclear heat CASE.yaml\nfinds heat flows, coupling coefficients and temperatures of an assembly of boxes, each with its error.\nExit code 1 says that an error asked for could not be met.", "  standclear heat corner.yaml --error 0.5%\n  standclear heat - --json <corner.yaml\n", args); !ok {
		return code
	}
	e, _, ok := how.read(e, "heat")
	if !ok {
		return exitInput
	}
	c, opt, ok := readHeat(e, f.Args(), *percent, *most)
	if !ok {
		return exitInput
	}
	ctx, done := e.interruptible()
	defer done()
	start := time.Now()
	tell := progressOn(e.err)
	if tell != nil {
		opt.Progress = func(p heat.Progress) {
			tell(p.Grid+1, p.Grid+1, fmt.Sprintf("%d cells, round %d, %.0f s", p.Cells, p.Round, time.Since(start).Seconds()))
		}
	}
	defer thriftily()()
	r, err := heat.Solve(ctx, c.Case, opt)
	clearProgress(tell, e.err)
	var faults heat.Faults
	switch {
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(e.err, "standclear heat: broken off")
		return exitWrite
	case errors.As(err, &faults):
		fmt.Fprintln(e.err, c.Problems(faults).Error())
		return exitInput
	case err != nil:
		fmt.Fprintf(e.err, "standclear heat: %v\n", err)
		return exitFails
	}
	write := writeHeat
	if how.json {
		write = writeHeatJSON
	}
	if code := written(e, "heat", func(w io.Writer) error { return write(w, r, opt.Error) }); code != exitOK {
		return code
	}
	if !r.Met {
		return exitFails
	}
	return exitOK
}

// readHeat reads the case file and the flags, and prints what is wrong with them.
func readHeat(e env, args []string, percent string, most int) (*casefile.File, heat.Options, bool) {
	opt := heat.Options{MaxCells: most}
	good := true
	bad := func(format string, a ...any) {
		fmt.Fprintf(e.err, "standclear heat: "+format+"\n", a...)
		good = false
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(percent, "%")), 64)
	if opt.Error = v / 100; err != nil || !strings.HasSuffix(percent, "%") || !(v >= 0.01 && v <= 20) {
		bad("--error: given %s; 0.01%% to 20%% is allowed", percent)
	}
	if most < 1000 || most > 200e6 {
		bad("--cells: given %d; 1000 to 200000000 is allowed", most)
	}
	if len(args) != 1 {
		bad("given %d case files; one is needed (standclear heat --help)", len(args))
		return nil, opt, false
	}
	name, src, err := e.file(args[0])
	if err != nil {
		bad("cannot read the case: %v", err)
		return nil, opt, false
	}
	c, problems := casefile.Read(name, src)
	if len(problems) > 0 {
		fmt.Fprintln(e.err, problems.Error())
		good = false
	}
	return c, opt, good
}

// figures writes a value no finer than its error: 9.491 ± 0.003; blind is for too few grids.
func figures(v heat.Value, blind bool) string {
	if blind {
		return fmt.Sprintf("%.4g, error unknown", v.V)
	}
	if math.IsInf(v.Err, 1) {
		return "no end (two fixed surface temperatures meet)"
	}
	if v.Err < max(5e-7, 2e-7*math.Abs(v.V)) { // the rounding of the solver
		return strconv.FormatFloat(v.V+0, 'g', 7, 64)
	}
	return fmt.Sprintf("%s ± %s", decimals(v.V, v.Err), decimals(v.Err, v.Err))
}

// decimals writes v with two figures of its error, and at most six after the point.
func decimals(v, err float64) string {
	n := 6
	if err > 0 {
		n = min(max(1-int(math.Floor(math.Log10(err))), 0), 6)
	}
	return strings.Replace(strconv.FormatFloat(v+0, 'f', n, 64), "-0."+strings.Repeat("0", n), "0."+strings.Repeat("0", n), 1)
}

func writeHeat(w io.Writer, r *heat.Result, asked float64) error {
	flow, per := "W", "W/K"
	if r.Dim == 2 {
		flow, per = "W/m", "W/(m K)"
	}
	say := func(v heat.Value) string { return figures(v, len(r.Grids) < 3) }
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintf(t, "%s\n\nenvironment\theat into the assembly, %s\tcoldest surface, C\twarmest surface, C\n", r.Name, flow)
	for _, e := range r.Envs {
		fmt.Fprintf(t, "%s, %.4g C\t%s\t%s\t%s\n", e.Name, e.T, say(e.Flow), say(e.Low.T), say(e.High.T))
	}
	fmt.Fprintf(t, "\nbetween\tcoupling, %s\n", per)
	for i, a := range r.Envs {
		for j, b := range r.Envs[:i] {
			fmt.Fprintf(t, "%s, %s\t%s\n", b.Name, a.Name, say(r.Coupling[i][j]))
		}
	}
	if len(r.Probes) > 0 {
		fmt.Fprintf(t, "\nprobe\tat, mm\ttemperature, C\n")
	}
	for _, p := range r.Probes {
		at := make([]string, r.Dim)
		for a := range at {
			at[a] = fmt.Sprintf("%.6g", p.At[a])
		}
		fmt.Fprintf(t, "%s\t%s\t%s\n", p.Name, strings.Join(at, ", "), say(p.T))
	}
	fmt.Fprintf(t, "\ngrid, cells\tcells of material\trounds\theat missing\n")
	for _, g := range r.Grids {
		fmt.Fprintf(t, "%d x %d x %d\t%d\t%d\t%.0e\n", g.Shape.X, g.Shape.Y, g.Shape.Z, g.Cells, g.Rounds, g.Balance)
	}
	verdict := "is met"
	if !r.Met {
		verdict = "is NOT met: allow more cells, or cut the case smaller"
	}
	fmt.Fprintf(t, "\nThe error of %.4g %% asked for %s.\n", asked*100, verdict)
	return t.Flush()
}

// heatValue is a value in JSON; the error is null when there is no end to it.
type heatValue struct {
	Value float64  `json:"value"`
	Error *float64 `json:"error"`
}

func jsonValue(v heat.Value) heatValue {
	if math.IsInf(v.Err, 1) {
		return heatValue{v.V, nil}
	}
	return heatValue{v.V, &v.Err}
}

type heatSurface struct {
	Temperature heatValue  `json:"temperature_c"`
	At          [3]float64 `json:"at_mm"`
}

type heatEnv struct {
	Name        string      `json:"name"`
	Temperature float64     `json:"temperature_c"`
	Flow        heatValue   `json:"flow"`
	Coldest     heatSurface `json:"coldest_surface"`
	Warmest     heatSurface `json:"warmest_surface"`
}

type heatProbe struct {
	Name        string             `json:"name"`
	At          [3]float64         `json:"at_mm"`
	Temperature heatValue          `json:"temperature_c"`
	Weights     map[string]float64 `json:"weights"`
}

type heatGrid struct {
	Cells   [3]int  `json:"cells"`
	Solid   int     `json:"cells_of_material"`
	Rounds  int     `json:"rounds"`
	Missing float64 `json:"heat_missing"`
}

type heatReport struct {
	Name         string        `json:"name"`
	Program      string        `json:"program"`
	Unit         string        `json:"flow_unit"`
	Met          bool          `json:"error_met"`
	Asked        float64       `json:"error_asked"`
	Environments []heatEnv     `json:"environments"`
	Coupling     [][]heatValue `json:"coupling_per_k"`
	Probes       []heatProbe   `json:"probes"`
	Grids        []heatGrid    `json:"grids"`
}

func writeHeatJSON(w io.Writer, r *heat.Result, asked float64) error {
	out := heatReport{Name: r.Name, Program: "standclear " + version, Unit: map[int]string{2: "W/m", 3: "W"}[r.Dim], Met: r.Met, Asked: asked, Probes: []heatProbe{}}
	for i, e := range r.Envs {
		out.Environments = append(out.Environments, heatEnv{
			e.Name, e.T, jsonValue(e.Flow),
			heatSurface{jsonValue(e.Low.T), e.Low.At}, heatSurface{jsonValue(e.High.T), e.High.At},
		})
		var row []heatValue
		for j := range r.Envs {
			row = append(row, jsonValue(r.Coupling[i][j]))
		}
		out.Coupling = append(out.Coupling, row)
	}
	for _, p := range r.Probes {
		weights := map[string]float64{}
		for i, v := range p.Weights {
			weights[r.Envs[i].Name] = v
		}
		out.Probes = append(out.Probes, heatProbe{p.Name, p.At, jsonValue(p.T), weights})
	}
	for _, g := range r.Grids {
		out.Grids = append(out.Grids, heatGrid{[3]int{g.Shape.X, g.Shape.Y, g.Shape.Z}, g.Cells, g.Rounds, g.Balance})
	}
	j := json.NewEncoder(w)
	j.SetIndent("", "  ")
	return j.Encode(out)
}
