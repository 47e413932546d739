package main

import (
	"context"
	"fmt"
	"time"

	"rodwright/cut/wire"
	"rodwright/layout"
)

type cutVerb struct {
	Kind    string        `arg:"" enum:"stick,panel,sheet" help:"stick, panel or sheet."`
	File    string        `arg:"" help:"The problem in JSON, or - for standard input."`
	JSON    bool          `name:"json" help:"One JSON object for programs."`
	Within  time.Duration `help:"Deadline, for example 200ms; without it the answer is the same every time."`
	OneMore bool          `help:"Tell below the list also what one more piece of each kind of stock would change."`
	Verify  string        `placeholder:"LAYOUT" help:"Check this layout against the problem instead: exit 0 valid, 1 not."`
}

// Help shows an example.
func (cutVerb) Help() string {
	return `Example: echo '{"unit":"mm","kerf":2,"trim":5,"useful":300,"stock":[{"tag":"S1","length":6400,"count":null,"price":40}],` +
		`"parts":[{"tag":"C1","length":317.6,"count":4}]}' | rodwright cut stick -

A part of a stick may have "bought", what one costs ready made, and "making", what the work on one that is cut costs; the
answer then lists what is bought.`
}

// Run lays a problem out, or verifies a layout against its problem.
func (v *cutVerb) Run(m *Main) error {
	if v.Within < 0 {
		return badInput(fmt.Errorf("--within %v: a deadline lies ahead; write for example 200ms", v.Within))
	}
	text, err := m.read(v.File)
	if err != nil {
		return err
	}
	problem := wire.File{Name: shownName(v.File), Text: text}
	if v.Verify != "" {
		return v.verify(m, problem)
	}
	out, err := wire.Run(context.Background(), wire.Kind(v.Kind), problem, wire.Options{JSON: v.JSON, Within: v.Within, Now: time.Now, OneMore: v.OneMore})
	if err != nil {
		return badInput(err)
	}
	if !v.JSON {
		out = append(out, beware(layout.Kind(v.Kind), "")...)
	}
	_, err = m.Stdout.Write(out)
	return err
}

func (v *cutVerb) verify(m *Main, problem wire.File) error {
	text, err := m.read(v.Verify)
	if err != nil {
		return err
	}
	faults, err := wire.Verify(wire.Kind(v.Kind), problem, wire.File{Name: shownName(v.Verify), Text: text})
	if err != nil {
		return badInput(err)
	}
	if len(faults) == 0 {
		_, err := fmt.Fprintln(m.Stdout, "valid: every part once, inside its stock, nothing overlaps, cost and bound as stated")
		return err
	}
	for _, f := range faults {
		fmt.Fprintln(m.Stdout, f)
	}
	return &exit{code: exitFails}
}

// shownName is what errors call a file.
func shownName(file string) string {
	if file == "-" {
		return "standard input"
	}
	return file
}
