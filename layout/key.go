package layout

import (
	"crypto/sha256"
	"fmt"
	"reflect"
	"strconv"
)

// Key returns a text that is the same for the same problem and for no other: an answer accepted once holds as long as
// the key does. It is kept in journals, so what it is made of stays: the names of a problem's members with what they
// are. Members that are nothing are left out, so that one which problems gain some day changes no key of old.
func (t Task) Key() string {
	b := []byte(t.Kind)
	for _, problem := range []any{t.Sticks, t.Boards, t.Sheets} {
		if v := reflect.ValueOf(problem); !v.IsNil() {
			b = told(b, v.Elem())
		}
	}
	return fmt.Sprintf("sha256:%x", sha256.Sum256(b))
}

// told adds a value, so that no other is told alike.
func told(b []byte, v reflect.Value) []byte {
	switch {
	case v.Kind() == reflect.Struct:
		return append(members(append(b, '{'), v), '}')
	case v.Kind() == reflect.Slice || v.Kind() == reflect.Array:
		b = append(b, '[')
		for i := range v.Len() {
			b = append(told(b, v.Index(i)), ',')
		}
		return append(b, ']')
	case v.CanInt():
		return strconv.AppendInt(b, v.Int(), 10)
	case v.CanUint():
		return strconv.AppendUint(b, v.Uint(), 10)
	case v.CanFloat():
		return strconv.AppendFloat(b, v.Float(), 'g', -1, 64)
	case v.Kind() == reflect.Bool:
		return strconv.AppendBool(b, v.Bool())
	}
	return strconv.AppendQuote(b, v.String())
}

// members adds those of a struct that are something.
func members(b []byte, v reflect.Value) []byte {
	for i := range v.NumField() {
		f := v.Field(i)
		if f.IsZero() || f.Kind() == reflect.Slice && f.Len() == 0 {
			continue
		}
		b = append(append(b, v.Type().Field(i).Name...), ':')
		b = append(told(b, f), ' ')
	}
	return b
}
