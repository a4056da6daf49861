package spec

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Problem is one thing wrong with a project file, in words for the person who typed it.
type Problem struct {
	File    string // name of the file, or "--set"
	Line    int    // from 1; 0 when the value came from the command line
	Col     int    // from 1; 0 with Line
	Key     string // dotted path, list places from 0; "" for the file as a whole
	Given   string // what was given and what is wrong with it
	Allowed string // what may stand there
	Do      string // what to do, or what was likely meant
	Warning bool   // reads, but may not be meant
}

// Error returns the problem in one line, as file:line:col: key: given; allowed; do.
func (p Problem) Error() string {
	var b strings.Builder
	b.WriteString(p.File)
	if p.Line > 0 {
		fmt.Fprintf(&b, ":%d:%d", p.Line, p.Col)
	}
	b.WriteString(": ")
	if p.Warning {
		b.WriteString("warning: ")
	}
	if p.Key != "" {
		b.WriteString(p.Key + ": ")
	}
	var parts []string
	for _, s := range []string{p.Given, p.Allowed, p.Do} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	return b.String() + strings.Join(parts, "; ")
}

// Problems are all problems of a file, by position, those of the command line last.
type Problems []Problem

// Error returns one problem a line.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

// Fatal reports whether any of the problems is more than a warning.
func (ps Problems) Fatal() bool {
	return slices.ContainsFunc(ps, func(p Problem) bool { return !p.Warning })
}

// most problems of one file are shown; who has more has sent something else than a project file.
const most = 100

// sorted returns the problems by position, cut at the most that are shown.
func (ps Problems) sorted() Problems {
	slices.SortStableFunc(ps, func(a, b Problem) int {
		return cmp.Or(
			cmp.Compare(boolInt(a.Line == 0), boolInt(b.Line == 0)),
			cmp.Compare(a.Line, b.Line), cmp.Compare(a.Col, b.Col),
		)
	})
	if len(ps) <= most {
		return ps
	}
	last := ps[most]
	last.Key, last.Allowed, last.Do = "", "", ""
	last.Given = fmt.Sprintf("%d more problems from here on are not shown", len(ps)-most)
	last.Warning = false
	return append(ps[:most:most], last)
}

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

// place is where something stands: a position in the file, or the command line.
type place struct {
	file      string
	line, col int
}

// problem returns a Problem at p.
func (p place) problem(key, given, allowed, do string) Problem {
	return Problem{File: p.file, Line: p.line, Col: p.col, Key: key, Given: given, Allowed: allowed, Do: do}
}
