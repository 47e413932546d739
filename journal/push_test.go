package journal_test

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rodwright/journal"
	"rodwright/length"
)

func pushed(on, towards string, force float64, unit string, moved journal.MM) journal.Happened {
	return journal.Happened{What: journal.Pushed, Push: &journal.Push{On: on, Towards: towards, Force: force, Unit: unit, Moved: moved}}
}

func TestAPushTestIsSaidInAMakersWords(t *testing.T) {
	for line, want := range map[string]journal.Happened{
		"pushed 20 lb on high board to the left moved 1/4 in":      pushed("high board", "left", 20, "lb", inch/4),
		"pushed 100 N on top to the back moved 3 mm":               pushed("top", "back", 100, "N", 3*journal.MM(length.Millimetre)),
		"pushed 1 1/2 lbf on top on wheels to the right moved 1/8": pushed("top on wheels", "right", 1.5, "lbf", inch/8),
		"pushed 9.5kg on left to the front moved 2 mm":             pushed("left", "front", 9.5, "kg", 2*journal.MM(length.Millimetre)),
	} {
		got, err := journal.Say(line, length.In)
		if err != nil {
			t.Errorf("%s: %v", line, err)
		} else if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s\n%s", line, diff)
		}
	}
}

func TestAPushTestThatLacksSomethingSaysWhere(t *testing.T) {
	for line, at := range map[string]int{
		"pushed": 7, "pushed on top to the left moved 1 in": 8, "pushed 20 lb": 8, "pushed 20 lb on top": 20, "pushed 20 lb on top to the left": 32,
		"pushed 20 lb on top moved 1 in": 17, "pushed 20 lb on top to the top moved 1 in": 28, "pushed 20 lb on to the left moved 1 in": 24,
		"pushed 20 in on top to the left moved 1 in": 8, "pushed hard on top to the left moved 1 in": 8, "pushed 20 lb on top to the left moved": 38,
		"pushed 20 lb on top to the left moved far": 39, "pushed 20 lb on top to the left moved 0": 39, "pushed 20 lb on top to the left moved -1 in": 39,
		"pushed 0 lb on top to the left moved 1 in": 1, "pushed -20 lb on top to the left moved 1 in": 8, "pushed 200000 N on top to the left moved 1 in": 1,
	} {
		_, err := journal.Say(line, length.In)
		var bad *journal.SayError
		if !errors.As(err, &bad) || bad.At != at || bad.Want == "" {
			t.Errorf("%s: %v, want letter %d", line, err, at)
		}
	}
}

func TestAPushTestThatCantBeIsRefused(t *testing.T) {
	spoilt(t, func() journal.Happened { return pushed("top", "left", 20, "lb", inch/4) },
		spoil{"fact.push", func(h *journal.Happened) { h.Push = nil }},
		spoil{"fact.push.on", func(h *journal.Happened) { h.Push.On = " " }},
		spoil{"fact.push.on", func(h *journal.Happened) { h.Push.On = letters }},
		spoil{"fact.push.towards", func(h *journal.Happened) { h.Push.Towards = "up" }},
		spoil{"fact.push.unit", func(h *journal.Happened) { h.Push.Unit = "stone" }},
		spoil{"fact.push.force", func(h *journal.Happened) { h.Push.Force = -20 }},
		spoil{"fact.push.force", func(h *journal.Happened) { h.Push.Force = 0 }},
		spoil{"fact.push.force", func(h *journal.Happened) { h.Push.Force = math.NaN() }},
		spoil{"fact.push.force", func(h *journal.Happened) { h.Push.Force = math.Inf(1) }},
		spoil{"fact.push.moved", func(h *journal.Happened) { h.Push.Moved = 0 }},
		spoil{"fact.push.moved", func(h *journal.Happened) { h.Push.Moved = -inch }},
		spoil{"fact.push.moved", func(h *journal.Happened) { h.Push.Moved = tooFar }},
		spoil{"fact.distance", func(h *journal.Happened) { h.Distance = measured(inch).Distance }},
	)
	h := measured(inch)
	h.Push = pushed("top", "left", 20, "lb", inch).Push
	refused(t, told(1, "anna", h), "fact.push")
}

// A pound weighs 4.448 221 615 260 5 N: the pound of 1959 at the standard gravity of 1901, exact.
func TestAPushIsToldInNewtons(t *testing.T) {
	for unit, want := range map[string]float64{"N": 20, "lb": 88.96443230521, "lbf": 88.96443230521, "kg": 196.133} {
		if got, ok := pushed("top", "left", 20, unit, inch).Push.Newtons(); !ok || math.Abs(got-want) > 1e-9 {
			t.Errorf("20 %s are %v N, want %v", unit, got, want)
		}
	}
}

func TestAPieceThatWasPushedIsUnderWayUntilThatIsWithdrawn(t *testing.T) {
	es := []journal.Entry{told(1, "anna", pushed("top", "left", 20, "lb", inch/4)), told(2, "anna", pushed("top", "back", 20, "lb", inch/8))}
	rec := journal.Fold(es)
	if rec.Empty() || len(rec.Pushes) != 2 || rec.Pushes[1].Number != 2 || rec.Pushes[0].Moved != inch/4 {
		t.Errorf("%+v", rec)
	}
	if rec = journal.Fold(append(es, withdrawn(3, "anna", 1), withdrawn(4, "anna", 2))); !rec.Empty() || len(rec.Pushes) != 0 {
		t.Errorf("after both are withdrawn: %+v", rec)
	}
}
