package spec

import "slices"

// Changed is a value that differs between two projects.
type Changed struct {
	Key      string
	Old, New string // as printed, each in its own project's system; "" where nothing is stated
}

// Changes lists the values that differ between two projects, in the order of the file; keys that only the old one
// has come last. Both are compared as they print.
func Changes(old, now *Spec) []Changed {
	was, is := old.Entries(), now.Entries()
	at := func(of []Entry, key string) string {
		i := slices.IndexFunc(of, func(e Entry) bool { return e.Key == key })
		if i < 0 {
			return ""
		}
		return of[i].Value
	}
	var out []Changed
	for _, e := range is {
		if o := at(was, e.Key); o != e.Value {
			out = append(out, Changed{e.Key, o, e.Value})
		}
	}
	for _, e := range was {
		if e.Value != "" && !slices.ContainsFunc(is, func(n Entry) bool { return n.Key == e.Key }) {
			out = append(out, Changed{e.Key, e.Value, ""})
		}
	}
	return out
}
