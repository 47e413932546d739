package main

import (
	"bytes"

	"rodwright/change"
)

type journalListVerb struct{ journalOf }

// Help shows an example.
func (journalListVerb) Help() string {
	return "Example: rodwright journal list examples/under-way/packing-table.piece.yaml"
}

// Run prints the log of a piece, and what there is of it. A log whose document can't be derived is printed still.
func (v *journalListVerb) Run(m *Main) error {
	return v.with(m, func(k keeper) error {
		l, err := k.load()
		if err != nil {
			return err
		}
		now, wrong := l.Now()
		out, err := v.text(l, now, wrong)
		if err == nil {
			_, err = m.Stdout.Write(out)
		}
		if err == nil {
			err = wrong
		}
		return err
	})
}

func (v *journalListVerb) text(l change.Log, now *change.Truth, wrong error) ([]byte, error) {
	if wrong != nil {
		now = nil
	}
	if v.JSON {
		return indented(listOf(l, now, v.actor()))
	}
	var out bytes.Buffer
	printLog(&out, l, v.Piece)
	if now != nil && len(l.Entries) > 0 {
		printUnderWay(&out, now.Build)
	}
	return trimmed(out.Bytes()), nil
}
