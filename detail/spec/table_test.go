package spec

import (
	"math"
	"os"
	"regexp"
	"strings"
	"testing"

	"standclear/detail/unit"
)

func systems() []unit.System { return []unit.System{unit.IP, unit.SI} }

// Every default of the table parses and is in range, in both systems: a default must never be worse
// than what a user may type.
func TestTableDefaults(t *testing.T) {
	for _, sys := range systems() {
		describe(keysOf(sys), "", func(path string, k key) {
			for _, typed := range []string{k.usual.of(sys), k.sample.of(sys)} {
				if typed == "" || typed == "auto" && k.auto || k.kind == aSize || k.kind == aList {
					continue
				}
				r := reader{spec: &Spec{}, bad: map[string]bool{}}
				r.one(&k, &node{form: scalar, text: typed}, path)
				if len(r.problems) > 0 {
					t.Errorf("%v %s: %s", sys, path, r.problems.Error())
				}
			}
		})
	}
}

// A default and a reason come together, a range is a range, and what is needed has no default.
func TestTableLaws(t *testing.T) {
	seen := map[string]bool{}
	for _, sys := range systems() {
		describe(keysOf(sys), "", func(path string, k key) {
			id := sys.String() + path
			hasDefault := k.usual.of(sys) != "" || k.follow != nil
			switch {
			case seen[id]:
				t.Errorf("%s stands twice", path)
			case k.about == "":
				t.Errorf("%s says nothing about itself", path)
			case hasDefault && k.why == "" && !strings.HasSuffix(path, "plies.N.material"):
				t.Errorf("%s has a default without a reason", path)
			case k.need && hasDefault:
				t.Errorf("%s is needed and has a default", path)
			case k.need && k.example(sys) == "":
				t.Errorf("%s is needed and has no sample", path)
			case k.ranged && !(k.lo < k.hi):
				t.Errorf("%s: range %v to %v", path, k.lo, k.hi)
			case k.number == nil && k.text == nil && k.keys == nil && k.series == nil && k.option == nil:
				t.Errorf("%s goes nowhere", path)
			}
			seen[id] = true
		})
	}
}

// The ranges keep figures in the wrong unit out: the usual millimetre figure taken for inches is
// refused, and the usual inch figure taken for millimetres wherever a thing must have a size at all.
func TestRangesCatchWrongUnits(t *testing.T) {
	open := map[string]bool{
		"wall.layers.N.thickness": true, // from a membrane to a stud
		"deck.joists.first":       true, // anywhere within a space
		"deck.point_loads.N.x":    true, // bounded by the ledger
	}
	describe(keysOf(unit.IP), "", func(path string, k key) {
		if k.kind != aLength || open[path] {
			return
		}
		for _, typed := range []string{k.usual.ip, k.sample.ip} {
			if v, err := unit.ParseLength(typed); err == nil && k.lo > 0 && float64(v)/inch >= k.lo {
				t.Errorf("%s: %s taken for as many mm would pass", path, typed)
			}
		}
		for _, typed := range []string{k.usual.si, k.sample.si} {
			if v, err := unit.ParseLength(typed); err == nil && v > 0 && float64(v)*inch <= k.hi {
				t.Errorf("%s: %s taken for as many inches would pass", path, typed)
			}
		}
	})
}

// allKeys is the starter file with every SURVEY filled in and every # taken away.
func allKeys(sys unit.System) string {
	commented := regexp.MustCompile(`(?m)^(\s*)#([a-z_]+:|- \{)`)
	s := commented.ReplaceAllString(Starter(sys), "$1$2")
	samples := map[string]string{}
	var section []string
	for _, k := range Keys(sys) {
		samples[k.Path] = k.Sample
	}
	lines := strings.Split(s, "\n")
	for i, line := range lines {
		name := regexp.MustCompile(`^( *)([a-z_]+):`).FindStringSubmatch(line)
		if name != nil {
			section = append(section[:len(name[1])/2:len(name[1])/2], name[2])
		}
		path := strings.Join(section, ".")
		switch {
		case strings.Contains(line, "thickness: SURVEY}"):
			such := regexp.MustCompile(`such as (.*)$`).FindStringSubmatch(line)[1]
			lines[i] = strings.Replace(line, placeholder, such, 1)
		case strings.Contains(line, placeholder):
			lines[i] = strings.Replace(line, placeholder, samples[path], 1)
		}
	}
	return strings.Join(lines, "\n")
}

// A file with every key reads, leaves nothing to defaults but what stands in lists, and its keys are
// exactly those of the table.
func TestEveryKeyReads(t *testing.T) {
	for _, sys := range systems() {
		src := allKeys(sys)
		root, problems := plant("all.yaml", []byte(src))
		if root == nil {
			t.Fatal(problems.Error())
		}
		r := reader{spec: &Spec{}, bad: map[string]bool{}, problems: problems}
		r.spec.Project.System = unitsOf(root)
		r.section(keys(r.spec), root, "", r.top)
		r.fillIn()
		r.crossCheck()
		r.warn()
		if len(r.problems) > 0 {
			t.Fatalf("%v: %s\n%s", sys, r.problems.Error(), src)
		}
		for _, d := range r.spec.Defaults {
			t.Errorf("%v: %s was not given", sys, d.Key)
		}
		for _, p := range paths(keysOf(sys), "") {
			p = strings.ReplaceAll(p, ".N", ".0")
			if _, ok := r.placeOf(p); !ok && !strings.HasPrefix(p, "fasteners.to_") && !strings.HasPrefix(p, "blocks.plies.0.") {
				t.Errorf("%v: %s was not read", sys, p)
			}
		}
	}
}

// Each key refuses nonsense, at its own place and with its own name.
func TestEveryKeyRefuses(t *testing.T) {
	src := []byte(allKeys(unit.IP))
	for _, k := range Keys(unit.IP) {
		path := strings.ReplaceAll(k.Path, ".N", ".0")
		nonsense := "?nonsense?"
		switch k.Form {
		case "a text":
			nonsense = "[a, b]"
		case "a list":
			nonsense = "{a: b}"
		}
		sets := []string{path + "=" + nonsense}
		if strings.HasPrefix(path, "fasteners.to_") {
			sets = []string{"fasteners={to_rim: {diameter: 1/2in, rows: [2in]}, to_block: {diameter: 1/2in, rows: [2in]}}", sets[0]}
		}
		if strings.HasPrefix(path, "blocks.plies.0.") {
			sets = []string{"blocks.plies=[{thickness: 1 1/2in, material: lumber}]", sets[0]}
		}
		_, problems := Read("all.yaml", src, sets)
		found := false
		for _, p := range problems {
			found = found || p.Key == path && p.File == "--set" && !p.Warning
		}
		if !found {
			t.Errorf("%v: no problem with it:\n%s", sets, problems.Error())
		}
	}
}

// Each number refuses what lies just past either end of its range.
func TestEveryRangeHolds(t *testing.T) {
	describe(keysOf(unit.SI), "", func(path string, k key) {
		if !k.ranged {
			return
		}
		for _, v := range []float64{k.lo - 0.01*(k.hi-k.lo), k.hi + 0.01*(k.hi-k.lo)} {
			r := reader{spec: &Spec{}, bad: map[string]bool{}}
			r.one(&k, &node{form: scalar, text: typedAs(k.kind, v)}, path)
			if len(r.problems) != 1 || !strings.Contains(r.problems[0].Given, "is outside") {
				t.Errorf("%s: %s: %s", path, typedAs(k.kind, v), r.problems.Error())
			}
		}
	})
}

// typedAs writes a number in the base unit of its kind.
func typedAs(k kind, v float64) string {
	units := map[kind]string{
		aLength: "mm", aDiameter: "mm", aPrice: "/m", aTemp: "C", someDegreeDays: " K.d", aSpeed: "m/s", aForce: "N", anAreaLoad: "Pa", aStress: "Pa",
	}
	switch k {
	case aShare, aSlope:
		return plainNumber(100*v) + "%"
	case aCount:
		if v < 0 || v < 1 && v > 0 {
			return plainNumber(math.Floor(v))
		}
		return plainNumber(math.Ceil(v))
	}
	return plainNumber(v) + units[k]
}

func TestKeys(t *testing.T) {
	byPath := map[string]Key{}
	for _, k := range Keys(unit.IP) {
		byPath[k.Path] = k
	}
	for _, want := range []Key{
		{Path: "floor.rim.thickness", About: "of the rim, sheathing not counted", Form: "a length", Allowed: "0.25..8 in", Sample: "1 1/2in", Required: true},
		{Path: "doors.N.swing", About: "of the door", Form: "a word", Allowed: "one of in, out, slide", Default: "in", Why: usual},
		{Path: "blocks.height", About: "of the block", Form: "a length", Allowed: "2..24 in", Default: "9 1/4in", Why: "as the ledger", Sample: "9 1/4in"},
		{Path: "fasteners.through.rows", About: "below the top of the ledger, or of the block for to_rim", Form: "a list", Sample: "[2 13/16in, 6 5/8in]", Required: true},
	} {
		if got := byPath[want.Path]; got != want {
			t.Errorf("%+v; want %+v", got, want)
		}
	}
}

// The keys of the frozen project file are all in the table, and the other way round the file has all
// sections: the names are final.
func TestNamesAreFinal(t *testing.T) {
	src, err := os.ReadFile("testdata/deck.yaml")
	if err != nil {
		t.Fatal(err)
	}
	_, problems := Read("deck.yaml", src, nil)
	if len(problems) > 0 {
		t.Error(problems.Error())
	}
	for _, k := range keysOf(unit.IP) {
		if k.name != "assume" && k.name != "rates" && !strings.Contains("\n"+string(src), "\n"+k.name+":") {
			t.Errorf("the project file has no %s:", k.name)
		}
	}
}
