package main

import (
	"fmt"

	"rodwright/build"
	"rodwright/finding"
	"rodwright/internal/store/beside"
	"rodwright/journal"
	"rodwright/piece"
	"rodwright/shop"
)

type deriveVerb struct {
	Piece string `arg:"" help:"The piece document, NAME.piece.yaml, or - for standard input."`
	JSON  bool   `name:"json" help:"One JSON object for programs."`
	Drawn bool   `help:"As it began: the journal beside it is left out."`
	Out   string `short:"o" placeholder:"FILE" help:"File to write; without it the answer is printed."`

	OneMore bool `help:"Tell for people also what one more board, stick or sheet of each kind would change; takes a while."`
}

// Help shows an example.
func (deriveVerb) Help() string {
	return "Example: rodwright derive examples/low-bench.piece.yaml" + withJournal
}

// Run derives everything from one document and prints it.
func (v *deriveVerb) Run(m *Main) error {
	b, err := m.derive(v.Piece, v.Drawn)
	if err != nil {
		return err
	}
	text, err := b.JSON()
	if !v.JSON {
		text, err = printBuild(b, v.OneMore)
	}
	if err != nil {
		return err
	}
	if err := m.write(v.Out, text, true); err != nil {
		return err
	}
	return failing(b.Findings)
}

type checkVerb struct {
	Piece string `arg:"" help:"The piece document, NAME.piece.yaml, or - for standard input."`
	JSON  bool   `name:"json" help:"One JSON object for programs."`
	Drawn bool   `help:"As it began: the journal beside it is left out."`
	All   bool   `help:"What stands in full too, not a line each."`
	Why   bool   `help:"Reasons with the numbers that went into them and their sources."`
}

// Help shows an example.
func (checkVerb) Help() string {
	return "Example: rodwright check --why examples/stepped-stand.piece.yaml" + withJournal
}

// Run prints the findings of one document.
func (v *checkVerb) Run(m *Main) error {
	b, err := m.derive(v.Piece, v.Drawn)
	if err != nil {
		return err
	}
	text := printChecks(b, telling{v.All, v.Why})
	if v.JSON {
		if text, err = b.FindingsJSON(); err != nil {
			return err
		}
	}
	if _, err := m.Stdout.Write(text); err != nil {
		return err
	}
	return failing(b.Findings)
}

// withJournal says of a verb what it reads beside a piece.
const withJournal = "\n\nThe file is the beginning of the piece; what came after is in the journal NAME.journal.jsonl beside it, and is taken into account unless --drawn says otherwise. Standard input has no journal."

// derive reads one document with its journal, unless only the drawing is wanted, and derives everything from both with
// the built-in sample shop.
func (m *Main) derive(name string, drawn bool) (*build.Build, error) {
	text, err := m.read(name)
	if err != nil {
		return nil, err
	}
	in := build.Input{Shop: shop.Sample()}
	if !drawn && name != "-" {
		if text, in.Record, err = replayed(name, text); err != nil {
			return nil, refused(err)
		}
	}
	if in.Document, err = piece.Read(shownName(name), text); err != nil {
		return nil, badInput(err)
	}
	b, err := build.Derive(in, nil)
	if err != nil {
		return nil, badInput(err)
	}
	return b, nil
}

// replayed returns a document as it stands after the journal beside it, and what that says was done.
func replayed(name string, text []byte) ([]byte, *journal.Record, error) {
	es, err := beside.Load(beside.Name(name))
	if err != nil || len(es) == 0 {
		return text, nil, err
	}
	if text, err = journal.Replay(text, es); err != nil {
		return nil, nil, fmt.Errorf("%s: %w", beside.Name(name), err)
	}
	return text, journal.Fold(es), nil
}

// failing is the exit of a run in which a finding fails.
func failing(fs []finding.Finding) error {
	if finding.Worst(fs) == finding.Fails {
		return &exit{code: exitFails}
	}
	return nil
}
