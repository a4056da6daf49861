// Package keyfile reads small YAML files of keys and values and puts every problem to its place.
//
//	r := &keyfile.Reader{File: "corner.yaml", What: "a case", Begins: "name:"}
//	if root := r.Root(src); root != nil {
//		keys := r.Keyed(root, "", "name", "boxes")
//		...
//	}
//	problems := r.Sorted()
//
// Anchors and a second document are refused, names stand once in a section.
package keyfile

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"

	"standclear/detail/spec"
)

// manyBytes is the most a file may have.
const manyBytes = 1 << 20

// Reader collects the problems of one file.
type Reader struct {
	File     string // its name, in messages only
	What     string // what one file is: "a case"
	Begins   string // how it begins: "name:"
	Problems spec.Problems
}

// Fail adds a problem at n.
func (r *Reader) Fail(n *yaml.Node, path, given, allowed, do string) {
	r.Problems = append(r.Problems, spec.Problem{File: r.File, Line: max(n.Line, 1), Col: max(n.Column, 1), Key: path, Given: given, Allowed: allowed, Do: do})
}

// Sorted returns the problems by position, nil when there are none.
func (r *Reader) Sorted() spec.Problems {
	slices.SortStableFunc(r.Problems, func(a, b spec.Problem) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Col, b.Col))
	})
	return r.Problems
}

// Root reads src as one YAML document; nil, with a problem, when it is none.
func (r *Reader) Root(src []byte) *yaml.Node {
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	top := &yaml.Node{Line: 1, Column: 1}
	switch {
	case len(src) > manyBytes:
		r.Fail(top, "", fmt.Sprintf("the file has %d bytes", len(src)), fmt.Sprintf("at most %d are read", manyBytes), "")
		return nil
	case !utf8.Valid(src):
		r.Fail(top, "", "this is not UTF-8 text", "", "save the file as UTF-8")
		return nil
	}
	dec := yaml.NewDecoder(bytes.NewReader(src))
	var doc, second yaml.Node
	switch err := dec.Decode(&doc); {
	case errors.Is(err, io.EOF):
		r.Fail(top, "", "the file is empty", r.What+" begins with "+r.Begins, "")
		return nil
	case err != nil:
		r.syntax(err)
		return nil
	}
	if err := dec.Decode(&second); !errors.Is(err, io.EOF) {
		r.Fail(&second, "", "a second document begins after ---", "one file is "+r.What, "put it in a file of its own")
		return nil
	}
	return doc.Content[0]
}

// syntax puts an error of the YAML reader to its line.
func (r *Reader) syntax(err error) {
	text := strings.TrimPrefix(err.Error(), "yaml: ")
	at := &yaml.Node{Line: 1, Column: 1}
	if m := regexp.MustCompile(`^line (\d+): `).FindStringSubmatch(text); m != nil {
		at.Line, _ = strconv.Atoi(m[1])
		text = strings.TrimPrefix(text, m[0])
	}
	r.Fail(at, "", "not readable as YAML: "+text, "", "look at the indent, the quotes and the brackets near this line")
}
