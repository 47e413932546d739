// Package build derives everything from one piece document: parts, findings, layouts, purchases, steps,
// time and price.
//
// It wires the other rooms together and owns no rule of the trade. [Derive] is pure: no clock, disk,
// network, randomness or map order; the same input gives the same bytes with an empty, a warm or a shared
// [Memo]. Start with Derive and print the result with [Build.JSON].
package build

import (
	"crypto/sha256"
	"encoding/hex"

	"rodwright/check"
	"rodwright/finding"
	"rodwright/journal"
	"rodwright/layout"
	"rodwright/money"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/steps"
)

// Input is everything a build depends on. No field is changed by it.
type Input struct {
	Document *piece.Document
	Shop     *shop.Shop
	Record   *journal.Record // what was bought, made and measured, and which layouts were accepted; nil where nothing was
}

// Build is everything derived from an input.
type Build struct {
	Doc      *piece.Document
	Shop     *shop.Shop
	Resolved *piece.Resolved // as it stands
	Drawn    *piece.Resolved // as drawn, where it stands elsewhere by what was measured; else nil
	Parts    *part.List
	Findings []finding.Finding
	Layout   *layout.Result
	Accepted []Accepted // the layouts that were accepted for these materials, in the order of Layout.All
	Buy      *money.List
	Work     *steps.Work
	Quote    *money.Quote
	Under    *Underway // of a piece under way; nil where nothing was made, bought or measured
	Hash     string    // of the input: sha256:…
}

// SetOut resolves a piece and takes its parts off, as it stands where something was measured, and derives nothing further:
// pipes are as taken off, bought or cut by the rule of thumb. Errors are as with [Derive].
func SetOut(in Input) (*Build, error) {
	b := &Build{Doc: in.Document, Shop: in.Shop, Hash: hash(in)}
	var err error
	if b.Resolved, err = piece.Resolve(in.Document, in.Shop); err != nil {
		return nil, err
	}
	if b.Parts, err = part.TakeOff(b.Resolved, in.Shop); err != nil {
		return nil, err
	}
	if !in.Record.Empty() {
		b.Under = &Underway{Record: in.Record}
		err = b.stand(b.Under)
	}
	return b, err
}

// Derive works out a build. The error is a *piece.Error with its place in the document when the piece
// can't be resolved or taken off; what is merely bad is a finding.
func Derive(in Input, memo *Memo) (*Build, error) {
	b, err := SetOut(in)
	if err != nil {
		return nil, err
	}
	if b.Under != nil {
		if err := b.underway(memo); err != nil {
			return nil, err
		}
		return b, nil
	}
	if b.Layout, b.Accepted, err = layouts(b.Resolved, b.Parts, in.Shop, in.Record, memo); err != nil {
		return nil, err
	}
	if b.Parts, err = part.Settle(b.Resolved, b.Parts, in.Shop, b.Layout.Chosen()); err != nil {
		return nil, err
	}
	b.Findings = findings(b.Resolved, b.Parts, in.Shop, nil, memo)
	b.Buy = money.Buy(b.Parts, stockOf(b.Layout), in.Shop, b.Layout.Missing...)
	if b.Work, err = steps.Plan(b.Resolved, b.Parts, plansOf(b.Layout), in.Shop); err != nil {
		return nil, err
	}
	b.Quote = money.Price(b.Work, b.Buy, in.Shop)
	return b, nil
}

// checks are all checks, in the order their findings are listed.
var checks = []func(*check.Piece) []finding.Finding{
	check.Fit, check.Overlap, check.Movement, check.Cup, check.Notch, check.Seat, check.Thread, check.Loop, check.Assembly,
	check.Stack, check.Level, check.Measure, check.Screw, check.Edge, check.Wall, check.Hole, check.Thickness, check.Caster, check.Insert, check.Tip,
	check.Push, check.Threshold, check.Tongue, check.Section, check.Lift, check.Grip, check.Path, check.Contact, check.Stand,
	check.Sag, check.Sway, check.Strength,
}

func findings(r *piece.Resolved, list *part.List, s *shop.Shop, pushes []check.Pushed, memo *Memo) []finding.Finding {
	p := check.Of(r, list, s)
	p.Pushes = pushes
	p.Keep = memo.Keep
	var out []finding.Finding
	for _, c := range checks {
		out = append(out, c(p)...)
	}
	return out
}

// hash identifies an input: the document's text, the name it was read under left out, the shop, what was made, and
// the layouts that were accepted.
func hash(in Input) string {
	h := sha256.New()
	h.Write(in.Document.Text)
	h.Write([]byte{0})
	h.Write(in.Shop.Canonical())
	if in.Record.Tells() {
		h.Write([]byte{0})
		h.Write(recordHash(in.Record))
	}
	return "sha256:" + hex.EncodeToString(h.Sum(nil))
}
