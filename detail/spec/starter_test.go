package spec

import (
	"strings"
	"testing"
)

// As written, the starter file has one problem for every SURVEY and no other.
func TestStarterAsWritten(t *testing.T) {
	for _, sys := range systems() {
		text := Starter(sys)
		s, problems := Read("new.yaml", []byte(text), nil)
		body := text[strings.Index(text, "\n\n"):]
		if want := strings.Count(body, placeholder); s != nil || len(problems) != want || want < 15 {
			t.Fatalf("%v: %d problems for %d placeholders\n%s", sys, len(problems), want, problems.Error())
		}
		for _, p := range problems {
			if p.Given != "not surveyed yet" || p.Do == "" {
				t.Errorf("%v: %s", sys, p.Error())
			}
		}
	}
}

// With the placeholders filled in, and nothing else, it reads; what is commented out is a default.
func TestStarterFilledIn(t *testing.T) {
	for _, sys := range systems() {
		filled := allKeys(sys)
		var lines []string
		for i, line := range strings.Split(Starter(sys), "\n") {
			if strings.Contains(line, placeholder) {
				line = strings.Split(filled, "\n")[i]
			}
			lines = append(lines, line)
		}
		s, problems := Read("new.yaml", []byte(strings.Join(lines, "\n")), nil)
		if s == nil || len(s.Warnings) > 0 || s.Project.System != sys || len(s.Defaults) < 60 {
			t.Fatalf("%v: %s", sys, problems.Error())
		}
	}
}

// Every key and section is in it, but the two sets that are the same as the one.
func TestStarterHasEveryKey(t *testing.T) {
	for _, sys := range systems() {
		text := Starter(sys)
		for _, k := range Keys(sys) {
			name := k.Path[strings.LastIndexByte(k.Path, '.')+1:]
			if !strings.Contains(text, name+":") && !strings.Contains(k.Path, ".N") {
				t.Errorf("%v: no %s", sys, k.Path)
			}
		}
		for i, line := range strings.Split(text, "\n") {
			if strings.HasSuffix(line, " ") || strings.Contains(line, "\t") || strings.Contains(line, ";  ") {
				t.Errorf("%v: line %d: %q", sys, i+1, line)
			}
		}
	}
}
