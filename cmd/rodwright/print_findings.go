package main

import (
	"bytes"
	"fmt"
	"strings"

	"rodwright/build"
	"rodwright/finding"
	"rodwright/length"
)

// printChecks prints findings for the verb check, the worst first.
func printChecks(b *build.Build, all bool) []byte {
	var out bytes.Buffer
	printFindings(&out, b, all)
	return out.Bytes()
}

// printFindings prints what fails, is not known, is tight and, if asked, what stands, with a line that
// counts them.
func printFindings(out *bytes.Buffer, b *build.Build, all bool) {
	count := map[finding.Verdict]int{}
	for _, f := range b.Findings {
		count[f.Verdict]++
	}
	fmt.Fprintf(out, "FINDINGS  %d fail · %d tight · %d not known · %d stand\n",
		count[finding.Fails], count[finding.Tight], count[finding.Unknown], count[finding.Stands])
	for _, v := range []finding.Verdict{finding.Fails, finding.Unknown, finding.Tight, finding.Stands} {
		if v == finding.Stands && !all {
			continue
		}
		for _, f := range b.Findings {
			if f.Verdict == v {
				printFinding(out, f, b.Doc.Fineness.Finer())
			}
		}
	}
	if count[finding.Stands] > 0 && !all {
		fmt.Fprintf(out, "  (what stands is shown by: rodwright check --all)\n")
	}
}

// verdictWords are the verdicts as they stand at the head of a finding, of one width.
var verdictWords = [...]string{
	finding.Stands: "stands   ", finding.Tight: "tight    ", finding.Fails: "FAILS    ", finding.Unknown: "not known",
}

func printFinding(out *bytes.Buffer, f finding.Finding, to length.Fineness) {
	fmt.Fprintf(out, "  %s  %s: %s\n", verdictWords[f.Verdict], f.Check, f.Place)
	line := func(label, text string) {
		if text != "" {
			fmt.Fprintf(out, "             %s %s\n", label, wrap(text, 96, 22))
		}
	}
	if !f.Figure.Missing() && !f.Limit.Missing() {
		sense := "at most"
		if f.Sense == finding.AtLeast {
			sense = "at least"
		}
		line("figure ", fmt.Sprintf("%s %s; %s %s (%s)", f.Figure.Name, f.Figure.Show(to), sense, f.Limit.Show(to), f.Limit.Name))
	}
	line("parts  ", strings.Join(f.Parts, ", "))
	line("missing", f.Missing)
	if f.Verdict != finding.Stands {
		for _, b := range f.Because {
			line("because", reason(b, to))
		}
		line("assumed", strings.Join(f.Assumptions(), "; "))
	}
	line("mend   ", f.Mend)
	line("caution", f.Caution)
}

// wrap breaks text into lines of the given width; further lines are set in.
func wrap(text string, width, indent int) string {
	var lines []string
	line := ""
	for _, w := range strings.Fields(text) {
		if line != "" && len([]rune(line))+1+len([]rune(w)) > width {
			lines, line = append(lines, line), ""
		}
		if line != "" {
			line += " "
		}
		line += w
	}
	return strings.Join(append(lines, line), "\n"+strings.Repeat(" ", indent-1))
}
