package pipe

import (
	"testing"

	"rodwright/length"
)

func BenchmarkFitting(b *testing.B) {
	s, err := Lookup("3/4")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		for _, k := range Kinds() {
			if _, err := s.Fitting(k); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkCutLength(b *testing.B) {
	s, err := Lookup("3/4")
	if err != nil {
		b.Fatal(err)
	}
	tee, err := s.Fitting(Tee)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := CutLength(14*length.Inch, tee, tee); err != nil {
			b.Fatal(err)
		}
	}
}
