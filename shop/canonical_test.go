package shop_test

import (
	"bytes"
	"testing"

	"rodwright/shop"
)

func TestAShopThatDiffersInOnePriceIsAnotherInput(t *testing.T) {
	a, b := shop.Sample(), shop.Sample()
	if !bytes.Equal(a.Canonical(), b.Canonical()) {
		t.Error("the same shop twice is not the same input")
	}
	p, ok := a.Offer(a.Priced()[0])
	if !ok {
		t.Fatal("the sample has no prices")
	}
	p.Cents++
	if bytes.Equal(a.Canonical(), a.With(p).Canonical()) {
		t.Error("a cent more makes no difference")
	}
}
