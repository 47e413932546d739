package piece

import "fmt"

// Error is one thing wrong in a piece document, with its place and what would be right.
type Error struct {
	File    string
	Pos     Pos
	Message string // what is wrong, in words, naming the text it is about
	Want    string // what to write or do instead; may be empty
}

// Error gives file:line:column, what is wrong and what would be right.
func (e *Error) Error() string {
	text := fmt.Sprintf("%d:%d: %s", max(e.Pos.Line, 1), max(e.Pos.Column, 1), e.Message)
	if e.File != "" {
		text = e.File + ":" + text
	}
	if e.Want != "" {
		text += "; " + e.Want
	}
	return text
}
