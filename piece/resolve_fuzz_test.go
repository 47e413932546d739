package piece

import (
	"errors"
	"testing"

	"rodwright/shop"
)

// What is read is resolved or refused with a place and a way out, and never panics.
func FuzzResolve(f *testing.F) {
	f.Add([]byte(standText))
	for _, name := range Starters() {
		text, err := Starter(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	s := shop.Sample()
	f.Fuzz(func(t *testing.T, text []byte) {
		doc, err := Read("fuzz.piece.yaml", text)
		if err != nil {
			return
		}
		r, err := Resolve(doc, s)
		var e *Error
		if err != nil {
			if !errors.As(err, &e) || e.Message == "" || e.Want == "" {
				t.Errorf("%v", err)
			}
			return
		}
		for i, st := range r.Sticks {
			if st.Between <= 0 || st.A == st.B {
				t.Errorf("stick %d: %+v", i, st)
			}
		}
	})
}
