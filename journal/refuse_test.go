package journal_test

import (
	"bytes"
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rodwright/journal"
	"rodwright/length"
)

// refused holds that the entry is refused for that field.
func refused(t *testing.T, e journal.Entry, field string) {
	t.Helper()
	var bad *journal.EntryError
	if err := e.Check(); !errors.As(err, &bad) || bad.Field != field {
		t.Errorf("%s: %v", field, err)
	}
}

// spoil is a way to make a fact one that can't be, and the field that is named then.
type spoil struct {
	field string
	by    func(*journal.Happened)
}

func spoilt(t *testing.T, fresh func() journal.Happened, spoils ...spoil) {
	t.Helper()
	for _, s := range spoils {
		h := fresh()
		if err := h.Check(); err != nil {
			t.Fatalf("before it was spoilt: %v", err)
		}
		s.by(&h)
		refused(t, told(1, "anna", h), s.field)
	}
}

const (
	tooFar  = journal.MM(length.Max) + 1
	letters = "pine \xff"
)

func TestWorkThatCantBeIsRefused(t *testing.T) {
	spoilt(t, func() journal.Happened { return board("A1.1") },
		spoil{"fact.what", func(h *journal.Happened) { h.What = "" }},
		spoil{"fact.thing", func(h *journal.Happened) { h.Thing = "1" }},
		spoil{"fact.part", func(h *journal.Happened) { h.Part = "A1.1\n" }},
		spoil{"fact.place", func(h *journal.Happened) { h.Place = "" }},
		spoil{"fact.place", func(h *journal.Happened) { h.Place = letters }},
		spoil{"fact.work", func(h *journal.Happened) { h.Work = "whittle" }},
		spoil{"fact.work", func(h *journal.Happened) { h.Work = "deliver" }}, // no work on a part
		spoil{"fact.shape", func(h *journal.Happened) { h.Shape = nil }},
		spoil{"fact.hands_h", func(h *journal.Happened) { h.HandsH = -1 }},
		spoil{"fact.hands_h", func(h *journal.Happened) { h.HandsH = math.NaN() }},
		spoil{"fact.hands_h", func(h *journal.Happened) { h.HandsH = math.Inf(1) }},
		spoil{"fact.from", func(h *journal.Happened) { h.From = strings.Repeat("P", journal.MostPath+1) }},
		spoil{"fact.from", func(h *journal.Happened) { h.Took = inch }},
		spoil{"fact.took", func(h *journal.Happened) { h.From, h.Took = "P1", -inch }},
		spoil{"fact.took", func(h *journal.Happened) { h.From, h.Took = "P1", tooFar }},
		spoil{"fact.why", func(h *journal.Happened) { h.Why = "a\nb" }},
		spoil{"fact.goods", func(h *journal.Happened) { h.Goods = bought("P1").Goods }},
		spoil{"fact.distance", func(h *journal.Happened) { h.Distance = measured(inch).Distance }},
	)
}

func TestShapesThatCantBeAreRefused(t *testing.T) {
	shaped := func() journal.Happened { return *logs()[0][6].Fact }
	spoilt(t, shaped,
		spoil{"fact.shape.kind", func(h *journal.Happened) { h.Shape.Kind = "leg" }},
		spoil{"fact.shape.material", func(h *journal.Happened) { h.Shape.Material = " " }},
		spoil{"fact.shape.material", func(h *journal.Happened) { h.Shape.Material = letters }},
		spoil{"fact.shape.size", func(h *journal.Happened) { h.Shape.Size[2] = 0 }},
		spoil{"fact.shape.size", func(h *journal.Happened) { h.Shape.Size[0] = tooFar }},
		spoil{"fact.shape.drawn", func(h *journal.Happened) { h.Shape.Drawn[1] = -1 }},
		spoil{"fact.shape.openings", func(h *journal.Happened) { h.Shape.Openings = make([]journal.Opening, 201) }},
		spoil{"fact.shape.openings.kind", func(h *journal.Happened) { h.Shape.Openings[0].Kind = "window" }},
		spoil{"fact.shape.openings.at", func(h *journal.Happened) { h.Shape.Openings[0].At[1] = math.MinInt64 }},
		spoil{"fact.shape.openings.size", func(h *journal.Happened) { h.Shape.Openings[0].Size[1] = 0 }},
		spoil{"fact.shape.openings.radius", func(h *journal.Happened) { h.Shape.Openings[0].Radius = -1 }},
		spoil{"fact.shape.openings.depth", func(h *journal.Happened) { h.Shape.Openings[0].Depth = tooFar }},
		spoil{"fact.shape.openings.opens", func(h *journal.Happened) { h.Shape.Openings[0].Opens = "up" }},
		spoil{"fact.shape.profiles", func(h *journal.Happened) { h.Shape.Profiles = make([]journal.Profile, 201) }},
		spoil{"fact.shape.profiles.side", func(h *journal.Happened) { h.Shape.Profiles[0].Side = "" }},
		spoil{"fact.shape.profiles.profile", func(h *journal.Happened) { h.Shape.Profiles[0].Profile = "" }},
		spoil{"fact.shape.profiles.size", func(h *journal.Happened) { h.Shape.Profiles[0].Size = 0 }},
	)
	spoilt(t, func() journal.Happened { return pipe("C2.1", 26*inch) },
		spoil{"fact.shape.size", func(h *journal.Happened) { h.Shape.Size[0] = 0 }},
		spoil{"fact.shape.size", func(h *journal.Happened) { h.Shape.Size[1] = -inch }},
	)
}

func TestAFactAboutAPartNamesIt(t *testing.T) {
	spoilt(t, func() journal.Happened { return spoiled(1, "split") },
		spoil{"fact.thing", func(h *journal.Happened) { h.Thing = "" }},
		spoil{"fact.why", func(h *journal.Happened) { h.Why = " " }},
		spoil{"fact.work", func(h *journal.Happened) { h.Work = "size" }},
		spoil{"fact.shape", func(h *journal.Happened) { h.Shape = board("A1.1").Shape }},
		spoil{"fact.hands_h", func(h *journal.Happened) { h.HandsH = math.NaN() }},
		spoil{"fact.again", func(h *journal.Happened) { h.Again = true }},
		spoil{"fact.from", func(h *journal.Happened) { h.From = "P1" }},
		spoil{"fact.took", func(h *journal.Happened) { h.Took = inch }},
	)
	spoilt(t, func() journal.Happened { return wrong(1, 25*inch) },
		spoil{"fact.thing", func(h *journal.Happened) { h.Thing = "" }},
		spoil{"fact.why", func(h *journal.Happened) { h.Why = "" }},
		spoil{"fact.shape", func(h *journal.Happened) { h.Shape = nil }},
		spoil{"fact.shape.size", func(h *journal.Happened) { h.Shape.Size[0] = 0 }},
		spoil{"fact.hands_h", func(h *journal.Happened) { h.HandsH = 1 }},
	)
	spoilt(t, func() journal.Happened { return meant(1, "") },
		spoil{"fact.thing", func(h *journal.Happened) { h.Thing = strings.ToUpper(id(171)) }},
	)
	spoilt(t, func() journal.Happened { return finished },
		spoil{"fact.thing", func(h *journal.Happened) { h.Thing = id(1) }},
		spoil{"fact.part", func(h *journal.Happened) { h.Part = "A1.1" }},
		spoil{"fact.place", func(h *journal.Happened) { h.Place = "deep board" }},
	)
}

func TestGoodsThatCantBeAreRefused(t *testing.T) {
	cents := int64(-1)
	spoilt(t, func() journal.Happened { return *logs()[0][0].Fact }, // a board with a knot
		spoil{"fact.goods", func(h *journal.Happened) { h.Goods = nil }},
		spoil{"fact.goods.kind", func(h *journal.Happened) { h.Goods.Kind = "log" }},
		spoil{"fact.goods.tag", func(h *journal.Happened) { h.Goods.Tag = "" }},
		spoil{"fact.goods.tag", func(h *journal.Happened) { h.Goods.Tag = letters }},
		spoil{"fact.goods.item", func(h *journal.Happened) { h.Goods.Item = "tee 1" }},
		spoil{"fact.goods.material", func(h *journal.Happened) { h.Goods.Material = "" }},
		spoil{"fact.goods.quarters", func(h *journal.Happened) { h.Goods.Quarters = "5\n4" }},
		spoil{"fact.goods.size", func(h *journal.Happened) { h.Goods.Size[2] = 0 }},
		spoil{"fact.goods.size", func(h *journal.Happened) { h.Goods.Kind, h.Goods.Size[2] = "sheet", -inch }},
		spoil{"fact.goods.count", func(h *journal.Happened) { h.Goods.Count = math.NaN() }},
		spoil{"fact.goods.rough", func(h *journal.Happened) { h.Goods.Rough = 3 }},
		spoil{"fact.goods.cents", func(h *journal.Happened) { h.Goods.Cents = &cents }},
		spoil{"fact.goods.defects", func(h *journal.Happened) { h.Goods.Defects = make([]journal.Defect, 201) }},
		spoil{"fact.goods.defects.kind", func(h *journal.Happened) { h.Goods.Defects[0].Kind = "stain" }},
		spoil{"fact.goods.defects.face", func(h *journal.Happened) { h.Goods.Defects[0].Face = "" }},
		spoil{"fact.goods.defects.at", func(h *journal.Happened) { h.Goods.Defects[0].At[0] = -1 }},
		spoil{"fact.goods.defects.size", func(h *journal.Happened) { h.Goods.Defects[0].Size[0] = 0 }},
	)
	spoilt(t, func() journal.Happened { return tees(8) },
		spoil{"fact.goods.item", func(h *journal.Happened) { h.Goods.Item = " " }},
		spoil{"fact.goods.count", func(h *journal.Happened) { h.Goods.Count = 0 }},
		spoil{"fact.goods.count", func(h *journal.Happened) { h.Goods.Count = math.NaN() }},
		spoil{"fact.goods.count", func(h *journal.Happened) { h.Goods.Count = 1_000_001 }},
		spoil{"fact.goods.tag", func(h *journal.Happened) { h.Goods.Tag = "P1" }},
		spoil{"fact.goods.tag", func(h *journal.Happened) { h.Goods.Size[0] = inch }},
		spoil{"fact.goods.defects", func(h *journal.Happened) { h.Goods.Rough = 1 }},
	)
}

func TestADistanceLiesBetweenTwoThings(t *testing.T) {
	spoilt(t, func() journal.Happened { return measured(24 * inch) },
		spoil{"fact.distance", func(h *journal.Happened) { h.Distance = nil }},
		spoil{"fact.distance.from", func(h *journal.Happened) { h.Distance.From = "" }},
		spoil{"fact.distance.to", func(h *journal.Happened) { h.Distance.To = letters }},
		spoil{"fact.distance.to", func(h *journal.Happened) { h.Distance.To = h.Distance.From }},
		spoil{"fact.distance.value", func(h *journal.Happened) { h.Distance.Value = 0 }},
		spoil{"fact.distance.value", func(h *journal.Happened) { h.Distance.Value = tooFar }},
		spoil{"fact.distance.over", func(h *journal.Happened) { h.Distance.Over = "centres" }},
		spoil{"fact.again", func(h *journal.Happened) { h.Again = true }},
	)
}

func TestTheGreatestFactAndOrderAreReadBack(t *testing.T) {
	long := func(n int) string { return strings.Repeat("<", n) }
	h := board(long(journal.MostPath))
	h.Place, h.From, h.Why, h.Shape.Material = long(journal.MostPath), long(journal.MostPath), long(journal.MostPath), long(journal.MostActor)
	at := -journal.MM(length.Max) + 1
	for range 200 {
		h.Shape.Openings = append(h.Shape.Openings, journal.Opening{Kind: "cut-out", At: [2]journal.MM{at, at}, Size: [2]journal.MM{-at, -at}, Round: true, Radius: -at, Depth: -at, Opens: "start end"})
		h.Shape.Profiles = append(h.Shape.Profiles, journal.Profile{Side: "start end", Profile: long(journal.MostActor), Size: -at})
	}
	o := journal.Order{No: math.MaxInt, Words: long(journal.MostValue)}
	for range 500 {
		o.Edits = append(o.Edits, journal.Put{Path: long(40), New: long(40)})
	}
	es := []journal.Entry{told(1, "anna", h), asked(2, "cleo", o)}
	back, err := journal.Read(bytes.NewReader([]byte(file(t, es...))))
	if diff := cmp.Diff(es, back); err != nil || diff != "" {
		t.Error(err, diff)
	}
}

func TestEveryWorkLeadsToAState(t *testing.T) {
	last := journal.Planned
	for _, work := range journal.Works() {
		to, ok := journal.AfterWork(work)
		if !ok || to < last || to <= journal.InHand {
			t.Errorf("%s leads to %v, %v", work, to, ok)
		}
		last = to
	}
	for s := journal.BlankCut; s <= journal.Fitted; s++ {
		if to, ok := journal.AfterWork(s.String()); !ok || to != s {
			t.Errorf("a part that is %v is %v, %v", s, to, ok)
		}
	}
	if _, ok := journal.AfterWork("bought"); ok {
		t.Error("buying stock is work on a part")
	}
	if to, ok := journal.AfterWork("deliver"); ok || to != journal.Planned {
		t.Errorf("delivering leads a part to %v", to)
	}
	if got := journal.Fitted.String() + " " + journal.Planned.String() + " " + journal.State(99).String(); got != "fitted planned unknown" {
		t.Error(got)
	}
}
