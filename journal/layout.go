package journal

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"
)

// Layout is how the stock of one material is to be cut, as somebody accepted it. It holds for one problem: for just
// those parts, that stock and those prices.
type Layout struct {
	Kind     string          `json:"kind"`     // stick, panel or sheet
	Material string          `json:"material"` // 3/4; white-oak 5/4; birch-plywood-18
	Key      string          `json:"key"`      // of the problem: sha256:…, as package layout makes it
	Cost     float64         `json:"cost"`
	Bound    float64         `json:"bound"`  // no layout of the problem costs less: proven when it was accepted
	Answer   json.RawMessage `json:"answer"` // the layout in millimetres, as package cut/wire writes it
}

// Laid is an accepted layout with the entry that tells of it.
type Laid struct {
	Layout
	ID     string
	Number int64
	Actor  string
	At     time.Time
}

// MostLayout is the most bytes of a layout that is kept: of some two thousand parts.
const MostLayout = 600_000

// kindsOfLayouts are what a layout cuts up.
var kindsOfLayouts = []string{"stick", "panel", "sheet"}

func (l *Layout) check() error {
	switch {
	case !slices.Contains(kindsOfLayouts, l.Kind):
		return &EntryError{"layout.kind", "must be one of " + strings.Join(kindsOfLayouts, ", ")}
	case strings.TrimSpace(l.Material) == "" || !oneLine(l.Material, MostActor):
		return &EntryError{"layout.material", fmt.Sprintf("must name what is cut, in one line of at most %d letters", MostActor)}
	case !isKey(l.Key):
		return &EntryError{"layout.key", "must be sha256: and 64 digits from 0 to f"}
	case !(l.Cost >= 0 && l.Bound >= 0 && l.Bound <= l.Cost):
		return &EntryError{"layout.bound", "must be from 0 to the cost"}
	}
	return l.checkAnswer()
}

// asWritten returns the layout without white space and with its letters escaped, as a line of a journal has it.
func (l *Layout) asWritten() (json.RawMessage, error) { return json.Marshal(l.Answer) }

// checkAnswer reports a layout that is none, or that says otherwise of itself than its entry does. Whether it can be
// cut is not this package's to say.
func (l *Layout) checkAnswer() error {
	var said struct {
		Unit        string
		Cost, Bound *float64
		Used        []json.RawMessage
	}
	text, err := l.asWritten()
	if err != nil || json.Unmarshal(text, &said) != nil || said.Cost == nil || said.Bound == nil || said.Used == nil {
		return &EntryError{"layout.answer", "must be a layout in JSON with unit, cost, bound and used"}
	}
	switch {
	case len(text) > MostLayout:
		return &EntryError{"layout.answer", fmt.Sprintf("is %d bytes long, and at most %d are kept", len(text), MostLayout)}
	case said.Unit != "mm":
		return &EntryError{"layout.answer", "must be in millimetres, and say so: mm"}
	case *said.Cost != l.Cost || *said.Bound != l.Bound:
		return &EntryError{"layout.answer", "must have the cost and the bound that its entry tells"}
	}
	return nil
}

// isKey reports whether the text is a hash as it is kept.
func isKey(text string) bool {
	digits, ok := strings.CutPrefix(text, "sha256:")
	return ok && len(digits) == 64 && strings.Trim(digits, "0123456789abcdef") == ""
}

// settle puts the layout down as it is written, so that it is compared as a text.
func (l *Layout) settle() {
	if l == nil {
		return
	}
	if text, err := l.asWritten(); err == nil {
		l.Answer = text
	}
}

func (f *folding) laid(e Entry) {
	same := func(l Laid) bool {
		return l.Key == e.Layout.Key && l.Kind == e.Layout.Kind && l.Material == e.Layout.Material
	}
	f.Layouts = append(slices.DeleteFunc(f.Layouts, same), Laid{*e.Layout, e.ID, e.Number, e.Actor, e.At})
}

// words tells of what the layout is, what it costs and how good it is known to be.
func (l *Layout) words() string {
	of := l.Material
	if l.Kind == "stick" {
		of = "pipe " + of
	}
	said := fmt.Sprintf("layout of %s accepted, cost %s", of, decimals(l.Cost)) // money or, where there are no prices, a length or an area
	if l.Bound == l.Cost {
		return said + ", none costs less"
	}
	return said + ", none costs less than " + decimals(math.Floor(l.Bound*100)/100)
}
