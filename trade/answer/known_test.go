package answer

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"rodwright/trade/table"
)

// known is one published or worked figure that a topic must come to.
type known struct {
	id, statement, topic, call, answer string
	want, tolerance                    float64
	unit, source                       string
}

// read reads a table of known figures. The sources are the keys of the publications, with how they were
// had; what is called computed was worked by hand.
func read(t *testing.T, file string) []known {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []known
	for _, r := range rows[1:] {
		out = append(out, known{r[0], r[1], r[2], r[3], r[4], number(t, r[5]), number(t, r[7]), r[6], r[8] + ", " + r[9]})
	}
	return out
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// in returns v, in the unit of an answer, in the unit that a figure is printed in.
func in(v float64, unit string) float64 {
	switch unit {
	case "in":
		return v / 25.4
	case "lb":
		return v / 0.45359237
	case "lbf":
		return v / 4.4482216152605
	case "gal":
		return v / 3785.411784
	}
	return v
}

// asked answers a call whose keys are parted by bars.
func asked(t *testing.T, topic, call string) *Answer {
	t.Helper()
	words, err := Pairs(strings.Split(call, "|"))
	if err != nil {
		t.Fatal(err)
	}
	a, err := Ask(topic, words)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// result returns the result with the given name.
func result(t *testing.T, a *Answer, name string) Result {
	t.Helper()
	for _, r := range a.Answers {
		if r.Name == name {
			return r
		}
	}
	t.Fatalf("%s has no answer %s", a.Topic, name)
	return Result{}
}

func check(t *testing.T, file string) {
	for _, k := range read(t, file) {
		t.Run(k.id+" "+k.statement, func(t *testing.T) {
			r := result(t, asked(t, k.topic, k.call), k.answer)
			if got := in(r.Value.Number, k.unit); !(math.Abs(got-k.want) <= k.tolerance+1e-9) {
				t.Errorf("%s is %v %s, want %v ± %v (%s)", k.answer, got, k.unit, k.want, k.tolerance, k.source)
			}
		})
	}
}

func TestTopicsComeToThePublishedAndTheWorkedFigures(t *testing.T) { check(t, "testdata/known.csv") }

func TestTopicsAnswerWhatMakersAsked(t *testing.T) { check(t, "testdata/cases.csv") }

func TestTopicsComeToWhatIsReckonedByHand(t *testing.T) { check(t, "testdata/arithmetic.csv") }

func TestEveryPublishedFigureNamesAPublicationThatIsKnown(t *testing.T) {
	for _, k := range read(t, "testdata/known.csv") {
		keys, how, _ := strings.Cut(k.source, ", ")
		for key := range strings.SplitSeq(keys, "+") {
			if key != "computed" && !table.Known(key) || how == "" {
				t.Errorf("%s: source %q is no known publication", k.id, k.source)
			}
		}
	}
}
