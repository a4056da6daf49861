package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"

	"standclear/detail/keyfile"
	"standclear/detail/layermap"
	"standclear/render"
)

// printLayers prints a built-in layer map as a file to change.
func printLayers(e env, args []string) int {
	f := pflag.NewFlagSet("layers", pflag.ContinueOnError)
	if code, ok := parse(e, f, "standclear layers [NAME]\nprints a map of the layers of the DXF files, to change and hand to draw --layers.\nNAME is one of the maps built in: "+strings.Join(layermap.Names(), ", ")+".",
		"  standclear layers >office.yaml\n  standclear draw deck.yaml --out set --layers office.yaml\n", args); !ok {
		return code
	}
	name := layermap.Own
	switch f.NArg() {
	case 0:
	case 1:
		name = f.Arg(0)
	default:
		fmt.Fprintf(e.err, "standclear layers: one map at a time, not %d\n", f.NArg())
		return exitInput
	}
	src, ok := layermap.Named(name)
	if !ok {
		fmt.Fprintf(e.err, "standclear layers: there is no map %q; the maps are %s\n", name, strings.Join(layermap.Names(), ", "))
		return exitInput
	}
	return written(e, "layers", func(w io.Writer) error {
		_, err := w.Write(src)
		return err
	})
}

// readLayers reads the layer map that --layers names: one of those built in, else a file. Nil layers are ours.
// What is wrong with it is printed.
func readLayers(e env, from string, kinds map[string]bool) (layers *render.Layers, ok bool) {
	if from == "" {
		return nil, true
	}
	bad := func(format string, a ...any) (*render.Layers, bool) {
		fmt.Fprintf(e.err, "standclear draw: --layers: "+format+"\n", a...)
		return nil, false
	}
	if !kinds["dxf"] {
		return bad("it is for DXF files, and --only leaves them out")
	}
	src, built := layermap.Named(from)
	if !built {
		var err error
		if src, err = readFile(from); err != nil {
			return bad("the map cannot be read: %v; built in are %s", err, strings.Join(layermap.Names(), ", "))
		}
	}
	layers, problems := layermap.Read(keyfile.Printed(from), src)
	for _, p := range problems {
		fmt.Fprintln(e.err, p)
	}
	if len(problems) > 0 {
		fmt.Fprintf(e.err, "standclear: %s; nothing was written\n", count(len(problems), "problem"))
	}
	return layers, len(problems) == 0
}

// layerNames lists the maps that are built in.
func layerNames() []string { return layermap.Names() }
