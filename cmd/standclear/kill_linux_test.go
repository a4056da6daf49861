package main

import (
	"flag"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

var (
	kills    = flag.Int("kills", 20, "how many runs are killed at a random time")
	killSeed = flag.Uint64("killseed", 1, "seed of those times")
)

// Whoever writes is killed at a random moment: the folder holds one set or the other, whole, with what the user put
// there, and the next run takes away what the killed one left beside it.
func TestKilledWhileWriting(t *testing.T) {
	r := rand.New(rand.NewPCG(*killSeed, 0))
	parent := t.TempDir()
	dir := filepath.Join(parent, "set")
	if err := writeAll(dir, generation(1)); err != nil {
		t.Fatal(err)
	}
	mine := map[string]string{"notes.txt": "mine", "details/own.dxf": "mine", "sub/deeper/photo": "mine"}
	for n, s := range mine {
		if err := os.MkdirAll(filepath.Dir(filepath.Join(dir, n)), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, n), []byte(s), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want := map[byte]map[string]string{}
	for g := 1; g <= 2; g++ {
		w := map[string]string{}
		for _, f := range generation(g) {
			w[f.name] = string(f.data)
		}
		for n, s := range mine {
			w[n] = s
		}
		want[byte('0'+g)] = w
	}
	many := 3 * *kills // quick, and only some hit the moment that counts
	seen, left := map[byte]int{}, 0
	for i := range many {
		wait := time.Duration(r.IntN(40_000)) * time.Microsecond
		cmd := itself(t, parent, []string{writeLoop + "=" + dir})
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		if _, err := out.Read(make([]byte, 1)); err != nil {
			t.Fatal(err)
		}
		time.Sleep(wait)
		if err := cmd.Process.Kill(); err != nil {
			t.Fatal(err)
		}
		cmd.Wait() // killed: it has no good end
		if code := cmd.ProcessState.ExitCode(); code != -1 {
			t.Fatalf("run %d left by itself with %d", i, code)
		}
		got := tree(t, dir)
		g := got["sheet-01"][0]
		if ok, at := alike(got, want[g]); !ok {
			t.Fatalf("seed %d, run %d, killed after %v: the folder is not whole: %s", *killSeed, i, wait, at)
		}
		seen[g]++
		if all, _ := os.ReadDir(parent); len(all) > 1 {
			left++
		}
	}
	t.Logf("seed %d: %d runs killed, generation 1 stayed %d times, 2 %d times, %d left a folder beside", *killSeed, many, seen['1'], seen['2'], left)
	if err := writeAll(dir, generation(1)); err != nil {
		t.Fatal(err)
	}
	if all, _ := os.ReadDir(parent); len(all) != 1 {
		t.Errorf("%d entries beside the set after a run that came to its end", len(all)-1)
	}
}

// The whole command is killed at a random moment of its run.
func TestKilledCommand(t *testing.T) {
	r := rand.New(rand.NewPCG(*killSeed, 1))
	parent := t.TempDir()
	draw := func(name, dir string) *exec.Cmd {
		return itself(t, parent, nil, "draw", "--no-heat", "--sheet", "A-201", "--only", "svg", "--set", "project.name="+name, "--out", dir)
	}
	want := map[string]map[string]string{}
	var took time.Duration
	for _, name := range []string{"OLD", "NEW"} {
		at := time.Now()
		if out, err := draw(name, name).CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		took = time.Since(at)
		want[name] = tree(t, filepath.Join(parent, name))
	}
	if out, err := draw("OLD", "set").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	seen := map[string]int{}
	for i := range *kills {
		name := []string{"NEW", "OLD"}[i%2]
		wait := time.Duration(r.Int64N(int64(took) * 5 / 4))
		cmd := draw(name, "set")
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(wait)
		cmd.Process.Kill() // perhaps it came to its end
		cmd.Wait()
		got := tree(t, filepath.Join(parent, "set"))
		now := "OLD"
		if strings.Contains(got["A-201.svg"], "NEW") {
			now = "NEW"
		}
		if ok, at := alike(got, want[now]); !ok {
			t.Fatalf("seed %d, run %d, killed after %v: the folder is not whole: %s", *killSeed, i, wait, at)
		}
		seen[now]++
	}
	t.Logf("seed %d: %d commands killed within %v: OLD %d times, NEW %d times", *killSeed, *kills, took*5/4, seen["OLD"], seen["NEW"])
}
