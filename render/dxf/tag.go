package dxf

import (
	"bufio"
	"math"
	"strconv"
	"strings"

	"standclear/geom"
)

// A tag is the atom of the format: a group code, which tells the kind of value, and the value.
type tag struct {
	code  int
	value string
}

// tags is a run of tags. Its methods append and return the longer run, so that a record reads
// in the order in which it stands in the file.
type tags []tag

// limit is the largest number written: a million kilometres in millimetres.
const limit = 1e12

// notANumber stands for a value that cannot be written; see tags.sound.
const notANumber = "not a number"

// handle identifies a record in the file; 0 is none.
type handle int64

func (h handle) String() string { return strings.ToUpper(strconv.FormatInt(int64(h), 16)) }

func (t tags) str(code int, v string) tags { return append(t, tag{code, v}) }

func (t tags) int(code, v int) tags { return append(t, tag{code, strconv.Itoa(v)}) }

func (t tags) ref(code int, h handle) tags { return append(t, tag{code, h.String()}) }

func (t tags) real(code int, v float64) tags { return append(t, tag{code, decimal(v)}) }

// zeros appends a real 0 under each of the codes.
func (t tags) zeros(codes ...int) tags {
	for _, c := range codes {
		t = t.real(c, 0)
	}
	return t
}

// xy appends a point of the plane: 10 and 20 for code 10.
func (t tags) xy(code int, p geom.Vec) tags { return t.real(code, p.X).real(code+10, p.Y) }

// pair appends a point of the plane as hatch patterns have it: 43 and 44 for code 43.
func (t tags) pair(code int, p geom.Vec) tags { return t.real(code, p.X).real(code+1, p.Y) }

// point appends a point in space at z = 0: 10, 20 and 30 for code 10.
func (t tags) point(code int, p geom.Vec) tags { return t.xy(code, p).real(code+20, 0) }

// class appends a subclass marker.
func (t tags) class(name string) tags { return t.str(100, name) }

// set replaces the value of the first tag with this code.
func (t tags) set(code int, v string) {
	for i := range t {
		if t[i].code == code {
			t[i].value = v
			return
		}
	}
}

// sound reports whether every number could be written.
func (t tags) sound() bool {
	for _, g := range t {
		if g.value == notANumber && isReal(g.code) {
			return false
		}
	}
	return true
}

// isReal tells whether a group code holds a real number.
func isReal(code int) bool {
	return code >= 10 && code <= 59 || code >= 110 && code <= 149 || code >= 210 && code <= 239 || code >= 1010 && code <= 1059
}

// write sends the run to w, which keeps its first error.
func (t tags) write(w *bufio.Writer) {
	for _, g := range t {
		switch { // to the right of three places
		case g.code < 10:
			w.WriteString("  ")
		case g.code < 100:
			w.WriteByte(' ')
		}
		w.Write(strconv.AppendInt(w.AvailableBuffer(), int64(g.code), 10))
		w.WriteByte('\n')
		w.WriteString(g.value)
		w.WriteByte('\n')
	}
}

// round rounds a length in the file's unit to the nine decimals that the file holds: far below any
// tolerance, and every binary fraction of an inch down to 1/512 survives. It never gives -0.
func round(v float64) float64 {
	r := math.Round(v*1e9) / 1e9
	if r == 0 {
		return 0
	}
	return r
}

// decimal prints a rounded number in the shortest form with a point and without exponent.
func decimal(v float64) string {
	if math.IsNaN(v) || math.Abs(v) > limit {
		return notANumber
	}
	if n := math.Round(v * 1e9); math.Abs(n) < 1e15 {
		return billionths(int64(n))
	}
	s := strconv.FormatFloat(round(v), 'f', -1, 64)
	if !strings.Contains(s, ".") {
		s += ".0"
	}
	return s
}

// billionths prints n/1e9 as decimal does: up to fifteen digits name one number, so that the shortest form is the one
// without zeros at its end.
func billionths(n int64) string {
	var buf [24]byte
	b := buf[:0]
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = append(strconv.AppendInt(b, n/1e9, 10), '.')
	for n %= 1e9; ; {
		b = append(b, byte('0'+n/1e8))
		if n = n % 1e8 * 10; n == 0 {
			return string(b)
		}
	}
}
