package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// below lists what a package may import of this module: its own layer is not in its own list. A
// package not named here takes the longest prefix that is.
var below = map[string][]string{
	"geom":                  {},
	"geom/contour":          {"geom"},
	"render":                {"geom"},
	"render/font":           {},
	"render/dxf":            {"geom", "render", "render/font"},
	"render/svg":            {"geom", "render", "render/font"},
	"render/pdf":            {"geom", "render", "render/font"},
	"render/html":           {"render", "render/svg"},
	"detail/unit":           {},
	"detail/stock":          {"detail/unit"},
	"detail/demo":           {},
	"detail/together":       {},
	"detail/layout":         {"detail/kept", "detail/same"},
	"detail/same":           {},
	"detail/kept":           {"detail/same"},
	"detail/cutting":        {},
	"detail/spec":           {"detail/unit", "detail/stock"},
	"detail":                {"geom", "detail/unit", "detail/stock", "detail/spec", "detail/layout", "detail/cutting", "detail/same", "detail/together"},
	"detail/check":          {"detail/unit"},
	"detail/check/strength": {"detail/unit", "detail/check"},
	"detail/check/moisture": {"detail/unit", "detail/spec", "detail/stock", "detail/check"},
	"detail/check/fit":      {"geom", "detail", "detail/unit", "detail/spec", "detail/stock", "detail/layout", "detail/check"},
	"detail/check/thermal":  {"geom", "detail", "detail/unit", "detail/spec", "detail/stock", "detail/heat"},
	"detail/check/design":   {"detail/kept", "detail/same", "detail/together", "detail/check/moisture", "detail/check/thermal", "detail", "detail/unit", "detail/spec", "detail/stock", "detail/check", "detail/check/fit", "detail/check/strength", "detail/check/air"},
	"detail/check/asbuilt":  {"detail", "detail/unit", "detail/spec", "detail/stock", "detail/keyfile", "detail/check", "detail/check/design"},
	"detail/check/air":      {"geom", "detail", "detail/unit", "detail/spec", "detail/check"},
	"detail/trial":          {"detail", "detail/spec", "detail/check", "detail/check/design", "detail/check/strength"},
	"detail/compare":        {"detail", "detail/unit", "detail/spec", "detail/stock", "detail/check", "detail/check/air", "detail/check/design", "detail/check/thermal", "detail/trial"},
	"detail/explain":        {"detail", "detail/unit", "detail/spec", "detail/stock", "detail/check", "detail/check/air", "detail/check/design", "detail/check/strength", "detail/check/thermal", "detail/trial"},
	"detail/sweep":          {"geom", "render", "render/font", "detail", "detail/unit", "detail/spec", "detail/check", "detail/check/thermal", "detail/trial"},
	"detail/size":           {"detail", "detail/compare", "detail/unit", "detail/spec", "detail/stock", "detail/sweep", "detail/trial"},
	"detail/heat/lattice":   {},
	"detail/heat":           {"detail/heat/lattice"},
	"detail/heat/casefile":  {"detail/unit", "detail/spec", "detail/heat", "detail/keyfile"},
	"detail/keyfile":        {"detail/spec"},
	"detail/layermap":       {"render", "detail/unit", "detail/spec", "detail/keyfile"},
	"detail/view":           {"geom", "render", "detail", "detail/unit", "detail/stock"},
	"detail/sheet":          {"geom", "geom/contour", "render", "render/font", "detail", "detail/unit", "detail/spec", "detail/stock", "detail/layout", "detail/check", "detail/check/air", "detail/check/moisture", "detail/check/strength", "detail/check/thermal", "detail/view", "detail/sheet/cloud", "detail/sheet/judge", "detail/together"},
	"detail/sheet/cloud":    {"geom", "render", "render/font"},
	"detail/sheet/judge":    {"geom", "render", "render/font", "detail", "detail/unit"},
	"detail/detailtest":     {"detail", "detail/demo", "detail/spec"},
	"detail/spec/spectest":  {"detail/unit", "detail/stock", "detail/spec", "detail/demo"},

	"cmd/standclear":         nil, // anything
	"cmd/standclear/preview": {"render/html", "render/svg"},
}

// Renderers never see a deck, detail never sees a file format, geometry knows nobody; nobody takes what makes every
// command start later.
func TestImportsGoOneWay(t *testing.T) {
	root := filepath.Join("..", "..")
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") && path != root) {
			return fs.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		rel, err := filepath.Rel(root, filepath.Dir(path))
		if err != nil {
			return err
		}
		pkg := filepath.ToSlash(rel)
		allowed, ok := below[pkg]
		if !ok {
			t.Errorf("package %s is not in the list of layers", pkg)
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, im := range f.Imports {
			name, err := strconv.Unquote(im.Path.Value)
			if err != nil {
				return err
			}
			in, ours := strings.CutPrefix(name, "standclear/")
			if ours && allowed != nil && !contains(allowed, in) {
				t.Errorf("%s imports %s; it may import %v", path, name, allowed)
			}
			if name == "text/template" || name == "html/template" {
				t.Errorf("%s imports %s, which calls methods by name: the linker must keep them all, and every command starts later", path, name)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

func contains(list []string, s string) bool {
	for _, v := range list {
		if v == s {
			return true
		}
	}
	return false
}
