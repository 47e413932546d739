package main

import (
	"bytes"
	"fmt"
	"strings"

	"rodwright/build"
	"rodwright/change"
	"rodwright/figure"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/money"
	"rodwright/shop"
)

// printLog prints every entry of a log in a sentence, and the orders that wait for an answer.
func printLog(out *bytes.Buffer, l change.Log, name string) {
	fmt.Fprintf(out, "JOURNAL  %s, %s\n", name, counted(len(l.Entries), "entry", "entries"))
	if len(l.Entries) == 0 {
		fmt.Fprintf(out, "  nothing was written yet; say first what was bought or made:\n  rodwright journal add %s bought stick 1 21 ft as S1 for 78\n", quoted(name))
		return
	}
	stands := journal.Standing(l.Entries)
	fine := finenessOf(l)
	w := table(out)
	for i, e := range l.Entries {
		mark := ""
		if !stands[i] {
			mark = "  (" + fallen(e.Kind) + ")"
		}
		fmt.Fprintf(w, "  %d\t%s\t%s\t%s%s\n", e.Number, e.At.Local().Format("2006-01-02 15:04"), e.Actor, journal.Words(l.Entries, i, fine, l.Shop.Currency), mark)
	}
	w.Flush()
	printWaiting(out, l)
	fmt.Fprintln(out)
}

// fallen says how an entry of a kind came to stand no longer.
func fallen(kind journal.Kind) string {
	if kind == journal.Edit || kind == journal.Undo {
		return "taken back"
	}
	return "withdrawn"
}

// printWaiting prints the changes that the client asked for and did not answer yet.
func printWaiting(out *bytes.Buffer, l change.Log) {
	head := "\nWAITING FOR AN ANSWER  yes N or no N writes it\n"
	for _, o := range journal.Fold(l.Entries).Orders {
		if !o.Answered {
			fmt.Fprintf(out, "%s  %s\n", head, wrap(journal.Words(l.Entries, int(o.Number)-1, finenessOf(l), l.Shop.Currency), 110, 3))
			head = ""
		}
	}
}

// quoted is a name as it is written on a command line.
func quoted(name string) string {
	if strings.ContainsRune(name, ' ') {
		return `"` + name + `"`
	}
	return name
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// printUnderWay prints what there is of a piece under way; nothing where nothing was made, bought or measured.
func printUnderWay(out *bytes.Buffer, b *build.Build) {
	u := b.Under
	if u == nil {
		return
	}
	fmt.Fprintf(out, "UNDER WAY  %s hours done%s\n", figure.Digits(u.DoneH, 3), howFar(u.Record))
	printMade(out, b)
	printGoods(out, b)
	printDistances(out, b)
	printPushes(out, b)
	if u.Extra.HandsH > 0 || u.Extra.Material > 0 {
		fmt.Fprintf(out, "  more than a piece made right at first takes: %s hours, material %s\n", figure.Digits(u.Extra.HandsH, 3), money.Of(u.Extra.Material))
	}
	if len(u.Extra.Lost) > 0 {
		fmt.Fprintf(out, "  made in vain: %s\n", wrap(strings.Join(u.Extra.Lost, ", "), 96, 16))
	}
	fmt.Fprintln(out)
}

func howFar(rec *journal.Record) string {
	switch {
	case rec.Delivered:
		return ", delivered"
	case rec.Finished:
		return ", finished"
	}
	return ""
}

// printMade prints what is made, with what is still to be done so that it serves.
func printMade(out *bytes.Buffer, b *build.Build) {
	if len(b.Under.Settled) == 0 {
		return
	}
	w := table(out)
	fmt.Fprintln(w, "  made\tplace\tstate\tsize\tto put right")
	for _, s := range b.Under.Settled {
		t := s.Thing
		place, todo := t.Place, toDo(s)
		if place == "" {
			place = "the rack"
		}
		switch {
		case t.Spoiled != "":
			todo = "spoiled: " + t.Spoiled
		case s.Need == nil && s.Why != "":
			todo = "it does not serve: " + s.Why
		}
		label := t.Label
		if s.Need != nil && s.Need.Tag != label {
			label += ", now " + s.Need.Tag
		}
		fmt.Fprintf(w, "  %s\t%s\t%s\t%s\t%s\n", label, place, t.State, madeSize(t, b.Doc.Fineness.Finer()), todo)
	}
	w.Flush()
}

// madeSize is the size of a thing as far as it has one; where nobody measured it is that of the plan.
func madeSize(t journal.Thing, fine length.Fineness) string {
	var words []string
	for _, l := range t.Shape.Size {
		if l > 0 {
			words = append(words, fine.Number(length.Length(l)))
		}
	}
	text := strings.Join(words, " × ") + " " + unitOf(fine)
	if !t.Shape.Measured {
		text += " as drawn"
	}
	return text
}

func unitOf(fine length.Fineness) string {
	_, unit, _ := strings.Cut(fine.Text(0), " ")
	return unit
}

// printGoods prints the boards, sticks and sheets that were bought with what is left of them, and the rest.
func printGoods(out *bytes.Buffer, b *build.Build) {
	fine := b.Doc.Fineness
	var items []string
	w := table(out)
	head := false
	for _, g := range b.Under.Record.Goods {
		if g.Kind == journal.ItemGoods {
			items = append(items, figure.Digits(g.Count, 4)+" × "+g.Item)
			continue
		}
		if !head {
			fmt.Fprintln(w, "  bought\tkind\tof\tleft of its length")
			head = true
		}
		left := fine.Show(length.Length(g.Left))
		if g.Left == 0 {
			left = "nothing"
		}
		fmt.Fprintf(w, "  %s\t%s\t%s\t%s\n", g.Tag, g.Kind, strings.TrimSpace(g.Material+" "+g.Quarters), left)
	}
	w.Flush()
	if len(items) > 0 {
		fmt.Fprintf(out, "  bought by the piece: %s\n", wrap(strings.Join(items, ", "), 96, 24))
	}
}

// printDistances prints what was measured of the standing frame against the drawing.
func printDistances(out *bytes.Buffer, b *build.Build) {
	stands := b.Resolved.Standing
	if stands == nil {
		return
	}
	fine := b.Doc.Fineness.Finer()
	for _, d := range stands.Distances {
		if d.Number == 0 { // it follows from a pipe's own length
			continue
		}
		over := ""
		if d.Over != "" {
			over = " " + string(d.Over)
		}
		fmt.Fprintf(out, "  measured: %s to %s %s%s; drawn %s\n", d.From, d.To, fine.Text(d.Value), over, fine.Text(d.Drawn))
	}
}

// printPushes prints how the standing frame moved when it was pushed.
func printPushes(out *bytes.Buffer, b *build.Build) {
	for _, t := range b.Under.Record.Pushes {
		fmt.Fprintf(out, "  %s\n", journal.Happened{What: journal.Pushed, Push: &t.Push}.Words(b.Doc.Fineness.Finer(), ""))
	}
}

// told prints what was written, with the findings that turned by it.
func (m *Main) told(w *written, asJSON, dry bool) error {
	if asJSON {
		return m.printJSON(struct {
			Number   int64         `json:"number"` // of the last entry
			Dry      bool          `json:"dry"`
			Entries  []entryJSON   `json:"entries"`
			Findings []change.Turn `json:"findings"`
		}{int64(len(w.log.Entries)), dry, w.json(), append([]change.Turn{}, w.turned()...)})
	}
	var out bytes.Buffer
	printWritten(&out, w, dry)
	_, err := m.Stdout.Write(trimmed(out.Bytes()))
	return err
}

// turned lists the findings that turned by what was written.
func (w *written) turned() []change.Turn {
	if w == nil || w.before == nil || w.after == nil {
		return nil
	}
	return change.Compare(w.before.Build, w.after.Build).Findings
}

// printWritten prints the number and the sentence of every entry that was written.
func printWritten(out *bytes.Buffer, w *written, dry bool) {
	if w == nil || len(w.entries) == 0 {
		return
	}
	head := "written"
	if dry {
		head = "not written, only shown"
	}
	fmt.Fprintf(out, "%s:\n", head)
	t := table(out)
	for _, e := range w.json() {
		fmt.Fprintf(t, "  %d\t%s\n", e.Number, e.Words)
	}
	t.Flush()
	turned := change.Ripple{Findings: w.turned()}
	for _, words := range turned.Words(finenessOf(w.log)) {
		fmt.Fprintf(out, "  → %s\n", words)
	}
}

// cents prints an amount, or that it is not known.
func cents(c *int64, currency string) string {
	if c == nil {
		return "not known"
	}
	return shop.Cents(*c).String() + " " + currency
}
