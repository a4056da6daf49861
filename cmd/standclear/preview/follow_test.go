package preview

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// However a file is saved, what it says then is shown, and what cannot be read is told over what was.
func TestFollowsTheFile(t *testing.T) {
	r := start(t, "A-1", plainRead, quick)
	r.until("the first drawing", good)
	sheets := func(want string) func(state) bool {
		return func(s state) bool { return good(s) && fmt.Sprint(s.Sheets) == want }
	}
	problem := func(want string) func(state) bool {
		return func(s state) bool { return len(s.Problems) == 1 && strings.Contains(s.Problems[0], want) }
	}
	r.save("A-2")
	r.until("written over", sheets("[{A-2 SHEET A-2}]"))
	past, future := time.Now().Add(-time.Hour), time.Now().Add(time.Hour)
	at := func(name string, when time.Time) {
		t.Helper()
		if err := os.Chtimes(name, when, when); err != nil {
			t.Fatal(err)
		}
	}
	at(r.file, past)
	time.Sleep(10 * quick.poll) // that it is old is seen
	other := r.file + "~"
	if err := os.WriteFile(other, []byte("A-3"), 0o666); err != nil {
		t.Fatal(err)
	}
	at(other, past)
	if err := os.Rename(other, r.file); err != nil {
		t.Fatal(err)
	}
	r.until("renamed over it, same size and time", sheets("[{A-3 SHEET A-3}]"))
	r.save("A-4")
	at(r.file, future)
	r.until("of a time to come", sheets("[{A-4 SHEET A-4}]"))
	r.save("A-3")
	at(r.file, future)
	r.until("the same file, size and time", sheets("[{A-3 SHEET A-3}]"))
	r.save("A-3 bad")
	if s := r.until("a mistake", problem("deck.yaml:1:2: ")); fmt.Sprint(s.Sheets) != "[{A-3 SHEET A-3}]" || s.Drawing == 0 {
		t.Errorf("with a mistake in the file the last good sheets are gone: %+v", s)
	}
	r.save("panic")
	r.until("a fault", problem("a fault of the program, not of your input: a number is missing"))
	r.save("A-3")
	r.until("mended", sheets("[{A-3 SHEET A-3}]"))
	if err := os.Remove(r.file); err != nil {
		t.Fatal(err)
	}
	r.until("no file", problem("deck.yaml: the project file cannot be read: no such file or directory"))
	if err := os.Mkdir(r.file, 0o777); err != nil {
		t.Fatal(err)
	}
	r.until("a folder", problem("it is not a regular file"))
	if err := os.Remove(r.file); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(other, []byte("A-3"), 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(other, r.file); err != nil {
		t.Fatal(err)
	}
	r.until("the file again, as it was", sheets("[{A-3 SHEET A-3}]"))
}

// A file caught half written is not told as a mistake when the rest comes at once.
func TestHalfWritten(t *testing.T) {
	l := quick
	l.settle = 2 * time.Second
	var halves atomic.Int32
	r := start(t, "A-1", func(ctx context.Context, src []byte, publish func(Model)) []string {
		if string(src) == "bad" {
			halves.Add(1)
		}
		return plainRead(ctx, src, publish)
	}, l)
	first := r.until("the first drawing", good)
	r.save("bad")
	for end := time.Now().Add(patience); halves.Load() == 0 && time.Now().Before(end); {
		time.Sleep(time.Millisecond)
	}
	r.save("A-1 A-2")
	s := r.until("the whole file", func(s state) bool { return len(s.Sheets) == 2 || len(s.Problems) > 0 })
	if len(s.Problems) > 0 || s.Number != first.Number+1 || halves.Load() != 1 {
		t.Errorf("%d halves read; then %+v", halves.Load(), s)
	}
}

// A reading that is overtaken is given up, shows nothing more, and no more than two are under way.
func TestOvertaken(t *testing.T) {
	var now, most atomic.Int32
	var once sync.Once
	begun := make(chan bool)
	r := start(t, "slow", func(ctx context.Context, src []byte, publish func(Model)) []string {
		n := now.Add(1)
		defer now.Add(-1)
		for m := most.Load(); n > m && !most.CompareAndSwap(m, n); m = most.Load() {
		}
		if strings.HasPrefix(string(src), "slow") {
			once.Do(func() { close(begun) })
			<-ctx.Done()
			time.Sleep(20 * time.Millisecond) // does not hear at once
		}
		return plainRead(ctx, src, publish)
	}, quick)
	<-begun
	for i := range 20 {
		r.save(fmt.Sprint("slow ", i))
		time.Sleep(2 * quick.poll)
	}
	r.save("A-1")
	s := r.until("the last", good)
	if fmt.Sprint(s.Sheets) != "[{A-1 SHEET A-1}]" || s.Drawing != 1 {
		t.Errorf("drawing %d of %v, want the first to be of the last file", s.Drawing, s.Sheets)
	}
	if m := most.Load(); m > int32(quick.reading) {
		t.Errorf("%d readings at once", m)
	}
}

// A sheet is drawn once, though many ask, and the one that is looked at is drawn before anybody asks.
func TestDrawnOnce(t *testing.T) {
	var drawn atomic.Int32
	r := start(t, "A-1 A-2 torn", func(ctx context.Context, src []byte, publish func(Model)) []string {
		return plainRead(ctx, src, func(m Model) {
			draw := m.Draw
			m.Draw = func(id string) ([]byte, error) {
				drawn.Add(1)
				return draw(id)
			}
			publish(m)
		})
	}, usual)
	r.until("a drawing", good)
	if n := drawn.Load(); n != 0 {
		t.Errorf("%d sheets drawn for nobody", n)
	}
	var all sync.WaitGroup
	for range 20 {
		all.Go(func() {
			if code, h, body, err := r.try("GET", "/sheet/A-2?drawing=1", nil); err != nil || code != 200 || body != "<svg>A-2</svg>" || h.Get("Content-Type") != "image/svg+xml" {
				t.Errorf("%d %s %v", code, body, err)
			}
		})
	}
	all.Wait()
	if n := drawn.Load(); n != 1 {
		t.Errorf("drawn %d times", n)
	}
	if code, _, body := r.ask("GET", "/sheet/torn?drawing=1", nil); code != 500 || !strings.Contains(body, "sheet torn: a fault of the program, not of your input: no outline") {
		t.Errorf("a sheet that cannot be drawn: %d %s", code, body)
	}
	r.ask("GET", "/sheet/A-1?drawing=1", nil)
	before := drawn.Load()
	r.save("A-1 A-2")
	r.until("the next drawing", func(s state) bool { return s.Drawing == 2 })
	for end := time.Now().Add(patience); drawn.Load() == before && time.Now().Before(end); {
		time.Sleep(time.Millisecond)
	}
	if n := drawn.Load() - before; n != 1 {
		t.Errorf("%d sheets drawn before they were asked for", n)
	}
}

func TestReadFile(t *testing.T) {
	dir := t.TempDir()
	big := filepath.Join(dir, "big")
	f, err := os.Create(big)
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(f.Truncate(mostBytes+1), f.Close()); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{
		dir:                         "it is not a regular file",
		filepath.Join(dir, "none"):  "no such file or directory",
		big:                         "it is larger than 16 MB",
		filepath.Join(big, "below"): "not a directory",
	} {
		if _, err := ReadFile(name); err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", name, err, want)
		}
	}
}
