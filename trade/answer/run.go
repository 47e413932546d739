package answer

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
)

// The exit codes of [Run].
const (
	Done     = 0
	BadInput = 2 // a topic, key or value that can't be used
	Undone   = 3 // the answer could not be written
)

// Run is the verb answer of the command line: args are the words behind it. The answer goes to stdout,
// an error and its hint to stderr, and then nothing to stdout. It returns the exit code.
func Run(args []string, stdout, stderr io.Writer) int {
	err := run(args, stdout)
	if err == nil {
		return Done
	}
	fmt.Fprintf(stderr, "error: %v\n", err)
	var e *Error
	if !errors.As(err, &e) {
		return Undone
	}
	if e.Hint != "" {
		fmt.Fprintf(stderr, "hint: %s\n", e.Hint)
	}
	return BadInput
}

// words are the parts of a call.
type words struct {
	topic      string
	pairs      []string
	json, help bool
}

func run(args []string, stdout io.Writer) error {
	call, err := parse(args)
	if err != nil {
		return err
	}
	if call.topic == "" {
		if call.json {
			return writeJSON(stdout, Topics())
		}
		return WriteList(stdout)
	}
	t, err := Lookup(call.topic)
	switch {
	case err != nil:
		return err
	case call.help && call.json:
		return writeJSON(stdout, t)
	case call.help:
		return t.WriteHelp(stdout)
	}
	given, err := Pairs(call.pairs)
	if err != nil {
		return err
	}
	a, err := Ask(call.topic, given)
	if err != nil {
		return err
	}
	if call.json {
		return writeJSON(stdout, a)
	}
	return a.WriteText(stdout)
}

// parse parts the words of the command line into flags, the topic and its keys.
func parse(args []string) (words, error) {
	var w words
	for _, a := range args {
		switch {
		case a == "--json" || a == "-json":
			w.json = true
		case a == "--help" || a == "-h" || a == "-help":
			w.help = true
		case strings.HasPrefix(a, "-"):
			return w, &Error{Why: fmt.Sprintf("unknown flag %q", a), Hint: "the flags are --json and --help"}
		case w.topic == "" && !strings.Contains(a, "="):
			w.topic = a
		default:
			w.pairs = append(w.pairs, a)
		}
	}
	if w.topic == "" && len(w.pairs) > 0 {
		return w, &Error{Why: fmt.Sprintf("no topic is named before %q", w.pairs[0]), Hint: "rodwright answer lists the topics"}
	}
	return w, nil
}

// writeJSON writes one object, indented, without escaping what is no danger outside a web page.
func writeJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}
