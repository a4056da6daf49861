package dxf

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"standclear/geom"
	"standclear/render"
)

// record is one record of a file as a reader sees it: kind, section and tags.
type record struct {
	kind, section string
	tags          []tag
}

// get returns the first value under the code, "" when there is none.
func (r record) get(code int) string {
	for _, g := range r.tags {
		if g.code == code {
			return g.value
		}
	}
	return ""
}

func (r record) all(code int) []string {
	var out []string
	for _, g := range r.tags {
		if g.code == code {
			out = append(out, g.value)
		}
	}
	return out
}

// num returns the first number under the code; it fails the test when there is none.
func (r record) num(t *testing.T, code int) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r.get(code), 64)
	if err != nil {
		t.Fatalf("%s: group %d: %v", r.kind, code, err)
	}
	return v
}

func (r record) point(t *testing.T, code int) geom.Vec {
	t.Helper()
	return geom.Vec{X: r.num(t, code), Y: r.num(t, code+10)}
}

func (r record) handle() string {
	if r.kind == "DIMSTYLE" {
		return r.get(105)
	}
	return r.get(5)
}

// owner returns the 330 that stands before the first subclass marker.
func (r record) owner() string {
	for _, g := range r.tags {
		if g.code == 100 {
			return ""
		}
		if g.code == 330 {
			return g.value
		}
	}
	return ""
}

// file is a file taken apart.
type file struct {
	records []record
	header  map[string][]tag
}

// parse takes a file apart as a strict reader would.
func parse(data []byte) (file, error) {
	f := file{header: map[string][]tag{}}
	if !utf8.Valid(data) {
		return f, fmt.Errorf("not UTF-8")
	}
	lines := strings.Split(strings.TrimSuffix(string(data), "\n"), "\n")
	if len(lines)%2 != 0 {
		return f, fmt.Errorf("%d lines: a code without a value", len(lines))
	}
	section, variable := "", ""
	for i := 0; i < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		if err != nil || len(lines[i]) < 3 {
			return f, fmt.Errorf("line %d: %q is no group code", i+1, lines[i])
		}
		v := lines[i+1]
		if len(v) > maxString {
			return f, fmt.Errorf("line %d: value of %d bytes", i+2, len(v))
		}
		if code == 0 {
			f.records = append(f.records, record{kind: v, section: section})
			continue
		}
		r := &f.records[len(f.records)-1]
		r.tags = append(r.tags, tag{code, v})
		if r.kind == "SECTION" && len(r.tags) == 1 {
			section = v
		}
		if section == "HEADER" && code == 9 {
			variable = v
		} else if section == "HEADER" && variable != "" {
			f.header[variable] = append(f.header[variable], tag{code, v})
		}
		r.section = section
	}
	return f, nil
}

// kind returns the records of a kind in a section, "" for any.
func (f file) kind(kind, section string) []record {
	var out []record
	for _, r := range f.records {
		if r.kind == kind && (section == "" || r.section == section) {
			out = append(out, r)
		}
	}
	return out
}

// one returns the only record of a kind among the drawn entities.
func (f file) one(t *testing.T, kind string) record {
	t.Helper()
	rs := f.kind(kind, "ENTITIES")
	if len(rs) != 1 {
		t.Fatalf("%d records %s, want 1", len(rs), kind)
	}
	return rs[0]
}

// write writes the sheet and takes the file apart.
func write(t *testing.T, s *render.Sheet) file {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, s, Options{}); err != nil {
		t.Fatal(err)
	}
	f, err := parse(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// draw writes one view at 1:1 in millimetres with the items.
func draw(t *testing.T, items ...render.Item) file {
	t.Helper()
	return write(t, view(render.Millimetre, 1, items...))
}

// view returns a sheet of one view at its origin.
func view(u render.Unit, k float64, items ...render.Item) *render.Sheet {
	return &render.Sheet{ID: "A-1", Size: render.Size{Name: "ISO A3", W: 420, H: 297}, Unit: u, Views: []render.View{{
		ID: "1", Scale: render.Scale{K: k}, Window: geom.BoxOf(geom.Vec{}, geom.Vec{X: 100, Y: 100}), Items: items,
	}}}
}

// dropped returns what a sheet of one view left out of model space.
func dropped(t *testing.T, items ...render.Item) []string {
	t.Helper()
	d := newDocument(render.Millimetre)
	if err := d.add(view(render.Millimetre, 1, items...)); err != nil {
		t.Fatal(err)
	}
	d.finish()
	return d.model.dropped
}
