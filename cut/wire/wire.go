// Package wire reads problems of cutting and writes their answers as JSON, and runs one such file from
// beginning to end. It is the edge between text and package cut: inside, lengths are exact; outside, they
// are numbers of the file's unit, or text with fractions as a maker writes it.
//
// A problem of panels may say "recut": true. Strips may then come out of what falls off, too: the offcut ripped from the
// side of a segment is crosscut again, one segment serves panels of several lengths and grades. Without the key, or with
// false, boards are crosscut and then ripped, each segment for panels of one length, grade and thickness. The answer to
// such a problem may say "bound_of": "without recut": its bound is then true of the layouts that use nothing of what
// falls off, as if the key had not been there; without "bound_of" it is true of every layout that the problem allows.
//
// Every error names file, line and column and says what would be right. Unknown keys are errors with the
// nearest known key. Start with [ReadStick], [ReadPanel], [ReadSheet], or with [Run].
package wire

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// Error is a place in a file that can't be read, or a value that can't be.
type Error struct {
	File      string
	Line, Col int // from 1; Col in characters
	Message   string
	Want      string // what would be right; may be empty
}

// Error gives file, line, column, what is wrong and what to write.
func (e *Error) Error() string {
	s := fmt.Sprintf("%s:%d:%d: %s", e.File, e.Line, e.Col, e.Message)
	if e.Want != "" {
		s += "; write " + e.Want
	}
	return s
}

// place returns line and column of a byte offset.
func place(text string, offset int) (line, col int) {
	before := text[:min(offset, len(text))]
	line = 1 + strings.Count(before, "\n")
	return line, 1 + utf8.RuneCountInString(before[strings.LastIndexByte(before, '\n')+1:])
}
