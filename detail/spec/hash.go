package spec

import (
	"crypto/sha256"
	"encoding/hex"
	"math"
	"strconv"
)

// Hash returns the first 8 hex digits of the SHA-256 of the parameters, one key=value a line in the
// order of the table, numbers in base units. Comments, the order of the file, the unit a value was
// typed in, and whether a default was typed or left out do not change it.
func (s *Spec) Hash() string {
	c := canon{text: make([]byte, 0, 16<<10)}
	c.keys(keys(s))
	sum := sha256.Sum256(c.text)
	return hex.EncodeToString(sum[:4])
}

// canon is the text that is hashed, and the path of what is being written.
type canon struct{ text, path []byte }

// at puts a name on the path and returns the path's length before.
func (c *canon) at(name string) int {
	n := len(c.path)
	if n > 0 {
		c.path = append(c.path, '.')
	}
	c.path = append(c.path, name...)
	return n
}

// line writes a value at the path.
func (c *canon) line(value []byte) {
	c.text = append(append(append(append(c.text, c.path...), '='), value...), '\n')
}

// keys writes the lines of keys and of all below them.
func (c *canon) keys(keys []key) {
	for i := range keys {
		k := &keys[i]
		before := c.at(k.name)
		switch k.kind {
		case aSection:
			c.keys(k.keys)
		case anOption:
			c.keys(k.option.keys())
		case aList:
			c.line(strconv.AppendInt(nil, int64(k.series.count()), 10))
			for i := range k.series.count() {
				before := c.at(strconv.Itoa(i))
				c.keys(k.series.parts(i))
				c.path = c.path[:before]
			}
		case aSize: // the two lengths it stands for are there
		default:
			var buf [32]byte
			c.line(k.canonical(buf[:0]))
		}
		c.path = c.path[:before]
	}
}

// canonical appends the value of k: a text as it is, a number in its base unit to ten figures, which is
// less than any rounding of units and more than anyone measures; nothing when it is not stated.
func (k *key) canonical(to []byte) []byte {
	if k.text != nil {
		return append(to, k.text.read()...)
	}
	v, stated := k.number.take()
	if !stated {
		return to
	}
	if v != math.Trunc(v) || math.Abs(v) > 1e9 {
		var buf [32]byte
		v, _ = strconv.ParseFloat(string(strconv.AppendFloat(buf[:0], v, 'e', 9, 64)), 64)
	}
	return strconv.AppendFloat(to, v+0, 'g', -1, 64)
}
