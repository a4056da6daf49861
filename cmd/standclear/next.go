package main

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"standclear/detail/check"
	"standclear/detail/check/design"
	"standclear/detail/spec"
)

// unstated lists what checks wait for and the file does not state, each as it is written.
func (j *job) unstated() []string {
	waiting := j.waiting()
	if len(waiting) == 0 {
		return nil
	}
	open := map[string]bool{}
	for _, e := range j.spec.Entries() {
		open[e.Key] = e.Value == "" || e.Value == "unknown"
	}
	var lines []string
	for _, k := range spec.Keys(j.spec.Project.System) {
		if stated, known := open[k.Path]; known && !stated || k.Sample == "" && k.Default == "" || !waiting[k.Path] {
			continue
		}
		line := fmt.Sprintf("  %-36s %s", k.Path+": "+cmp.Or(k.Sample, k.Default), k.About)
		if k.Allowed != "" {
			line += "; " + k.Allowed
		}
		lines = append(lines, line)
	}
	return lines
}

// waiting returns what may be keys, for the dot in them, in the reasons of the checks that were not done.
func (j *job) waiting() map[string]bool {
	out := map[string]bool{}
	for _, s := range j.report.Steps {
		if s.Verdict != check.NotChecked {
			continue
		}
		for _, w := range keysIn(s.Reason) {
			if w = strings.Trim(w, "."); strings.Contains(w, ".") { // one at the end is that of the sentence
				out[w] = true
			}
		}
	}
	return out
}

// keysIn splits a text at all that cannot stand in a key.
func keysIn(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool {
		return r != '.' && r != '_' && (r < 'a' || r > 'z') && (r < '0' || r > '9')
	})
}

// next says in one line what to do with the project now; unstated are the lines of what it does not state.
func (j *job) next(unstated []string) string {
	b := j.best
	switch fails := j.report.Count(check.Fails); {
	case fails > 0 && len(b.Sets) > 0 && b.Left < fails:
		var sets []string
		for _, s := range b.Sets {
			sets = append(sets, "--set "+quoted(s))
		}
		return fmt.Sprintf("next: try %s, which leaves %s, then write it into the file", strings.Join(sets, " "), left(b))
	case fails > 0:
		return "next: no single change tried leaves fewer failing: make the first change named above, then check again"
	case len(unstated) > 0:
		return "next: state in the file what is listed above, as far as it can be known, and check again"
	case j.why != "" && j.heat == nil && j.report.Count(check.NotChecked) > 0:
		return "next: check again without --no-heat, for the heat and what rests on it"
	}
	return "next: standclear draw writes the sheets; standclear size looks for less"
}

// left says what the best change leaves failing.
func left(b design.Best) string {
	if b.Left == 0 {
		return "no check failing"
	}
	return fmt.Sprintf("%d failing of %d", b.Left, b.Among)
}

// quoted is a word as the shell takes it.
func quoted(s string) string {
	if strings.ContainsAny(s, " '\"[]") {
		return strconv.Quote(s)
	}
	return s
}
