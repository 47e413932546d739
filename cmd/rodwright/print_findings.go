package main

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"

	"rodwright/build"
	"rodwright/finding"
	"rodwright/length"
)

// pageWide is how many letters a line of findings has at most; a word that is longer stands by itself.
const pageWide = 80

// labelWide is the room of a finding's labels, indent and space included.
const labelWide = 12

// worstFirst is the order in which findings are printed.
var worstFirst = []finding.Verdict{finding.Fails, finding.Unknown, finding.Tight, finding.Stands}

// verdictWords are the verdicts as they stand at the head of a finding.
var verdictWords = [...]string{
	finding.Stands: "stands", finding.Tight: "tight", finding.Fails: "FAILS", finding.Unknown: "not known",
}

// telling is how much is told of findings.
type telling struct {
	all bool // what stands is told in full too
	why bool // reasons with what went into them and their sources
}

// teller prints findings; a caution or assumption that it has told once it names only.
type teller struct {
	out  *bytes.Buffer
	to   length.Fineness
	why  bool
	told map[string]string // a caution or assumption → the finding it was told with
}

// printChecks prints findings for the verb check, the worst first. What stands is told in a line each, by check,
// unless all of it is asked for.
func printChecks(b *build.Build, t telling) []byte {
	var out bytes.Buffer
	printOpen(&out, b, t)
	if stand := of(b.Findings, finding.Stands); len(stand) > 0 && !t.all {
		fmt.Fprintf(&out, "\nSTAND, a line each (in full: rodwright check --all)\n")
		for _, group := range byCheck(stand) {
			for i, f := range group {
				fmt.Fprintln(&out, standing(f, i == 0, b.Doc.Fineness.Finer()))
			}
		}
	}
	return out.Bytes()
}

// printFindings prints what fails, is not known and is tight, with a line that counts all.
func printFindings(out *bytes.Buffer, b *build.Build) {
	printOpen(out, b, telling{})
	if len(of(b.Findings, finding.Stands)) > 0 {
		fmt.Fprintf(out, "\n  (what stands is shown by: rodwright check)\n")
	}
}

// printOpen prints the count and, in full, what does not stand; what stands too where all is asked for.
func printOpen(out *bytes.Buffer, b *build.Build, t telling) {
	n := func(v finding.Verdict) int { return len(of(b.Findings, v)) }
	fmt.Fprintf(out, "FINDINGS  %d fail · %d tight · %d not known · %d stand\n",
		n(finding.Fails), n(finding.Tight), n(finding.Unknown), n(finding.Stands))
	p := teller{out, b.Doc.Fineness.Finer(), t.why, map[string]string{}}
	for _, v := range worstFirst {
		if v == finding.Stands && !t.all {
			continue
		}
		for _, f := range of(b.Findings, v) {
			p.finding(f)
		}
	}
}

// of returns the findings of a verdict.
func of(fs []finding.Finding, v finding.Verdict) (out []finding.Finding) {
	for _, f := range fs {
		if f.Verdict == v {
			out = append(out, f)
		}
	}
	return out
}

// byCheck parts findings by their check, checks in the order in which they come first.
func byCheck(fs []finding.Finding) (out [][]finding.Finding) {
	at := map[string]int{}
	for _, f := range fs {
		i, there := at[f.Check]
		if !there {
			i = len(out)
			at[f.Check], out = i, append(out, nil)
		}
		out[i] = append(out[i], f)
	}
	return out
}

// finding prints one finding in full: verdict and place, figure, limit, what is missing, the mend and the caution,
// then the reasons and what is assumed.
func (p teller) finding(f finding.Finding) {
	where := wrap(f.Check+": "+f.Place, pageWide-labelWide, labelWide+1)
	fmt.Fprintf(p.out, "\n%-*s%s\n", labelWide, verdictWords[f.Verdict], where)
	if !f.Figure.Missing() {
		p.line("figure", f.Figure.Name+" "+f.Figure.Show(p.to))
	}
	if !f.Limit.Missing() {
		p.line("limit", fmt.Sprintf("%s %s (%s)", f.Sense, f.Limit.Show(p.to), f.Limit.Name))
	}
	p.line("missing", f.Missing)
	p.line("mend", f.Mend)
	p.once(f, "caution", f.Caution)
	for _, b := range f.Because {
		p.line("because", reason(b, p.to, p.why))
	}
	p.once(f, "assumed", strings.Join(f.Assumptions(), "; "))
	p.line("parts", strings.Join(f.Parts, ", "))
}

// once prints words of a finding; those that were told already only by where.
func (p teller) once(f finding.Finding, label, words string) {
	if first, told := p.told[words]; told && len(words) > pageWide-labelWide {
		words = "as with " + first
	} else {
		p.told[words] = f.Check + ": " + f.Place
	}
	p.line(label, words)
}

func (p teller) line(label, text string) {
	if text != "" {
		fmt.Fprintf(p.out, "  %-*s%s\n", labelWide-2, label, wrap(text, pageWide-labelWide, labelWide+1))
	}
}

// standing tells in one line what stands: the check, where it is the first of it, the place, cut short where it
// must be, and the figure with its limit.
func standing(f finding.Finding, first bool, to length.Fineness) string {
	check := ""
	if first {
		check = f.Check
	}
	head := fmt.Sprintf("  %-*s", labelWide-2, check)
	tail := ""
	if !f.Figure.Missing() && !f.Limit.Missing() {
		tail = fmt.Sprintf(": %s, %s %s", f.Figure.Show(to), f.Sense, f.Limit.Show(to))
	}
	room := pageWide - utf8.RuneCountInString(head+tail)
	return head + short(f.Place, max(room, 16)) + tail
}

// short cuts words to a width at a space.
func short(words string, width int) string {
	rs := []rune(words)
	if len(rs) <= width {
		return words
	}
	cut := string(rs[:width-2])
	if i := strings.LastIndexByte(cut, ' '); i > len(cut)/2 {
		cut = cut[:i]
	}
	return strings.TrimRight(cut, " ,") + " …"
}

// wrap breaks text into lines of the given width; further lines are set in.
func wrap(text string, width, indent int) string {
	var lines []string
	line := ""
	for _, w := range words(text) {
		if line != "" && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(w) > width {
			lines, line = append(lines, line), ""
		}
		if line != "" {
			line += " "
		}
		line += w
	}
	return strings.Join(append(lines, line), "\n"+strings.Repeat(" ", indent-1))
}

// measure is a length as it is printed, with what it belongs to: 2 × A1.1 ≈ 20 5/16 in is read in one go.
var measure = regexp.MustCompile(`(?:\d+ × )?(?:[A-Z]\d[\d.]* )?(?:≈ )?\d+(?: \d+/\d+)?(?: (?:in|ft|mm)\b)?`)

// words parts a text where a line may end: between words, not within a measure.
func words(text string) []string {
	const kept = "\x00"
	out := strings.Fields(measure.ReplaceAllStringFunc(text, func(m string) string { return strings.ReplaceAll(m, " ", kept) }))
	for i, w := range out {
		out[i] = strings.ReplaceAll(w, kept, " ")
	}
	return out
}
