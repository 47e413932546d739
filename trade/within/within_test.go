package within_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

func TestValuesInsideTheirRangeGiveNoError(t *testing.T) {
	for name, err := range map[string]error{
		"positive":       within.Positive("span", 0.001, figure.MM),
		"zero spare":     within.NotNegative("spare", 0, figure.Percent),
		"low end":        within.Between("humidity", 0, 0, 100, figure.Percent),
		"high end":       within.Between("humidity", 100, 0, 100, figure.Percent),
		"one nanometre":  within.Length("gap", 1),
		"no gap":         within.Room("gap", 0),
		"a kilometre":    within.Length("span", length.Max),
		"negative force": within.Finite("push", -3, figure.N),
		"four casters":   within.Counted("casters", 4, 3, 4),
	} {
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestAValueOutsideItsRangeIsNamedWithWhatWouldBeRight(t *testing.T) {
	cases := []struct {
		err  error
		want string
	}{
		{within.Positive("span", 0, figure.MM), "span is 0 mm; it must be above 0"},
		{within.Positive("load", math.NaN(), figure.N), "load is NaN N; it must be above 0"},
		{within.Positive("load", math.Inf(1), figure.N), "load is +Inf N; it must be above 0"},
		{within.NotNegative("spare", -5, figure.Percent), "spare is -5 %; it must be 0 or more"},
		{within.NotNegative("spare", math.Inf(1), figure.Percent), "spare is +Inf %; it must be 0 or more"},
		{within.Between("humidity", 101, 0, 100, figure.Percent), "humidity is 101 %; it must be from 0 to 100 %"},
		{within.Between("humidity", math.NaN(), 0, 100, figure.Percent), "humidity is NaN %; it must be from 0 to 100 %"},
		{within.Length("pad", 0), "pad is 0 mm; it must be above 0 and at most 1 km"},
		{within.Length("pad", length.Max+1), "pad is 1000000 mm; it must be above 0 and at most 1 km"},
		{within.Room("gap", -length.Millimetre), "gap is -1 mm; it must be 0 or more and at most 1 km"},
		{within.Finite("push", math.Inf(-1), figure.N), "push is -Inf N; it must be a number"},
		{within.Counted("casters", 6, 3, 4), "casters is 6; it must be from 3 to 4"},
	}
	for _, c := range cases {
		var e *within.Error
		if !errors.As(c.err, &e) {
			t.Errorf("want %q, got no error of this package: %v", c.want, c.err)
			continue
		}
		if e.Error() != c.want {
			t.Errorf("got %q, want %q", e, c.want)
		}
	}
}

func ExampleBetween() {
	fmt.Println(within.Between("slope", 95, 0, 90, figure.Deg))
	// Output: slope is 95°; it must be from 0 to 90°
}

func TestAQuotientThatIsWholeButForItsLastDigitsIsNotCountedUp(t *testing.T) {
	tenth := 0.1
	for _, c := range []struct {
		q    float64
		want int
		ok   bool
	}{
		{12150.0 / 1350, 9, true},
		{(tenth + 0.2) * 10, 3, true},
		{9.001, 10, true},
		{0, 0, true},
		{-4, 0, true},
		{0.001, 1, true},
		{math.NaN(), 0, false},
		{math.Inf(1), 0, false},
		{2e9, 0, false},
	} {
		if n, ok := within.Whole(c.q); n != c.want || ok != c.ok {
			t.Errorf("%v: %d %v, want %d %v", c.q, n, ok, c.want, c.ok)
		}
	}
}

func TestLengthsThatWereRoundedStillCoverTheirWhole(t *testing.T) {
	const in = length.Inch
	for _, c := range []struct {
		total, each length.Length
		want        int
	}{{in, in / 3, 3}, {in, in / 2, 2}, {in + 1, in, 1}, {in + 2, in, 2}, {in, 2 * in, 1}, {1, in, 1}, {in, in / 7, 7}, {48 * in, 3 * in, 16}} {
		if n := within.Cover(c.total, c.each); n != c.want {
			t.Errorf("%v in %v: %d, want %d", c.total, c.each, n, c.want)
		}
	}
}
