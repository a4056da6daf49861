package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"runtime"
	"strings"
	"sync"
	"time"

	"github.com/spf13/pflag"

	"standclear/cmd/standclear/preview"
	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/thermal"
	"standclear/detail/sheet"
	"standclear/render/svg"
)

func previewProject(e env, args []string) int {
	f := pflag.NewFlagSet("preview", pflag.ContinueOnError)
	var v follower
	v.src.flags(f)
	_ = f.MarkHidden("demo") // known, to be refused with its reason
	if code, ok := parse(e, f, "standclear preview PROJECT.yaml\nshows the sheets and checks of a project on a web page of this machine alone, and draws them anew each time the file\nis saved. It writes nothing; Ctrl-C ends it. The heat flow is taken from the user's cache folder, else solved\nmeanwhile, its checks NOT CHECKED until then.", "  standclear preview deck.yaml\n", args); !ok {
		return code
	}
	if err := v.names(f.Args()); err != nil {
		fmt.Fprintf(e.err, "standclear preview: %v\n", err)
		return exitInput
	}
	s := preview.New(v.name, v.read)
	url, err := s.Listen()
	if err != nil {
		fmt.Fprintf(e.err, "standclear preview: no port to listen at: %v\n", err)
		return exitWrite
	}
	ctx, done := e.interruptible()
	defer done()
	context.AfterFunc(ctx, done) // who breaks off twice is in a hurry
	if _, err := fmt.Fprintf(e.out, "preview of %s at %s\nCtrl-C ends it.\n", v.name, url); err != nil {
		fmt.Fprintf(e.err, "standclear preview: could not write: %v\n", err)
		return exitWrite
	}
	if err := s.Run(ctx); err != nil {
		fmt.Fprintf(e.err, "standclear preview: %v\n", err)
		return exitWrite
	}
	return exitOK
}

// follower reads one project file again and again.
type follower struct {
	src  source
	name string

	lock   sync.Mutex
	solved []solved // heat found here, the latest last
}

// solved is the heat of one assembly.
type solved struct {
	key  string
	heat *thermal.Result
}

// mostSolved is how many results are held, some hundred kilobytes each.
const mostSolved = 20

// names takes the one file to follow, which must be there.
func (v *follower) names(args []string) error {
	switch {
	case v.src.demo != "":
		return errors.New("--demo: a demo is built in and never changes; draw it with standclear draw, or preview a file of your own (standclear new --out deck.yaml)")
	case len(args) == 0:
		return errors.New("say which project file to follow: standclear preview deck.yaml")
	case len(args) > 1:
		return fmt.Errorf("one project at a time, not %s", count(len(args), "file"))
	case args[0] == "-":
		return errors.New("standard input cannot be followed; give a project file")
	}
	v.name = args[0]
	if _, err := preview.ReadFile(v.name); err != nil {
		return fmt.Errorf("%s: the project file cannot be read: %w", v.name, err)
	}
	return nil
}

// What is said while it is done.
const (
	mending = "The smallest changes that mend what fails are being tried."
	solving = "The heat flow is being solved; its checks are NOT CHECKED until then."
)

// rest is how long a file must stand before more is worked out than what is shown: until then the page, and a change
// on the heels of the last, have every core. A judgement.
const rest = time.Second

// pause waits for that; false when the file has changed again.
func pause(ctx context.Context) bool {
	select {
	case <-ctx.Done():
		return false
	case <-time.After(rest):
		return true
	}
}

// read is the preview.Read of a project: first with what is known at once, then with the changes that mend
// what fails, then with the heat.
func (v *follower) read(ctx context.Context, src []byte, publish func(preview.Model)) []string {
	j, problems, err := v.src.start(v.name, src)
	switch {
	case len(problems) > 0:
		var out []string
		for _, p := range problems {
			out = append(out, p.Error())
		}
		return out
	case err != nil:
		return []string{v.name + ": " + err.Error()}
	}
	heat, key, why := v.known(j)
	open := heat == nil && key != ""
	doing := map[bool]string{true: solving}[open]
	if j.report.Count(check.Fails) > 0 {
		publish(j.warmed(heat, why).model(strings.TrimSpace(mending + " " + doing)))
		if !pause(ctx) {
			return nil
		}
		j.mend(ctx)
	}
	publish(j.warmed(heat, why).model(doing))
	if !open || !pause(ctx) {
		return nil
	}
	heat, err = solve(ctx, j.assembly)
	if ctx.Err() != nil {
		return nil
	}
	if err != nil {
		why = err.Error()
	} else {
		v.keep(key, heat)
	}
	publish(j.warmed(heat, why).model(""))
	return nil
}

// solve solves the heat, and leaves one core to draw with.
func solve(ctx context.Context, a *detail.Assembly) (*thermal.Result, error) {
	defer thriftily()()
	return thermal.Solve(ctx, a, thermal.Options{Threads: max(1, runtime.GOMAXPROCS(0)-1)})
}

// known returns the heat of a job where it is known, else why it is not; the key is "" when it cannot be found either.
func (v *follower) known(j *job) (heat *thermal.Result, key, why string) {
	if v.src.heat.off {
		return nil, "", "left out by --no-heat"
	}
	heat, key, err := v.src.heat.kept(j.assembly, thermal.Options{})
	if err != nil {
		return nil, "", err.Error()
	}
	v.lock.Lock()
	defer v.lock.Unlock()
	for _, s := range v.solved {
		if s.key == key {
			heat = s.heat
		}
	}
	return heat, key, "the heat flow is still being solved"
}

func (v *follower) keep(key string, heat *thermal.Result) {
	v.lock.Lock()
	defer v.lock.Unlock()
	v.solved = append(v.solved, solved{key, heat})
	if len(v.solved) > mostSolved {
		v.solved = v.solved[1:]
	}
}

// model is a job as the page shows it.
func (j *job) model(doing string) preview.Model {
	set := sheet.Plan(j.assembly, &j.report, j.results, sheet.Options{Version: version, Heat: j.heat})
	m := preview.Model{Doing: doing, Draw: func(id string) ([]byte, error) {
		var b bytes.Buffer
		err := svg.Write(&b, set.Page(id), svg.Options{Inline: true})
		return b.Bytes(), err
	}}
	var ids []string
	for _, e := range set.Index() {
		m.Sheets = append(m.Sheets, preview.Entry(e))
		ids = append(ids, e.ID)
	}
	m.Checks = j.checksPage(ids)
	for _, w := range j.spec.Warnings {
		m.Warnings = append(m.Warnings, w.Error())
	}
	return m
}
