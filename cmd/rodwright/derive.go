package main

import (
	"rodwright/build"
	"rodwright/finding"
	"rodwright/piece"
	"rodwright/shop"
)

type deriveVerb struct {
	Piece string `arg:"" help:"The piece document, NAME.piece.yaml, or - for standard input."`
	JSON  bool   `name:"json" help:"One JSON object for programs."`
	Out   string `short:"o" placeholder:"FILE" help:"File to write; without it the answer is printed."`
}

// Help shows an example.
func (deriveVerb) Help() string {
	return "Example: rodwright derive examples/low-bench.piece.yaml"
}

// Run derives everything from one document and prints it.
func (v *deriveVerb) Run(m *Main) error {
	b, err := m.derive(v.Piece)
	if err != nil {
		return err
	}
	text := printBuild(b)
	if v.JSON {
		if text, err = b.JSON(); err != nil {
			return err
		}
	}
	if err := m.write(v.Out, text, true); err != nil {
		return err
	}
	return failing(b.Findings)
}

type checkVerb struct {
	Piece string `arg:"" help:"The piece document, NAME.piece.yaml, or - for standard input."`
	JSON  bool   `name:"json" help:"One JSON object for programs."`
	All   bool   `help:"Also what stands; without it only what is tight, fails or is not known."`
}

// Help shows an example.
func (checkVerb) Help() string {
	return "Example: rodwright check --all examples/stepped-stand.piece.yaml"
}

// Run prints the findings of one document.
func (v *checkVerb) Run(m *Main) error {
	b, err := m.derive(v.Piece)
	if err != nil {
		return err
	}
	text := printChecks(b, v.All)
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

// derive reads one document and derives everything from it with the built-in sample shop.
func (m *Main) derive(name string) (*build.Build, error) {
	text, err := m.read(name)
	if err != nil {
		return nil, err
	}
	doc, err := piece.Read(shownName(name), text)
	if err != nil {
		return nil, badInput(err)
	}
	b, err := build.Derive(build.Input{Document: doc, Shop: shop.Sample()}, nil)
	if err != nil {
		return nil, badInput(err)
	}
	return b, nil
}

// failing is the exit of a run in which a finding fails.
func failing(fs []finding.Finding) error {
	if finding.Worst(fs) == finding.Fails {
		return &exit{code: exitFails}
	}
	return nil
}
