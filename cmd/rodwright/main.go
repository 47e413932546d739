// Command rodwright holds a piece of furniture once and derives everything from it: parts, checks, what to
// buy, how to cut it, steps, time and price.
//
// Each verb is a file of its own. Exit codes: 0 done, 1 a finding fails, 2 the input is wrong, 3 it could
// not be done.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"

	"github.com/alecthomas/kong"
)

// version is set when the binary is linked for release.
var version = "unreleased"

// The exit codes of every verb.
const (
	exitDone  = 0
	exitFails = 1
	exitInput = 2
	exitOther = 3
)

// Main is the whole command line; it can be run in a test without a process.
type Main struct {
	Stdin          io.Reader
	Stdout, Stderr io.Writer
}

func main() {
	os.Exit((&Main{os.Stdin, os.Stdout, os.Stderr}).Run(os.Args[1:]))
}

// verbs are the verbs and their flags, in the order that help lists them.
type verbs struct {
	New     newVerb     `cmd:"" help:"Write a starter piece to begin from."`
	Derive  deriveVerb  `cmd:"" help:"Parts, checks, what to buy, layouts, steps, time and price of a piece."`
	Check   checkVerb   `cmd:"" help:"What stands, what is tight and what fails, each with the smallest mend."`
	Book    bookVerb    `cmd:"" help:"The plan of a piece for a stranger who builds it, as PDF or HTML."`
	Journal journalVerb `cmd:"" help:"What was bought, made, measured and changed since the piece began; what a change does before it is taken."`
	Answer  answerVerb  `cmd:"" passthrough:"all" help:"One formula of the trade, answered at once, without a piece."`
	Layout  layoutVerb  `cmd:"" help:"Look longer for a cheaper way to cut the stock of a piece, and accept it."`
	Cut     cutVerb     `cmd:"" help:"Lay out sticks, glued-up panels or sheets from a file of plain numbers."`
	Serve   serveVerb   `cmd:"" help:"Serve a shop to the browser of this machine."`
	Demo    demoVerb    `cmd:"" help:"A shop with invented pieces, in the browser of this machine."`
	Version versionVerb `cmd:"" help:"The version of this program."`
}

// Run runs one command line and returns its exit code.
func (m *Main) Run(args []string) int {
	var v verbs
	code := -1
	parser, err := kong.New(&v,
		kong.Name("rodwright"),
		kong.Description("Hold the piece once; derive everything from it. Begin with: rodwright new stepped-stand -o stand.piece.yaml"),
		kong.UsageOnError(), kong.ConfigureHelp(kong.HelpOptions{Compact: true}),
		kong.Writers(m.Stdout, m.Stderr), kong.Exit(func(c int) { code = c }),
		kong.Bind(m), kong.Vars{"port": strconv.Itoa(ownPort)},
	)
	if err != nil {
		fmt.Fprintln(m.Stderr, "error:", err)
		return exitOther
	}
	if len(args) == 0 {
		args = []string{"--help"}
	}
	ctx, err := parser.Parse(args)
	if code >= 0 { // help was asked for and printed
		return code
	}
	if err != nil {
		fmt.Fprintln(m.Stderr, "error:", err)
		fmt.Fprintln(m.Stderr, "hint: rodwright --help lists the verbs, rodwright VERB --help shows one with an example")
		return exitInput
	}
	return m.report(ctx.Run())
}

// exit is an error that asks for a given exit code. Its cause, if any, is shown to the person.
type exit struct {
	code  int
	cause error
}

func (e *exit) Error() string {
	if e.cause == nil {
		return ""
	}
	return e.cause.Error()
}

func (e *exit) Unwrap() error { return e.cause }

// badInput marks an error as the fault of what was read.
func badInput(err error) error { return &exit{exitInput, err} }

// report prints an error and returns the exit code that it asks for.
func (m *Main) report(err error) int {
	if err == nil {
		return exitDone
	}
	code := exitOther
	var e *exit
	if errors.As(err, &e) {
		code = e.code
	}
	if text := err.Error(); text != "" {
		fmt.Fprintln(m.Stderr, "error:", text)
	}
	return code
}
