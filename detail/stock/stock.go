// Package stock is what can be bought and what it is worth: lumber, rims, boards, bolts, sheets of
// paper. Every value carries its source beside it, and says when it was written from memory and is to
// be confirmed before the drawings are relied on.
//
//	v, ok := stock.Lumber("southern pine", "No.2", 9.25*unit.Inch)
//	fmt.Println(v.Fb.PSI(), ok) // 800 true
//
// Tables are made once and handed out as copies.
package stock

// Marks at the end of a Source.
const (
	read   = "read"                   // read in a source when the table was made
	memory = "from memory, confirm"   // not read again: check before it is relied on
	judged = "judgement of this tool" // nobody's rule but ours
)

// same reports whether two names are one, leaving case, spaces, hyphens, dots and underscores aside.
func same(a, b string) bool {
	for {
		c, a1 := nextPlain(a)
		d, b1 := nextPlain(b)
		if c != d {
			return false
		}
		if c == 0 {
			return true
		}
		a, b = a1, b1
	}
}

// nextPlain returns the next letter that counts and what follows it; 0 at the end.
func nextPlain(s string) (byte, string) {
	for i := range len(s) {
		switch c := s[i]; {
		case c == ' ' || c == '-' || c == '_' || c == '.' || c == '#':
		case c == 0:
			return 1, s[i+1:]
		case 'A' <= c && c <= 'Z':
			return c + 'a' - 'A', s[i+1:]
		default:
			return c, s[i+1:]
		}
	}
	return 0, ""
}
