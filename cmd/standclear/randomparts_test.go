package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"

	"standclear/detail"
)

// wrongSchedule counts the parts anew and holds schedule and cut list against them.
func wrongSchedule(a *detail.Assembly) (wrong []string) {
	parts, rows := partsByMark(a), map[string]int{}
	for _, l := range a.Schedule() {
		rows[l.Mark+" "+l.Name] += l.Qty
	}
	for k, n := range parts {
		if rows[k] != n {
			wrong = append(wrong, fmt.Sprintf("schedule: %d of %s, %d in the assembly", rows[k], k, n))
		}
	}
	for k, n := range rows {
		if parts[k] == 0 {
			wrong = append(wrong, fmt.Sprintf("schedule: %d of %s, none in the assembly", n, k))
		}
	}
	slices.Sort(wrong)
	return append(wrong, wrongCutList(a)...)
}

// partsByMark counts the parts that are scheduled by mark and name.
func partsByMark(a *detail.Assembly) map[string]int {
	out := map[string]int{}
	for _, p := range a.Parts {
		if p.Role != detail.Earth && p.Role != detail.Obstacle && p.Role != detail.Outside {
			out[p.Mark+" "+p.Name]++
		}
	}
	return out
}

// wrongCutList: every piece of wood is cut once, and no stick gives more than it is long.
func wrongCutList(a *detail.Assembly) (wrong []string) {
	cut := map[string]int{}
	st := a.Spec.Stock
	for _, l := range a.CutList() {
		if !l.Sheet && len(l.Sticks) < l.Least {
			wrong = append(wrong, fmt.Sprintf("cut list: %d sticks of %s, fewer than the %d proved least", len(l.Sticks), l.Material, l.Least))
		}
		for _, s := range l.Sticks {
			used := st.Trim.MM() - st.Kerf.MM()
			for _, c := range s.Cuts {
				used += float64(len(c.IDs)) * (c.Each + st.Kerf).MM()
				for _, id := range c.IDs {
					cut[id]++
				}
			}
			if !l.Sheet && used > s.Length.MM()+0.01 {
				wrong = append(wrong, fmt.Sprintf("cut list: %.2f mm cut from a stick of %.2f mm", used, s.Length.MM()))
			}
		}
	}
	for _, p := range a.Parts {
		switch p.Role {
		case detail.Ledger, detail.BlockPly, detail.FootPiece, detail.Backing:
			if cut[p.ID] != 1 {
				wrong = append(wrong, fmt.Sprintf("cut list: %s is cut %d times", p.ID, cut[p.ID]))
			}
			delete(cut, p.ID)
		}
	}
	for id := range cut {
		wrong = append(wrong, "cut list: "+id+" is no piece of the assembly")
	}
	return wrong
}

// wrongCSV holds schedule.csv against the parts.
func wrongCSV(a *detail.Assembly, data []byte) (wrong []string) {
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil || len(rows) < 2 {
		return []string{fmt.Sprintf("schedule.csv: %d rows, %v", len(rows), err)}
	}
	parts, got := partsByMark(a), map[string]int{}
	for _, r := range rows[1:] {
		n := 0
		if _, err := fmt.Sscan(r[2], &n); err != nil {
			wrong = append(wrong, "schedule.csv: quantity "+r[2])
		}
		got[r[0]+" "+r[1]] += n
	}
	for k, n := range parts {
		if got[k] != n {
			wrong = append(wrong, fmt.Sprintf("schedule.csv: %d of %s, %d in the assembly", got[k], k, n))
		}
	}
	return wrong
}
