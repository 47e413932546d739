package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"slices"
	"syscall"
	"time"

	"rodwright/build"
	"rodwright/change"
	"rodwright/cut"
	"rodwright/journal"
	"rodwright/layout"
)

type layoutVerb struct {
	journalOf
	Material []string      `placeholder:"ID" help:"Only what is cut of this: 3/4, white-oak 5/4. Without it everything."`
	Within   time.Duration `default:"10s" help:"How long to look, all materials together; Ctrl+C ends it earlier."`
	Accept   bool          `help:"Write down what is better: the stock is cut by it from then on, as long as parts, stock and prices are the same."`
}

// Help shows an example.
func (layoutVerb) Help() string {
	return `Example: rodwright layout table.piece.yaml --material "hard-maple 8/4" --within 30s --accept

Looks longer for a cheaper way to cut the stock of a piece than there is time for after each edit, and for a proof that none ` +
		`is cheaper. Without --accept nothing is written. An accepted layout is an entry of the journal; rodwright journal undo PIECE N withdraws it.`
}

// Run looks deeper for layouts of a piece, and writes those down that are better where that is asked for.
func (v *layoutVerb) Run(m *Main) error {
	if v.Within <= 0 {
		return badInput(fmt.Errorf("--within %v: there is no time to look in; write for example 30s", v.Within))
	}
	return v.with(m, func(k keeper) error {
		l, err := k.load()
		if err != nil {
			return err
		}
		now, err := l.Now()
		if err != nil {
			return err
		}
		wanted, err := v.wanted(now.Build)
		if err != nil {
			return err
		}
		found, stopped, err := v.look(m, now.Build, wanted)
		if err != nil {
			return err
		}
		if v.Accept {
			if err := v.accept(k, found); err != nil {
				return err
			}
		}
		return v.tell(m, now, found, stopped)
	})
}

// wanted are the layouts to look deeper for.
func (v *layoutVerb) wanted(b *build.Build) (out []layout.Layout, err error) {
	var there []string
	for _, l := range b.Layout.All() {
		there = append(there, l.Material)
		if len(v.Material) == 0 || slices.Contains(v.Material, l.Material) {
			out = append(out, l)
		}
	}
	for _, id := range v.Material {
		if !slices.Contains(there, id) {
			return nil, refuse("nothing of %q is cut for this piece; there are %s", id, oneOf(there))
		}
	}
	return out, nil
}

// deeper is a layout that was looked deeper for.
type deeper struct {
	of     layout.Layout
	told   *build.Accepted // what has become of one that was accepted before; nil: there was none
	best   *cut.Answer
	number int64 // of the entry that accepts it; 0: it was not accepted
}

// gained reports whether there is something better than before.
func (d *deeper) gained() bool { return layout.Gains(d.of.Answer, d.best) }

// look looks deeper for each layout in turn; what one does not need of its share of the time is left for the others. It
// reports whether it was stopped by a signal: the best so far is told then.
func (v *layoutVerb) look(m *Main, b *build.Build, wanted []layout.Layout) (found []*deeper, stopped bool, err error) {
	asked, release := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer release()
	end := time.Now().Add(v.Within)
	show := newProgress(m.Stderr, end)
	defer show.end()
	for i, l := range wanted {
		_, told, _ := b.LayoutOf(l.Kind, l.Material)
		d := &deeper{of: l, told: told, best: l.Answer}
		share := time.Until(end) / time.Duration(len(wanted)-i)
		ctx, cancel := context.WithTimeout(asked, share)
		show.begin(l)
		d.best, err = l.Deepen(ctx, l.Answer, show.better)
		cancel()
		if err != nil {
			return nil, false, err
		}
		found = append(found, d)
	}
	return found, asked.Err() != nil, nil
}

// accept writes down what is better than before, and what takes the place of a layout that can't be cut by any more.
func (v *layoutVerb) accept(k keeper, found []*deeper) error {
	var taken []*deeper
	w, err := (&pen{keeper: k, actor: v.actor()}).write(func(l change.Log) (es []journal.Entry, err error) {
		taken = nil
		now, err := l.Now()
		if err != nil {
			return nil, err
		}
		for _, d := range found {
			if !d.gained() && (d.told == nil || d.told.State == build.Taken) {
				continue
			}
			if is, _, ok := now.Build.LayoutOf(d.of.Kind, d.of.Material); !ok || is.Key() != d.of.Key() {
				return nil, refuse("the piece was changed meanwhile, and %s is cut for other parts or from other stock now: look again", d.of.Material)
			}
			kept, err := build.Acceptable(d.of.Task, d.best)
			if err != nil {
				return nil, err
			}
			es, taken = append(es, journal.Entry{Kind: journal.Accepted, Layout: &kept}), append(taken, d)
		}
		return es, nil
	})
	if err != nil {
		return err
	}
	for i, e := range w.entries {
		taken[i].number = e.Number
	}
	return nil
}
