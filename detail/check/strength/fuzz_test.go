package strength

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// wild returns v, or now and then nothing, its negative, or something absurd.
func wild(r *rand.Rand, v float64, rate float64) float64 {
	if r.Float64() > rate {
		return v * (0.5 + r.Float64())
	}
	return []float64{0, -v, v * 1e-4, v * 1e3, 1e11, 1e-9, math.NaN(), math.Inf(1)}[r.IntN(8)]
}

// randomModel changes scenario B at random; rate is the share of absurd values.
func randomModel(seed uint64, rate float64) Model {
	r := rand.New(rand.NewPCG(seed, 99))
	m := scenarioB()
	if r.IntN(3) == 0 {
		m = scenarioA()
		m.Assume = Assume{}
	}
	shuffle(r, reflect.ValueOf(&m).Elem(), rate)
	if r.IntN(3) == 0 {
		set := *m.Fasteners.Through
		other := set
		m.Fasteners = Fasteners{ToRim: &set, ToBlock: &other}
	}
	if r.IntN(3) == 0 {
		m.Blocks.Pad = Pad{unit.Length(wild(r, 12, rate)), psip(wild(r, 30, rate)), r.IntN(4) - 1, r.IntN(2) == 0}
	}
	if r.IntN(4) == 0 {
		m.Joists.At = lengths(1, 17, 33, 49, 59)
		m.Ledger.Splices = lengths(60 * r.Float64())
		m.PointLoads = []PointLoad{{"p", unit.Length(wild(r, 700, rate)), unit.Force(wild(r, 900, rate))}}
	}
	return m
}

// shuffle walks a value and changes numbers, kinds and flags.
func shuffle(r *rand.Rand, v reflect.Value, rate float64) {
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(near1(r, v.Float(), rate))
	case reflect.Bool:
		if r.IntN(12) == 0 {
			v.SetBool(!v.Bool())
		}
	case reflect.Int:
		if r.IntN(12) == 0 {
			v.SetInt(int64(r.IntN(6) - 1)) // kinds no list knows among them
		}
	case reflect.Pointer:
		if v.IsNil() {
			return
		}
		if r.IntN(12) == 0 && v.Elem().Kind() == reflect.Float64 {
			v.SetZero()
			return
		}
		fresh := reflect.New(v.Elem().Type())
		fresh.Elem().Set(v.Elem())
		shuffle(r, fresh.Elem(), rate)
		v.Set(fresh)
	case reflect.Struct:
		for i := range v.NumField() {
			shuffle(r, v.Field(i), rate)
		}
	case reflect.Slice:
		if v.Len() == 0 {
			return
		}
		fresh := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(fresh, v)
		for i := range fresh.Len() {
			shuffle(r, fresh.Index(i), rate)
		}
		if r.IntN(25) == 0 {
			fresh = fresh.Slice(0, r.IntN(fresh.Len()))
		}
		v.Set(fresh)
	}
}

// near1 keeps most numbers near their own value, so that most models can be worked out.
func near1(r *rand.Rand, x, rate float64) float64 {
	if r.Float64() < rate {
		return wild(r, x, 1)
	}
	return x * (0.97 + 0.06*r.Float64())
}

// sound checks what must hold of any report.
func sound(t *testing.T, m Model) check.Report {
	t.Helper()
	r, res := Run(m)
	again, resAgain := Run(m)
	if !reflect.DeepEqual(r, again) || !reflect.DeepEqual(res, resAgain) {
		t.Error("the same model gives another report")
	}
	if faults := oddNumbers(reflect.ValueOf(res), "results", math.MaxFloat64); faults != nil {
		t.Errorf("results: %v", faults)
	}
	seen := map[string]bool{}
	for _, s := range r.Steps {
		if s.ID == "" || seen[s.ID] {
			t.Errorf("id %q is empty or used twice", s.ID)
		}
		seen[s.ID] = true
		if s.Name == "" {
			t.Errorf("%s has no name", s.ID)
		}
		if s.Verdict > check.OK && s.Reason == "" {
			t.Errorf("%s is %v without a reason", s.ID, s.Verdict)
		}
		if s.Ratio > check.Beyond {
			t.Errorf("%s has a ratio of %g", s.ID, s.Ratio)
		}
		if s.Limit != nil && s.Verdict == check.Info {
			t.Errorf("%s has a limit and no verdict", s.ID)
		}
		if faults := oddNumbers(reflect.ValueOf(s), s.ID, math.MaxFloat64); faults != nil {
			t.Errorf("%v", faults)
		}
	}
	if len(r.Steps) == 0 || len(r.Cautions) < 8 || len(r.Assumptions) < 10 {
		t.Errorf("%d steps, %d cautions, %d assumptions", len(r.Steps), len(r.Cautions), len(r.Assumptions))
	}
	return r
}

func FuzzRun(f *testing.F) {
	for seed := range uint64(40) {
		f.Add(seed, 0.02)
	}
	f.Add(uint64(1), 0.0)
	f.Add(uint64(2), 0.5)
	f.Fuzz(func(t *testing.T, seed uint64, rate float64) {
		sound(t, randomModel(seed, math.Mod(math.Abs(rate), 1)))
	})
}

// Most of the random models must be worked out to the end, or the fuzz test looks at nothing.
func TestRandomModelsAreWorkedOut(t *testing.T) {
	done := 0
	for seed := range uint64(300) {
		r := sound(t, randomModel(seed, 0.002))
		if r.Find("tie_rating") != nil {
			done++
		}
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
	if done < 150 {
		t.Errorf("%d of 300 models were worked out", done)
	}
}

func TestEmptyModel(t *testing.T) {
	r := sound(t, Model{})
	if r.Worst() != check.NotChecked {
		t.Errorf("an empty model is %v, want NOT CHECKED", r.Worst())
	}
}
