package formula_test

import (
	"errors"
	"fmt"
	"slices"
	"testing"

	"rodwright/length"
	"rodwright/piece/formula"
)

const in = length.Inch

// sizes are the names the tests declare.
var sizes = map[string]length.Length{
	"length": 42 * in, "depth": 19 * in, "low level": 35 * in / 2, "level": 10 * in,
	"side inset": 11 * in / 4, "metric": 100 * length.Millimetre, "low-level": 5 * in, "level 2": 7 * in,
}

func declared(name string) bool { _, ok := sizes[name]; return ok }

func size(name string) length.Length { return sizes[name] }

func eval(text string) (length.Length, error) {
	f, err := formula.Parse(text, length.In, declared)
	if err != nil {
		return 0, err
	}
	return f.Length(size)
}

func Example() {
	declared := func(name string) bool { return name == "low level" }
	f, _ := formula.Parse("low level + 21", length.In, declared)
	l, _ := f.Length(func(string) length.Length { return 35 * length.Inch / 2 })
	fmt.Println(length.Sixteenth.Text(l), f.Names())
	// Output: 38 1/2 in [low level]
}

// The results are worked out by hand.
func TestFormulasOfAMaker(t *testing.T) {
	for _, c := range []struct {
		text string
		want length.Length
	}{
		{"21", 21 * in},
		{"21 in", 21 * in},
		{"14-3/8", 14*in + 3*in/8},
		{"14 3/8\"", 14*in + 3*in/8},
		{"⅜", 3 * in / 8},
		{"14⅜ in", 14*in + 3*in/8},
		{"1' 2 3/8\"", 14*in + 3*in/8},
		{"1'-2 3/8\"", 14*in + 3*in/8},
		{"1' 2", 14 * in},
		{"365 mm", 365 * length.Millimetre},
		{"36.5 cm", 365 * length.Millimetre},
		{"low level + 21 in", 77 * in / 2},
		{"low level + 21", 77 * in / 2},
		{"low level+21", 77 * in / 2},
		{"2 * side inset", 11 * in / 2},
		{"side inset * 2", 11 * in / 2},
		{"length - 2 * side inset", 73 * in / 2},
		{"length − 2 * side inset", 73 * in / 2},
		{"length / 3", 14 * in},
		{"(length - 3 in) / 2", 39 * in / 2},
		{"length - 3 in / 2", 81 * in / 2},
		{"length - 1 - 1", 40 * in},
		{"48 / 4 / 2", 6 * in},
		{"2 * 3", 6 * in},
		{"level + 2 * 3", 16 * in},
		{"(2 + 1) * level", 30 * in},
		{"min(2; 3) * level", 20 * in},
		{"min(length; depth)", 19 * in},
		{"max(length; depth; 50)", 50 * in},
		{"max( length ;depth )", 42 * in},
		{"-level", -10 * in},
		{"- level + 12", 2 * in},
		{"level - -2", 12 * in},
		{"6 ft - 2 in", 70 * in},
		{"1' 2 + 3 in", 17 * in},
		{"low-level", 5 * in},
		{"level 2 + 1", 8 * in},
		{"low  level", 35 * in / 2},
		{"metric + 1 in", 125_400_000},
		{"1/3", 8_466_667},
		{"1 in / 3 * 3", in},
		{"5 mm / 2000000", 2}, // 2.5 nm, to the even neighbour
		{"7 mm / 2000000", 4}, // 3.5 nm
	} {
		got, err := eval(c.text)
		if err != nil || got != c.want {
			t.Errorf("%s: got %d nm, %v; want %d nm", c.text, got, err, c.want)
		}
	}
}

func TestWrongFormulasSayWhereAndWhatWouldBeRight(t *testing.T) {
	for _, c := range []struct {
		text    string
		offset  int
		message string
	}{
		{"", 0, "a value is missing; write for example low level + 21 in"},
		{"level +", 7, "a value is missing; write for example low level + 21 in"},
		{"level-2", 0, `there is no size named "level-2"; name it under sizes; subtraction has a space on both sides`},
		{"14-3", 2, "subtraction needs a space on both sides; write a - b"},
		{"length /2", 7, "division needs a space on both sides; write a / b"},
		{"length/2", 6, "division needs a space on both sides; write a / b"},
		{"level -2", 6, "subtraction needs a space on both sides; write a - b"},
		{"levle + 2", 0, `there is no size named "levle"; name it under sizes`},
		{"length * depth", 7, "a length times a length is an area; multiply a length by a number without a unit"},
		{"length / depth", 7, "a length divided by a length is no length; divide a length by a number without a unit"},
		{"2 / depth", 2, "a number divided by a length is no length; divide a length by a number without a unit"},
		{"length / 0", 9, "division by zero; divide by a number that is not zero"},
		{"length / (2 - 2)", 10, "division by zero; divide by a number that is not zero"},
		{"2 level", 2, `an operator is missing before "level"; put + - * or / between two values`},
		{"level 3", 6, `an operator is missing before "3"; put + - * or / between two values`},
		{"2 × level", 2, "'×' is not read as times here; write a * b"},
		{"level ÷ 2", 6, "'÷' is not read as divided by; write a / b"},
		{"min(level, 2)", 9, "unexpected ','; separate arguments with ;"},
		{"min(level)", 0, "min needs at least two values; write min(a; b)"},
		{"min(level; 2", 0, "the bracket of min is not closed; write min(a; b)"},
		{"(level", 0, "this bracket is not closed; write ) where it ends"},
		{"level)", 5, "unexpected ')'; close what is open, and nothing else"},
		{"level; 2", 5, "unexpected ';'; close what is open, and nothing else"},
		{"⅜ + $", 4, "a number is missing; write for example 14 3/8 in or 365 mm"},
		{"2000 m", 0, "the result is more than 1 km; check the units"},
		{"3/0 + 2", 1, "a fraction needs whole numbers above and below, the lower not zero; write for example 14 3/8 in or 365 mm"},
	} {
		_, err := eval(c.text)
		var e *formula.Error
		if !errors.As(err, &e) {
			t.Errorf("%q: got %v, want a *formula.Error", c.text, err)
			continue
		}
		if e.Offset != c.offset || e.Error() != c.message {
			t.Errorf("%q:\n got %d: %s\nwant %d: %s", c.text, e.Offset, e, c.offset, c.message)
		}
	}
}

func TestAFormulaNamesTheSizesItUsesOnceEach(t *testing.T) {
	f, err := formula.Parse("level + low level + 2 * level + level 2", length.In, declared)
	if err != nil {
		t.Fatal(err)
	}
	if want := []string{"level", "low level", "level 2"}; !slices.Equal(f.Names(), want) {
		t.Errorf("got %q, want %q", f.Names(), want)
	}
}

func TestALiteralKnowsItsUnit(t *testing.T) {
	for _, c := range []struct {
		text string
		unit length.Unit
		ok   bool
	}{
		{"3 in", length.In, true}, {"3\"", length.In, true}, {"3 mm", length.MM, true}, {"2'", length.Ft, true},
		{"1' 2", length.In, true}, {"3", 0, false}, {"3 in + 1", 0, false}, {"level", 0, false}, {"2 ft", length.Ft, true},
	} {
		f, err := formula.Parse(c.text, length.In, declared)
		if err != nil {
			t.Fatal(err)
		}
		if unit, ok := f.Literal(); unit != c.unit || ok != c.ok {
			t.Errorf("%s: got %v %v, want %v %v", c.text, unit, ok, c.unit, c.ok)
		}
	}
}
