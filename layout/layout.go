// Package layout turns the parts of a piece into problems for package cut, one for each material, and the
// answers back into boards, sticks and sheets: what is opened, from the rack or from the yard, and how it
// is cut.
//
// What lies in the rack comes first because it is worth less there than new stock costs: it enters at the
// shop's salvage share of the price of as much new stock. Boards are bought in the sizes the shop names as
// typical; nothing is laid out on a board that nobody has named.
//
// Start with [Lay], or with [Tasks] to solve each material apart and to keep answers by [Task.Key]. The
// package prices nothing: money does.
package layout

import (
	"context"
	"fmt"
	"slices"

	"rodwright/cut"
	"rodwright/cut/verify"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

// Kind says what a layout cuts up.
type Kind string

// The kinds of layouts.
const (
	OfSticks Kind = "stick"
	OfBoards Kind = "panel"
	OfSheets Kind = "sheet"
)

// Task is the cutting of one material: exactly one of its problems is set.
type Task struct {
	Kind     Kind
	Material string // 3/4; white-oak 5/4; birch-plywood-18
	Sticks   *cut.StickProblem
	Boards   *cut.PanelProblem
	Sheets   *cut.SheetProblem
	Stock    []Stock // what each tag of the problem's stock is, in its order
	Nipples  []Nipple
	Assumed  []string
}

// Stock is what a piece of stock is to who buys it.
type Stock struct {
	Tag      string  // in the problem
	Item     string  // as the shop's price list names it: white-oak 5/4, pipe 3/4 21 ft
	Quantity float64 // of one, in Unit
	Unit     string  // board foot, each
	FromRack bool
}

// Nipple is a pipe of a task that can be bought as a stock nipple as well as cut.
type Nipple struct {
	Tag   string // of the pipe: C2.1
	Item  string // as the shop's price list names it: nipple 3/4 4 in
	There bool   // one was bought for the piece already
}

// Layout is the answer for one material.
type Layout struct {
	Task
	Answer *cut.Answer
	Opened []Stock // one for each piece of stock used, as Answer.Used
}

// Result is everything a piece is cut from.
type Result struct {
	Stick, Panel, Sheet []Layout // each sorted by material
	Buy                 []Line
	Missing             []string // parts that nothing could be laid out for, in words
	Assumed             []string
}

// All returns the layouts of all kinds, sticks first.
func (r *Result) All() []Layout { return slices.Concat(r.Stick, r.Panel, r.Sheet) }

// Line is stock of one item: how much is opened, and how much of that comes from the rack.
type Line struct {
	Item     string
	Material string
	Count    float64 // in Unit
	Unit     string
	FromRack float64
}

// Lay lays out all parts of a piece. The same input gives the same result unless ctx ends early. Parts
// that can't be laid out are told in Missing; an error is a problem that can't be.
func Lay(ctx context.Context, r *piece.Resolved, list *part.List, s *shop.Shop, l cut.Limits) (*Result, error) {
	tasks, missing := Tasks(r, list, s)
	var laid []Layout
	for _, t := range tasks {
		lay, err := t.Solve(ctx, l)
		if err != nil {
			return nil, err
		}
		laid = append(laid, lay)
	}
	return Gather(laid, missing), nil
}

// Tasks returns the problems of a piece, sticks first, each kind sorted by material, and what no problem
// could be made for.
func Tasks(r *piece.Resolved, list *part.List, s *shop.Shop) (tasks []Task, missing []string) {
	for _, make := range []func(*piece.Resolved, *part.List, *shop.Shop) ([]Task, []string){stickTasks, boardTasks, sheetTasks} {
		ts, miss := make(r, list, s)
		tasks = append(tasks, ts...)
		missing = append(missing, miss...)
	}
	return tasks, missing
}

// Gather puts layouts, in the order of their tasks, into one result.
func Gather(laid []Layout, missing []string) *Result {
	out := &Result{Missing: slices.Clone(missing)}
	for _, l := range laid {
		switch l.Kind {
		case OfSticks:
			out.Stick = append(out.Stick, l)
		case OfBoards:
			out.Panel = append(out.Panel, l)
		case OfSheets:
			out.Sheet = append(out.Sheet, l)
		}
		for _, n := range l.Answer.NotPlaced {
			out.Missing = append(out.Missing, fmt.Sprintf("%s of %s: %s", n.Tag, l.Material, n.Why))
		}
		for _, a := range l.Assumed {
			if !slices.Contains(out.Assumed, a) {
				out.Assumed = append(out.Assumed, a)
			}
		}
	}
	out.Buy = lines(out.All())
	return out
}

// lines adds up the stock opened by item.
func lines(laid []Layout) (out []Line) {
	for _, l := range laid {
		for _, o := range l.Opened {
			i := slices.IndexFunc(out, func(n Line) bool { return n.Item == o.Item && n.Unit == o.Unit })
			if i < 0 {
				i = len(out)
				out = append(out, Line{Item: o.Item, Material: l.Material, Unit: o.Unit})
			}
			out[i].Count += o.Quantity
			if o.FromRack {
				out[i].FromRack += o.Quantity
			}
		}
	}
	return out
}

// Faults checks an answer against the task with the independent verifier; none when it is right.
func (t Task) Faults(a *cut.Answer) []verify.Fault {
	switch t.Kind {
	case OfSticks:
		return verify.Stick(t.Sticks, a)
	case OfBoards:
		return verify.Panel(t.Boards, a)
	}
	return verify.Sheet(t.Sheets, a)
}
