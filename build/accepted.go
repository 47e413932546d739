package build

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strconv"

	"rodwright/cut"
	"rodwright/cut/wire"
	"rodwright/journal"
	"rodwright/layout"
	"rodwright/length"
)

// Accepted is a layout that somebody accepted, and what has become of it.
type Accepted struct {
	journal.Laid
	State Acceptance
	Why   string // it is not used; of one that is used: that a cheaper one is known; else empty
}

// Acceptance is what has become of an accepted layout.
type Acceptance string

// What becomes of an accepted layout.
const (
	Taken    Acceptance = "taken"    // the stock is cut by it
	Outdated Acceptance = "outdated" // it was for other parts, other stock or other prices
	Refused  Acceptance = "refused"  // it is no layout of the problem it says it is of
)

// settle chooses between the layout that was derived for a task and one that was accepted for it. What was accepted is
// what the maker means to cut: it holds as long as the problem is the same and the verifier agrees, also where one that
// costs less is known. Told is what has become of it, nil where none was accepted for this material.
func settle(own layout.Layout, laid []journal.Laid, memo *Memo) (l layout.Layout, told *Accepted) {
	key := own.Key()
	of := acceptedFor(own.Task, key, laid)
	if of == nil {
		return own, nil
	}
	told = &Accepted{Laid: *of, State: Refused}
	read := readFor(own.Task, key, of, memo)
	switch {
	case read.err != nil:
		told.Why = read.err.Error()
	case of.Key != key:
		told.State, told.Why = Outdated, read.misfit
	default:
		if told.Why = refuted(read.answer, own.Answer); told.Why != "" {
			break
		}
		taken, err := own.Accept(bounded(read.answer, own.Answer))
		if err != nil {
			told.Why = err.Error()
			break
		}
		if told.State = Taken; len(own.Answer.NotPlaced) == len(taken.Answer.NotPlaced) && own.Answer.Cost < taken.Answer.Cost {
			told.Why = "another that costs " + cost(own.Answer.Cost) + " is known"
		}
		return taken, told
	}
	return own, told
}

// acceptedFor returns the layout that was accepted for the task, or where there is none the last for its material.
func acceptedFor(t layout.Task, key string, laid []journal.Laid) (last *journal.Laid) {
	for i := range laid {
		if l := &laid[i]; l.Kind == string(t.Kind) && l.Material == t.Material {
			if last = l; l.Key == key {
				break
			}
		}
	}
	return last
}

// reading is an accepted layout as it is read for a task.
type reading struct {
	answer *cut.Answer
	err    error
	misfit string // why it is none of the task, where it was for another problem
}

// readFor reads an accepted layout for a task with the given key.
func readFor(t layout.Task, key string, l *journal.Laid, memo *Memo) reading {
	input := key + "\x00" + l.Key + "\x00" + string(l.Answer)
	return memo.Keep("accepted", []byte(input), func() any {
		a, err := wire.ReadLayout(wire.File{Name: "layout", Text: l.Answer}, length.MM, t.Kind != layout.OfSticks)
		if err != nil || l.Key == key {
			return reading{answer: a, err: err}
		}
		return reading{answer: a, misfit: t.Misfit(a)}
	}).(reading)
}

// refuted says what another layout of the same problem shows to be wrong with an accepted one; empty where nothing is.
// The verifier can't see it: a bound that no search of ours can have found, or parts left out that find a place.
func refuted(a, own *cut.Answer) string {
	switch {
	case len(a.NotPlaced) > len(own.NotPlaced):
		return "it leaves out parts that find a place"
	case len(a.NotPlaced) == 0 && a.Of == cut.EveryLayout && a.Bound > own.Cost:
		return "it says that no layout costs less than " + cost(a.Bound) + ", and one costs " + cost(own.Cost)
	}
	return ""
}

// bounded is an accepted layout with the closer of two bounds that are true of it.
func bounded(a, own *cut.Answer) *cut.Answer {
	if len(a.NotPlaced)+len(own.NotPlaced) > 0 || a.Of != own.Of || own.Bound <= a.Bound {
		return a
	}
	closer := *a
	closer.Bound, closer.Proven = own.Bound, own.Bound == a.Cost
	return &closer
}

// cost writes what a layout costs: money or, where there are no prices, a length or an area.
func cost(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }

// Acceptable returns a layout of a task as the entry that accepts it holds it. The error says what the verifier finds
// wrong with it.
func Acceptable(t layout.Task, a *cut.Answer) (journal.Layout, error) {
	if _, err := t.Accept(a); err != nil {
		return journal.Layout{}, err
	}
	timeless := *a
	timeless.TookMS = 0
	text, err := wire.JSON(&timeless, length.MM, t.Kind != layout.OfSticks)
	if err != nil {
		return journal.Layout{}, err
	}
	var out bytes.Buffer
	if err := json.Compact(&out, text); err != nil {
		return journal.Layout{}, err
	}
	return journal.Layout{Kind: string(t.Kind), Material: t.Material, Key: t.Key(), Cost: a.Cost, Bound: a.Bound, Answer: out.Bytes()}, nil
}

// LayoutOf returns the layout of a kind and material, and what has become of one that was accepted for it; nil where none
// was. It reports false where nothing of that is cut.
func (b *Build) LayoutOf(kind layout.Kind, material string) (layout.Layout, *Accepted, bool) {
	for _, l := range b.Layout.All() {
		if l.Kind != kind || l.Material != material {
			continue
		}
		for i := range b.Accepted {
			if a := &b.Accepted[i]; a.Kind == string(kind) && a.Material == material {
				return l, a, true
			}
		}
		return l, nil, true
	}
	return layout.Layout{}, nil, false
}

// acceptedJSON is an accepted layout in the JSON of a build.
type acceptedJSON struct {
	Kind     string     `json:"kind"`
	Material string     `json:"material"`
	Entry    int64      `json:"entry"` // number in the log
	ID       string     `json:"id"`    // of the entry
	Actor    string     `json:"actor"`
	State    Acceptance `json:"state"`
	Why      string     `json:"why,omitempty"`
	Cost     rounded    `json:"cost"`
	Bound    rounded    `json:"bound"`
}

func acceptedOf(all []Accepted) (out []acceptedJSON) {
	for _, a := range all {
		out = append(out, acceptedJSON{a.Kind, a.Material, a.Number, a.ID, a.Actor, a.State, a.Why, rounded(a.Cost), rounded(a.Bound)})
	}
	return out
}

// Words tells what has become of an accepted layout, in a sentence.
func (a Accepted) Words() string {
	said := fmt.Sprintf("accepted by %s in entry %d", a.Actor, a.Number)
	switch {
	case a.State == Outdated:
		return said + " for an earlier state, and no longer fits: " + a.Why + "; look deeper again"
	case a.State == Refused:
		return said + ", and is not used, because it is no layout of these parts: " + a.Why
	case a.Why != "":
		return said + "; " + a.Why
	}
	return said
}
