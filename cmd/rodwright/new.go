package main

import (
	"fmt"
	"strings"

	"rodwright/piece"
)

type newVerb struct {
	Starter string `arg:"" optional:"" help:"Which starter; without one they are listed."`
	Out     string `short:"o" placeholder:"FILE" help:"File to write, NAME.piece.yaml; an existing one is never replaced. Without it the starter is printed."`
}

// Help shows an example.
func (newVerb) Help() string {
	return "Example: rodwright new low-bench -o bench.piece.yaml"
}

// Run writes a starter, or lists the starters.
func (v *newVerb) Run(m *Main) error {
	if v.Starter == "" {
		for _, s := range piece.Starters() {
			fmt.Fprintln(m.Stdout, s)
		}
		return nil
	}
	text, err := piece.Starter(v.Starter)
	if err != nil {
		return badInput(err)
	}
	if v.Out != "" && v.Out != "-" && !strings.HasSuffix(v.Out, ".piece.yaml") {
		return badInput(fmt.Errorf("%s: a piece is kept in a file named NAME.piece.yaml", v.Out))
	}
	if err := m.write(v.Out, text, false); err != nil {
		return err
	}
	if v.Out != "" && v.Out != "-" {
		fmt.Fprintf(m.Stderr, "wrote %s; next: rodwright derive %s\n", v.Out, v.Out)
	}
	return nil
}
