package spec_test

import (
	"strings"
	"testing"

	"standclear/detail/spec"
)

// What does not change the design does not change the hash: comments, order, the unit a value is
// typed in, a nominal size for its measures, a default written out.
func TestHashIsStable(t *testing.T) {
	base := string(deckFile(t))
	want := readDeck(t).Hash()
	sections := strings.Split(base, "\n\n")
	var turned []string
	for i := len(sections) - 1; i >= 0; i-- {
		turned = append(turned, sections[i])
	}
	for name, src := range map[string]string{
		"sections turned round": strings.Join(turned, "\n\n"),
		"comments":              "# another word\n" + base + "\n# and another\n",
		"line ends":             strings.ReplaceAll(base, "\n", "\r\n"),
		"a byte order mark":     "\ufeff" + base,
		"other units": strings.NewReplacer("14'-8\"", "176in", "20C", "68F", "50%", "50 %", "12psf", "0.083333333333333333psi", "rain: 44in", "rain: 111.76cm",
			"3830 K.d", "6894 F.d", "1500lb", "1.5kip", "1:8", "12.5%", "thickness: 1 1/4in", "thickness: 31.75mm", "wind: 115mph", "wind: 51.4096m/s").Replace(base),
		"dressed size":     strings.ReplaceAll(base, "size: 2x10", "thickness: 1 1/2in\n  height: 9 1/4in"),
		"default written":  base + "\nassume: {cap: 0.9, max_group: 127mm}\n",
		"species in short": strings.ReplaceAll(base, "species: southern pine", "species: SYP"),
	} {
		if src == base {
			t.Fatalf("%s: nothing changed", name)
		}
		s, problems := spec.Read("deck.yaml", []byte(src), nil)
		if s == nil {
			t.Fatalf("%s: %s", name, problems.Error())
		}
		if s.Hash() != want {
			t.Errorf("%s: hash %s; want %s", name, s.Hash(), want)
		}
	}
}

// What changes the design changes the hash.
func TestHashTells(t *testing.T) {
	seen := map[string]string{readDeck(t).Hash(): "the deck"}
	for _, set := range []string{
		"ledger.length=14'-8 1/16\"", "project.name=OTHER", "project.units=metric", "ledger.treated=no", "doors=", "loads.snow=",
		"loads.snow=0psf", "blocks.plies.2=", "blocks.plies.2.material=lumber", "assume.torsion=no", "fasteners.through.rows.0=3 1/16in",
		"deck.guard_posts=[24in]", "wall.layers.0.name=BOARD", "blocks.grid=6.35001mm",
	} {
		h := readDeck(t, set).Hash()
		if other, ok := seen[h]; ok {
			t.Errorf("%s and %s have one hash, %s", set, other, h)
		}
		seen[h] = set
	}
}

// The hash of the frozen file. It may change only with the table of keys or the defaults; then every
// set printed before carries another hash than one printed now, which is what it is for.
func TestHashValue(t *testing.T) {
	if got := readDeck(t).Hash(); got != "62eebcde" {
		t.Errorf("hash %s", got)
	}
}
