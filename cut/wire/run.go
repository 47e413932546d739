package wire

import (
	"context"
	"fmt"
	"math"
	"time"

	"rodwright/cut"
	"rodwright/cut/explain"
	"rodwright/cut/panel"
	"rodwright/cut/sheet"
	"rodwright/cut/stick"
	"rodwright/cut/verify"
	"rodwright/length"
)

// Kind is one of the three kinds of problems.
type Kind string

// The kinds.
const (
	Stick Kind = "stick"
	Panel Kind = "panel"
	Sheet Kind = "sheet"
)

// File is a file that has been read.
type File struct {
	Name string
	Text []byte
}

// Options are how a problem is to be solved.
type Options struct {
	JSON    bool             // write JSON instead of a list to cut from
	Within  time.Duration    // deadline; 0 is none: the same answer every time
	Limits  cut.Limits       // of the search; without a deadline only
	Now     func() time.Time // the clock for took_ms; nil writes 0
	OneMore bool             // tell, below the list, what one more piece of each kind of stock would change
}

// Run solves the problem in a file and returns what is to be printed. An error is one of the file.
func Run(ctx context.Context, k Kind, problem File, o Options) ([]byte, error) {
	start := o.now()
	solve, p, err := solver(k, problem)
	if err != nil {
		return nil, err
	}
	var a *cut.Answer
	if o.Within > 0 {
		a, err = within(ctx, solve, pieces(p), o, start)
	} else {
		a, err = solve(ctx, o.Limits)
	}
	if err != nil {
		return nil, err
	}
	a.TookMS = float64(o.now().Sub(start).Microseconds()) / 1000
	if o.JSON {
		return JSON(a, p.Unit(), k != Stick)
	}
	text := Text(p, a, Telling{Money: hundredths})
	if o.OneMore {
		more, err := explain.OneMore(ctx, p, a, o.Limits)
		if err != nil {
			return nil, err
		}
		text += OneMoreText(p, more)
	}
	return []byte(text), nil
}

// OneMoreText tells what one more piece of each kind of stock would change, a line each.
func OneMoreText(p cut.Problem, more []explain.Change) string {
	show := rounded(p.Unit())
	s := SpeechOf(p, Telling{Show: show, Money: hundredths})
	w := &writer{show: show}
	names := make([]string, len(more))
	for i, c := range more {
		names[i] = c.Stock
	}
	for _, says := range s.OneMores(more, names) {
		w.line("%s", says)
	}
	return w.String()
}

func (o Options) now() time.Time {
	if o.Now == nil {
		return time.Time{}
	}
	return o.Now()
}

// solving is one search with the given limits.
type solving func(ctx context.Context, l cut.Limits) (*cut.Answer, error)

// solver reads the problem and returns how to solve it.
func solver(k Kind, f File) (solving, cut.Problem, error) {
	switch k {
	case Stick:
		p, err := ReadStick(f.Name, f.Text)
		return func(ctx context.Context, l cut.Limits) (*cut.Answer, error) { return stick.Solve(ctx, p, l) }, cut.Problem{Sticks: p}, err
	case Panel:
		p, err := ReadPanel(f.Name, f.Text)
		return func(ctx context.Context, l cut.Limits) (*cut.Answer, error) { return panel.Solve(ctx, p, l) }, cut.Problem{Boards: p}, err
	case Sheet:
		p, err := ReadSheet(f.Name, f.Text)
		return func(ctx context.Context, l cut.Limits) (*cut.Answer, error) { return sheet.Solve(ctx, p, l) }, cut.Problem{Sheets: p}, err
	}
	return nil, cut.Problem{}, fmt.Errorf("%q is not one of stick, panel, sheet", k)
}

// Verify checks a layout against its problem and returns every fault; none when it is right. An error is
// one of the files.
func Verify(k Kind, problem, layout File) ([]verify.Fault, error) {
	_, p, err := solver(k, problem)
	if err != nil {
		return nil, err
	}
	a, gap, err := readLayout(layout, p.Unit(), k != Stick)
	if err != nil {
		return nil, err
	}
	faults := verify.Layout(p, a)
	if gap != nil && math.Abs(*gap-a.Gap()) > gapRounding {
		faults = append(faults, verify.Fault{Rule: verify.BoundRule, Text: fmt.Sprintf("the gap of cost and bound is %v, said is %v", a.Gap(), *gap)})
	}
	return faults, nil
}

// gapRounding is more than a gap changes when it is written down.
const gapRounding = 1e-8

// ReadLayout reads a layout as JSON writes it, and brings its waste into millimetres or square millimetres; area says that
// it is one of boards or sheets.
func ReadLayout(f File, u length.Unit, area bool) (*cut.Answer, error) {
	a, _, err := readLayout(f, u, area)
	return a, err
}

// readLayout reads a layout and the gap that it says, nil where it says none.
func readLayout(f File, u length.Unit, area bool) (a *cut.Answer, gap *float64, err error) {
	a, gap, err = readAnswer(f.Name, f.Text, u)
	if err != nil {
		return nil, nil, err
	}
	for _, f := range wasteFields(&a.Waste) {
		*f.to *= perUnit(u, area)
	}
	return a, gap, nil
}
