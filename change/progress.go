package change

import (
	"fmt"

	"rodwright/journal"
)

// Progress says what became of the parts between two moments of a piece: what was made, went wrong, was given another
// place, bought, measured, finished or delivered. It is empty where nothing was told.
func Progress(from, to *Truth) []string {
	var out []string
	for _, t := range to.Record.Things {
		before, there := from.Record.Thing(t.ID)
		if s := thingWords(before, t, there); s != "" {
			out = append(out, s)
		}
	}
	for _, t := range from.Record.Things {
		if _, there := to.Record.Thing(t.ID); !there {
			out = append(out, fmt.Sprintf("%s: what was told of it is withdrawn.", t.Label))
		}
	}
	if n := len(to.Record.Goods) - len(from.Record.Goods); n > 0 {
		out = append(out, "Bought: "+counted(n, "thing")+" more.")
	}
	if n := len(to.Record.Distances) - len(from.Record.Distances); n > 0 {
		out = append(out, "Measured: "+counted(n, "distance")+" more.")
	}
	if n := len(to.Record.Pushes) - len(from.Record.Pushes); n > 0 {
		out = append(out, "Pushed: "+counted(n, "test")+" more.")
	}
	if to.Record.Finished && !from.Record.Finished {
		out = append(out, "The piece is finished.")
	}
	if to.Record.Delivered && !from.Record.Delivered {
		out = append(out, "The piece is delivered.")
	}
	return out
}

// counted writes a number with its noun: 1 thing, 2 things.
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// thingWords says what became of one thing.
func thingWords(before, t journal.Thing, there bool) string {
	place := t.Place
	if place == "" {
		place = "on the rack"
	}
	switch {
	case !there:
		return fmt.Sprintf("%s, %s: %s.", t.Label, place, t.State)
	case !t.Live() && before.Live():
		return fmt.Sprintf("%s is spoiled: %s.", t.Label, t.Spoiled)
	case t.Place != before.Place:
		return fmt.Sprintf("%s: for %s now, %s.", t.Label, place, t.State)
	case t.State != before.State:
		return fmt.Sprintf("%s, %s: %s → %s.", t.Label, place, before.State, t.State)
	case t.Since != before.Since:
		return fmt.Sprintf("%s, %s: worked on.", t.Label, place)
	}
	return ""
}
