package main

import (
	"bytes"
	"fmt"

	"rodwright/build"
	"rodwright/cut/wire"
	"rodwright/layout"
)

// printLayouts prints how each material is cut, and how far from the best that is known to be.
func printLayouts(out *bytes.Buffer, b *build.Build) {
	for _, l := range b.Layout.All() {
		kind := map[layout.Kind]wire.Kind{layout.OfSticks: wire.Stick, layout.OfBoards: wire.Panel, layout.OfSheets: wire.Sheet}[l.Kind]
		fmt.Fprintf(out, "LAYOUT  %s\n", l.Material)
		for _, line := range bytes.Split(bytes.TrimRight([]byte(wire.TextWith(l.Answer, b.Doc.Fineness.Show, kind)), "\n"), []byte("\n")) {
			fmt.Fprintf(out, "  %s\n", line)
		}
		fmt.Fprintln(out)
	}
	for _, m := range b.Layout.Missing {
		fmt.Fprintf(out, "  not laid out: %s\n", m)
	}
}
