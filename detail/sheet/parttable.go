package sheet

import (
	"fmt"
	"strings"

	"standclear/detail"
)

// partTable lists what is bought and built for the ledger, a row a mark: parts of one mark that differ
// in length only are counted together, their lengths given from least to greatest. Existing parts and
// those by others are in the schedule file.
func (w *writer) partTable() *table {
	t := &table{title: "PARTS OF THIS WORK", head: []string{"MARK", "QTY", "PART", "SIZE", "MATERIAL, NOTE"}, width: []float64{15, 15, 50, 62, 88}}
	lines := w.a.Schedule()
	for i := 0; i < len(lines); {
		same := 1
		for i+same < len(lines) && lines[i+same].Mark == lines[i].Mark {
			same++
		}
		if !lines[i].Existing {
			t.rows = append(t.rows, w.partRow(lines[i:i+same]))
		}
		i += same
	}
	return t
}

// partRow is the row of one mark.
func (w *writer) partRow(of []detail.Line) []string {
	qty, first := 0, of[0]
	least, most := first.Size[2], first.Size[2]
	for _, l := range of {
		qty += l.Qty
		least, most = min(least, l.Size[2]), max(most, l.Size[2])
	}
	size := w.sizeText(first)
	if most > least {
		first.Size[2] = 0
		size = w.sizeText(first) + " x " + w.text(least.MM()) + " to " + w.text(most.MM())
	}
	about := strings.TrimSuffix(first.Material+", "+first.Note, ", ")
	return []string{first.Mark, fmt.Sprint(qty), caps(first.Name), size, caps(about)}
}
