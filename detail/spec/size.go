package spec

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"standclear/detail/stock"
	"standclear/detail/unit"
)

// spreadSizes puts the two lengths a size stands for into the section, as if they had been typed.
func (r *reader) spreadSizes(keys []key, n *node, path string) {
	for i := range keys {
		k := &keys[i]
		if k.kind != aSize {
			continue
		}
		found := n.find(k.name)
		if found == nil || found.val.form != scalar || strings.EqualFold(found.val.text, placeholder) {
			continue
		}
		t, d, ok := readSize(found.val.text)
		if !ok {
			given := fmt.Sprintf("%q is not a size of lumber", cut(found.val.text))
			r.fail(found.val.at, join(path, k.name), given, "a size is 2x4, 2x6, 2x8, 2x10 or 2x12, or dressed: 45x220mm, 1 1/2in x 9 1/4in", "")
			r.spoil(join(path, k.spreads[0]))
			r.spoil(join(path, k.spreads[1]))
			continue
		}
		r.spread(n, k.spreads[0], t, found.val, path)
		r.spread(n, k.spreads[1], d, found.val, path)
	}
}

// spread puts one length under name; one that is typed there too must agree.
func (r *reader) spread(n *node, name string, l unit.Length, size *node, path string) {
	if name == "" {
		return
	}
	if !n.given(name) {
		n.put(name, size.at, &node{form: scalar, text: strconv.FormatFloat(float64(l), 'f', -1, 64) + "mm", at: size.at})
		return
	}
	typed := n.find(name).val
	v, err := unit.ParseLength(typed.text)
	if err == nil && math.Abs(float64(v-l)) > 0.1 {
		r.fail(typed.at, join(path, name), fmt.Sprintf("%s, but the size %s has %s", cut(typed.text), cut(size.text), l.Text(r.sys())), "", "give the size or the measure, not both")
	}
}

// readSize reads 2x10, or dressed measures: 45x220mm, 45 x 220 mm, 1 1/2" x 9 1/4".
func readSize(s string) (thickness, depth unit.Length, ok bool) {
	if n, ok := stock.SizeOf(s); ok {
		return n.Thickness, n.Depth, true
	}
	left, right, found := strings.Cut(strings.ReplaceAll(strings.ToLower(s), "×", "x"), "x")
	d, err := unit.ParseLength(right)
	if !found || err != nil {
		return 0, 0, false
	}
	t, err := unit.ParseLength(left)
	if err != nil {
		t, err = unit.ParseLength(strings.TrimSpace(left) + unitOf(right))
	}
	return t, d, err == nil && t > 0 && d > 0
}

// unitOf returns the letters or mark at the end of a length.
func unitOf(s string) string {
	s = strings.TrimSpace(s)
	return s[len(strings.TrimRight(s, `"'abcdefghijklmnopqrstuvwxyz`)):]
}
