package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"standclear/cmd/standclear/preview"
	"standclear/detail/demo"
)

// followed reads the project once and returns what was published. The context ends after so many models.
func followed(t *testing.T, v *follower, src []byte, most int) ([]preview.Model, []string) {
	t.Helper()
	ctx, end := context.WithCancel(context.Background())
	defer end()
	var got []preview.Model
	problems := v.read(ctx, src, func(m preview.Model) {
		if got = append(got, m); len(got) == most {
			end()
		}
	})
	return got, problems
}

func demoFile(t *testing.T, name string) []byte {
	t.Helper()
	b, ok := demo.File(name)
	if !ok {
		t.Fatalf("there is no demo %s", name)
	}
	return b
}

func sheetsOf(m preview.Model) (ids []string) {
	for _, e := range m.Sheets {
		ids = append(ids, e.ID)
	}
	return ids
}

// With the heat known there is one model, and its sheets are those that draw writes, to the byte.
func TestPreviewShowsWhatIsDrawn(t *testing.T) {
	cache := t.TempDir()
	t.Setenv("XDG_CACHE_HOME", cache)
	if err := copyKept(cache); err != nil {
		t.Fatal(err)
	}
	models, problems := followed(t, &follower{name: "demo deck"}, demoFile(t, "deck"), 9)
	if len(models) != 1 || len(problems) > 0 {
		t.Fatalf("%d models, problems %q; want one model", len(models), problems)
	}
	m := models[0]
	if m.Doing != "" || m.Checks.Title != "PENNANT HOUSE - REAR DECK LEDGER" || len(m.Checks.Rows) < 100 || m.Checks.Bad {
		t.Errorf("%q, %q, %d checks, bad %v", m.Doing, m.Checks.Title, len(m.Checks.Rows), m.Checks.Bad)
	}
	golden := filepath.Join("..", "..", "testdata", "golden", "deck")
	files, err := filepath.Glob(filepath.Join(golden, "*.svg"))
	if err != nil || len(files) != len(m.Sheets) {
		t.Fatalf("%d sheets, %d are golden (%v): %v", len(m.Sheets), len(files), err, sheetsOf(m))
	}
	for _, id := range []string{"A-201", "A-311", "S-502-2"} {
		want, err := os.ReadFile(filepath.Join(golden, id+".svg"))
		if err != nil {
			t.Fatal(err)
		}
		_, want, _ = bytes.Cut(want, []byte("?>\n"))
		if got, err := m.Draw(id); err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is not what draw writes (%v)", id, err)
		}
	}
}

// While the heat is not known its checks are NOT CHECKED, its sheets are not there, and what was solved is kept
// for the next time, in memory alone.
func TestPreviewWithoutHeat(t *testing.T) {
	cache := t.TempDir()
	t.Setenv("XDG_CACHE_HOME", cache)
	v := &follower{name: "deck.yaml"}
	src := demoFile(t, "deck")
	models, _ := followed(t, v, src, 1)
	if len(models) != 1 {
		t.Fatalf("%d models after the end", len(models))
	}
	m := models[0]
	if m.Doing != solving || slices.Contains(sheetsOf(m), "A-311") {
		t.Errorf("says %q, sheets %v", m.Doing, sheetsOf(m))
	}
	open := 0
	for _, r := range m.Checks.Rows {
		if slices.Contains(r.Cells, "NOT CHECKED") {
			open++
		}
	}
	if open == 0 || strings.Contains(m.Checks.Verdict, " 0 not checked") {
		t.Errorf("%d rows are NOT CHECKED; %s", open, m.Checks.Verdict)
	}

	j, _, err := v.src.start(v.name, src)
	if err != nil {
		t.Fatal(err)
	}
	_, key, _ := v.known(j)
	heat := readResult(filepath.Join(keptHeat, key+".json"))
	if heat == nil {
		t.Fatalf("the heat of the deck is not kept as %s", key)
	}
	for i := range mostSolved + 5 {
		v.keep(strings.Repeat("x", i), heat)
	}
	v.keep(key, heat)
	if len(v.solved) != mostSolved {
		t.Errorf("%d results held", len(v.solved))
	}
	models, _ = followed(t, v, src, 9)
	if len(models) != 1 || models[0].Doing != "" || !slices.Contains(sheetsOf(models[0]), "A-311") {
		t.Errorf("with the heat solved before: %d models", len(models))
	}
	if left, err := os.ReadDir(cache); err != nil || len(left) > 0 {
		t.Errorf("written to the cache folder: %v %v", left, err)
	}
	v.src.heat.off = true
	models, _ = followed(t, v, src, 9)
	if len(models) != 1 || models[0].Doing != "" || !strings.Contains(models[0].Checks.Verdict, "not checked") {
		t.Errorf("with --no-heat: %d models", len(models))
	}
}

// A failing design is shown at once, and again with the changes that mend it, while its sheets are being drawn.
func TestPreviewOfAFailingDesign(t *testing.T) {
	name := filepath.Join("..", "..", "testdata", "projects", "deck-as-listed.yaml")
	src, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	v := &follower{name: name}
	v.src.heat.off = true
	var models []preview.Model
	var drawing sync.WaitGroup
	v.read(context.Background(), src, func(m preview.Model) {
		models = append(models, m)
		drawing.Go(func() {
			for _, id := range []string{"A-301", "S-503", "A-101", "S-501"} {
				if b, err := m.Draw(id); err != nil || len(b) == 0 {
					t.Errorf("%s: %d bytes, %v", id, len(b), err)
				}
			}
		})
	})
	drawing.Wait()
	if len(models) != 2 {
		t.Fatalf("%d models, want the first and the mended", len(models))
	}
	if !strings.HasPrefix(models[0].Doing, mending) || models[1].Doing != "" || !models[0].Checks.Bad {
		t.Errorf("%q then %q", models[0].Doing, models[1].Doing)
	}
	j, _, err := v.src.start(name, src)
	if err != nil {
		t.Fatal(err)
	}
	j.mend(context.Background())
	want := j.warmed(nil, "left out by --no-heat").checksPage(sheetsOf(models[1]))
	for i, r := range models[1].Checks.Rows {
		if !slices.Equal(r.Cells, want.Rows[i].Cells) {
			t.Errorf("row %d: %q, want %q", i, r.Cells, want.Rows[i].Cells)
		}
	}
}

func TestPreviewOfMistakes(t *testing.T) {
	v := &follower{name: "deck.yaml"}
	models, problems := followed(t, v, []byte("ledger:\n  length: 14.8\n"), 9)
	if len(models) != 0 || !slices.ContainsFunc(problems, func(p string) bool {
		return strings.HasPrefix(p, `deck.yaml:2:11: ledger.length: "14.8" has no unit`)
	}) {
		t.Errorf("%d models, problems %q", len(models), problems)
	}
}
