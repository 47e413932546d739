package main

import (
	"fmt"
	"runtime/debug"
)

type versionVerb struct{}

// Run prints the version: that of the release, or of the sources it was built from.
func (versionVerb) Run(m *Main) error {
	v := version
	if info, ok := debug.ReadBuildInfo(); ok && v == "unreleased" {
		for _, s := range info.Settings {
			if s.Key == "vcs.revision" {
				v += " " + s.Value[:min(12, len(s.Value))]
			}
		}
	}
	_, err := fmt.Fprintln(m.Stdout, "rodwright", v)
	return err
}
