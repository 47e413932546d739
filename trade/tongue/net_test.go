package tongue

import (
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
)

// NDS 2018 3.4.3.2: V = 2/3·F·b·d_n·(d_n/d)². A section 100 mm wide and 40 mm deep notched by 10 mm over its whole width
// bears 100·30·0.75² = 1687.5 mm² of 4000, by hand.
func TestAPocketInTheTensionSideTakesMoreThanItsDepth(t *testing.T) {
	a, err := NetArea(0, 40*mm, Pocket{100 * mm, 10 * mm})
	if err != nil {
		t.Fatal(err)
	}
	close(t, "net", a.Value, 1687.5)
	a, _ = NetArea(60*mm, 40*mm, Pocket{40 * mm, 10 * mm})
	close(t, "half net", a.Value, 2400+675)
	s, _ := NetShear(1000, a.Value)
	close(t, "shear", s.Value, 1500/3075.0)
}

func TestADeeperPocketNeverBearsMore(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		l := func(name string) length.Length { return length.FromMM(rapid.Float64Range(0, 100).Draw(r, name)) }
		w, d, q, deep, more := l("w"), l("d")+mm, l("q"), l("deep"), l("more")
		was, err := NetArea(w, d, Pocket{q, deep})
		is, _ := NetArea(w, d, Pocket{q, deep + more})
		if err != nil || is.Value > was.Value || is.Value < 0 {
			r.Errorf("%v, %v, %v", was.Value, is.Value, err)
		}
	})
}

func TestNoSectionBearsNothing(t *testing.T) {
	if _, err := NetShear(1, 0); err == nil {
		t.Error("a section of nothing")
	}
	if _, err := NetArea(1, 0); err == nil {
		t.Error("a section of no depth")
	}
}
