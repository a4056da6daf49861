package design_test

import (
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/air"
	"standclear/detail/check/design"
	"standclear/detail/check/fit"
	"standclear/detail/demo"
	"standclear/detail/same"
	"standclear/detail/spec"
	"standclear/detail/spec/spectest"
	"standclear/detail/unit"
)

// Every field of a project is changed, one at a time. Where the key of the parts stays what it was, the parts must;
// where that of fit and air does, their steps must.
func TestWhatIsKnownByAKeyGoesByIt(t *testing.T) {
	names := demo.Names()
	if testing.Short() {
		names = names[1:2] // the deck has every word tried
	}
	for _, name := range names {
		src, _ := demo.File(name)
		base, problems := spec.Read(name, src, []string{"deck.guard_posts=[30in]", "deck.point_loads=[{name: STAIR, x: 40in, load: 300lb}]", "rates.currency=EUR"})
		if base == nil {
			t.Fatal(problems)
		}
		base.Defaults = base.Defaults[:1] // one stands for all
		was, wasSteps := partsAndSteps(t, base)
		wasParts, wasKey, wasFit := allParts(was), was.Key(), design.FitKey(was)
		alike, steps := 0, 0
		words := []string{"x"}
		if name == "deck" {
			words = everyWord()
		}
		for _, path := range leaves(reflect.ValueOf(base).Elem(), nil) {
			for way := 0; ; way++ {
				s := copied(reflect.ValueOf(base)).Interface().(*spec.Spec)
				if !other(at(reflect.ValueOf(s).Elem(), path), way, words) {
					break
				}
				a, err := detail.Lay(s)
				if err != nil || a.Key() != wasKey {
					break // as will be any other value
				}
				alike++
				now, nowSteps := partsAndSteps(t, s)
				if allParts(now) != wasParts {
					t.Errorf("%s: %s changes the parts and not their key", name, pathName(path))
				}
				if design.FitKey(now) != wasFit {
					continue
				}
				steps++
				if !reflect.DeepEqual(nowSteps, wasSteps) {
					t.Errorf("%s: %s changes the steps of fit or air and not their key", name, pathName(path))
				}
			}
		}
		if alike < 60 || steps < 40 {
			t.Errorf("%s: %d fields leave the parts alone and %d the steps; loads, climate and rates alone are more", name, alike, steps)
		}
	}
}

// allParts tells whether two assemblies have the same parts in the same places.
func allParts(a *detail.Assembly) same.Sum {
	return same.Of(a.Frame, a.Layout.X, a.Blocks, a.HouseJoists, a.DeckJoists, a.Tension, a.Rows, a.Parts)
}

func partsAndSteps(t *testing.T, s *spec.Spec) (*detail.Assembly, check.Report) {
	t.Helper()
	a, err := detail.Build(s)
	if err != nil {
		t.Fatal(err)
	}
	var r check.Report
	fit.Parts(a, &r)
	air.Run(a, &r)
	return a, r
}

// step is one step into a value: a field, a place in a list, or what a pointer points to.
type step struct {
	name  string
	place int // of a field or an item; -1 follows a pointer
}

func pathName(path []step) (s string) {
	for _, p := range path {
		s += p.name
	}
	return s
}

func at(v reflect.Value, path []step) reflect.Value {
	for _, p := range path {
		switch {
		case p.place < 0:
			v = v.Elem()
		case v.Kind() == reflect.Struct:
			v = v.Field(p.place)
		default:
			v = v.Index(p.place)
		}
	}
	return v
}

// leaves returns the ways to all that v holds: values, and lists and pointers themselves.
func leaves(v reflect.Value, path []step) (all [][]step) {
	into := func(w reflect.Value, name string, place int) {
		all = append(all, leaves(w, append(path[:len(path):len(path)], step{name, place}))...)
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			into(v.Field(i), "."+v.Type().Field(i).Name, i)
		}
	case reflect.Slice:
		all = append(all, path)
		for i := range v.Len() {
			into(v.Index(i), "[]", i)
		}
	case reflect.Pointer:
		all = append(all, path)
		if !v.IsNil() {
			into(v.Elem(), "", -1)
		}
	default:
		all = append(all, path)
	}
	return all
}

// everyWord lists the words a project file knows.
func everyWord() []string {
	var words []string
	for _, k := range spec.Keys(unit.IP) {
		if list, ok := strings.CutPrefix(k.Allowed, "one of "); ok {
			words = append(words, strings.Split(list, ", ")...)
		}
	}
	slices.Sort(words)
	return append([]string{"x"}, slices.Compact(words)...)
}

// other gives v another value, in one of several ways counted from 0; false when there are no more.
func other(v reflect.Value, way int, words []string) bool {
	switch k := v.Kind(); {
	case k == reflect.Float64 && way < 2:
		v.SetFloat([]float64{v.Float() + 0.01, v.Float()*1.25 + 0.001}[way]) // the first too little to move a block
	case k == reflect.String && (way == 0 || way < len(words) && slices.Contains(words, v.String())): // any text, or any word for a word
		v.SetString(words[way])
	case way > 0:
		return false
	case k == reflect.Bool:
		v.SetBool(!v.Bool())
	case k == reflect.Int:
		v.SetInt(1 - v.Int()%2)
	case k == reflect.Slice:
		v.Set(reflect.Append(v, reflect.Zero(v.Type().Elem())))
	case k == reflect.Pointer && v.IsNil():
		v.Set(reflect.New(v.Type().Elem()))
		if e := v.Elem(); e.Kind() == reflect.Int || e.Kind() == reflect.Float64 {
			return other(e, 0, words)
		}
	case k == reflect.Pointer:
		v.SetZero()
	default:
		panic(k)
	}
	return true
}

// copied returns a copy of v that shares nothing with it.
func copied(v reflect.Value) reflect.Value {
	c := reflect.New(v.Type()).Elem()
	c.Set(v)
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			c.Set(reflect.New(v.Type().Elem()))
			c.Elem().Set(copied(v.Elem()))
		}
	case reflect.Slice:
		if !v.IsNil() {
			c.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
			for i := range v.Len() {
				c.Index(i).Set(copied(v.Index(i)))
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			c.Field(i).Set(copied(v.Field(i)))
		}
	}
	return c
}

// What is known of many designs is what each would come to alone, whoever asks first.
func TestKnownIsWhatEachComesToAlone(t *testing.T) {
	known := design.NewKnown()
	var wait sync.WaitGroup
	limit := make(chan bool, 4)
	many := uint64(40)
	if testing.Short() {
		many = 8
	}
	for n := range many {
		p := spectest.Random(5000 + n)
		for _, more := range [][]string{nil, {"loads.live=2.2kPa"}, {"blocks.max_spacing=21in"}, {"blocks.max_spacing=534mm"}, {"site.rain=100mm"}, {"deck.storey=upper"}, nil} {
			s, problems := spec.Read(p.Demo, p.Source, append(p.Sets[:len(p.Sets):len(p.Sets)], more...))
			if s == nil {
				t.Logf("%d %v: %v", n, more, problems)
				continue
			}
			if n%3 == 0 {
				words := unit.SI
				s.Wording = &words
			}
			wait.Add(1)
			limit <- true
			go func() {
				defer func() { <-limit; wait.Done() }()
				a, report, results, err := known.Check(s)
				b, wantErr := detail.Build(s)
				if (err == nil) != (wantErr == nil) {
					t.Errorf("%d %v: error %v, alone %v", n, more, err, wantErr)
				}
				if err != nil {
					return
				}
				wantReport, wantResults := design.Check(b)
				if !reflect.DeepEqual(report, wantReport) || !reflect.DeepEqual(results, wantResults) {
					t.Errorf("%d %v: another report than alone", n, more)
				}
				if allParts(a) != allParts(b) || same.Of(a.Spec, a.Layout) != same.Of(b.Spec, b.Layout) {
					t.Errorf("%d %v: another assembly than alone", n, more)
				}
				for _, row := range a.Rows {
					if !slices.Contains(a.Spec.Fasteners.Sets(), row.Set) {
						t.Errorf("%d %v: a row of fasteners belongs to another project", n, more)
					}
				}
			}()
		}
	}
	wait.Wait()
}
