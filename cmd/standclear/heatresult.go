package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"time"

	"github.com/spf13/pflag"

	"standclear/detail"
	"standclear/detail/check/thermal"
)

// warmth says whether and how the heat of a project is found.
type warmth struct {
	off, fresh bool
}

func (h *warmth) flags(f *pflag.FlagSet) {
	f.BoolVar(&h.off, "no-heat", false, "do not solve the heat flow; its lines are then NOT CHECKED")
	f.BoolVar(&h.fresh, "no-cache", false, "solve the heat flow anew, neither reading nor keeping results in the user's cache folder")
}

// find returns the heat of an assembly, or why it was not found. An interruption is an error.
func (h *warmth) find(e env, a *detail.Assembly) (r *thermal.Result, why string, err error) {
	if h.off {
		return nil, "left out by --no-heat", nil
	}
	ctx, done := e.interruptible()
	defer done()
	tell := progressOn(e.err)
	r, solved, err := h.solve(ctx, a, thermal.Options{Progress: tell})
	if solved {
		clearProgress(tell, e.err)
	}
	switch {
	case errors.Is(err, context.Canceled):
		return nil, "", err
	case err != nil:
		return nil, err.Error(), nil
	}
	return r, "", nil
}

// solve returns a kept result, or solves and keeps one; solved says which.
func (h *warmth) solve(ctx context.Context, a *detail.Assembly, opt thermal.Options) (r *thermal.Result, solved bool, err error) {
	r, key, err := h.kept(a, opt)
	if err != nil || r != nil {
		return r, false, err
	}
	defer thriftily()()
	if r, err = thermal.Solve(ctx, a, opt); err != nil {
		return nil, true, err
	}
	if name := h.file(key); name != "" {
		keepResult(name, r)
	}
	return r, true, nil
}

// kept returns the kept result of an assembly, nil when there is none, and its key. An error is that the assembly
// has nothing to solve.
func (h *warmth) kept(a *detail.Assembly, opt thermal.Options) (r *thermal.Result, key string, err error) {
	if key, err = thermal.Key(a, opt); err != nil {
		return nil, "", err
	}
	if name := h.file(key); name != "" {
		r = readResult(name)
	}
	return r, key, nil
}

// file is where the result of that key is kept; "" when none is.
func (h *warmth) file(key string) string {
	dir, err := os.UserCacheDir()
	if err != nil || h.fresh {
		return ""
	}
	return filepath.Join(dir, "standclear", "heat", key+".json")
}

// readResult returns a kept result; nil when there is none that can be read whole.
func readResult(name string) *thermal.Result {
	b, err := os.ReadFile(name)
	if err != nil {
		return nil
	}
	r := &thermal.Result{}
	if json.Unmarshal(b, r) != nil || r.Drawn() == nil || r.Way("tight") == nil {
		return nil
	}
	return r
}

// mostKept is how many results the cache folder holds, some hundred kilobytes each.
const mostKept = 200

// keepResult writes a result into the cache and takes the oldest out. A cache that cannot be written is none.
func keepResult(name string, r *thermal.Result) {
	b, err := json.Marshal(r)
	if err != nil || os.MkdirAll(filepath.Dir(name), 0o777) != nil {
		return
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".new-*")
	if err != nil {
		return
	}
	_, err = f.Write(b)
	if err = errors.Join(err, f.Close()); err == nil {
		err = os.Rename(f.Name(), name)
	}
	if err != nil {
		_ = os.Remove(f.Name())
		return
	}
	prune(filepath.Dir(name))
}

func prune(dir string) {
	list, err := filepath.Glob(filepath.Join(dir, "*.json"))
	if err != nil || len(list) <= mostKept {
		return
	}
	age := func(name string) time.Time {
		st, err := os.Stat(name)
		if err != nil {
			return time.Time{}
		}
		return st.ModTime()
	}
	slices.SortFunc(list, func(a, b string) int { return age(a).Compare(age(b)) })
	for _, name := range list[:len(list)-mostKept] {
		_ = os.Remove(name)
	}
}

// progressOn tells a person at a terminal how far a long run has come: nothing in the first second, then one
// line that is written over.
func progressOn(w io.Writer) func(step, of int, what string) {
	if !terminal(w) {
		return nil
	}
	start, last := time.Now(), ""
	return func(step, of int, what string) {
		if line := fmt.Sprintf("heat flow, %d of %d: %s", step, of, what); line != last && time.Since(start) > time.Second {
			fmt.Fprintf(w, "\r%-78.78s", line)
			last = line
		}
	}
}

func clearProgress(p func(step, of int, what string), w io.Writer) {
	if p != nil {
		fmt.Fprintf(w, "\r%78s\r", "")
	}
}
