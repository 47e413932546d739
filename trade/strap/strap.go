// Package strap holds the two-hole pipe straps that hold a panel down on a rail.
//
// The sizes are from memory, as straps are commonly sold; each is an assumption until the strap in hand is
// measured. Start with [Lookup].
package strap

import (
	_ "embed"
	"fmt"
	"sync"

	"rodwright/length"
	"rodwright/trade/pipe"
	"rodwright/trade/table"
)

//go:embed straps.csv
var strapsCSV string

// Strap is a two-hole strap for one size of pipe.
type Strap struct {
	Pipe        string        // id of the pipe it holds
	HoleSpacing length.Length // between the centres of its two holes, across the pipe
	Width       length.Length // along the pipe
	Thick       length.Length // of the steel: the grip of its screws
	Hole        length.Length // diameter of its holes
	ScrewGauge  int
	Assumed     string // that it is not measured, in words
	Source      table.Source
}

type strapTable struct {
	ids    []string
	byPipe map[string]Strap
}

var straps = sync.OnceValue(func() strapTable {
	t := strapTable{byPipe: map[string]Strap{}}
	for _, r := range table.Read(strapsCSV) {
		id := r.Text("pipe")
		s := Strap{
			Pipe: id, HoleSpacing: r.Inches("hole_spacing_in"), Width: r.Inches("width_in"), Thick: r.Inches("thick_in"),
			Hole: r.Inches("hole_in"), Source: r.Source(),
			Assumed: fmt.Sprintf("strap for %s pipe: as commonly sold, from memory; measure yours", id),
		}
		s.ScrewGauge, _ = r.Int("screw_gauge")
		t.ids = append(t.ids, id)
		t.byPipe[id] = s
	}
	return t
})

// Lookup returns the strap for a size of pipe, by the id that [pipe.Lookup] takes: 3/4, DN20. A DN pipe
// takes the strap of the same nominal size, and Assumed says so. A size of pipe without a strap is a
// *table.UnknownError.
func Lookup(size string) (Strap, error) {
	p, err := pipe.Lookup(size)
	if err != nil {
		return Strap{}, err
	}
	s, ok := straps().byPipe[p.Nominal]
	if !ok {
		return Strap{}, table.Unknown("strap for pipe", p.ID, straps().ids)
	}
	if s.Pipe != p.ID {
		s.Pipe = p.ID
		s.Assumed = fmt.Sprintf("strap for %s pipe: that of the NPS %s, from memory; measure yours", p.ID, p.Nominal)
	}
	return s, nil
}

// Sizes returns the NPS sizes of pipe that have a strap, small before large.
func Sizes() []string { return append([]string(nil), straps().ids...) }
