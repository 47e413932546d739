package layout

import (
	"context"
	"fmt"

	"rodwright/cut"
	"rodwright/cut/panel"
	"rodwright/cut/sawing"
	"rodwright/cut/sheet"
	"rodwright/cut/stick"
)

// Solve lays out the task. The error is that of a problem that can't be.
func (t Task) Solve(ctx context.Context, l cut.Limits) (Layout, error) {
	var a *cut.Answer
	var err error
	switch t.Kind {
	case OfSticks:
		a, err = stick.Solve(ctx, t.Sticks, l)
	case OfBoards:
		a, err = panel.Solve(ctx, t.Boards, l)
	case OfSheets:
		a, err = sheet.Solve(ctx, t.Sheets, l)
	}
	if err != nil {
		return Layout{}, fmt.Errorf("lay out %s: %w", t.Material, err)
	}
	return t.laid(a), nil
}

// Accept takes an answer that was found before, if the verifier finds no fault in it. Its cuts are told anew from where
// the parts lie: what it says of them, or does not, changes nothing.
func (t Task) Accept(a *cut.Answer) (Layout, error) {
	told := *a
	told.Cuts = nil
	if faults := t.Faults(&told); len(faults) > 0 {
		return Layout{}, fmt.Errorf("the layout of %s does not fit its parts: %w", t.Material, faults[0])
	}
	return t.laid(sawing.Finish(t.Problem(), &told)), nil
}

// laid names what the answer opens.
func (t Task) laid(a *cut.Answer) Layout {
	byTag := map[string]Stock{}
	for _, s := range t.Stock {
		byTag[s.Tag] = s
	}
	l := Layout{Task: t, Answer: a}
	for _, u := range a.Used {
		l.Opened = append(l.Opened, byTag[u.Stock])
	}
	return l
}
