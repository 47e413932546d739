package pipe

import (
	"errors"
	"testing"

	"rodwright/trade/table"
)

func TestKindsAreReadByTheirIDs(t *testing.T) {
	if len(Kinds()) != 11 || Kinds()[10] != None {
		t.Fatalf("kinds %v", Kinds())
	}
	for _, k := range Kinds() {
		got, err := ParseKind(string(k))
		if err != nil || got != k {
			t.Errorf("%s reads as %s, %v", k, got, err)
		}
		if k.Words() == "" || k.Outlets() == 0 {
			t.Errorf("%s lacks words or outlets", k)
		}
	}
}

func TestAnUnknownKindListsNearOnes(t *testing.T) {
	for _, c := range []struct{ text, near string }{
		{"elbow", "elbow45"},
		{"tea", "tee"},
		{"Tee", "tee"},
		{"side tee", "side-tee"},
		{"", "cap"},
	} {
		_, err := ParseKind(c.text)
		var unknown *table.UnknownError
		if !errors.As(err, &unknown) || unknown.Near[0] != c.near {
			t.Errorf("%q: %v, want %s first", c.text, err, c.near)
		}
	}
	if Kind("wheel").Words() != "wheel" || Kind("wheel").Outlets() != 0 {
		t.Error("what is no kind has its own name and no outlets")
	}
}

func TestOutletsAreThoseOfTheTrade(t *testing.T) {
	for k, want := range map[Kind]int{
		Elbow90: 2, Elbow45: 2, Tee: 3, Cross: 4, SideElbow: 3, SideTee: 4, Coupling: 2, Union: 2, Flange: 1, Cap: 1, None: 1,
	} {
		if k.Outlets() != want {
			t.Errorf("%s has %d outlets, want %d", k, k.Outlets(), want)
		}
	}
}
