package answer

import (
	"fmt"
	"strings"
)

// Error says why a question can't be answered: the key it is about, what it got and what would be right.
type Error struct {
	Topic string
	Key   string // empty where the trouble is not one key's
	Why   string
	Hint  string // what to write instead; empty where Why says it
	cause error
}

// Error gives topic, key and reason: movement: width: got "20": the unit is missing …
func (e *Error) Error() string {
	parts := make([]string, 0, 3)
	for _, s := range []string{e.Topic, e.Key, e.Why} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	return strings.Join(parts, ": ")
}

// Unwrap returns the error that the trade answered with, if there is one.
func (e *Error) Unwrap() error { return e.cause }

// unknownTopic is the error for a topic that does not exist.
func unknownTopic(name string, near []string) *Error {
	e := &Error{Why: fmt.Sprintf("there is no topic %q", name), Hint: "rodwright answer lists the topics"}
	if len(near) > 0 {
		e.Hint = "near: " + strings.Join(near, ", ") + "; " + e.Hint
	}
	return e
}
