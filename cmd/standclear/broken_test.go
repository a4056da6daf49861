package main

import (
	"bytes"
	"flag"
	"fmt"
	"regexp"
	"runtime/debug"
	"strings"
	"testing"

	"standclear/detail/sheet"
	"standclear/detail/spec"
	"standclear/detail/spec/spectest"
	"standclear/detail/together"
	"standclear/render/dxf"
)

var manyBroken = flag.Int("broken", 300, "random broken projects that are read and, where they read, built, checked and drawn")

// A broken project ends in problems that say where, what and what is allowed, or in a full answer; never in a panic
// or in a number that is none.
func TestBrokenProjects(t *testing.T) {
	n, count := *manyBroken, &tally{seen: map[string]int{}}
	if testing.Short() {
		n = 30
	}
	together.Each(n, func(k int) {
		i := *first + uint64(k)
		if wrong := tryBroken(i, count); len(wrong) > 0 {
			t.Errorf("broken project %d: %d wrong\n\t%s\n%v", i, len(wrong), strings.Join(wrong[:min(len(wrong), 4)], "\n\t"), spectest.Broken(i))
		}
	})
	count.log(t)
	if refused := count.seen["refused by problems"]; refused < n/4 || refused > n*9/10 {
		t.Errorf("%d of %d are refused: too few or too many to say something of both", refused, n)
	}
}

// buildError is an error of Build: file, key, what is wrong.
var buildError = regexp.MustCompile(`^[^:]+: [a-z_]+(\.[a-z_]+)*: .+`)

// tryBroken lists what is wrong with the answer to a broken project.
func tryBroken(i uint64, count *tally) (wrong []string) {
	defer func() {
		if r := recover(); r != nil {
			wrong = append(wrong, fmt.Sprintf("panic: %v\n%s", r, debug.Stack()))
		}
	}()
	p := spectest.Broken(i)
	src := source{sets: p.Sets}
	j, problems, err := src.start("broken.yaml", p.Source)
	switch {
	case len(problems) > 0:
		count.add("refused by problems", 1)
		for _, q := range problems {
			wrong = append(wrong, wrongProblem(q)...)
		}
		if !problems.Fatal() {
			wrong = append(wrong, "refused with warnings alone")
		}
		return wrong
	case err != nil:
		count.add("cannot be built", 1)
		if !buildError.MatchString(err.Error()) {
			wrong = append(wrong, "an error that names no file and key: "+err.Error())
		}
		return wrong
	}
	count.add("answered", 1)
	j = j.warmed(nil, "the heat was left out")
	wrong = append(wrongReport(j, count), wrongSchedule(j.assembly)...)
	if i%4 != 0 {
		return wrong
	}
	o := sheet.Options{Version: version, Sheet: turns[i/4%uint64(len(turns))]}
	count.add("drawn", 1)
	for _, s := range sheet.Compose(j.assembly, &j.report, j.results, o) {
		wrong = append(wrong, wrongSVG(s)...)
		var b bytes.Buffer
		if err := dxf.Write(&b, s, dxf.Options{}); err != nil {
			wrong = append(wrong, err.Error())
		}
		wrong = append(wrong, wrongText(s.ID+".dxf", b.Bytes())...)
	}
	return wrong
}

// wrongProblem: file, place, key and what is allowed or to be done; a file that is no YAML has no key.
func wrongProblem(p spec.Problem) (wrong []string) {
	switch {
	case p.File == "" || p.Given == "" || strings.ContainsAny(p.Error(), "\r\n\x00\x07"):
		return []string{fmt.Sprintf("not one plain line: %#v", p)}
	case p.File != "--set" && (p.Line < 1 || p.Col < 1):
		return []string{"without a place: " + p.Error()}
	case p.Key == "" && p.Do == "" && p.Allowed == "", p.Key != "" && p.Do == "" && p.Allowed == "" && !p.Warning && !strings.Contains(p.Given, "more problems"):
		return []string{"says neither what is allowed nor what to do: " + p.Error()}
	}
	return nil
}
