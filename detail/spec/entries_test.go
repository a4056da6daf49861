package spec_test

import (
	"regexp"
	"testing"

	"standclear/detail/demo"
	"standclear/detail/spec"
	"standclear/detail/unit"
)

// What the table marks as never defaulted is an entry of the demo, with the value typed in the file.
func TestEntriesHoldWhatWasTyped(t *testing.T) {
	src, _ := demo.File("deck")
	s, problems := spec.Read("deck", src, nil)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	at := map[string]spec.Entry{}
	place := regexp.MustCompile(`\.\d+`)
	general := map[string]bool{}
	for _, e := range s.Entries() {
		if _, twice := at[e.Key]; twice {
			t.Errorf("%s is listed twice", e.Key)
		}
		at[e.Key] = e
		general[place.ReplaceAllString(e.Key, ".N")] = true
		if e.Survey && e.Value == "" {
			t.Errorf("%s is never defaulted and has no value", e.Key)
		}
	}
	for key, want := range map[string]spec.Entry{
		"floor.rim.depth":          {Value: `11 7/8"`, Given: true, Survey: true},
		"wall.layers.2.thickness":  {Value: `1/2"`, Given: true, Survey: true},
		"doors.0.from":             {Value: `5'-10"`, Given: true, Survey: true},
		"fasteners.through.rows.1": {Value: `6 5/8"`, Given: true, Survey: true},
		"blocks.below":             {Value: `0"`, Given: false, Survey: false},
		"foundation.grade_high":    {Value: `-5'-0"`, Given: true, Survey: false},
	} {
		got := at[key]
		if got.Value != want.Value || got.Given != want.Given || got.Survey != want.Survey {
			t.Errorf("%s: %+v, want %+v", key, got, want)
		}
	}
	for _, k := range spec.Keys(unit.IP) {
		elsewhere := map[string]bool{"deck.point_loads.N.x": true, "deck.point_loads.N.load": true, "wall.layers": true, "fasteners.through.rows": true,
			"fasteners.to_rim.rows": true, "fasteners.to_rim.diameter": true, "fasteners.to_block.rows": true, "fasteners.to_block.diameter": true,
			"blocks.ledger_screws.diameter": true, "blocks.ledger_screws.length": true, "project.revisions.N.mark": true, "project.revisions.N.text": true}
		if k.Required && !elsewhere[k.Path] && !general[k.Path] {
			t.Errorf("%s is never defaulted and is no entry", k.Path)
		}
	}
}
