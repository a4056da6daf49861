package layermap

import (
	"strings"
	"testing"

	"standclear/render"
)

func read(t *testing.T, src string) *render.Layers {
	t.Helper()
	l, problems := Read("o.yaml", []byte(src))
	if problems != nil {
		t.Fatal(problems)
	}
	return l
}

// What is printed to begin from changes nothing, and says what stands on every layer.
func TestStarterChangesNothing(t *testing.T) {
	got := read(t, string(Starter()))
	for p, l := range render.OwnLayers() {
		if g := got[p]; g.Name != l.Name || !g.SameLook(l) {
			t.Errorf("%s becomes %+v", l.Name, g)
		}
		if drawn[p] == "" {
			t.Errorf("%s: nothing says what stands on it", l.Name)
		}
	}
	own := strings.ReplaceAll(string(Starter()), "\n#line_types", "\nline_types")
	own = strings.ReplaceAll(own, "\n#  OFFICE", "\n  OFFICE")
	if _, problems := Read("o.yaml", []byte(own)); problems != nil {
		t.Errorf("its sample of line types: %v", problems)
	}
}

// ISO 13567-2: agent 2, element 6, presentation 2, status 1 places, without separators.
func TestISOMap(t *testing.T) {
	src, ok := Named("iso13567")
	if !ok {
		t.Fatal("it is not there")
	}
	seen := map[string]bool{}
	for p, l := range *read(t, string(src)) {
		name := l.Of("A")
		if len(name) != 2+6+2+1 || name[:2] != "A-" || strings.Trim(name, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-") != "" || seen[name] {
			t.Errorf("layer %q of %s", name, render.Pens[p].Layer)
		}
		seen[name] = true
		if !l.SameLook(render.OwnLayers()[p]) {
			t.Errorf("%s looks different", name)
		}
		if (render.Pen(p) == render.Existing) != (name[10] == 'E') {
			t.Errorf("%s: status of %s", name, render.Pens[p].Layer)
		}
	}
}

func TestNamed(t *testing.T) {
	for _, n := range Names() {
		if src, ok := Named(n); !ok || len(src) == 0 {
			t.Errorf("no map %s", n)
		}
	}
	if _, ok := Named("office"); ok {
		t.Error("a map that is none of ours")
	}
}

// 0.014 in is 0.3556 mm, 0.039 in 0.9906 mm: the plottable steps beside them are 0.35 and 1.00.
func TestReadsWhatIsGiven(t *testing.T) {
	l := read(t, `line_types:
  OFFICE-DASH: [1/2in, -1/8in, 0mm, -1/8in]
layers:
  DETL-MCUT: {name: <D>-WALL-CUT, colour: 2, weight: 0.014in, line: office-dash}
  DETL-MBND: {weight: 0.039in, plot: no}
  ANNO-NOTE: Text of <D>
  ANNO-NPLT: {plot: yes}
`)
	own := render.OwnLayers()
	if c := l[render.Cut]; c.Of("S") != "S-WALL-CUT" || c.Index != 2 || c.Weight != 35 || c.Type.Name != "OFFICE-DASH" || c.NoPlot {
		t.Errorf("cut %+v", c)
	}
	if d := l[render.Cut].Type.Dashes; len(d) != 4 || d[0] != 12.7 || d[1] != -3.175 || d[2] != 0 || d[3] != -3.175 {
		t.Errorf("dashes %v", d)
	}
	if v := l[render.Visible]; v.Name != own[render.Visible].Name || v.Weight != 100 || !v.NoPlot || v.Index != 7 {
		t.Errorf("visible %+v", v)
	}
	if n := l[render.Note]; n.Of("A") != "Text of A" || !n.SameLook(own[render.Note]) {
		t.Errorf("note %+v", n)
	}
	if l[render.NoPlot].NoPlot || l[render.Hidden].Name != own[render.Hidden].Name {
		t.Error("plotted helpers, hidden edges left alone")
	}
}

// A band of temperature keeps its true colour under its own index, and gives way to another.
func TestTrueColour(t *testing.T) {
	own := render.OwnLayers()[render.Heat1]
	for src, want := range map[string]string{"{colour: 153}": own.RGB, "BAND": own.RGB, "{colour: 140}": ""} {
		if got := read(t, "layers: {DETL-HEAT-B1: "+src+"}")[render.Heat1].RGB; got != want || own.RGB == "" {
			t.Errorf("%s: %q, want %q", src, got, want)
		}
	}
}

// Two of ours on one layer of theirs, alike.
func TestSharedLayer(t *testing.T) {
	l := read(t, "layers:\n  ANNO-NOTE: {name: TEXT, colour: 3}\n  ANNO-DIMS: {name: TEXT, colour: 3}\n")
	if l[render.Note].Of("A") != "TEXT" || l[render.Dimension].Of("G") != "TEXT" {
		t.Errorf("%+v", l[render.Note])
	}
}

// Each mistake is named where it stands, with what is allowed.
func TestMistakes(t *testing.T) {
	row := func(s string) string { return "layers:\n  DETL-MCUT: " + s + "\n" }
	for _, c := range []struct{ name, src, want string }{
		{"empty", "", "o.yaml:1:1: the file is empty; a layer map begins with layers:"},
		{"not YAML", "layers: [", "o.yaml:1:1: not readable as YAML"},
		{"a list", "- 1", "a list stands where a section should; it holds layers, line_types"},
		{"no layers", "line_types:\n  A: [1mm, -1mm]\n", "o.yaml:1:1: layers: it is not given"},
		{"unknown section", "layer:\n", `o.yaml:1:1: layer: "layer" is not a key of a layer map; it holds layers, line_types`},
		{"unknown layer", "layers:\n  DETL-WALL: X\n", `o.yaml:2:3: layers.DETL-WALL: "DETL-WALL" is no layer of ours; allowed are DETL-MCUT, DETL-MCUT-MAIN,`},
		{"small letters", "layers:\n  detl-mcut: X\n", "did you mean DETL-MCUT?"},
		{"with the letter", "layers:\n  A-DETL-MCUT: X\n", "write DETL-MCUT: the letter of the sheet is no part of the key"},
		{"twice", row("X") + "  DETL-MCUT: Y\n", "o.yaml:3:3: layers.DETL-MCUT: given twice, first in line 2; keep one"},
		{"unknown value", row("{color: 3}"), `o.yaml:2:15: layers.DETL-MCUT.color: "color" is not a key of layers.DETL-MCUT; it holds name, colour, weight, line, plot`},
		{"a list in a row", row("[1]"), "o.yaml:2:14: layers.DETL-MCUT: there is neither a name nor a section"},
		{"nothing in a row", row(""), "layers.DETL-MCUT: there is neither a name nor a section"},
		{"anchor", row("&a X"), "anchors are not read here"},
		{"colon", row("{name: 'A:B'}"), `o.yaml:2:21: layers.DETL-MCUT.name: "A:B" cannot name a layer; allowed are 1 to 200 bytes without any of < > / \ " : ; ? * | , = `},
		{"pipe", row("A|B"), "cannot name a layer"},
		{"star", row("'*X'"), "cannot name a layer"},
		{"another mark", row("<S>-WALL"), "<D> alone stands for the letter of the sheet"},
		{"blank", row("' X'"), "cannot name a layer"},
		{"too long", row(strings.Repeat("x", 201)), "cannot name a layer"},
		{"control", row(`"A\x07B"`), "cannot name a layer"},
		{"0", row("'0'"), `"0" is a layer of every file`},
		{"defpoints", row("DEFPOINTS"), `"DEFPOINTS" is a layer of every file`},
		{"colour 0", row("{colour: 0}"), `o.yaml:2:23: layers.DETL-MCUT.colour: "0" is not a colour index; an index from 1 to 255`},
		{"colour 256", row("{colour: 256}"), "is not a colour index"},
		{"colour in words", row("{colour: red}"), "1 red, 2 yellow"},
		{"weight", row("{weight: 0.37mm}"), `o.yaml:2:23: layers.DETL-MCUT.weight: "0.37mm" is not a line weight that a CAD file can hold; allowed are 0.00, 0.05, 0.09, 0.13, 0.15, 0.18, 0.20, 0.25, 0.30, 0.35, 0.40, 0.50, 0.53, 0.60, 0.70, 0.80, 0.90, 1.00, 1.06, 1.20, 1.40, 1.58, 2.00, 2.11 mm; the nearest is 0.35mm`},
		{"no unit", row("{weight: 0.35}"), "a line weight is written 0.35mm or 0.014in"},
		{"line", row("{line: DASHED}"), `"DASHED" is not a line type; allowed are Continuous, SC-HIDDEN, SC-CENTRE, SC-PHANTOM, SC-MEMBRANE, and those under line_types`},
		{"plot", row("{plot: maybe}"), `"maybe" is not allowed; yes or no`},
		{"two looks", row("{name: W, colour: 1}") + "  DETL-MBND: {name: W, colour: 2}\n", "o.yaml:3:3: layers.DETL-MBND: the layer W is that of DETL-MCUT, which is colour 1, 0.50mm, Continuous; here it is colour 2, 0.35mm, Continuous; a layer has one look"},
		{"look of one left out", row("{name: <D>-ANNO-STAT}"), "o.yaml:2:3: layers.DETL-MCUT: the layer A-ANNO-STAT is that of ANNO-STAT"},
		{"one discipline alone", row("{name: S-X}") + "  DETL-MBND: {name: <D>-X}\n", "o.yaml:3:3: layers.DETL-MBND: the layer S-X is that of DETL-MCUT"},
		{"capitals", row("{name: Wall}") + "  DETL-MBND: {name: WALL}\n", "o.yaml:3:3: layers.DETL-MBND: the name WALL differs from that of DETL-MCUT in capitals only"},
		{"ours again", row("X") + "line_types:\n  sc-hidden: [1mm, -1mm]\n", `o.yaml:4:3: line_types.sc-hidden: "sc-hidden" is there already`},
		{"by layer", row("X") + "line_types:\n  ByLayer: [1mm, -1mm]\n", "is there already"},
		{"other capitals", row("X") + "line_types:\n  aa: [1mm, -1mm]\n  AA: [1mm, -1mm]\n", "o.yaml:5:3: line_types.AA"},
		{"name of a type", row("X") + "line_types:\n  'A,B': [1mm, -1mm]\n", `"A,B" cannot name a line type`},
		{"no gap", row("X") + "line_types:\n  A: [1mm, 1mm]\n", `o.yaml:4:12: line_types.A.1: "1mm" cannot stand here; a line type is 2 to 12 plotted lengths`},
		{"odd", row("X") + "line_types:\n  A: [1mm, -1mm, 1mm]\n", "a pattern of 3 lengths"},
		{"bare", row("X") + "line_types:\n  A: [1, -1]\n", "no unit"},
		{"nothing to see", row("X") + "line_types:\n  A: [0mm, -0.01mm]\n", "a pattern of 2 lengths, 0.01 mm in all"},
		{"no list", row("X") + "line_types:\n  A: 3mm\n", "one value stands where a list should"},
	} {
		l, problems := Read("o.yaml", []byte(c.src))
		if l != nil || problems == nil || !strings.Contains(problems.Error(), c.want) {
			t.Errorf("%s: got %v\nwant %s", c.name, problems, c.want)
		}
	}
}
