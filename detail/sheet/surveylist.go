package sheet

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"standclear/detail"
	"standclear/detail/spec"
)

// surveyed is one line of the survey sheet.
type surveyed struct {
	no, what, key, value string
}

// place is where one stands to measure a group of values.
type place struct {
	title string
	keys  *regexp.Regexp // which belong here
	also  *regexp.Regexp // of them, those measured though they have a default; nil for none
}

// places are in the order one walks a house. What the table never defaults is always asked for; beside it
// what a check rests on and what stands there to be seen.
var places = sync.OnceValue(func() []place {
	re := regexp.MustCompile
	return []place{
		{"INSIDE: RIM, FLOOR, CEILING", re(`^floor\.`), re(`^floor\.(finish|subfloor|bearing|plate|plate_width|strip|ceiling|rim\.(gravity|moisture)|joists\.(flange|depth|squash_blocks|direction)|backing\.)`)},
		{"WALL, AT AN OPENING", re(`^wall\.`), re(`^wall\.(retarder|stud_|cladding\.(exposure|behind_ledger))`)},
		{"DOORS ONTO THE DECK", re(`^doors\.`), re(`\.(swing|threshold)$`)},
		{"IN THE WAY OF BLOCKS AND BOLTS", re(`^obstacles\.`), re(`\.inside$`)},
		{"OUTSIDE: GROUND AND FOUNDATION", re(`^foundation\.`), re(`^foundation\.(kind|thickness|insulation|drainage_board|grade)`)},
		{"LEDGER AND DECK", re(`^(ledger|deck)\.`), re(`^(ledger\.(thickness|height|species|moisture\.assembly)|deck\.(support|storey|projection|joists\.(width|depth|spacing)))`)},
		{"TO ASK: SNOW, AIR, PESTS", re(`^(site|loads)\.`), re(`^(site\.(inside_humidity|ground_snow|above|termites|fire_interface|frost_depth)|loads\.(live|snow|wind))`)},
		{"BLOCKS AND FASTENERS, AS DELIVERED", re(`^(blocks|fasteners)\.`), re(`^(blocks\.(height|width|moisture\.assembly)|fasteners\..*\.(length|hole|coating|washer\.size))`)},
	}
})

// surveyList returns the lines of every place, numbered 1.1, 1.2 ... 2.1 ...
func (w *writer) surveyList() [][]surveyed {
	entries := w.a.Spec.Entries()
	var out [][]surveyed
	for i, p := range places() {
		var lines []surveyed
		for _, e := range entries {
			if !p.keys.MatchString(e.Key) || !e.Survey && !p.also.MatchString(e.Key) || elsewhere(e.Key) {
				continue
			}
			lines = append(lines, surveyed{fmt.Sprintf("%d.%d", i+1, len(lines)+1), w.surveyWords(e), e.Key, w.surveyValue(e)})
		}
		out = append(out, lines)
	}
	return out
}

// elsewhere reports whether a key is asked for with another: what a layer is with its thickness, the months of
// the climate with the first of them.
func elsewhere(key string) bool {
	return strings.HasPrefix(key, "wall.layers.") && !strings.HasSuffix(key, ".thickness") ||
		strings.HasPrefix(key, "site.months.") && key != "site.months.0.outside"
}

// surveyValue is the value in the file, with a word where the file does not give it.
func (w *writer) surveyValue(e spec.Entry) string {
	v := caps(e.Value)
	if e.Length != nil {
		v = w.exact(*e.Length)
		if strings.HasPrefix(e.Key, "fasteners.") && strings.HasSuffix(e.Key, ".diameter") {
			v = w.diameter(*e.Length)
		}
	}
	switch {
	case strings.HasPrefix(e.Key, "site.months."):
		return fmt.Sprintf("%d MONTHS", len(w.a.Spec.Site.Months))
	case e.Value == "":
		return "NOT STATED"
	case !e.Given:
		return v + " (DEFAULT)"
	}
	return v
}

// surveyWords say what to measure: what the section is about and what the key is.
func (w *writer) surveyWords(e spec.Entry) string {
	part := strings.Split(e.Key, ".")
	var name []string
	for _, p := range part[1:] {
		if i, err := strconv.Atoi(p); err == nil {
			name = append(name[:max(0, len(name)-1)], strings.TrimSpace(strings.Join(name[max(0, len(name)-1):], " ")+fmt.Sprintf(" %d", i+1)))
			continue
		}
		name = append(name, strings.ReplaceAll(p, "_", " "))
	}
	switch part[0] {
	case "site":
		if part[1] == "months" {
			return "MONTHS OF THE CLIMATE: FROM WHICH RECORD"
		}
	case "wall":
		if part[1] == "layers" {
			i, _ := strconv.Atoi(part[2])
			return caps(detail.LayerMark(i) + " " + w.a.Spec.Wall.Layers[i].Name + ", thickness; it is " + materialName(w.a.Spec.Wall.Layers[i].Material))
		}
	case "ledger", "deck", "blocks", "loads":
		name = append([]string{part[0]}, name...)
	case "doors":
		name[0] = "door " + name[0]
	case "obstacles":
		i, _ := strconv.Atoi(part[1])
		name[0] = fmt.Sprintf("OB%d %s", i+1, w.a.Spec.Obstacles[i].Name)
	}
	return caps(strings.Join(name, ", ") + ": " + e.About)
}
