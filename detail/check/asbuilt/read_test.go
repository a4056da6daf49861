package asbuilt_test

import (
	"testing"

	"standclear/detail/check/asbuilt"
)

// Every message as the builder reads it, with its place.
func TestReadProblems(t *testing.T) {
	d := drawn(t, "deck")
	for _, c := range []struct{ field, want string }{
		{"", "f.yaml:1:1: the file is empty; a field sheet begins with rim:"},
		{"rim: {thickness: 89}", `f.yaml:1:18: rim.thickness: "89" has no unit; a length is written 7 1/2in, 14'-8", 80mm or 1.2m; write 89in or 89mm`},
		{"rim: {thickness: 89in}", `f.yaml:1:18: rim.thickness: "89in" is outside 1/4" to 8"; look at the figure and its unit`},
		{"rim:\n  thicknes: 1in", `f.yaml:2:3: rim.thicknes: "thicknes" is not a key of rim; it holds material, thickness, depth`},
		{"rim: {material: oak}", `f.yaml:1:17: rim.material: "oak" is not allowed; one of southern pine, hem-fir, douglas fir-larch, spruce-pine-fir, european softwood, lsl, lvl, osb, i-joist closure, plywood strip, brick veneer, unknown`},
		{"ledger: {moisture: 0.2}", `f.yaml:1:20: ledger.moisture: "0.2" has no unit; a share is written 60%; write 20%`},
		{"counted: {nuts: some}", `f.yaml:1:17: counted.nuts: "some"; a whole number of 0 to 100000 is wanted`},
		{"blocks: {B3: gone}", `f.yaml:1:14: blocks.B3: "gone" stands where a section should; write missing for a block that is not there, else at, gap, through`},
		{"blocks:\n  B3: {at: 20ft}", `f.yaml:2:12: blocks.B3.at: "20ft" is outside 0" to 14'-8"; look at the figure and its unit`},
		{"blocks: {B3: {through: {rows: [3in]}}}", `f.yaml:1:31: blocks.B3.through.rows: a list of 1; 2 lengths from the top down are wanted, as [3in, 6 3/8in]`},
		{"blocks: {B3: {through: {rows: [6in, 3in]}}}", `f.yaml:1:37: blocks.B3.through.rows.1: it does not pass the one before it; 2 lengths from the top down are wanted, as [3in, 6 3/8in]`},
		{"blocks: {B3: {to_rim: {count: 2}}}", `f.yaml:1:15: blocks.B3.to_rim: "to_rim" is not a key of blocks.B3; it holds at, gap, through`},
		{"blocks: {B3: {through: {diameter: 5/8}}}", `f.yaml:1:35: blocks.B3.through.diameter: "5/8" has no unit; a diameter is written 1/2in, 16mm or M16; write 5/8in or 5/8mm`},
		{"blocks: {X1: {gap: 0in}}", `f.yaml:1:10: blocks.X1.at: it is not given; a block that is not drawn needs its place, at: 40in; it holds the marks of the blocks, B1, B2, B3, B4, B5, B6, B7, B8, B9`},
		{"blocks: {X1: {at: 34.5in}}", `f.yaml:1:9: blocks.X1: it stands where B2 stands; measure both again`},
		{"rim: {thickness: 1in}\nrim: {depth: 9in}", `f.yaml:2:1: rim: given twice, first in line 1; keep one of the two`},
		{"blocks: {B1: missing, B2: missing, B3: missing, B4: missing, B5: missing, B6: missing, B7: missing, B8: missing}", `f.yaml:1:9: blocks: 1 of the blocks are there; at least two carry a ledger`},
		{"measured_by: ME", `f.yaml:1:1: nothing is measured in it; write at least one value beside its key`},
	} {
		if f, problems := asbuilt.Read("f.yaml", []byte(c.field), d.Assembly); f != nil || problems.Error() != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.field, problems.Error(), c.want)
		}
	}
}
