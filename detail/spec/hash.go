package spec

import (
	"crypto/sha256"
	"encoding/hex"
	"strconv"
	"strings"
)

// hash returns the first 8 hex digits of the SHA-256 of the parameters, one key=value a line in the
// order of the table, numbers in base units. Comments, the order of the file, the unit a value was
// typed in, and whether a default was typed or left out do not change it.
func (s *Spec) hash() string {
	var b strings.Builder
	canonical(&b, keys(s), "")
	sum := sha256.Sum256([]byte(b.String()))
	return hex.EncodeToString(sum[:4])
}

// canonical writes the lines of keys and of all below them.
func canonical(b *strings.Builder, keys []key, path string) {
	for _, k := range keys {
		at := join(path, k.name)
		switch k.kind {
		case aSection:
			canonical(b, k.keys, at)
		case anOption:
			canonical(b, k.option.keys(), at)
		case aList:
			canonicalList(b, k.series, at)
		case aSize: // the two lengths it stands for are there
		default:
			b.WriteString(at + "=" + k.canonical() + "\n")
		}
	}
}

func canonicalList(b *strings.Builder, s *series, path string) {
	b.WriteString(path + "=" + strconv.Itoa(s.count()) + "\n")
	for i := range s.count() {
		canonical(b, s.parts(i), join(path, strconv.Itoa(i)))
	}
}

// canonical writes the value of k: a text as it is, a number in its base unit to ten figures, which is
// less than any rounding of units and more than anyone measures; nothing when it is not stated.
func (k key) canonical() string {
	if k.text != nil {
		return k.text.read()
	}
	v, stated := k.number.take()
	if !stated {
		return ""
	}
	v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'e', 9, 64), 64)
	return strconv.FormatFloat(v+0, 'g', -1, 64)
}
