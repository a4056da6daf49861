package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"github.com/spf13/pflag"

	"standclear/detail/size"
	"standclear/detail/spec"
	"standclear/detail/sweep"
	"standclear/detail/trial"
	"standclear/detail/unit"
)

// frontSolved is how many designs of the front are solved for heat.
const frontSolved = 6

// sizeOptions are the flags of size.
type sizeOptions struct {
	free              []string
	least             string
	json, heat, write bool
	file              string // to be written
}

// sizeProject finds the sizes that keep every check and ask for the least.
func sizeProject(e env, args []string) int {
	f := pflag.NewFlagSet("size", pflag.ContinueOnError)
	var src source
	var o sizeOptions
	f.StringSliceVar(&o.free, "free", nil, "the parameters that may change, with commas between: "+size.Free+" (blocks.max_spacing and the diameters of all bolts and lags when left out)")
	f.StringVar(&o.least, "least", "heat", "what is to be least: heat (by rank: steel and wood through the insulation), blocks, fasteners, cost (by the rates of the project)")
	f.BoolVar(&o.heat, "heat", false, fmt.Sprintf("also solve the heat of the designs to choose from, %d at most", frontSolved))
	f.BoolVar(&o.write, "write", false, "write the chosen values into the project file; nothing else in it changes")
	f.BoolVar(&o.json, "json", false, "print JSON")
	src.tries(f)
	f.BoolVar(&src.heat.fresh, "no-cache", false, "solve the heat flow anew, neither reading nor keeping results in the user's cache folder")
	if code, ok := parse(e, f, "standclear size [PROJECT.yaml]\ntries all combinations of sizes that are sold, and prints the one that keeps every check and asks for the least,\nthe others worth a choice, and what stops it going further. Heat is left out of the checks.\nExit code 1 says that in every design a check fails or could not be done.",
		"  standclear size deck.yaml --free blocks.max_spacing,blocks.plies --least blocks\n  standclear size deck.yaml --write\n", args); !ok {
		return code
	}
	bad := func(err error) int {
		fmt.Fprintf(e.err, "standclear size: %v\n", err)
		return exitInput
	}
	if o.write && (f.NArg() != 1 || f.Arg(0) == "-") {
		return bad(errors.New("--write: name the project file to write; a demo or standard input cannot be written"))
	}
	if o.write && len(src.sets) > 0 {
		return bad(errors.New("--write and --set: the file would not hold what was sized; put the --set values into it first"))
	}
	o.file = f.Arg(0)
	aim, err := o.aim()
	if err != nil {
		return bad(err)
	}
	base, sp, code := src.base(e, f)
	if code != exitOK {
		return code
	}
	if len(o.free) == 0 {
		o.free = usual(sp)
	}
	ctx, done := e.interruptible()
	defer done()
	tell := meter(e.err, "designs tried")
	r, err := size.Search(ctx, base, size.Options{Free: o.free, Least: aim, Progress: tell})
	wipe(tell, e.err)
	switch {
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(e.err, "standclear size: broken off; nothing was written")
		return exitWrite
	case errors.Is(err, size.ErrNoRates):
		return bad(fmt.Errorf("--least: %w", err))
	case err != nil:
		return bad(fmt.Errorf("--free: %w", err))
	}
	return o.answer(ctx, e, &src, base, sp, r)
}

// usual are the parameters that are free when none is named.
func usual(sp *spec.Spec) []string {
	out := []string{"blocks.max_spacing"}
	for _, n := range []struct {
		name string
		set  *spec.Set
	}{{"through", sp.Fasteners.Through}, {"to_rim", sp.Fasteners.ToRim}, {"to_block", sp.Fasteners.ToBlock}} {
		if n.set != nil && (n.set.Kind == "bolt" || n.set.Kind == "lag") {
			out = append(out, "fasteners."+n.name+".diameter")
		}
	}
	return out
}

// aim reads --least.
func (o *sizeOptions) aim() (size.Least, error) {
	var all []string
	for _, l := range size.Aims() {
		if string(l) == o.least {
			return l, nil
		}
		all = append(all, string(l))
	}
	return "", fmt.Errorf("--least: given %q; one of %s is needed", o.least, strings.Join(all, ", "))
}

// answer prints what was found, and writes it when that was asked for.
func (o *sizeOptions) answer(ctx context.Context, e env, src *source, base trial.Base, sp *spec.Spec, r *size.Result) int {
	unwritten := func(err error) int {
		fmt.Fprintf(e.err, "standclear size: could not write: %v\n", err)
		return exitWrite
	}
	if o.heat && r.Best != nil {
		tell := meter(e.err, "designs solved for heat")
		err := warmFront(ctx, base, r, src.heat.solver(), tell)
		wipe(tell, e.err)
		if err != nil {
			fmt.Fprintln(e.err, "standclear size: broken off; nothing was written")
			return exitWrite
		}
	}
	print := o.table
	if o.json {
		print = o.asJSON
	}
	if code := written(e, "size", func(w io.Writer) error { return print(w, sp, r) }); code != exitOK {
		return code
	}
	if r.Best == nil {
		return exitFails
	}
	if !o.write {
		return exitOK
	}
	edited, err := spec.Edit(base.Src, r.Best.Sets)
	if err != nil {
		fmt.Fprintf(e.err, "standclear size: %s: %v\n", base.Name, err)
		return exitInput
	}
	want, _ := base.Read(r.Best.Sets...)
	if got, _ := spec.Read(base.Name, edited, nil); got == nil || want == nil || got.Hash() != want.Hash() {
		fmt.Fprintf(e.err, "standclear size: %s would read otherwise than was sized; it was left as it is, set the values by hand\n", base.Name)
		return exitInput
	}
	if err := rewriteFile(o.file, base.Src, edited); err != nil {
		return unwritten(err)
	}
	fmt.Fprintf(e.err, "%s: %s written\n", base.Name, strings.Join(r.Best.Sets, ", "))
	return exitOK
}

// warmFront solves the best design and the first of the front.
func warmFront(ctx context.Context, base trial.Base, r *size.Result, solve sweep.Solver, tell func(done, of int)) error {
	n := min(len(r.Front), frontSolved)
	rows := []sweep.Row{r.Best.Row}
	for _, d := range r.Front[:n] {
		rows = append(rows, d.Row)
	}
	if err := sweep.Warm(ctx, base, r.Axes, rows, true, solve, tell); err != nil {
		return err
	}
	r.Best.Row = rows[0]
	for i := range n {
		r.Front[i].Row = rows[i+1]
	}
	return nil
}

// table prints the result for people.
func (o *sizeOptions) table(w io.Writer, sp *spec.Spec, r *size.Result) error {
	sys := sp.Project.System
	fmt.Fprintf(w, "%d designs tried, in %d no check fails; least %s is wanted\n", r.Tried, r.Good, o.least)
	if r.Best == nil {
		_, err := fmt.Fprintf(w, "No design keeps every check. As it stands, %s. Free other parameters, or change the project.\n%s%s", standing(&r.Now), outside, aid)
		return err
	}
	fmt.Fprintf(w, "\nBEST  %s\n", strings.Join(r.Best.Sets, ", "))
	fmt.Fprintf(w, "      %s; the project as it stands: %s\n", standing(r.Best), standing(&r.Now))
	costs := o.least == string(size.Cost)
	if costs {
		fmt.Fprintf(w, "      it costs %.2f %s; the project as it stands: %.2f\n", r.Best.Cost, sp.Rates.Currency, r.Now.Cost)
	}
	if r.Best.Engineer > 0 {
		fmt.Fprintf(w, "      left to the engineer: %s\n", count(r.Best.Engineer, "check"))
	}
	t := tabwriter.NewWriter(w, 2, 4, 2, ' ', 0)
	fmt.Fprint(w, "\nTO CHOOSE FROM, none beaten in heat, parts and reserve at once; heat by rank alone\n")
	for _, a := range r.Axes {
		fmt.Fprintf(t, "%s\t", a.Key)
	}
	fmt.Fprint(t, "BLOCKS\tFASTENERS\tRESERVE\tHEAT RANK\t")
	if o.heat {
		fmt.Fprint(t, "HEAT SOLVED\t")
	}
	if costs {
		fmt.Fprint(t, "COST\t")
	}
	fmt.Fprint(t, "GOVERNS\n")
	for i := range r.Front {
		d := &r.Front[i]
		fmt.Fprintf(t, "%s\t%d\t%d\t%.0f %%\t%d\t", strings.Join(d.Values, "\t"), d.Blocks, d.Fasteners, 100*d.Reserve(), i+1)
		if o.heat {
			fmt.Fprintf(t, "%s\t", solvedText(d, sys))
		}
		if costs {
			fmt.Fprintf(t, "%.2f\t", d.Cost)
		}
		fmt.Fprintf(t, "%s\n", d.Governs.Name)
	}
	if err := t.Flush(); err != nil {
		return err
	}
	fmt.Fprint(w, "\nWHAT STOPS THE BEST\n")
	for _, s := range r.Stops {
		fmt.Fprintf(w, "  %s=%s: %s\n", s.Key, s.Value, s.Why)
	}
	_, err := fmt.Fprintf(w, "\n%s%s", outside, aid)
	return err
}

const aid = "A calculation aid: local code and a licensed engineer decide.\n"

// standing says what a design comes to.
func standing(d *size.Design) string {
	t := fmt.Sprintf("%d blocks, %d fasteners, ", d.Blocks, d.Fasteners)
	if d.Feasible() {
		return t + "governed by " + d.Failed()
	}
	return t + fmt.Sprintf("%d checks fail, %d not checked, the worst: %s", d.Fails, d.NotChecked, d.Failed())
}

func solvedText(d *size.Design, sys unit.System) string {
	if d.Heat == nil {
		return "not solved"
	}
	return unit.Conductance(d.Heat.Run).Q().Text(sys) + " within " + unit.Conductance(d.Heat.Err).Q().Text(sys)
}

// asJSON prints the result for programs.
func (o *sizeOptions) asJSON(w io.Writer, sp *spec.Spec, r *size.Result) error {
	type design struct {
		Set       []string `json:"set"`
		Blocks    int      `json:"blocks"`
		Fasteners int      `json:"fasteners"`
		Ratio     float64  `json:"ratio"`
		Check     string   `json:"check"`
		Name      string   `json:"name"`
		HeatRank  int      `json:"heat_rank,omitempty"`
		Heat      *float64 `json:"heat_w_per_k,omitempty"`
		Within    *float64 `json:"heat_within_w_per_k,omitempty"`
		Cost      *float64 `json:"cost,omitempty"`
	}
	type stop struct {
		Key   string `json:"key"`
		Value string `json:"value"`
		Check string `json:"check,omitempty"`
		Why   string `json:"why"`
	}
	of := func(d *size.Design, place int) design {
		j := design{Set: d.Sets, Blocks: d.Blocks, Fasteners: d.Fasteners, Ratio: d.Ratio, Check: d.Governs.ID, Name: d.Governs.Name, HeatRank: place}
		if d.Heat != nil {
			j.Heat, j.Within = &d.Heat.Run, &d.Heat.Err
		}
		if o.least == string(size.Cost) {
			j.Cost = &d.Cost
		}
		return j
	}
	out := struct {
		Project string   `json:"project"`
		Least   string   `json:"least"`
		Tried   int      `json:"tried"`
		Good    int      `json:"good"`
		Best    *design  `json:"best"`
		Front   []design `json:"front"`
		Stops   []stop   `json:"stops"`
	}{Project: sp.Project.Name, Least: o.least, Tried: r.Tried, Good: r.Good}
	if r.Best != nil {
		b := of(r.Best, 0)
		out.Best = &b
	}
	for i := range r.Front {
		out.Front = append(out.Front, of(&r.Front[i], i+1))
	}
	for _, s := range r.Stops {
		out.Stops = append(out.Stops, stop{s.Key, s.Value, s.Check, s.Why})
	}
	j := json.NewEncoder(w)
	j.SetIndent("", "  ")
	j.SetEscapeHTML(false)
	return j.Encode(out)
}
