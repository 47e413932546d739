package main

import "rodwright/trade/answer"

type answerVerb struct {
	Words []string `arg:"" optional:"" help:"TOPIC key=value …; without words the topics are listed."`
}

// Run answers one question, or lists what can be asked.
func (v *answerVerb) Run(m *Main) error {
	if code := answer.Run(v.Words, m.Stdout, m.Stderr); code != exitDone {
		return &exit{code: code}
	}
	return nil
}
