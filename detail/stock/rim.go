package stock

import (
	"slices"
	"sync"

	"standclear/detail/unit"
)

// Board is what blocks may be bolted to, or backed with: a sawn rim, an engineered one, a panel.
type Board struct {
	Key        string // as the project file writes it
	Name       string // as printed
	Attachable bool   // may carry blocks at all
	Reason     string // why it may not, or what must be confirmed when it may
	Material   string // key of Materials, for heat and hatching
	Values     LumberValues
}

// Rims returns every kind of rim the project file may name. Values of sawn rims are those of No.2 at
// a depth of 11 1/4 in, of european softwood those of C24; use Rim for another depth. Boards that are
// not attachable have no values.
func Rims() []Board { return slices.Clone(rims()) }

// rims is made once and never changed.
var rims = sync.OnceValue(func() []Board {
	var all []Board
	for _, s := range SpeciesList() {
		all = append(all, sawnRim(s))
	}
	return append(all, engineeredRims()...)
})

// RimKeys returns the names a rim or backing may have in the project file.
func RimKeys() []string {
	var keys []string
	for _, b := range rims() {
		keys = append(keys, b.Key)
	}
	return keys
}

// Rim finds a rim by its key, with the values of a sawn one at depth. A depth of a sawn rim beyond the
// table leaves Values empty; the board is still found.
func Rim(key string, depth unit.Length) (Board, bool) {
	for _, b := range rims() {
		if !same(b.Key, key) {
			continue
		}
		if s, sawn := SpeciesOf(b.Key); sawn {
			b.Values, _ = Lumber(s.Key, s.Grades[len(s.Grades)-1], depth)
		}
		return b, true
	}
	if s, ok := SpeciesOf(key); ok && !same(key, s.Key) {
		return Rim(s.Key, depth)
	}
	return Board{}, false
}

func sawnRim(s Species) Board {
	v, _ := Lumber(s.Key, s.Grades[len(s.Grades)-1], 11.25*unit.Inch)
	return Board{
		Key: s.Key, Name: s.Name, Attachable: true, Material: "softwood", Values: v,
		Reason: "grade taken as " + v.Grade + ": read the stamp on the rim, look for rot",
	}
}

// engineeredRims have no common table: NDS leaves bolts of 1/4 in and more in them to the maker's
// report. The equivalent gravities are the usual ones (0.50) or the floor to fall back to (0.42).
func engineeredRims() []Board {
	const report = "confirm equivalent gravity and bearing in the rim maker's report"
	return []Board{
		{Key: "lsl", Name: "LAMINATED STRAND RIM", Attachable: true, Reason: report, Material: "lsl", Values: lsl()},
		{Key: "lvl", Name: "LAMINATED VENEER RIM", Attachable: true, Reason: report, Material: "lvl", Values: lvl()},
		{Key: "osb", Name: "OSB RIM BOARD", Attachable: true, Reason: report, Material: "osb", Values: osbRim()},
		{
			Key: "i-joist closure", Name: "I-JOIST CLOSURE", Material: "osb",
			Reason: "an I-joist at the edge has a 3/8 in web: it cannot carry blocks",
		},
		{
			Key: "plywood strip", Name: "PLYWOOD STRIP", Material: "plywood",
			Reason: "a closure strip of plywood cannot carry blocks",
		},
		{
			Key: "brick veneer", Name: "BRICK VENEER", Material: "brick",
			Reason: "veneer carries nothing but itself: IRC R507 lets no ledger hang on it",
		},
		{Key: "unknown", Name: "RIM NOT KNOWN", Material: "softwood", Reason: "open the floor and look before anything is hung on it"},
	}
}

// floorOf returns spruce-pine-fir No.2 at 11 1/4 in, the lowest of the sawn sets, as the floor under
// an engineered rim whose report is not at hand.
func floorOf(name, why string) LumberValues {
	v, _ := Lumber("spruce-pine-fir", "No.2", 11.25*unit.Inch)
	v.Species, v.Grade = name, "as stated by the maker"
	v.Source = why + "; " + judged
	return v
}

func lsl() LumberValues {
	v := floorOf("laminated strand", "G 0.50 is the usual equivalent, E of the common 1.3E grade, the rest spruce-pine-fir No.2")
	v.G, v.E, v.Emin = 0.50, psi(1.3e6), psi(0.47e6)
	return v
}

func lvl() LumberValues {
	v := floorOf("laminated veneer", "G 0.50 is the usual equivalent, the rest spruce-pine-fir No.2")
	v.G = 0.50
	return v
}

// osbRim takes half of the sawn strength values and the face bearing of the panel.
func osbRim() LumberValues {
	v := floorOf("oriented strand board", "no NDS table for bolts in it: G 0.42, half of spruce-pine-fir No.2, panel bearing")
	v.Fb, v.Ft, v.Fv, v.E, v.Emin = v.Fb/2, v.Ft/2, v.Fv/2, v.E/2, v.Emin/2
	v.FcPerp, v.G = osbPanel().FcPerp, 0.42
	return v
}
