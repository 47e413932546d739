package main

import (
	"bytes"
	"fmt"
	"strings"

	"rodwright/change"
	"rodwright/figure"
	"rodwright/length"
)

// printWeighed prints what a change does: the sentences, then what becomes of every part that is made, and what it costs.
func printWeighed(out *bytes.Buffer, w *change.Weighed) {
	for _, words := range w.Words {
		fmt.Fprintln(out, words)
	}
	if w.Nothing {
		return
	}
	fine := w.After.Build.Doc.Fineness
	printFates(out, w, fine)
	printAgain(out, w)
	printRedo(out, w)
	printRelaid(out, w)
	if len(w.Papers) > 0 {
		fmt.Fprintf(out, "\nPAPERS OUT OF DATE  %s\n", wrap(strings.Join(w.Papers, ", "), 96, 21))
	}
	printCost(out, w)
}

// printFates prints what becomes of every part that is made; those that stay as they are in one line.
func printFates(out *bytes.Buffer, w *change.Weighed, fine length.Fineness) {
	if len(w.Fates) == 0 {
		return
	}
	fmt.Fprintln(out, "\nPARTS ALREADY MADE")
	var same []string
	t := table(out)
	head := "  part\tstate\twhat becomes of it\toff\twith\tcost\n"
	for _, f := range w.Fates {
		if f.Unchanged {
			same = append(same, f.Label)
			continue
		}
		fmt.Fprintf(t, "%s  %s\t%s\t%s\t%s\t%s\t%s\n", head, f.Label, f.State, f.Words, offWords(f.Off, fine), strings.Join(f.Tools, "; "), cents(&f.Cents, w.Cost.Currency))
		head = ""
	}
	t.Flush()
	for _, f := range w.Fates {
		for _, s := range f.Shows {
			if !f.Unchanged {
				fmt.Fprintf(out, "  %s will show: %s\n", f.Label, s)
			}
		}
	}
	if len(same) > 0 {
		fmt.Fprintf(out, "  as they were: %s\n", wrap(strings.Join(same, ", "), 96, 17))
	}
}

func offWords(off []change.OffMM, fine length.Fineness) string {
	words := make([]string, len(off))
	for i, o := range off {
		words[i] = shown(o.MM, fine) + " off the " + o.Side
	}
	return strings.Join(words, ", ")
}

func printAgain(out *bytes.Buffer, w *change.Weighed) {
	if len(w.Again) == 0 {
		return
	}
	fmt.Fprintln(out, "\nTO BE MADE AGAIN")
	t := table(out)
	for _, a := range w.Again {
		fmt.Fprintf(t, "  %s\t%s\t%s\t%s\n", a.Tag, a.Place, cents(&a.Cents, w.Cost.Currency), a.Why)
	}
	t.Flush()
}

func printRedo(out *bytes.Buffer, w *change.Weighed) {
	if len(w.Redo) == 0 {
		return
	}
	fmt.Fprintln(out, "\nWORK TO PUT PARTS RIGHT")
	for _, r := range w.Redo {
		wait := ""
		if r.WaitH > 0 {
			wait = fmt.Sprintf(", then wait %s h", figure.Digits(r.WaitH, 2))
		}
		fmt.Fprintf(out, "  %s  (%s h%s)\n", wrap(r.Title, 100, 3), figure.Digits(r.HandsH, 2), wait)
		if r.Tool != "" {
			fmt.Fprintf(out, "    with %s\n", r.Tool)
		}
	}
}

func printRelaid(out *bytes.Buffer, w *change.Weighed) {
	if len(w.Stock) == 0 {
		return
	}
	fmt.Fprintln(out, "\nSTOCK LAID OUT AGAIN")
	t := table(out)
	for _, s := range w.Stock {
		fmt.Fprintf(t, "  %s\t%s\t→\t%s\n", s.Tag, oneOf(s.Before), oneOf(s.After))
	}
	t.Flush()
}

func printCost(out *bytes.Buffer, w *change.Weighed) {
	c := w.Cost
	fmt.Fprintf(out, "\nCOST  %s on the quote, %s for parts already made; %s; ready on day %d, was day %d\n",
		centsMore(c.Total, c.Currency), cents(&c.Parts, c.Currency), hoursMore(c.HandsH), w.Ripple.Days.To, w.Ripple.Days.From)
	if len(c.Lost) > 0 {
		fmt.Fprintf(out, "  made in vain: %s\n", strings.Join(c.Lost, ", "))
	}
	for _, u := range w.Unknown {
		fmt.Fprintf(out, "  not known: %s\n", u)
	}
}

// centsMore says how much more or less there is to pay.
func centsMore(c *int64, currency string) string {
	switch {
	case c == nil:
		return "not known how much more"
	case *c < 0:
		less := -*c
		return cents(&less, currency) + " less"
	}
	return cents(c, currency) + " more"
}

func hoursMore(h float64) string {
	if h < 0 {
		return figure.Digits(-h, 3) + " hours fewer"
	}
	return figure.Digits(h, 3) + " hours more"
}

func daysMore(n int) string {
	if n < 0 {
		return counted(-n, "day", "days") + " fewer"
	}
	return counted(n, "day", "days") + " more"
}

// printWays prints the ways out when something went wrong.
func printWays(out *bytes.Buffer, what string, ways []change.WayOut, currency string) {
	fmt.Fprintf(out, "%s\n", what)
	if len(ways) == 0 {
		fmt.Fprintln(out, "  there is no way out but to change the design")
		return
	}
	for i, way := range ways {
		fmt.Fprintf(out, "  %d  %s: %s\n", i+1, way.Kind, wrap(way.Words, 96, 6))
		fmt.Fprintf(out, "     %s on the quote, %s, %s\n", centsMore(way.Cents, currency), hoursMore(way.HandsH), daysMore(way.Days))
		for _, s := range way.Shows {
			fmt.Fprintf(out, "     will show: %s\n", s)
		}
	}
	fmt.Fprintln(out, "  --take N writes what went wrong and takes way N")
}

// printYield prints what stock still gives.
func printYield(out *bytes.Buffer, y *change.Yield, fine length.Fineness) {
	fmt.Fprintf(out, "%s  %s left, the first cut begins at %s\n", y.Stock, shown(y.Left, fine), shown(y.Start, fine))
	if len(y.Parts) == 0 {
		fmt.Fprintln(out, "  nothing that is still to be made comes of such stock")
		return
	}
	t := table(out)
	fmt.Fprintln(t, "  part\tname\tlong\twanted\tit gives\tfor one more it is short by")
	for _, p := range y.Parts {
		fmt.Fprintf(t, "  %s\t%s\t%s\t%d\t%d\t%s\n", p.Tag, p.Name, shown(p.Long, fine), p.Wanted, p.Count, shown(p.Short, fine))
	}
	t.Flush()
}
