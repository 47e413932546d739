package main

import (
	"bytes"
	"strconv"

	"rodwright/change"
	"rodwright/journal"
	"rodwright/length"
)

// wrong lists the ways out when something went wrong, or takes one.
func (v *journalWeighVerb) wrong(m *Main, p *pen) error {
	if v.Take {
		return v.takeWay(m, p)
	}
	now, err := now(p)
	if err != nil {
		return err
	}
	h, ways, err := waysOut(now, v.Wrong)
	if err != nil {
		return err
	}
	fine, currency := now.Build.Doc.Fineness, now.Build.Quote.Currency
	if v.JSON {
		return m.printJSON(struct {
			Number int64           `json:"number"`
			Fact   string          `json:"fact"`
			Ways   []change.WayOut `json:"ways"`
		}{now.Number, h.Words(fine.Finer(), currency), append([]change.WayOut{}, ways...)})
	}
	var out bytes.Buffer
	printWays(&out, h.Words(fine.Finer(), currency), ways, currency)
	_, err = m.Stdout.Write(trimmed(out.Bytes()))
	return err
}

// takeWay writes what went wrong, and the way out of the given number.
func (v *journalWeighVerb) takeWay(m *Main, p *pen) error {
	number, err := strconv.Atoi(v.Edits[0])
	if err != nil {
		return refuse("%q is no number of a way out: write --take 1", v.Edits[0])
	}
	var way change.WayOut
	w, err := p.write(func(l change.Log) ([]journal.Entry, error) {
		now, err := l.Now()
		if err != nil {
			return nil, err
		}
		h, ways, err := waysOut(now, v.Wrong)
		if err != nil {
			return nil, err
		}
		if number < 1 || number > len(ways) {
			return nil, refuse("there is no way out %d: they are numbered 1 to %d", number, len(ways))
		}
		way = ways[number-1]
		out := append(facts([]journal.Happened{h}), edited(way.Edits)...)
		return append(out, facts(way.Meant)...), nil
	})
	if err != nil {
		return err
	}
	if v.JSON {
		err := m.printJSON(struct {
			change.WayOut
			Entries []entryJSON `json:"entries"`
		}{way, w.json()})
		return orFails(err, way.Weighed.Ripple)
	}
	var out bytes.Buffer
	printWritten(&out, w, false)
	_, err = m.Stdout.Write(trimmed(out.Bytes()))
	return orFails(err, way.Weighed.Ripple)
}

// waysOut reads what went wrong and lists the ways out of it.
func waysOut(now *change.Truth, line string) (journal.Happened, []change.WayOut, error) {
	h, err := fact(now, line)
	if err != nil {
		return h, nil, err
	}
	if h.What != journal.Wrong && h.What != journal.Spoiled {
		return h, nil, refuse("this tells of nothing that went wrong: write wrong C2.1 25 3/4 in: cut too short, or spoiled A1.1 and why")
	}
	ways, err := change.WaysOut(now, h)
	return h, ways, err
}

// shown is a length of a change as a maker reads it.
func shown(l change.MM, fine length.Fineness) string { return fine.Show(length.FromMM(float64(l))) }
