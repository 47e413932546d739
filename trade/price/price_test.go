package price

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A mark-up of 30 % is a margin of 23.1 %: common practice, and arithmetic.
func TestAMarkUpIsMoreThanTheMarginItGives(t *testing.T) {
	p, err := ByMarkup(100, 30)
	if err != nil {
		t.Fatal(err)
	}
	if p.Price.Value != 130 || math.Abs(p.Margin.Value-23.1) > 0.05 || p.Markup.Value != 30 {
		t.Errorf("price %v, margin %v, markup %v", p.Price.Value, p.Margin.Value, p.Markup.Value)
	}
	p, err = ByMargin(70, 30)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(p.Price.Value-100) > 1e-9 || math.Abs(p.Markup.Value-42.857142857) > 1e-6 || p.Margin.Value != 30 {
		t.Errorf("price %v, margin %v, markup %v", p.Price.Value, p.Margin.Value, p.Markup.Value)
	}
}

func TestAMarginOfEverythingIsRefused(t *testing.T) {
	for _, err := range []error{second(ByMargin(100, 100)), second(ByMargin(100, -1)), second(ByMargin(-1, 10)), second(ByMarkup(100, -1)), second(ByMarkup(math.NaN(), 1)), second(ByMarkup(1, math.Inf(1)))} {
		if err == nil {
			t.Error("a price without bounds was reckoned")
		}
	}
}

func second(_ Price, err error) error { return err }

func TestMarginAndMarkUpLeadToTheSamePrice(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		cost := rapid.Float64Range(0, 1e6).Draw(r, "cost")
		p, err := ByMargin(cost, rapid.Float64Range(0, 99).Draw(r, "margin"))
		if err != nil {
			r.Fatal(err)
		}
		q, err := ByMarkup(cost, p.Markup.Value)
		if err != nil {
			r.Fatal(err)
		}
		if math.Abs(p.Price.Value-q.Price.Value) > 1e-9*p.Price.Value || math.Abs(p.Margin.Value-q.Margin.Value) > 1e-9*100 {
			r.Errorf("%v and %v", p, q)
		}
	})
}

func ExampleByMarkup() {
	p, _ := ByMarkup(420, 30)
	fmt.Printf("price %.2f, margin %.1f %%\n", p.Price.Value, p.Margin.Value)
	// Output: price 546.00, margin 23.1 %
}
