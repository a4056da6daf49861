package casefile

import (
	"context"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"standclear/detail/heat"
)

const wall = `name: wall
dimensions: 2
materials:
  wood: 0.12 W/mK
environments:
  room: {temperature: 20C, resistance: 0.13 m2K/W}
  outside: {temperature: 32F, coefficient: 25 W/m2K}
boxes:
  - {x: [0mm, 1m], y: [-10mm, 0mm], environment: room}
  - {x: [0mm, 1m], y: [0mm, 120mm], material: wood}
  - {x: [0mm, 1m], y: [120mm, 130mm], environment: outside}
`

func TestRead(t *testing.T) {
	f, problems := Read("wall.yaml", []byte(wall))
	if problems != nil {
		t.Fatal(problems)
	}
	c := f.Case
	if c.Name != "wall" || c.Dim != 2 || len(c.Boxes) != 3 || c.Boxes[1].Hi != (heat.Point{1000, 120}) || c.Boxes[1].Material != "wood" {
		t.Errorf("%+v", c)
	}
	if e := c.Envs[1]; math.Abs(e.T) > 1e-9 || e.Rs != 0.04 || c.Envs[0].Rs != 0.13 {
		t.Errorf("%+v", c.Envs)
	}
}

// Conductivity 0.83 Btu in/(h ft2 F) is 0.1197 W/(m K); R 0.68 h ft2 F/Btu is 0.11975 m2 K/W. A layer of 25
// mm of air sideways is 0.18 m2 K/W.
func TestUnitsAndForms(t *testing.T) {
	f, problems := Read("c.yaml", []byte(`dimensions: 3
materials:
  wood: [0.23 W/(m K), 0.12 W/m.K, 0.83 Btu in/(h ft2 F)]
  cavity: {air: 25mm, flow: sideways}
  steel: 50 W/mK
environments:
  a: {temperature: 68F, resistance: 0.68 h ft² F/Btu}
boxes:
  - {x: [0in, 1ft], y: [0mm, 100mm], z: [0mm, 50mm], material: wood}
  - {x: [0in, 1ft], y: [100mm, 110mm], z: [0mm, 50mm], environment: a, resistance: 0.04 m²K/W}
rods:
  - {x: 0mm, y: [10mm, 90mm], z: 25mm, diameter: 12mm, material: steel}
probes:
  P: [1in, 2in, 0.5in]
`))
	if problems != nil {
		t.Fatal(problems)
	}
	c := f.Case
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-4 {
			t.Errorf("%s is %g, want %g", what, got, want)
		}
	}
	near("along x", c.Materials[0].K[0], 0.23)
	near("along z", c.Materials[0].K[2], 0.1197)
	near("air", c.Materials[1].K[0], 0.025/0.18)
	near("film", c.Envs[0].Rs, 0.11975)
	near("temperature", c.Envs[0].T, 20)
	near("film of the box", c.Boxes[1].Rs, 0.04)
	near("probe", c.Probes[0].At[1], 50.8)
	rod := c.Boxes[2] // half of it: the boxes begin at x = 0
	near("rod from the plane of symmetry", rod.Lo[0], 0)
	near("half its side", rod.Hi[0], 12*0.886227/2)
	near("its side", rod.Hi[2]-rod.Lo[2], 12*0.886227)
	near("its start", rod.Lo[1], 10)
}

// Each mistake is named where it stands.
func TestMistakes(t *testing.T) {
	swap := func(old, new string) string {
		if !strings.Contains(wall, old) {
			t.Fatalf("no %q", old)
		}
		return strings.Replace(wall, old, new, 1)
	}
	for _, c := range []struct{ name, src, want string }{
		{"empty", "", "c.yaml:1:1: the file is empty"},
		{"not YAML", "name: [", "c.yaml:1:1: not readable as YAML"},
		{"a list", "- 1", "c.yaml:1:1: a list stands where a section should; it holds name, dimensions"},
		{"not UTF-8", "name: \xff", "this is not UTF-8"},
		{"two documents", wall + "---\nname: b\n", "a second document begins"},
		{"anchor", swap("wood: 0.12 W/mK", "wood: &k 0.12 W/mK"), "c.yaml:4:9: materials.wood: anchors are not read here"},
		{"unknown key", swap("name: wall", "title: wall"), `c.yaml:1:1: title: "title" is not a key of a case`},
		{"unknown key in a box", swap("material: wood", "made_of: wood"), `c.yaml:10:37: boxes.1.made_of: "made_of" is not a key of boxes.1; it holds x, y, material`},
		{"twice", swap("name: wall", "name: wall\nname: b"), "c.yaml:2:1: name: given twice, first in line 1"},
		{"no dimensions", swap("dimensions: 2\n", ""), "dimensions: it is not given; 2 (flows per metre of depth) or 3"},
		{"dimensions", swap("dimensions: 2", "dimensions: 4"), `c.yaml:2:13: dimensions: "4" is not allowed`},
		{"no unit", swap("0.12 W/mK", "0.12"), `c.yaml:4:9: materials.wood: "0.12" has no unit; a conductivity is written 0.12 W/mK`},
		{"wrong unit", swap("0.12 W/mK", "0.12 W/K"), `"0.12 W/K" is not a conductivity: "W/K" is not a unit of one`},
		{"wrong number", swap("0.12 W/mK", "0..12 W/mK"), `"0..12 W/mK" is not a conductivity`},
		{"bare length", swap("[0mm, 120mm]", "[0mm, 120]"), `c.yaml:10:29: boxes.1.y.1: "120" has no unit`},
		{"one length", swap("[0mm, 120mm]", "120mm"), "c.yaml:10:23: boxes.1.y: one value stands where a list should; from and to"},
		{"three lengths", swap("[0mm, 120mm]", "[0mm, 60mm, 120mm]"), "boxes.1.y: a list of 3; from and to"},
		{"no y", swap(", y: [0mm, 120mm]", ""), "c.yaml:10:5: boxes.1.y: it is not given"},
		{"a z", swap("material: wood", "z: [0mm, 1mm], material: wood"), `"z" is not a key of boxes.1`},
		{"no temperature", swap("temperature: 20C, ", ""), "c.yaml:6:3: environments.room.temperature: it is not given"},
		{"bare temperature", swap("20C", "20"), `c.yaml:6:23: environments.room.temperature: "20" has no unit`},
		{"no film", swap(", resistance: 0.13 m2K/W", ""), "environments.room.resistance: it is not given; a surface resistance is written 0.13 m2K/W or 0.68 h ft2 F/Btu; 0 m2K/W holds"},
		{"two films", swap("coefficient: 25 W/m2K", "coefficient: 25 W/m2K, resistance: 0.04 m2K/W"), "environments.outside.coefficient: resistance is given too"},
		{"no coefficient", swap("25 W/m2K", "0 W/m2K"), `"0 W/m2K" is not more than 0`},
		{"void", swap("material: wood", "void: yes please"), `boxes.1.void: "yes please" is not allowed; true or false`},
		{"film of 0", swap("environment: outside}", "environment: outside, resistance: 0 m2K/W}"), "boxes.2.resistance: it is 0"},
		{"point", wall + "probes: {P: [1mm]}\n", "c.yaml:12:13: probes.P: a list of 1; a point is a list of x, y"},
		{"rods in two dimensions", wall + "rods: []\n", "c.yaml:12:7: rods: the case has two dimensions"},
		{"grain", swap("0.12 W/mK", "[1 W/mK]"), "materials.wood: a list of 1; one conductivity for each of x, y"},
		{"air", swap("0.12 W/mK", "{air: 400mm, flow: upward}"), "materials.wood.air: a layer of 400 mm; more than 0 to 300 mm"},
		{"flow", swap("0.12 W/mK", "{air: 40mm, flow: left}"), `materials.wood.flow: "left" is not allowed; upward, downward or sideways`},
		{"no flow", swap("0.12 W/mK", "{air: 40mm}"), "air or flow is not given"},
		{"no boxes", wall[:strings.Index(wall, "boxes:")], "boxes: it is not given"},
		{"boxes no list", wall[:strings.Index(wall, "boxes:")] + "boxes: 3\n", "boxes: one value stands where a list should"},
	} {
		f, problems := Read("c.yaml", []byte(c.src))
		if f != nil || problems == nil || !strings.Contains(problems.Error(), c.want) {
			t.Errorf("%s: got %v; want %s", c.name, problems, c.want)
		}
	}
}

func TestRodMistakes(t *testing.T) {
	const deep = `dimensions: 3
materials: {steel: 50 W/mK}
environments: {a: {temperature: 1C, resistance: 0.1 m2K/W}}
boxes:
  - {x: [0mm, 100mm], y: [0mm, 100mm], z: [0mm, 100mm], material: steel}
rods:
  - `
	for _, c := range []struct{ rod, want string }{
		{"{x: 5mm, y: 5mm, z: 5mm, diameter: 4mm, material: steel}", "rods.0: no coordinate is given from and to"},
		{"{x: [0mm, 5mm], y: [0mm, 5mm], z: 5mm, diameter: 4mm, material: steel}", "rods.0.y: a list stands where one value should"},
		{"{x: [0mm, 5mm], z: 5mm, diameter: 4mm, material: steel}", "rods.0.y: it is not given"},
		{"{x: [0mm, 5mm], y: 5mm, z: 5mm, material: steel}", "rods.0: diameter or material is not given"},
		{"{x: [0mm, 5mm], y: 5mm, z: 5mm, diameter: 0mm, material: steel}", `"0mm" is not more than 0`},
		{"{x: [0mm, 5mm], y: 500mm, z: 5mm, diameter: 4mm, material: steel}", "the rod lies outside all boxes"},
		{"{x: [5mm, 0mm], y: 5mm, z: 5mm, diameter: 4mm, material: steel}", "the rod lies outside all boxes"},
	} {
		if _, problems := Read("c.yaml", []byte(deep+c.rod+"\n")); problems == nil || !strings.Contains(problems.Error(), c.want) {
			t.Errorf("%s: got %v; want %s", c.rod, problems, c.want)
		}
	}
}

// What the solver finds wrong is put to its place in the file.
func TestFaultsFindTheirPlace(t *testing.T) {
	src := strings.Replace(wall, "[0mm, 1m], y: [0mm, 120mm]", "[0mm, 900mm], y: [0mm, 120mm]", 1)
	src = strings.Replace(src, "wood: 0.12", "wood: -0.12", 1)
	f, problems := Read("c.yaml", []byte(src))
	if problems != nil {
		t.Fatal(problems)
	}
	_, err := heat.Solve(context.Background(), f.Case, heat.Options{})
	var faults heat.Faults
	if !errors.As(err, &faults) {
		t.Fatal(err)
	}
	if got := f.Problems(faults).Error(); !strings.HasPrefix(got, `c.yaml:4:3: materials.wood: the conductivity of "wood" along x is -0.12 W/(m K)`) {
		t.Error(got)
	}
	f.Case.Materials[0].K = [3]float64{1, 1, 1}
	_, err = heat.Solve(context.Background(), f.Case, heat.Options{})
	if !errors.As(err, &faults) {
		t.Fatal(err)
	}
	if got := f.Problems(faults).Error(); !strings.HasPrefix(got, "c.yaml:1:1: there is a gap in the material: nothing fills (900, 0) to (1000, 120) mm") {
		t.Error(got)
	}
}

// Every case file of the test data reads.
func TestCaseFiles(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("..", "..", "..", "testdata", "heat", "*.yaml"))
	if err != nil || len(files) < 5 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for _, name := range files {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, problems := Read(filepath.Base(name), src); problems != nil {
			t.Error(problems)
		}
	}
}
