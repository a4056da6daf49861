package html

import (
	"slices"
	"strings"

	"standclear/render"
)

// leastWords is how many words make a text a note and not a number or a mark.
const leastWords = 3

// notesOf lists the notes of a sheet, whole and in the order of the alphabet: the texts of several words on its
// views and beside them.
func notesOf(s *render.Sheet) []string {
	var out []string
	take := func(items []render.Item) {
		for _, i := range items {
			if t, ok := i.(render.Text); ok {
				text := strings.Join(strings.Fields(render.Clean(strings.Join(t.Lines, " "))), " ")
				if len(strings.Fields(text)) >= leastWords {
					out = append(out, text)
				}
			}
		}
	}
	take(s.Items)
	for _, v := range s.Views {
		take(v.Items)
	}
	slices.Sort(out)
	return slices.Compact(out)
}
