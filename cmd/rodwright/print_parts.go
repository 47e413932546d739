package main

import (
	"bytes"
	"fmt"
	"strings"
	"text/tabwriter"

	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
)

// table begins a table of left-aligned columns, set in by two.
func table(out *bytes.Buffer) *tabwriter.Writer {
	return tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
}

// printParts prints panels, pipes, fittings and hardware, each kind as a table of its own.
func printParts(out *bytes.Buffer, list *part.List, to length.Fineness) {
	byKind := map[part.Kind][]part.Part{}
	for _, p := range list.Parts {
		byKind[p.Kind] = append(byKind[p.Kind], p)
	}
	printPanels(out, byKind[part.Panel], to)
	printPipes(out, byKind[part.Pipe], to)
	printCounted(out, "FITTINGS", byKind[part.Fitting])
	printCounted(out, "HARDWARE", byKind[part.Hardware])
}

func printPanels(out *bytes.Buffer, panels []part.Part, to length.Fineness) {
	if len(panels) == 0 {
		return
	}
	fmt.Fprintln(out, "PANELS  length along the grain × width × thickness")
	w := table(out)
	fmt.Fprintln(w, "  tag\tname\tmaterial\tfinished\tblank\tstock\tmass\tsits")
	for _, p := range panels {
		fmt.Fprintf(w, "  %s\t%s\t%s\t%s\t%s\t%s\t%.1f kg\t%s\n", p.Tag, p.Name, p.Material,
			sizes(p.Finished, to), sizes(p.Blank, to), p.Rough, p.MassKg, p.Sits)
	}
	w.Flush()
	for _, p := range panels {
		printFeatures(out, p, to)
	}
	fmt.Fprintln(out)
}

// printFeatures prints the cuts in one panel from its datum: along the grain, across it.
func printFeatures(out *bytes.Buffer, p part.Part, to length.Fineness) {
	if len(p.Features)+len(p.Profiles) == 0 {
		return
	}
	fmt.Fprintf(out, "  %s %s, from its %s corner, along × across the grain:\n", p.Tag, p.Name, p.Datum)
	w := table(out)
	for _, f := range p.Features {
		fmt.Fprintf(w, "    %s\t%s\t%s\n", f.Kind, featurePlace(f, to), f.Why)
	}
	for _, e := range p.Profiles {
		fmt.Fprintf(w, "    %s\t%s on the %s, %s long\n", e.Profile, to.Show(e.Size), e.Side, to.Show(e.Run))
	}
	w.Flush()
}

func featurePlace(f part.Feature, to length.Fineness) string {
	if f.Round {
		c := f.Centre()
		return fmt.Sprintf("diameter %s, centre at %s × %s", to.Show(f.Size[0]), to.Show(c[0]), to.Show(c[1]))
	}
	text := fmt.Sprintf("%s × %s at %s × %s", to.Show(f.Size[0]), to.Show(f.Size[1]), to.Show(f.At[0]), to.Show(f.At[1]))
	if f.Kind == piece.ReliefFeature {
		text += fmt.Sprintf(", %s deep from below", to.Show(f.Depth))
	}
	if f.Opens != part.NoSide {
		text += ", open to the " + string(f.Opens)
	}
	return text
}

func printPipes(out *bytes.Buffer, pipes []part.Part, to length.Fineness) {
	if len(pipes) == 0 {
		return
	}
	fmt.Fprintln(out, "PIPE  cut length from centre distances; loosest and tightest as built")
	w := table(out)
	fmt.Fprintln(w, "  tag\tname\tpipe\tcount\tcut\texact\tbetween\tloosest\ttightest\tends\tfrom")
	for _, p := range pipes {
		fmt.Fprintf(w, "  %s\t%s\t%s\t%d\t%s\t%.3f in, %.1f mm\t%s\t%s\t%s\t%s\t%s\n", p.Tag, p.Name, p.Material, p.Count,
			to.Show(p.Cut), p.Cut.Inches(), p.Cut.MM(), to.Show(p.Between), to.Show(p.Loosest), to.Show(p.Tightest),
			p.Ends[0].Words()+" – "+p.Ends[1].Words(), p.From)
	}
	w.Flush()
	fmt.Fprintln(out)
}

func printCounted(out *bytes.Buffer, title string, parts []part.Part) {
	if len(parts) == 0 {
		return
	}
	fmt.Fprintln(out, title)
	w := table(out)
	for _, p := range parts {
		fmt.Fprintf(w, "  %s\t%d\t%s\t%s\n", p.Tag, p.Count, p.Name, p.Material)
	}
	w.Flush()
	fmt.Fprintln(out)
}

// sizes prints three sizes with one unit: 42 × 19 × 1 1/16 in.
func sizes(s [3]length.Length, to length.Fineness) string {
	var words []string
	for _, l := range s {
		words = append(words, to.Number(l))
	}
	return strings.Join(words, " × ") + " " + to.Unit.String()
}
