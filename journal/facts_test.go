package journal_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"pgregory.net/rapid"

	"rodwright/journal"
	"rodwright/length"
)

const (
	inch = journal.MM(length.Inch)
	foot = journal.MM(length.Foot)
)

func entryOf(n int, kind journal.Kind) journal.Entry {
	e := entry(n, "anna")
	e.Kind = kind
	return e
}

// told is an entry that tells a fact.
func told(n int, actor string, h journal.Happened) journal.Entry {
	e := entry(n, actor)
	e.Kind, e.Fact = journal.Fact, &h
	return e
}

func asked(n int, actor string, o journal.Order) journal.Entry {
	e := entry(n, actor)
	e.Kind, e.Order = journal.Asked, &o
	return e
}

func answered(n int, actor string, names int, yes bool) journal.Entry {
	e := entry(n, actor)
	e.Kind, e.Names, e.Yes = journal.Answer, id(names), yes
	return e
}

// accepted is an entry that accepts a layout of pipe of that cost and bound; layouts of one bound are of one problem.
func accepted(n int, actor string, cost, bound float64) journal.Entry {
	e := entry(n, actor)
	e.Kind, e.Layout = journal.Accepted, &journal.Layout{
		Kind: "stick", Material: "3/4", Key: fmt.Sprintf("sha256:%064x", int64(bound)), Cost: cost, Bound: bound,
		Answer: json.RawMessage(fmt.Sprintf(`{"unit":"mm","cost":%v,"bound":%v,"used":[{"stock":"S1","parts":[]}]}`, cost, bound)),
	}
	return e
}

func withdrawn(n int, actor string, names int) journal.Entry {
	e := entry(n, actor)
	e.Kind, e.Names = journal.Withdrawn, id(names)
	return e
}

var (
	finished = journal.Happened{What: journal.Finished}
	wider    = journal.Order{No: 1, Words: "a little wider", Edits: []journal.Put{{Path: "sizes/width", New: "16 in"}}, Ready: "2027-01-15"}
	deeper   = journal.Order{No: 2, Edits: []journal.Put{{Path: "sizes/depth", New: "13 in"}, {Path: "sizes/level", New: "19 in"}}}
)

// board is the fact that a board was cut to its size of 42 × 18 1/4 × 1 in.
func board(tag string) journal.Happened {
	return journal.Happened{What: journal.Made, Part: tag, Place: "deep board", Work: "size", HandsH: 0.5, Shape: &journal.Shape{
		Kind: journal.KindPanel, Material: "white-oak", Size: [3]journal.MM{42 * inch, 18*inch + inch/4, inch}, Measured: true,
	}}
}

// pipe is the fact that a pipe was cut to that length.
func pipe(tag string, long journal.MM) journal.Happened {
	return journal.Happened{What: journal.Made, Part: tag, Place: "front left post 1", Work: "cut-pipe", HandsH: 0.25,
		Shape: &journal.Shape{Kind: journal.KindPipe, Material: "3/4", Size: [3]journal.MM{long}}}
}

// again is the fact of more work on the pipe that the entry with that number told of.
func again(names int, work string) journal.Happened {
	h := pipe("C2.1", 26*inch)
	h.Thing, h.Work = id(names), work
	return h
}

func spoiled(names int, why string) journal.Happened {
	return journal.Happened{What: journal.Spoiled, Thing: id(names), Part: "C2.1", Why: why}
}

// wrong is the fact that the pipe was cut too short.
func wrong(names int, long journal.MM) journal.Happened {
	return journal.Happened{What: journal.Wrong, Thing: id(names), Part: "C2.1", Place: "front left post 1", Why: "cut too short", Shape: pipe("C2.1", long).Shape}
}

func meant(names int, place string) journal.Happened {
	return journal.Happened{What: journal.Meant, Thing: id(names), Part: "C2.1", Place: place}
}

// bought is the fact that a board of 118 × 6 3/4 × 1 1/8 in came into the shop.
func bought(tag string) journal.Happened {
	cents := int64(3850)
	return journal.Happened{What: journal.Bought, Goods: &journal.Goods{Kind: journal.BoardGoods, Tag: tag, Material: "white-oak", Quarters: "5/4",
		Size: [3]journal.MM{118 * inch, 6*inch + 3*inch/4, inch + inch/8}, Rough: 1, Cents: &cents}}
}

// stick is the fact that a stick of 21 ft of pipe came into the shop.
func stick(tag string) journal.Happened {
	return journal.Happened{What: journal.Bought, Goods: &journal.Goods{Kind: journal.StickGoods, Tag: tag, Material: "3/4", Size: [3]journal.MM{21 * foot}}}
}

func tees(count float64) journal.Happened {
	return journal.Happened{What: journal.Bought, Goods: &journal.Goods{Kind: journal.ItemGoods, Item: "tee 1", Count: count}}
}

func measured(value journal.MM) journal.Happened {
	return journal.Happened{What: journal.Measured, Distance: &journal.Distance{From: "front left post", To: "back left post", Value: value}}
}

// logs are logs with every kind of entry and every kind of fact.
func logs() [][]journal.Entry {
	shaped := board("A1.1")
	shaped.Work, shaped.Shape.Openings = "notch", []journal.Opening{{Kind: "notch", At: [2]journal.MM{inch, 0}, Size: [2]journal.MM{inch, inch}, Radius: inch / 8, Opens: "near edge"}}
	shaped.Shape.Profiles = []journal.Profile{{Side: "far edge", Profile: "round-over", Size: inch / 8}}
	knotty := bought("P1")
	knotty.Goods.Defects = []journal.Defect{{Kind: "knot", Face: "good", At: [2]journal.MM{9 * inch, inch}, Size: [2]journal.MM{inch, inch}}}
	return [][]journal.Entry{
		{told(1, "anna", knotty), told(2, "anna", stick("S1")), told(3, "anna", tees(8)), told(4, "anna", pipe("C2.1", 26*inch)),
			told(5, "anna", again(4, "thread")), told(6, "anna", spoiled(4, "threaded too short")), told(7, "anna", shaped), withdrawn(8, "anna", 3),
			accepted(9, "anna", 78, 72), withdrawn(10, "ben", 9), accepted(11, "ben", 76, 72)},
		{asked(1, "cleo", wider), answered(2, "cleo", 1, true), told(3, "anna", measured(24*inch)), told(4, "anna", pipe("C2.1", 26*inch)),
			told(5, "anna", wrong(4, 25*inch)), told(6, "anna", finished), told(7, "anna", journal.Happened{What: journal.Delivered, Why: "by hand"}), withdrawn(8, "cleo", 2), told(9, "anna", meant(4, ""))},
	}
}

// happenings draws a log of edits of those values, undos, facts, orders, answers and withdrawals.
func happenings(t *rapid.T, at []string) []journal.Entry {
	n := rapid.IntRange(0, 16).Draw(t, "entries")
	actors := rapid.SampledFrom([]string{"anna", "ben"})
	var es []journal.Entry
	for i := 1; i <= n; i++ {
		actor, kind := actors.Draw(t, "actor"), rapid.SampledFrom([]journal.Kind{
			journal.Edit, journal.Undo, journal.Fact, journal.Fact, journal.Asked, journal.Answer, journal.Answer, journal.Withdrawn, journal.Accepted,
		}).Draw(t, "kind")
		switch kind {
		case journal.Fact:
			es = append(es, told(i, actor, happened(t, es)))
		case journal.Asked:
			es = append(es, asked(i, actor, journal.Order{No: i, Edits: rapid.SliceOfN(puts(at), 1, 3).Draw(t, "puts")}))
		case journal.Accepted:
			bound := float64(rapid.IntRange(70, 72).Draw(t, "bound"))
			es = append(es, accepted(i, actor, bound+float64(rapid.IntRange(0, 2).Draw(t, "more")), bound))
		default:
			es = append(es, about(t, i, actor, kind, es, at))
		}
	}
	return es
}

// puts draws values for those paths.
func puts(at []string) *rapid.Generator[journal.Put] {
	return rapid.Custom(func(t *rapid.T) journal.Put {
		return journal.Put{Path: rapid.SampledFrom(at).Draw(t, "path"), New: fmt.Sprintf("%d in", rapid.IntRange(1, 99).Draw(t, "value"))}
	})
}

// about draws an entry of a kind that names an earlier one, or an edit where there is none to be named.
func about(t *rapid.T, n int, actor string, kind journal.Kind, es []journal.Entry, at []string) journal.Entry {
	kinds := map[journal.Kind]string{journal.Undo: "edit undo", journal.Answer: "asked", journal.Withdrawn: "fact asked answer accepted"}
	var named []int
	for i, e := range es {
		if slices.Contains(strings.Fields(kinds[kind]), string(e.Kind)) {
			named = append(named, i+1)
		}
	}
	if len(named) == 0 {
		p := puts(at).Draw(t, "put")
		return edit(n, actor, p.Path, p.New)
	}
	e := entry(n, actor)
	e.Kind, e.Names = kind, id(rapid.SampledFrom(named).Draw(t, "names"))
	e.Yes = kind == journal.Answer && rapid.Bool().Draw(t, "yes")
	return e
}

// happened draws a fact that may follow the entries.
func happened(t *rapid.T, es []journal.Entry) journal.Happened {
	var things []int
	for i, e := range es {
		if e.Kind == journal.Fact && e.Fact.What == journal.Made && e.Fact.Thing == "" {
			things = append(things, i+1)
		}
	}
	some := rapid.Custom(func(t *rapid.T) journal.MM { return inch / 8 * journal.MM(rapid.IntRange(1, 999).Draw(t, "eighths")) })
	work := rapid.SampledFrom(journal.Works()).Draw(t, "work")
	place := rapid.SampledFrom([]string{"deep board", "front left post 1", "back left post 1"}).Draw(t, "place")
	stock := rapid.SampledFrom([]string{"P1", "S1"}).Draw(t, "stock")
	fresh := []journal.Happened{bought(stock), stick("S1"), tees(8), measured(some.Draw(t, "measured")), pushed("top", "left", 20, "lb", some.Draw(t, "moved")), finished, {What: journal.Delivered}, board("A1.1"), pipe("C2.1", some.Draw(t, "long"))}
	if len(things) > 0 {
		of := rapid.SampledFrom(things).Draw(t, "thing")
		fresh = append(fresh, again(of, work), again(of, work), wrong(of, some.Draw(t, "short")), spoiled(of, "split"), meant(of, place), meant(of, ""))
	}
	h := rapid.SampledFrom(fresh).Draw(t, "fact")
	if h.What == journal.Made {
		h.Place, h.Again = place, rapid.Bool().Draw(t, "again")
		h.From, h.Took = stock, some.Draw(t, "took")
	}
	return h
}
