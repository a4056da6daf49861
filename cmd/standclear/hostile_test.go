package main

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"go.yaml.in/yaml/v3"

	"standclear/detail/demo"
)

// hostile is text that means something in every format a set is written in, and as a path; none of it may act.
const hostile = `../../</text></svg><script>alert(1)</script>&amp;%%u\P{\U+0041}^J(()\)"';--`

// texts are the keys that take any text; the demo has some, the others are set beside.
var texts = regexp.MustCompile(`^(name|element|number|code|drawn|checked|licence|beam|posts|mark|by|text)$`)

// spoil puts the hostile text into every text of a project and returns how many there were.
func spoil(n *yaml.Node) (count int) {
	for i, c := range n.Content {
		if n.Kind == yaml.MappingNode && i%2 == 1 && c.Kind == yaml.ScalarNode && texts.MatchString(n.Content[i-1].Value) {
			c.Value, c.Style, c.Tag = fmt.Sprintf("%s%d", hostile, count), yaml.DoubleQuotedStyle, "!!str"
			count++
		}
		if n.Kind != yaml.MappingNode || i%2 == 1 {
			count += spoil(c)
		}
	}
	return count
}

// Text that would break out of a drawing, a page or a folder stays text: every file still reads as what it is, and
// shows no element or record that a harmless project does not have.
func TestHostileText(t *testing.T) {
	src, _ := demo.File("deck")
	var doc yaml.Node
	if err := yaml.Unmarshal(src, &doc); err != nil {
		t.Fatal(err)
	}
	if n := spoil(&doc); n < 14 {
		t.Fatalf("%d texts in the demo", n)
	}
	bad, err := yaml.Marshal(&doc)
	if err != nil {
		t.Fatal(err)
	}
	parent := t.TempDir()
	if err := os.WriteFile(filepath.Join(parent, "bad.yaml"), bad, 0o666); err != nil {
		t.Fatal(err)
	}
	quote := func(s string) string { return "'" + strings.ReplaceAll(s, "'", "''") + "'" }
	q := quote(hostile)
	args := []string{"draw", "--no-heat", filepath.Join(parent, "bad.yaml"), "--out", filepath.Join(parent, "set"), "--only", "svg,dxf",
		"--set", "project.drawn=" + hostile, "--set", "project.checked=" + hostile, "--set", "project.notes=[" + q + "]",
		"--set", "project.reviewer={name: " + q + ", licence: " + q + "}",
		"--set", "project.revisions=[{mark: 1, date: 2026-11-20, by: " + q + ", text: " + q + "}]",
		"--set", "deck.point_loads=[{name: " + q + ", x: 33in, load: 10lb}]"}
	var out, errs bytes.Buffer
	if code := run(args, env{strings.NewReader(""), &out, &errs}); code > exitFails {
		t.Fatalf("left with %d: %s", code, errs.String())
	}
	if all, _ := os.ReadDir(parent); len(all) != 2 {
		t.Errorf("%d entries beside the project and its set", len(all)-2)
	}
	for name, data := range tree(t, filepath.Join(parent, "set")) {
		switch filepath.Ext(name) {
		case ".svg":
			if err := onlyDrawing(data); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		case ".html":
			if strings.Contains(data, "<script>alert") || strings.Contains(data, "</text></svg><script") {
				t.Errorf("%s: the text became an element", name)
			}
		case ".dxf":
			if err := wellPaired(data); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
}

// onlyDrawing tells whether an SVG file is well formed and has no element that acts.
func onlyDrawing(data string) error {
	d := xml.NewDecoder(strings.NewReader(data))
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		if e, ok := tok.(xml.StartElement); ok {
			if strings.EqualFold(e.Name.Local, "script") {
				return errors.New("it has a script")
			}
			for _, a := range e.Attr {
				if strings.HasPrefix(strings.ToLower(a.Name.Local), "on") {
					return fmt.Errorf("it has an attribute %s", a.Name.Local)
				}
			}
		}
	}
}

// wellPaired tells whether a DXF file is pairs of a group code and a value from the first line to EOF, so that no
// text has become a record.
func wellPaired(data string) error {
	lines := strings.Split(strings.TrimRight(data, "\r\n"), "\n")
	if len(lines)%2 != 0 {
		return fmt.Errorf("%d lines", len(lines))
	}
	for i := 0; i < len(lines); i += 2 {
		if _, err := strconv.Atoi(strings.TrimSpace(lines[i])); err != nil {
			return fmt.Errorf("line %d is no group code: %q", i+1, lines[i])
		}
	}
	if end := strings.TrimSpace(lines[len(lines)-1]); end != "EOF" {
		return fmt.Errorf("it ends with %q", end)
	}
	return nil
}
