package way

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
)

func TestWhatIsLeftOfASpaceMayBeLessThanNothing(t *testing.T) {
	for _, c := range []struct{ space, size, clearance, want string }{
		{"36 5/8 in", "33 5/8 in", "0 in", "3 in"}, {"36 in", "36 in", "1/8 in", "-1/8 in"}, {"36 in", "36 in", "0 in", "0 in"},
	} {
		var l [4]length.Length
		for i, text := range []string{c.space, c.size, c.clearance, c.want} {
			l[i], _ = length.Parse(text, length.In)
		}
		if got := Left(l[0], l[1], l[2]).Value; got != l[3].MM() {
			t.Errorf("%s for %s and %s: %v mm, want %s", c.space, c.size, c.clearance, got, c.want)
		}
	}
}

// The sides 3, 4, 5 and 5, 12, 13 of right triangles are exact.
func TestAPieceStandsUpUnderItsDiagonal(t *testing.T) {
	for _, c := range []struct{ l, w, want float64 }{{3, 4, 5}, {5, 12, 13}, {12, 5, 13}} {
		f, err := StandUp(length.FromInches(c.l), length.FromInches(c.w))
		if err != nil || math.Abs(f.Value/25.4-c.want) > 1e-7 {
			t.Errorf("%v by %v: %v in, %v", c.l, c.w, f.Value/25.4, err)
		}
	}
	for _, l := range [][2]length.Length{{0, 1}, {1, 0}, {-1, 1}} {
		if _, err := StandUp(l[0], l[1]); err == nil {
			t.Errorf("%v stands up", l)
		}
	}
}

func TestAPieceNeedsMoreThanItsLengthAndLessThanBothSides(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		l := length.Length(rapid.Int64Range(1e6, 5e9).Draw(r, "l"))
		w := length.Length(rapid.Int64Range(1e6, 5e9).Draw(r, "w"))
		f, err := StandUp(l, w)
		if err != nil {
			r.Fatal(err)
		}
		if d := length.FromMM(f.Value); d < max(l, w) || d > l+w {
			r.Errorf("%v by %v needs %v", l, w, d)
		}
	})
}

func ExampleStandUp() {
	f, _ := StandUp(82*length.Inch, 44*length.Inch)
	fmt.Println(f.Show(length.Sixteenth))
	// Output: 93 1/16 in
}
