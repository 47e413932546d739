package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"strconv"

	"rodwright/build"
	"rodwright/change"
	"rodwright/cut"
	"rodwright/cut/wire"
	"rodwright/layout"
	"rodwright/length"
)

// goodJSON is how good a layout is, for programs.
type goodJSON struct {
	Cost      float64 `json:"cost"`
	Bound     float64 `json:"bound"`
	Gap       float64 `json:"gap"`
	Proven    bool    `json:"proven"`
	NotPlaced int     `json:"not_placed"`
	Of        string  `json:"bound_of,omitempty"` // the layouts that bound and proof are true of; left out: all
}

func goodOf(a *cut.Answer) goodJSON {
	return goodJSON{a.Cost, a.Bound, a.Gap(), a.Proven, len(a.NotPlaced), string(a.Of)}
}

type deeperJSON struct {
	Kind     string          `json:"kind"`
	Material string          `json:"material"`
	Key      string          `json:"key"`
	Before   goodJSON        `json:"before"`
	After    goodJSON        `json:"after"`
	Better   bool            `json:"better"`
	Accepted *int64          `json:"accepted"` // number of the entry; null where it was not accepted
	Layout   json.RawMessage `json:"layout"`   // as the verb cut writes it, in millimetres
}

// tell prints what was found.
func (v *layoutVerb) tell(m *Main, now *change.Truth, found []*deeper, stopped bool) error {
	if v.JSON {
		return v.tellJSON(m, now, found, stopped)
	}
	var out bytes.Buffer
	for _, d := range found {
		d.print(&out, now.Build)
	}
	if len(found) == 0 {
		fmt.Fprintln(&out, "Nothing is cut for this piece.")
	}
	if stopped {
		fmt.Fprintln(&out, "stopped: the best so far is told")
	}
	if !v.Accept && anyGained(found) {
		fmt.Fprintln(&out, "nothing is written; --accept takes what is better")
	}
	_, err := m.Stdout.Write(trimmed(out.Bytes()))
	return err
}

func anyGained(found []*deeper) bool {
	for _, d := range found {
		if d.gained() {
			return true
		}
	}
	return false
}

// print tells one layout: how good it was and is, and how it is cut where that is new.
func (d *deeper) print(out *bytes.Buffer, b *build.Build) {
	fmt.Fprintf(out, "LAYOUT  %s\n", d.of.Material)
	w := table(out)
	fmt.Fprintf(w, "  before\t%s\n", goodWords(d.of.Answer))
	switch {
	case d.gained():
		fmt.Fprintf(w, "  now\t%s\n", goodWords(d.best))
	case d.best.Proven && d.best.Of.Words() != "":
		fmt.Fprintln(w, "  now\tthe same, none of those can be better")
	case d.best.Proven:
		fmt.Fprintln(w, "  now\tthe same, nothing can be better")
	default:
		fmt.Fprintln(w, "  now\tthe same, nothing better was found")
	}
	w.Flush()
	if d.told != nil {
		fmt.Fprintf(out, "  %s\n", d.told.Words())
	}
	if d.best.Cost != d.of.Answer.Cost || len(d.best.NotPlaced) != len(d.of.Answer.NotPlaced) {
		out.WriteString(indentedText(wire.Text(d.of.Problem(), d.best, tellingOf(b, d.of))))
		out.WriteString(beware(d.of.Kind, "  "))
	}
	if d.number > 0 {
		fmt.Fprintf(out, "  accepted: entry %d\n", d.number)
	}
	fmt.Fprintln(out)
}

// goodWords tells what a layout costs and how much cheaper any other could be.
func goodWords(a *cut.Answer) string {
	said := "cost " + twoDecimals(a.Cost)
	switch {
	case a.Proven:
		said += ", proven: no layout costs less"
	default:
		said += fmt.Sprintf(", at most %s %% could be saved (none costs less than %s)", percent(a.Gap()), twoDecimals(math.Floor(100*a.Bound)/100))
	}
	if of := a.Of.Words(); of != "" {
		said += ", " + of
	}
	if n := len(a.NotPlaced); n > 0 {
		said += ", without " + counted(n, "part", "parts")
	}
	return said
}

func twoDecimals(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }

// percent rounds a share up, so that nobody is promised more than is proven.
func percent(share float64) string {
	return strconv.FormatFloat(math.Ceil(share*1000)/10, 'f', 1, 64)
}

func (v *layoutVerb) tellJSON(m *Main, now *change.Truth, found []*deeper, stopped bool) error {
	out := struct {
		Piece   string       `json:"piece"`
		Number  int64        `json:"number"` // of the last entry that was looked at
		Stopped bool         `json:"stopped"`
		Layouts []deeperJSON `json:"layouts"`
	}{now.Build.Doc.Name, now.Number, stopped, []deeperJSON{}}
	for _, d := range found {
		text, err := wire.JSON(d.best, length.MM, d.of.Kind != layout.OfSticks)
		if err != nil {
			return err
		}
		j := deeperJSON{
			Kind: string(d.of.Kind), Material: d.of.Material, Key: d.of.Key(), Before: goodOf(d.of.Answer), After: goodOf(d.best), Better: d.gained(), Layout: text,
		}
		if d.number > 0 {
			j.Accepted = &d.number
		}
		out.Layouts = append(out.Layouts, j)
	}
	return m.printJSON(out)
}
