package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
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
	"golang.org/x/net/html"

	"standclear/detail/demo"
	"standclear/detail/spec"
	"standclear/detail/unit"
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
	args := []string{"draw", "--no-heat", filepath.Join(parent, "bad.yaml"), "--out", filepath.Join(parent, "set"), "--only", "svg,dxf"}
	sets := []string{"project.notes=[" + q + "]", "project.reviewer={name: " + q + "}", "project.revisions=[{mark: 1, date: 2026-11-20, text: " + q + "}]", "deck.point_loads=[{name: " + q + ", x: 33in, load: 10lb}]", "rates={currency: " + q + ", hour: 50}"}
	for _, key := range textKeys(t, src, sets) {
		sets = append(sets, key+"="+hostile)
	}
	for _, set := range sets {
		args = append(args, "--set", set)
	}
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
			if err := onlyDrawings(data); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		case ".json":
			if !json.Valid([]byte(data)) {
				t.Errorf("%s is no JSON", name)
			}
		case ".csv":
			rows, err := csv.NewReader(strings.NewReader(data)).ReadAll()
			if err != nil || len(rows) < 20 {
				t.Errorf("%s: %d rows, %v", name, len(rows), err)
			}
		case ".dxf":
			if err := wellPaired(data); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
}

// textKeys returns the keys of a project that take any text, and fails the test when the table has one that the project
// has not.
func textKeys(t *testing.T, src []byte, sets []string) (keys []string) {
	t.Helper()
	s, problems := spec.Read("deck", src, sets)
	if s == nil {
		t.Fatal(problems)
	}
	place := regexp.MustCompile(`\.\d+`)
	has := map[string]bool{"project.notes": true}
	for _, e := range s.Entries() {
		has[place.ReplaceAllString(e.Key, ".N")] = true
	}
	for _, k := range spec.Keys(unit.IP) {
		twin := strings.NewReplacer("to_rim", "through", "to_block", "through").Replace(k.Path) // the same keys for the other fasteners
		if k.Form != "a text" || k.Path == "ledger.grade" || k.Path == "blocks.grade" {         // no text but those of the species
			continue
		}
		if !has[k.Path] && !has[twin] {
			t.Errorf("no text is put at %s", k.Path)
		}
		for _, e := range s.Entries() {
			if place.ReplaceAllString(e.Key, ".N") == k.Path {
				keys = append(keys, e.Key)
			}
		}
	}
	return keys
}

// onlyDrawings tells whether a page has no element or attribute that acts, and leads nowhere but into itself.
func onlyDrawings(data string) error {
	z := html.NewTokenizer(strings.NewReader(data))
	for {
		switch z.Next() {
		case html.ErrorToken:
			if errors.Is(z.Err(), io.EOF) {
				return nil
			}
			return z.Err()
		case html.StartTagToken, html.SelfClosingTagToken:
			k := z.Token()
			if k.Data == "script" || k.Data == "iframe" || k.Data == "object" {
				return fmt.Errorf("it has the element %s", k.Data)
			}
			for _, a := range k.Attr {
				if strings.HasPrefix(a.Key, "on") || (a.Key == "href" || a.Key == "src") && !strings.HasPrefix(a.Val, "#") {
					return fmt.Errorf("%s has %s=%q", k.Data, a.Key, a.Val)
				}
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
