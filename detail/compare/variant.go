package compare

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"standclear/detail/check/thermal"
	"standclear/detail/trial"
)

// Variant reads "NAME: KEY=VALUE, KEY=VALUE". The name may be left out: the changes then are it. Commas inside
// brackets belong to a value; a colon after the first = does too.
func Variant(text string) (name string, changes []string, err error) {
	if i := strings.IndexFunc(text, func(r rune) bool { return !unicode.IsPrint(r) }); i >= 0 || !utf8.ValidString(text) {
		return "", nil, fmt.Errorf("given %q: it holds a character that does not print; write one line of plain text", text)
	}
	rest := text
	if colon, equal := strings.IndexByte(text, ':'), strings.IndexByte(text, '='); colon >= 0 && (equal < 0 || colon < equal) {
		name, rest = strings.TrimSpace(text[:colon]), text[colon+1:]
	}
	changes = trial.Commas(rest)
	for _, c := range changes {
		if key, _, ok := strings.Cut(c, "="); !ok || strings.TrimSpace(key) == "" {
			return "", nil, fmt.Errorf("given %q: %q is not KEY=VALUE; write for instance \"wide: blocks.width=10in, blocks.max_spacing=28in\"", text, c)
		}
	}
	if name == "" {
		name = strings.Join(changes, ", ")
	}
	return name, changes, nil
}

// Ways returns the heat of the first design with a way for every other design that is built on its own, for the
// sheet of comparison; nil and why when the heat of the first is not known.
func Ways(all []*Design) (*thermal.Result, string) {
	drawn := all[0]
	if drawn.Heat == nil {
		return nil, drawn.NoHeat
	}
	out := *drawn.Heat
	out.Ways = append([]thermal.Way(nil), out.Ways...)
	for _, d := range all[1:] {
		if d.Way == nil || !d.Way.Drawn {
			continue
		}
		w := *d.Way
		w.Key, w.Drawn, w.Name = d.Key, false, strings.ToUpper(d.Name)
		w.Note = strings.Join(d.Changes, ", ")
		switch w.Note {
		case "":
			w.Note = d.File
		case d.Name: // it has no name
			w.Name = strings.ToUpper(strings.ReplaceAll(d.Key, "_", " "))
		}
		out.Ways = append(out.Ways, w)
	}
	return &out, ""
}
