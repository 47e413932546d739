package main

import (
	"bytes"
	"fmt"
	"strings"

	"rodwright/build"
	"rodwright/figure"
	"rodwright/money"
	"rodwright/steps"
)

// printBuild prints everything derived from a piece, for a person. more tells also what one more piece of each
// kind of stock would change.
func printBuild(b *build.Build, more bool) ([]byte, error) {
	var out bytes.Buffer
	printHead(&out, b)
	printUnderWay(&out, b)
	printParts(&out, b.Parts, b.Doc.Fineness)
	printFindings(&out, b)
	fmt.Fprintln(&out)
	if err := printLayouts(&out, b, more); err != nil {
		return nil, err
	}
	printBuying(&out, b.Buy)
	printSteps(&out, b.Work)
	printQuote(&out, b)
	return trimmed(out.Bytes()), nil
}

// trimmed takes the spaces off the ends of lines that a table's last column leaves there.
func trimmed(text []byte) []byte {
	lines := bytes.Split(text, []byte("\n"))
	for i, l := range lines {
		lines[i] = bytes.TrimRight(l, " ")
	}
	return bytes.Join(lines, []byte("\n"))
}

func printHead(out *bytes.Buffer, b *build.Build) {
	to := b.Doc.Fineness
	size := b.Resolved
	fmt.Fprintf(out, "%s\n", strings.ToUpper(b.Doc.Name))
	fmt.Fprintf(out, "  %s long × %s deep × %s high, %.1f kg; made with the shop %q\n",
		to.Text(size.Max.X-size.Min.X), to.Text(size.Max.Y-size.Min.Y), to.Text(size.Max.Z), b.Parts.Totals.MassKg, b.Shop.Name)
	fmt.Fprintf(out, "  lengths are shown to %s; ≈ marks one that is rounded\n\n", b.Doc.Fineness)
}

func printBuying(out *bytes.Buffer, list *money.List) {
	fmt.Fprintln(out, "TO BUY")
	w := table(out)
	for _, l := range list.Lines {
		price := l.Price.String()
		if !l.Price.Known {
			price = "price not known"
		}
		rack := ""
		if l.FromRack > 0 {
			rack = fmt.Sprintf("%s from the rack", figure.Digits(l.FromRack, 4))
		}
		fmt.Fprintf(w, "  %s\t%s\t%s\t%s\n", packed(l), l.Name, price, rack)
	}
	w.Flush()
	fmt.Fprintln(out)
}

// packed tells how much of an item is bought: 8; 48 board feet; 1 pack of 100; 2 × 750 ml.
func packed(l money.Line) string {
	count, pack, alone := figure.Digits(l.Count, 4), figure.Digits(l.Pack, 4), l.Pack == 1 || l.Pack == 0
	switch {
	case alone && l.Unit == "each":
		return count
	case alone && l.Unit == "board foot":
		return count + " " + noun(l.Count, "board foot", "board feet")
	case alone:
		return count + " " + l.Unit
	case l.Unit == "each":
		return count + " " + noun(l.Count, "pack", "packs") + " of " + pack
	}
	return count + " × " + pack + " " + l.Unit
}

// noun is what a count of things is followed by.
func noun(n float64, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

func printSteps(out *bytes.Buffer, work *steps.Work) {
	fmt.Fprintf(out, "STEPS  %s hours with hands, ready on day %d\n", figure.Digits(work.HandsH, 3), work.Days)
	for _, s := range work.Steps {
		wait := ""
		if s.WaitH > 0 {
			wait = fmt.Sprintf(", then wait %s h", figure.Digits(s.WaitH, 2))
		}
		fmt.Fprintf(out, "  %2d  %s  (%s h%s)\n", s.N, wrap(s.Title, 100, 7), figure.Digits(s.HandsH, 2), wait)
		line := func(label, text string) {
			if text != "" {
				fmt.Fprintf(out, "      %s %s\n", label, wrap(text, 96, 16))
			}
		}
		line("parts:  ", strings.Join(s.Parts, ", "))
		line("tool:   ", toolWords(s))
		for _, m := range s.Measures {
			line("measure:", m)
		}
		line("caution:", strings.Join(s.Cautions, " "))
	}
	fmt.Fprintln(out)
}

func toolWords(s steps.Step) string {
	if len(s.Substitutes) == 0 {
		return s.Tool
	}
	return s.Tool + ", or " + strings.Join(s.Substitutes, ", or ")
}

func printQuote(out *bytes.Buffer, b *build.Build) {
	q := b.Quote
	fmt.Fprintf(out, "PRICE  in %s; the prices of the built-in shop are invented: put in your own\n", q.Currency)
	w := table(out)
	for _, l := range []struct {
		name   string
		amount money.Amount
	}{
		{"material", q.Material},
		{"consumables", q.Consumables},
		{fmt.Sprintf("work, %s hours", figure.Digits(q.HandsH, 3)), q.Labour},
		{"standing costs", q.Overhead},
		{"cost", q.Cost},
		{"margin", q.Margin},
		{"price", q.Price},
		{"tax", q.Tax},
		{"total", q.Total},
	} {
		fmt.Fprintf(w, "  %s\t%s\n", l.name, l.amount)
	}
	w.Flush()
	for _, u := range q.Unknown {
		fmt.Fprintf(out, "  not known: %s\n", u)
	}
	for _, warning := range q.Warnings {
		fmt.Fprintf(out, "  beware: %s\n", wrap(warning, 96, 11))
	}
}
