package main

import (
	"fmt"

	"rodwright/change"
)

type journalCompareVerb struct {
	journalOf
	From int64  `arg:"" help:"The number of an entry; 0, the piece as it began."`
	To   *int64 `arg:"" optional:"" help:"The number of an entry; without it the last."`
}

// Help shows an example.
func (journalCompareVerb) Help() string {
	return "Example: rodwright journal compare table.piece.yaml 0 12\n\nThe piece as it stood after each of two entries: what was taken back or withdrawn later stands yet."
}

// comparison is what differs between two moments of a piece.
type comparison struct {
	From   int64         `json:"from"`
	To     int64         `json:"to"`
	Words  []string      `json:"words"`
	Ripple change.Ripple `json:"ripple"`
}

// Run prints what differs between two moments of a piece.
func (v *journalCompareVerb) Run(m *Main) error {
	return v.with(m, func(k keeper) error {
		l, err := k.load()
		if err != nil {
			return err
		}
		c, err := v.compare(l)
		if err != nil {
			return err
		}
		if v.JSON {
			return m.printJSON(c)
		}
		if len(c.Words) == 0 {
			c.Words = []string{"Nothing differs."}
		}
		for _, w := range c.Words {
			fmt.Fprintln(m.Stdout, w)
		}
		return nil
	})
}

func (v *journalCompareVerb) compare(l change.Log) (*comparison, error) {
	last := int64(len(l.Entries))
	c := &comparison{From: v.From, To: last}
	if v.To != nil {
		c.To = *v.To
	}
	var at [2]*change.Truth
	for i, number := range []int64{c.From, c.To} {
		if number < 0 || number > last {
			return nil, refuse("there is no entry %d: they are numbered 1 to %d, and 0 is the piece as it began", number, last)
		}
		var err error
		if at[i], err = l.At(number); err != nil {
			return nil, err
		}
	}
	c.Ripple = change.Compare(at[0].Build, at[1].Build)
	c.Words = append([]string{}, c.Ripple.Words(at[1].Build.Doc.Fineness)...)
	return c, nil
}
