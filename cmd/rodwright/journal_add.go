package main

import (
	"strconv"
	"strings"
	"time"

	"rodwright/change"
	"rodwright/journal"
)

type journalAddVerb struct {
	journalOf
	Words []string `arg:"" help:"What happened, on one line."`
	At    string   `placeholder:"TIME" help:"When it happened, where that was earlier: 2026-05-04, or 2026-05-04 09:30."`
	Dry   bool     `help:"Only show it; nothing is written."`
}

// Help lists what can be said.
func (journalAddVerb) Help() string {
	return `Example: rodwright journal add table.piece.yaml made C2.1 cut-pipe 26 1/2 in from S1 in 25 min

What can be said:

  made TAG WORK [SIZE] [from STOCK [taking LENGTH]] [in 25 min] [again]
  measured NAME to NAME LENGTH [outside|inside]
  bought board SPECIES [QUARTERS] LENGTH × WIDTH × THICKNESS as TAG
  bought stick PIPE LENGTH as TAG
  bought sheet SHEET LENGTH × WIDTH as TAG
  bought 8 × tee 1                  [for PRICE] behind each
  wrong TAG [SIZE|short LENGTH|narrow LENGTH|hole SIZE at X × Y] : WHY
  spoiled TAG WHY
  meant TAG for PLACE, meant TAG for the rack
  finished
  delivered
  edit PATH VALUE                   a value of the design
  asked WORDS PATH=VALUE …          what the client asks for
  yes N, no N                       the answer to change N
  withdraw N                        entry N does not hold

Quote what your shell would read itself: ", ', *, brackets.`
}

// Run writes what is said, and prints what follows from it.
func (v *journalAddVerb) Run(m *Main) error {
	return v.with(m, func(k keeper) error {
		at, err := moment(v.At)
		if err != nil {
			return err
		}
		w, err := (&pen{k, v.actor(), at, v.Dry}).write(func(l change.Log) ([]journal.Entry, error) { return v.entries(l, at) })
		if err != nil {
			return err
		}
		return m.told(w, v.JSON, v.Dry)
	})
}

// moments are the ways to write a time, in the time of this machine.
var moments = []string{time.RFC3339, "2006-01-02T15:04:05", "2006-01-02 15:04:05", "2006-01-02T15:04", "2006-01-02 15:04", time.DateOnly}

// moment reads when something happened; zero where nothing is said.
func moment(text string) (time.Time, error) {
	if text == "" {
		return time.Time{}, nil
	}
	for _, layout := range moments {
		at, err := time.ParseInLocation(layout, text, time.Local)
		switch {
		case err != nil:
		case at.After(time.Now()):
			return at, refuse("--at %s is still to come: what is written down has happened", text)
		default:
			return at, nil
		}
	}
	return time.Time{}, refuse("--at %q is no time: write 2026-05-04, or 2026-05-04 09:30", text)
}

// entries are what the words say.
func (v *journalAddVerb) entries(l change.Log, at time.Time) ([]journal.Entry, error) {
	rest := v.Words[1:]
	switch v.Words[0] {
	case "edit":
		if len(rest) < 2 {
			return nil, refuse(`the value is missing: write edit "sizes/low level" 10 in`)
		}
		return []journal.Entry{{Kind: journal.Edit, Path: rest[0], New: strings.Join(rest[1:], " ")}}, nil
	case "asked":
		return asked(l, rest, at)
	case "yes", "no":
		return answered(l, v.Words[0] == "yes", rest)
	case "withdraw":
		return withdrawn(l, rest)
	}
	return said(l, strings.Join(v.Words, " "))
}

// said is a fact in a maker's words, completed from the plan.
func said(l change.Log, line string) ([]journal.Entry, error) {
	now, err := l.Now()
	if err != nil {
		return nil, err
	}
	h, err := fact(now, line)
	return []journal.Entry{{Kind: journal.Fact, Fact: &h}}, err
}

// fact reads a fact in words, and fills in from the plan what a maker does not say.
func fact(now *change.Truth, line string) (journal.Happened, error) {
	h, err := journal.Say(line, now.Build.Doc.Unit)
	if err != nil {
		return h, err
	}
	return now.Complete(h)
}

// asked is what the client asks for.
func asked(l change.Log, words []string, at time.Time) ([]journal.Entry, error) {
	if len(words) < 2 {
		return nil, refuse(`what is asked for and the values are missing: write asked "a wider top" "sizes/depth=32 in"`)
	}
	edits, err := puts(words[1:])
	if err != nil {
		return nil, err
	}
	now, err := l.Now()
	if err != nil {
		return nil, err
	}
	o, _, err := change.Asked(now, words[0], edits, dayOf(at))
	return []journal.Entry{{Kind: journal.Asked, Order: &o}}, err
}

// dayOf is the day from which the rest of the work is counted.
func dayOf(at time.Time) string {
	if at.IsZero() {
		at = time.Now()
	}
	return at.Format(time.DateOnly)
}

// puts reads values to put in: PATH=VALUE.
func puts(words []string) ([]journal.Put, error) {
	out := make([]journal.Put, len(words))
	for i, w := range words {
		path, value, ok := strings.Cut(w, "=")
		if path, value = strings.TrimSpace(path), strings.TrimSpace(value); !ok || path == "" {
			return nil, refuse(`%q is no PATH=VALUE: write it in quotes, as "sizes/low level=10 in"`, w)
		}
		out[i] = journal.Put{Path: path, New: value}
	}
	return out, nil
}

// answered is the client's answer to a change; with a yes also what parts already made are for from then on.
func answered(l change.Log, yes bool, words []string) ([]journal.Entry, error) {
	no, err := oneNumber(words, "the number of the change that is answered, as yes 1")
	if err != nil {
		return nil, err
	}
	o, err := order(l, int(no))
	if err != nil {
		return nil, err
	}
	out := []journal.Entry{{Kind: journal.Answer, Names: o.ID, Yes: yes}}
	if !yes || o.Answered { // what is answered already is refused with the reason
		return out, nil
	}
	now, err := l.Now()
	if err != nil {
		return nil, err
	}
	w, err := change.Weigh(now, o.Edits...)
	if err != nil {
		return nil, err
	}
	return append(out, facts(w.Meant)...), nil
}

// order returns the change of a number that was asked for.
func order(l change.Log, no int) (journal.Asking, error) {
	var waiting []string
	for _, o := range journal.Fold(l.Entries).Orders {
		if o.No == no {
			return o, nil
		}
		if !o.Answered {
			waiting = append(waiting, strconv.Itoa(o.No))
		}
	}
	return journal.Asking{}, refuse("no change %d is asked for; those that wait for an answer: %s", no, oneOf(waiting))
}

// facts are entries that tell what happened.
func facts(hs []journal.Happened) []journal.Entry {
	out := make([]journal.Entry, len(hs))
	for i := range hs {
		out[i] = journal.Entry{Kind: journal.Fact, Fact: &hs[i]}
	}
	return out
}

func withdrawn(l change.Log, words []string) ([]journal.Entry, error) {
	number, err := oneNumber(words, "the number of the entry that does not hold, as withdraw 7")
	if err != nil {
		return nil, err
	}
	e, err := numbered(l.Entries, number)
	if err == nil && e.Kind == journal.Edit {
		err = refuse("entry %d is an edit: rodwright journal undo takes it back", number)
	}
	return []journal.Entry{{Kind: journal.Withdrawn, Names: e.ID}}, err
}

// oneNumber reads a number and nothing else.
func oneNumber(words []string, want string) (int64, error) {
	if len(words) == 1 {
		if n, err := strconv.ParseInt(words[0], 10, 64); err == nil {
			return n, nil
		}
	}
	return 0, refuse("%q is no number; write %s", strings.Join(words, " "), want)
}
