package main

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"rodwright/build"
	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
)

// judged is a build that holds only findings: two that fail alike, one that stands, one that is not known.
func judged() *build.Build {
	failing := finding.Finding{
		Check: "sag", Place: "long shelf between the posts at the left", Verdict: finding.Fails, Parts: []string{"A1.1"},
		Figure: figure.Of("sag", 5, figure.MM, &figure.Formula{Text: "w = 5·q·L⁴ ÷ (384·E·I)", Source: "any book of beams"}, figure.InText("q", "120 N/m")).
			Assuming("the ends rest and are not held, as they are wherever nobody has screwed them down to what is below"),
		Limit: figure.Of("greatest sag", 3, figure.MM, nil), Mend: "make it 4 mm thicker",
		Caution: strings.Repeat("What falls can hurt somebody. ", 4),
	}
	failing.Because = []figure.Figure{failing.Figure}
	again := failing
	again.Place = "short shelf"
	stands := finding.Finding{
		Check: "tip", Place: strings.Repeat("to the back, with everything it holds, ", 4), Figure: figure.Of("tilt", 17, figure.Deg, nil),
		Limit: figure.Of("least tilt", 10, figure.Deg, nil), Sense: finding.AtLeast,
	}
	unknown := finding.Finding{Check: "path", Place: "the whole", Verdict: finding.Unknown, Missing: "the doors on the way"}
	return &build.Build{Doc: &piece.Document{Fineness: length.WholeMM}, Findings: []finding.Finding{stands, unknown, failing, again}}
}

func TestFindingsAreReadAtEightyColumnsTheWorstFirst(t *testing.T) {
	for _, how := range []telling{{}, {all: true}, {why: true}, {true, true}} {
		text := string(printChecks(judged(), how))
		for _, line := range strings.Split(text, "\n") {
			if utf8.RuneCountInString(line) > pageWide {
				t.Errorf("%d letters: %s", utf8.RuneCountInString(line), line)
			}
		}
		last := 0
		for _, want := range []string{"2 fail", "FAILS", "not known   path", "tip"} {
			at := strings.Index(text, want)
			if at < last {
				t.Errorf("%q stands before what is worse:\n%s", want, text)
			}
			last = at
		}
	}
}

func TestAFindingIsToldWithFigureLimitMendAndAssumption(t *testing.T) {
	text := string(printChecks(judged(), telling{}))
	for _, want := range []string{
		"figure    sag 5 mm\n", "limit     at most 3 mm (greatest sag)\n", "mend      make it 4 mm thicker\n",
		"assumed   the ends rest", "because   sag 5 mm by w = 5·q·L⁴ ÷ (384·E·I)\n", "missing   the doors on the way\n",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not told:\n%s", want, text)
		}
	}
}

func TestACautionIsToldInFullOnce(t *testing.T) {
	text := string(printChecks(judged(), telling{}))
	if strings.Count(text, "What falls can hurt somebody. What") != 1 || !strings.Contains(text, "caution   as with sag: long shelf between the posts at the left\n") {
		t.Errorf("told: %s", text)
	}
}

func TestWhatStandsIsALineUnlessAllIsAskedFor(t *testing.T) {
	if text := string(printChecks(judged(), telling{})); !strings.HasSuffix(text, "…: 17°, at least 10°\n") || strings.Contains(text, "stands      tip") {
		t.Errorf("told:\n%s", text)
	}
	if text := string(printChecks(judged(), telling{all: true})); !strings.Contains(text, "stands      tip: to the back") || strings.Contains(text, "STAND, a line each") {
		t.Errorf("told in full:\n%s", text)
	}
}

func TestSourcesAreToldWhereReasonsAreAskedFor(t *testing.T) {
	for why, want := range map[bool]bool{false: false, true: true} {
		if text := string(printChecks(judged(), telling{why: why})); strings.Contains(text, "any book of beams") != want || strings.Contains(text, "120 N/m") != want {
			t.Errorf("with why %v:\n%s", why, text)
		}
	}
}

func TestABuildSaysWhereTheRestOfItsFindingsAre(t *testing.T) {
	var out bytes.Buffer
	printFindings(&out, judged())
	if text := out.String(); strings.Contains(text, "17°") || !strings.Contains(text, "rodwright check") {
		t.Errorf("told:\n%s", text)
	}
}
