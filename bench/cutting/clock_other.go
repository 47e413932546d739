//go:build !unix

package main

import "time"

// processorClock is a clock that goes while this program works; this system is not asked for one.
func processorClock() (func() time.Time, bool) { return nil, false }
