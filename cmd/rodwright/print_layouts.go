package main

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"strings"

	"rodwright/build"
	"rodwright/cut"
	"rodwright/cut/wire"
	"rodwright/layout"
	"rodwright/shop"
	"rodwright/steps"
)

// printLayouts prints how each material is cut, what becomes of it, and how far from the best that is known
// to be. more tells also what one more piece of stock would change.
func printLayouts(out *bytes.Buffer, b *build.Build, more bool) error {
	for _, l := range b.Layout.All() {
		t := tellingOf(b, l)
		fmt.Fprintf(out, "LAYOUT  %s\n", l.Material)
		out.WriteString(indentedText(wire.Text(l.Problem(), l.Answer, t)))
		if _, told, _ := b.LayoutOf(l.Kind, l.Material); told != nil {
			fmt.Fprintf(out, "  %s\n", wrap(told.Words(), 100, 4))
		}
		for _, why := range l.Reasons() {
			fmt.Fprintf(out, "  %s\n", wrap(why, 100, 4))
		}
		if len(l.Answer.Used) > 0 {
			out.WriteString(beware(l.Kind, "  "))
		}
		if more {
			changes, err := l.OneMore(context.Background(), cut.Limits{Nodes: oneMoreNodes})
			if err != nil {
				return err
			}
			for _, says := range layout.OneMores(wire.SpeechOf(l.Problem(), t), changes) {
				fmt.Fprintf(out, "  %s\n", wrap(says, 100, 4))
			}
		}
		fmt.Fprintln(out)
	}
	for _, m := range b.Layout.Missing {
		fmt.Fprintf(out, "  not laid out: %s\n", m)
	}
	return nil
}

// beware tells the cautions of the saws that a layout of a kind is cut at.
func beware(k layout.Kind, indent string) string {
	return fmt.Sprintf("%sbeware: %s\n", indent, wrap(strings.Join(steps.SawCautions(steps.Kind(k)), " "), 96, 9+len(indent)))
}

// oneMoreNodes bounds each search for what one more piece of stock would change.
const oneMoreNodes = 20_000

// tellingOf prints lengths to the maker's fineness and money as the price does.
func tellingOf(b *build.Build, l layout.Layout) wire.Telling {
	t := wire.Telling{Show: b.Doc.Fineness.Show, Fine: b.Doc.Fineness.Finer().Show, Piece: l.PieceName}
	if l.Priced(b.Shop) {
		t.Money = func(v float64) string { return shop.Cents(math.Round(100 * v)).String() }
	}
	return t
}

// indentedText sets every line of a text in, and folds long ones.
func indentedText(text string) string {
	var out strings.Builder
	for line := range strings.Lines(text) {
		out.WriteString("  " + folded(strings.TrimSuffix(line, "\n")) + "\n")
	}
	return out.String()
}

// folded goes on under the beginning of a line's words, two further in; a box to tick and its number stand by themselves.
func folded(line string) string {
	words := strings.TrimLeft(line, " ")
	lead := len(line) - len(words)
	if strings.HasPrefix(words, "[ ]") {
		lead += len("[ ]   1  ")
	}
	return line[:lead] + wrap(line[lead:], 100, 2+lead+2+1)
}
