package wire_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"rodwright/cut/wire"
	"rodwright/length"
)

// Two sticks of 1000 mm leave 300 mm each: room for two of six nipples each, so that two are bought.
const boughtText = `{"unit": "mm",
 "stock": [{"tag": "S1", "length": 1000, "price": 10}],
 "parts": [{"tag": "C1", "length": 700, "count": 2}, {"tag": "C2", "length": 140, "count": 6, "bought": 3, "making": 1}]}`

func TestBoughtPartsAreReadAndWritten(t *testing.T) {
	solveAndVerify(t, wire.Stick, []byte(boughtText))
	var a struct {
		Cost   float64
		Proven bool
		Bought []string
	}
	out := run(t, wire.Stick, []byte(boughtText), true)
	if err := json.Unmarshal(out, &a); err != nil {
		t.Fatal(err)
	}
	if a.Cost != 30 || !a.Proven || !slices.Equal(a.Bought, []string{"C2", "C2"}) {
		t.Errorf("%s", out)
	}
	back, err := wire.ReadAnswer("f", out, length.MM)
	if err != nil || !slices.Equal(back.Bought, a.Bought) {
		t.Errorf("read back %v, %v", back.Bought, err)
	}
	if text := string(run(t, wire.Stick, []byte(boughtText), false)); !strings.Contains(text, "bought: 2 × C2\n") {
		t.Errorf("as a list:\n%s", text)
	}
}

func TestALayoutThatBuysNothingTellsNothingOfIt(t *testing.T) {
	if out := stickAnswer(t); strings.Contains(out, "bought") {
		t.Errorf("%s", out)
	}
}

func TestPricesOfBoughtPartsThatCanNotBeAreNamed(t *testing.T) {
	for from, want := range map[string]string{
		`"bought": 3 `: "parts[1].bought must be from 0 to 1e+09, is -3",
		`"making": 1}`: "parts[1].making must be from 0 to 1e+09, is -1",
	} {
		text := strings.ReplaceAll(strings.Replace(boughtText, "3, ", "3 , ", 1), from, strings.Replace(from, ": ", ": -", 1))
		if _, err := wire.ReadStick("f", []byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", from, err)
		}
	}
}
