package sweep

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"standclear/detail/spec"
	"standclear/detail/trial"
	"standclear/detail/unit"
)

// Bounds of one sweep (judgement).
const (
	MostAxes    = 3
	MostDesigns = 100000
)

// Axis is one parameter that varies.
type Axis struct {
	Key    string
	Points []Point
	Scaled bool // the points are numbers that rise, and At says where each stands
}

// Point is one value of a parameter.
type Point struct {
	Text string   // as it is printed
	Sets []string // KEY=VALUE, as --set takes them
	At   float64  // of a scaled axis, in the base unit of its quantity
}

// Parse reads an axis: a key, an equals sign, and values or ranges with commas between.
//
//	blocks.max_spacing=24in..96in/4in          from, to, and the step after a slash
//	fasteners.through.diameter=1/2in,5/8in     one after the other
//	blocks.plies=[1 1/2in, 1 1/2in],[3in]      a list in brackets is one value
//	fasteners.through.diameter=1/2in with fasteners.through.hole=9/16in, 5/8in with fasteners.through.hole=11/16in
//
// The error names the part, what was given and what is allowed.
func Parse(text string, sys unit.System) (Axis, error) {
	key, values, ok := strings.Cut(text, "=")
	key = strings.TrimSpace(key)
	if !ok || key == "" || strings.TrimSpace(values) == "" {
		return Axis{}, fmt.Errorf("given %q; KEY=FROM..TO/STEP or KEY=VALUE,VALUE is needed, such as blocks.max_spacing=24in..96in/4in", text)
	}
	if err := known(key, sys); err != nil {
		return Axis{}, err
	}
	a := Axis{Key: key}
	for _, item := range trial.Commas(values) {
		if item == "" {
			return a, fmt.Errorf("%s: given %q; a value stands before and after each comma", key, values)
		}
		item, more, _ := strings.Cut(item, " with ")
		also, err := together(more, sys)
		if err != nil {
			return a, fmt.Errorf("%s: %w", key, err)
		}
		all := []string{item}
		if from, rest, isRange := strings.Cut(item, ".."); isRange && item[0] != '[' {
			to, step, ok := cutLast(rest)
			if !ok {
				return a, fmt.Errorf("%s: given %q; the step of a range stands after a slash with a unit of its own, such as 24in..96in/4in", key, item)
			}
			if all, err = steps(from, to, step); err != nil {
				return a, fmt.Errorf("%s: given %q; %w", key, item, err)
			}
		}
		for _, v := range all {
			a.Points = append(a.Points, Point{Text: v, Sets: append([]string{key + "=" + v}, also...)})
		}
		if len(a.Points) > MostDesigns {
			return a, fmt.Errorf("%s: more than %d values", key, MostDesigns)
		}
	}
	a.scale()
	return a, nil
}

// together reads the further settings that go with a value, with "and" between.
func together(text string, sys unit.System) ([]string, error) {
	if text = strings.TrimSpace(text); text == "" {
		return nil, nil
	}
	var out []string
	for _, s := range strings.Split(text, " and ") {
		key, v, ok := strings.Cut(strings.TrimSpace(s), "=")
		if !ok || v == "" {
			return nil, fmt.Errorf("given %q after with; KEY=VALUE is needed", s)
		}
		if err := known(key, sys); err != nil {
			return nil, err
		}
		out = append(out, key+"="+v)
	}
	return out, nil
}

// known says whether a key can stand in a project file.
func known(key string, sys unit.System) error {
	parts := strings.Split(key, ".")
	for i, p := range parts {
		if _, err := strconv.Atoi(p); err == nil {
			parts[i] = "N"
		}
	}
	path := strings.Join(parts, ".")
	for _, k := range spec.Keys(sys) {
		if k.Path == path || strings.HasPrefix(k.Path, path+".N") || k.Path+".N" == path {
			return nil
		}
	}
	return fmt.Errorf("%q is no key of a project file that takes a value; standclear new prints them all", key)
}

// cutLast cuts TO/STEP where the step begins: 5/8in/1/8in is 5/8in and 1/8in. The slash of a fraction stands
// between digits.
func cutLast(s string) (to, step string, ok bool) {
	for i := 1; i < len(s); i++ {
		if s[i] == '/' && !digit(s[i-1]) {
			return strings.TrimSpace(s[:i]), strings.TrimSpace(s[i+1:]), len(s) > i+1
		}
	}
	to, step, ok = strings.Cut(s, "/") // bare numbers: 2..6/2
	return strings.TrimSpace(to), strings.TrimSpace(step), ok && step != "" && !strings.Contains(step, "/")
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// steps lists the values of a range, both ends among them when the step meets them.
func steps(from, to, step string) ([]string, error) {
	a, u, ok1 := figure(from)
	b, v, ok2 := figure(to)
	d, w, ok3 := figure(step)
	print := func(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) + u }
	if !ok1 || !ok2 || !ok3 || u != v || u != w {
		l, err1 := unit.ParseLength(from)
		m, err2 := unit.ParseLength(to)
		n, err3 := unit.ParseLength(step)
		if err := errors.Join(err1, err2, err3); err != nil {
			return nil, errors.New("from, to and step are numbers of one unit, or lengths")
		}
		a, b, d = l.Inches(), m.Inches(), n.Inches()
		print = func(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) + "in" }
		if strings.HasSuffix(strings.TrimSpace(step), "m") { // mm, cm or m
			a, b, d = l.MM(), m.MM(), n.MM()
			print = func(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) + "mm" }
		}
	}
	if !(d > 0) {
		return nil, errors.New("the step must be more than 0")
	}
	n := math.Floor(math.Abs(b-a)/d + 1e-9)
	if n >= MostDesigns {
		return nil, fmt.Errorf("that is more than %d values", MostDesigns)
	}
	if b < a {
		d = -d
	}
	var out []string
	for i := 0.0; i <= n; i++ {
		out = append(out, print(math.Round((a+i*d)*1e9)/1e9))
	}
	return out, nil
}

// plain is a decimal number and the unit behind it.
var plain = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^\s*([+-]?[0-9]*\.?[0-9]+)\s*([^0-9./\s].*)?$`)
})

func figure(s string) (v float64, u string, ok bool) {
	m := plain().FindStringSubmatch(s)
	if m == nil {
		return 0, "", false
	}
	v, err := strconv.ParseFloat(m[1], 64)
	return v, strings.TrimSpace(m[2]), err == nil
}

// scale says where the points stand when they are numbers of one kind, rising or falling all the way.
func (a *Axis) scale() {
	unitOf := ""
	for i := range a.Points {
		p := &a.Points[i]
		v, u, ok := figure(p.Text)
		if l, err := unit.ParseLength(p.Text); err == nil {
			v, u, ok = l.MM(), "length", true
		} else if d, isSize := strings.CutPrefix(p.Text, "M"); isSize {
			v, _, ok = figure(d)
			u = "length"
		}
		if !ok || i > 0 && u != unitOf {
			return
		}
		p.At, unitOf = v, u
	}
	for i := 2; i < len(a.Points); i++ {
		if (a.Points[i].At > a.Points[i-1].At) != (a.Points[1].At > a.Points[0].At) {
			return
		}
	}
	a.Scaled = len(a.Points) > 1 && a.Points[0].At != a.Points[1].At
}

// Designs is how many designs the axes make together; an error when that is too many, or none.
func Designs(axes []Axis) (int, error) {
	n := 1
	for i, a := range axes {
		for _, b := range axes[:i] {
			if a.Key == b.Key {
				return 0, fmt.Errorf("%s is given twice; put its values in one, with commas between", a.Key)
			}
		}
		if n *= len(a.Points); n > MostDesigns {
			return 0, fmt.Errorf("that is more than %d designs; take fewer values", MostDesigns)
		}
	}
	if len(axes) == 0 {
		return 0, errors.New("no parameter varies; at least one is needed")
	}
	return n, nil
}
