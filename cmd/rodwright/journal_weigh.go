package main

import (
	"bytes"
	"time"

	"rodwright/change"
	"rodwright/finding"
	"rodwright/journal"
	"rodwright/length"
)

type journalWeighVerb struct {
	journalOf
	Edits []string `arg:"" optional:"" name:"path=value" help:"Values of the design to put in, each in quotes; with --wrong --take the number of the way out."`
	Take  bool     `help:"Take it: the values, and what parts already made are for from then on."`
	Asked string   `placeholder:"WORDS" help:"Write it down as what the client asks for; it waits for an answer."`
	Wrong string   `placeholder:"FACT" help:"What went wrong with a part: the ways out, the cheapest first."`
	Stock string   `placeholder:"TAG" help:"What a board, stick or sheet that was bought still gives."`
	Start string   `placeholder:"LENGTH" help:"With --stock: where its first cut begins."`
	At    string   `placeholder:"TIME" help:"With --take and --asked: when, where that was earlier: 2026-05-04."`
}

// Help shows examples.
func (journalWeighVerb) Help() string {
	return `Example: rodwright journal weigh table.piece.yaml "sizes/low level=10 in" --take

  rodwright journal weigh P --wrong "wrong C2.1 25 3/4 in: too short"
  rodwright journal weigh P --wrong "wrong C2.1 25 3/4 in: too short" --take 2
  rodwright journal weigh P --stock P1 --start "15 in"

Nothing is written without --take or --asked. Exit code 1: the change makes a finding fail.`
}

// Run weighs edits, something that went wrong, or a board.
func (v *journalWeighVerb) Run(m *Main) error {
	return v.with(m, func(k keeper) error {
		if err := v.sensible(); err != nil {
			return err
		}
		at, err := moment(v.At)
		if err != nil {
			return err
		}
		p := &pen{k, v.actor(), at, false}
		switch {
		case v.Wrong != "":
			return v.wrong(m, p)
		case v.Stock != "":
			return v.yields(m, k)
		}
		return v.weigh(m, p)
	})
}

// sensible refuses words that do not go together.
func (v *journalWeighVerb) sensible() error {
	switch {
	case v.Wrong != "" && v.Stock != "", v.Stock != "" && len(v.Edits) > 0, v.Stock != "" && v.Take, v.Asked != "" && (v.Take || v.Wrong != "" || v.Stock != ""):
		return refuse("weigh one thing at a time: values, --wrong or --stock; and --take it or write it down as --asked")
	case v.Start != "" && v.Stock == "":
		return refuse("--start belongs to --stock TAG")
	case v.Wrong == "" && v.Stock == "" && len(v.Edits) == 0:
		return refuse(`nothing is weighed: write "sizes/low level=10 in", --wrong FACT or --stock TAG`)
	case v.Wrong != "" && v.Take != (len(v.Edits) == 1) || v.Wrong != "" && len(v.Edits) > 1:
		return refuse("a way out is taken by its number: write --take 1")
	}
	return nil
}

func (v *journalWeighVerb) weigh(m *Main, p *pen) error {
	edits, err := puts(v.Edits)
	if err != nil {
		return err
	}
	if !v.Take && v.Asked == "" {
		now, err := now(p)
		if err != nil {
			return err
		}
		w, err := change.Weigh(now, edits...)
		if err != nil {
			return err
		}
		return v.weighed(m, w, nil)
	}
	var weighed *change.Weighed
	w, err := p.write(func(l change.Log) (es []journal.Entry, err error) {
		weighed, es, err = v.taken(l, edits, p.at)
		return es, err
	})
	if err != nil {
		return err
	}
	return v.weighed(m, weighed, w)
}

// now is the piece as it stands.
func now(k keeper) (*change.Truth, error) {
	l, err := k.load()
	if err != nil {
		return nil, err
	}
	return l.Now()
}

// taken weighs edits and returns what taking them, or asking for them, writes.
func (v *journalWeighVerb) taken(l change.Log, edits []journal.Put, at time.Time) (*change.Weighed, []journal.Entry, error) {
	now, err := l.Now()
	if err != nil {
		return nil, nil, err
	}
	if v.Asked != "" {
		o, w, err := change.Asked(now, v.Asked, edits, dayOf(at))
		return w, []journal.Entry{{Kind: journal.Asked, Order: &o}}, err
	}
	w, err := change.Weigh(now, edits...)
	if err != nil || w.Nothing {
		return w, nil, err
	}
	return w, append(edited(edits), facts(w.Meant)...), nil
}

// edited are entries that put values into the document.
func edited(edits []journal.Put) []journal.Entry {
	out := make([]journal.Entry, len(edits))
	for i, e := range edits {
		out[i] = journal.Entry{Kind: journal.Edit, Path: e.Path, New: e.New}
	}
	return out
}

// weighed prints what was weighed, and what was written of it.
func (v *journalWeighVerb) weighed(m *Main, w *change.Weighed, written *written) error {
	if v.JSON {
		err := m.printJSON(struct {
			*change.Weighed
			Entries []entryJSON `json:"entries"`
		}{w, written.json()})
		return orFails(err, w.Ripple)
	}
	var out bytes.Buffer
	printWeighed(&out, w)
	printWritten(&out, written, false)
	_, err := m.Stdout.Write(trimmed(out.Bytes()))
	return orFails(err, w.Ripple)
}

// orFails is the exit of a change that makes a finding fail.
func orFails(err error, r change.Ripple) error {
	if err != nil {
		return err
	}
	for _, t := range r.Findings {
		if t.To == finding.Fails.String() {
			return &exit{code: exitFails}
		}
	}
	return nil
}

// yields says what stock still gives.
func (v *journalWeighVerb) yields(m *Main, k keeper) error {
	now, err := now(k)
	if err != nil {
		return err
	}
	start := length.Length(0)
	if v.Start != "" {
		if start, err = length.Parse(v.Start, now.Build.Doc.Unit); err != nil {
			return refuse("--start %w; write a length from the end of the stock, as 15 in", err)
		}
	}
	y, err := change.Yields(now, v.Stock, start)
	if err != nil {
		return err
	}
	if v.JSON {
		return m.printJSON(y)
	}
	var out bytes.Buffer
	printYield(&out, y, now.Build.Doc.Fineness)
	_, err = m.Stdout.Write(trimmed(out.Bytes()))
	return err
}
