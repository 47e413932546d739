package wire

import (
	"context"
	"fmt"
	"time"

	"rodwright/cut"
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
	JSON   bool             // write JSON instead of a list to cut from
	Within time.Duration    // deadline; 0 is none: the same answer every time
	Limits cut.Limits       // of the search; without a deadline only
	Now    func() time.Time // the clock for took_ms; nil writes 0
}

// Run solves the problem in a file and returns what is to be printed. An error is one of the file.
func Run(ctx context.Context, k Kind, problem File, o Options) ([]byte, error) {
	start := o.now()
	solve, unit, err := solver(k, problem)
	if err != nil {
		return nil, err
	}
	var a *cut.Answer
	if o.Within > 0 {
		a, err = within(ctx, solve, o)
	} else {
		a, err = solve(ctx, o.Limits)
	}
	if err != nil {
		return nil, err
	}
	a.TookMS = float64(o.now().Sub(start).Microseconds()) / 1000
	if o.JSON {
		return JSON(a, unit, k != Stick)
	}
	return []byte(Text(a, unit, k)), nil
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
func solver(k Kind, f File) (solving, length.Unit, error) {
	switch k {
	case Stick:
		p, err := ReadStick(f.Name, f.Text)
		return func(ctx context.Context, l cut.Limits) (*cut.Answer, error) { return stick.Solve(ctx, p, l) }, p.Unit, err
	case Panel:
		p, err := ReadPanel(f.Name, f.Text)
		return func(ctx context.Context, l cut.Limits) (*cut.Answer, error) { return panel.Solve(ctx, p, l) }, p.Unit, err
	case Sheet:
		p, err := ReadSheet(f.Name, f.Text)
		return func(ctx context.Context, l cut.Limits) (*cut.Answer, error) { return sheet.Solve(ctx, p, l) }, p.Unit, err
	}
	return nil, 0, fmt.Errorf("%q is not one of stick, panel, sheet", k)
}

// Verify checks a layout against its problem and returns every fault; none when it is right. An error is
// one of the files.
func Verify(k Kind, problem, layout File) ([]verify.Fault, error) {
	switch k {
	case Stick:
		p, err := ReadStick(problem.Name, problem.Text)
		if err != nil {
			return nil, err
		}
		a, err := readLayout(layout, p.Unit, false)
		if err != nil {
			return nil, err
		}
		return verify.Stick(p, a), nil
	case Panel:
		p, err := ReadPanel(problem.Name, problem.Text)
		if err != nil {
			return nil, err
		}
		a, err := readLayout(layout, p.Unit, true)
		if err != nil {
			return nil, err
		}
		return verify.Panel(p, a), nil
	case Sheet:
		p, err := ReadSheet(problem.Name, problem.Text)
		if err != nil {
			return nil, err
		}
		a, err := readLayout(layout, p.Unit, true)
		if err != nil {
			return nil, err
		}
		return verify.Sheet(p, a), nil
	}
	return nil, fmt.Errorf("%q is not one of stick, panel, sheet", k)
}

// readLayout reads a layout and brings its waste into millimetres or square millimetres.
func readLayout(f File, u length.Unit, area bool) (*cut.Answer, error) {
	a, err := ReadAnswer(f.Name, f.Text, u)
	if err != nil {
		return nil, err
	}
	for _, f := range wasteFields(&a.Waste) {
		*f.to *= perUnit(u, area)
	}
	return a, nil
}
