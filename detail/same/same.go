// Package same tells whether two values are alike all the way down.
//
//	if same.Of(a) == same.Of(b) { ... } // the same numbers and texts in every field
package same

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"math"
	"reflect"
)

// Sum stands for all that a value holds: equal for values that are alike, else different.
type Sum [sha256.Size]byte

// Of returns the Sum of the values, in order: of their fields whether exported or not, of what pointers point to
// and of the items of lists. Numbers count by their bits, so that -0 is not 0, and a list that is nil is not an
// empty one. It panics where there is a map, a function, a channel or an interface, of which none can be told.
func Of(values ...any) Sum {
	b := make([]byte, 0, 8<<10)
	for _, v := range values {
		b = appendValue(b, reflect.ValueOf(v))
	}
	return sha256.Sum256(b)
}

func appendValue(b []byte, v reflect.Value) []byte {
	switch v.Kind() {
	case reflect.Bool:
		if v.Bool() {
			return append(b, 1)
		}
		return append(b, 0)
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		return binary.LittleEndian.AppendUint64(b, uint64(v.Int()))
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		return binary.LittleEndian.AppendUint64(b, v.Uint())
	case reflect.Float32, reflect.Float64:
		return binary.LittleEndian.AppendUint64(b, math.Float64bits(v.Float()))
	case reflect.String:
		b = binary.LittleEndian.AppendUint64(b, uint64(v.Len()))
		return append(b, v.String()...)
	case reflect.Pointer:
		if v.IsNil() {
			return append(b, 0)
		}
		return appendValue(append(b, 1), v.Elem())
	case reflect.Slice:
		if v.IsNil() {
			return append(b, 0)
		}
		return appendItems(binary.LittleEndian.AppendUint64(append(b, 1), uint64(v.Len())), v)
	case reflect.Array:
		return appendItems(b, v)
	case reflect.Struct:
		for i := range v.NumField() {
			b = appendValue(b, v.Field(i))
		}
		return b
	}
	panic(fmt.Sprintf("same: nothing can be told of a %s", v.Type()))
}

func appendItems(b []byte, v reflect.Value) []byte {
	for i := range v.Len() {
		b = appendValue(b, v.Index(i))
	}
	return b
}
