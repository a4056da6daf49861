// Package stock is what can be bought and what it is worth: lumber, rims, boards, bolts, sheets of
// paper. Every value carries its source beside it, and says when it was written from memory and is to
// be confirmed before the drawings are relied on.
//
//	v, ok := stock.Lumber("southern pine", "No.2", 9.25*unit.Inch)
//	fmt.Println(v.Fb.PSI(), ok) // 800 true
//
// The tables are rebuilt on every call; a caller may change what it gets.
package stock

// Marks at the end of a Source.
const (
	read   = "read"                   // read in a source when the table was made
	memory = "from memory, confirm"   // not read again: check before it is relied on
	judged = "judgement of this tool" // nobody's rule but ours
)

// same reports whether two names are one, leaving case, spaces, hyphens, dots and underscores aside.
func same(a, b string) bool { return plain(a) == plain(b) }

func plain(s string) string {
	b := make([]byte, 0, len(s))
	for i := range len(s) {
		switch c := s[i]; {
		case c == ' ' || c == '-' || c == '_' || c == '.' || c == '#':
		case 'A' <= c && c <= 'Z':
			b = append(b, c+'a'-'A')
		default:
			b = append(b, c)
		}
	}
	return string(b)
}
