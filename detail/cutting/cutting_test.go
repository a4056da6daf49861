package cutting_test

import (
	"math/rand"
	"reflect"
	"testing"
	"time"

	"standclear/detail/cutting"
)

// Sixteenths of an inch.
func in16(in float64) int64 { return int64(in * 16) }

func TestByHand(t *testing.T) {
	tests := []struct {
		name string
		job  cutting.Job
		want int
	}{
		// floor((120 - 0.5 + 0.125)/7.125) = 16 plies of 7 in from a 10 ft stick: 18 need two
		{"one size", cutting.Job{Stock: in16(120), Kerf: 2, Trim: 8, Pieces: []cutting.Piece{{in16(7), 18}}}, 2},
		// an 8 ft stick holds 13 of them: (96 - 0.5 + 0.125)/7.125 = 13.4
		{"8 ft", cutting.Job{Stock: in16(96), Kerf: 2, Trim: 8, Pieces: []cutting.Piece{{in16(7), 13}}}, 1},
		{"8 ft, one more", cutting.Job{Stock: in16(96), Kerf: 2, Trim: 8, Pieces: []cutting.Piece{{in16(7), 14}}}, 2},
		// 4 + 3 + 3 twice fills two sticks of 10; longest first puts 4 + 4, 3 + 3 + 3 and 3
		{"longest first is one too many", cutting.Job{Stock: 10, Pieces: []cutting.Piece{{4, 2}, {3, 4}}}, 2},
		// kerf turns the exact fit away: 4 + 3 + 3 and two cuts is 12
		{"kerf", cutting.Job{Stock: 10, Kerf: 1, Pieces: []cutting.Piece{{4, 2}, {3, 4}}}, 3},
		{"exactly full, no kerf after the last", cutting.Job{Stock: 11, Kerf: 1, Pieces: []cutting.Piece{{5, 2}}}, 1},
		// pieces over half a stick each need their own: 4, whatever the sum 26/10 says
		{"too long to pair", cutting.Job{Stock: 10, Pieces: []cutting.Piece{{6, 4}, {2, 1}}}, 4},
		// a begun stick with room for 3 + 3 (no kerf) saves a new one
		{"begun", cutting.Job{Stock: 10, Begun: []int64{6}, Pieces: []cutting.Piece{{4, 1}, {3, 4}}}, 1},
		{"begun and enough", cutting.Job{Stock: 10, Begun: []int64{6}, Pieces: []cutting.Piece{{3, 2}}}, 0},
		{"nothing", cutting.Job{Stock: 10}, 0},
	}
	for _, tt := range tests {
		p := cutting.Solve(tt.job)
		if p.New != tt.want || !p.Exact || p.Least != tt.want {
			t.Errorf("%s: %d sticks, at least %d, exact %t; want %d", tt.name, p.New, p.Least, p.Exact, tt.want)
		}
		holds(t, tt.name, tt.job, p)
	}
}

// holds checks that every piece is cut once and no stick is cut beyond its length.
func holds(t *testing.T, name string, j cutting.Job, p cutting.Plan) {
	t.Helper()
	got := make([]int, len(j.Pieces))
	for i, row := range p.Sticks {
		need, n := int64(0), 0
		for k, c := range row {
			got[k] += c
			n += c
			need += int64(c) * j.Pieces[k].Length
		}
		room := j.Stock - j.Trim - int64(max(0, n-1))*j.Kerf
		if i < len(j.Begun) {
			room = j.Begun[i] - int64(n)*j.Kerf
		}
		if need > room {
			t.Errorf("%s: stick %d takes %d of %d", name, i+1, need, room)
		}
	}
	for k := range got {
		if got[k] != j.Pieces[k].Count {
			t.Errorf("%s: piece %d cut %d times, want %d", name, k, got[k], j.Pieces[k].Count)
		}
	}
	if len(p.Sticks) != p.New+len(j.Begun) {
		t.Errorf("%s: %d sticks listed, %d new and %d begun", name, len(p.Sticks), p.New, len(j.Begun))
	}
}

// The fewest by trying every place for every piece, one after another, is the measure.
func TestAgainstEveryPlace(t *testing.T) {
	rnd := rand.New(rand.NewSource(3))
	for range 400 {
		j := cutting.Job{Stock: int64(12 + rnd.Intn(20)), Kerf: int64(rnd.Intn(2)), Trim: int64(rnd.Intn(2))}
		for range 1 + rnd.Intn(4) {
			j.Pieces = append(j.Pieces, cutting.Piece{Length: int64(2 + rnd.Intn(9)), Count: 1 + rnd.Intn(3)})
		}
		if rnd.Intn(3) == 0 {
			j.Begun = []int64{int64(rnd.Intn(12))}
		}
		p := cutting.Solve(j)
		holds(t, "random", j, p)
		if want := everyPlace(j); p.New != want || !p.Exact {
			t.Fatalf("%+v: %d sticks, exact %t; want %d", j, p.New, p.Exact, want)
		}
	}
}

func everyPlace(j cutting.Job) int {
	var all []int64
	for _, p := range j.Pieces {
		for range p.Count {
			all = append(all, p.Length+j.Kerf)
		}
	}
	best := len(all)
	var put func(i int, room []int64)
	put = func(i int, room []int64) {
		if len(room)-len(j.Begun) >= best {
			return
		}
		if i == len(all) {
			best = len(room) - len(j.Begun)
			return
		}
		for k := range room {
			if room[k] >= all[i] {
				room[k] -= all[i]
				put(i+1, room)
				room[k] += all[i]
			}
		}
		put(i+1, append(room[:len(room):len(room)], j.Stock-j.Trim+j.Kerf-all[i]))
	}
	put(0, append([]int64(nil), j.Begun...))
	return best
}

func TestSaysWhenItGaveUp(t *testing.T) {
	// sixteen odd lengths with little to spare: one filling tried is not enough to know
	j := cutting.Job{Stock: 1000, Effort: 1}
	for i := range 16 {
		j.Pieces = append(j.Pieces, cutting.Piece{Length: int64(201 + 17*i), Count: 3})
	}
	p := cutting.Solve(j)
	holds(t, "gave up", j, p)
	if p.Exact || p.Least >= p.New {
		t.Errorf("%d sticks, at least %d, exact %t: nothing was proved", p.New, p.Least, p.Exact)
	}
	if p.Least < 16 { // 16 lengths of 328.5 in the mean, 48 of them: 15768/1000
		t.Errorf("at least %d, want 16 by length alone", p.Least)
	}
}

func TestBoundedTimeAndSameAnswer(t *testing.T) {
	j := cutting.Job{Stock: 1000, Kerf: 3, Trim: 12}
	for i := range 24 {
		j.Pieces = append(j.Pieces, cutting.Piece{Length: int64(101 + 13*i), Count: 5})
	}
	start := time.Now()
	p := cutting.Solve(j)
	if d := time.Since(start); d > 2*time.Second {
		t.Errorf("took %v", d)
	}
	holds(t, "many", j, p)
	if q := cutting.Solve(j); !reflect.DeepEqual(p, q) {
		t.Error("two runs differ")
	}
}

func TestTooLong(t *testing.T) {
	p := cutting.Solve(cutting.Job{Stock: 10, Trim: 1, Pieces: []cutting.Piece{{10, 1}, {9, 1}, {0, 2}}})
	if p.New != 1 || !reflect.DeepEqual(p.Unfit, []int{0, 2}) {
		t.Errorf("%d sticks, unfit %v; want 1 and pieces 0 and 2 unfit", p.New, p.Unfit)
	}
}
