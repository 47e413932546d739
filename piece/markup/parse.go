package markup

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	yaml "github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
)

// Parse reads text into a tree. The root is a map, or Empty when nothing but comments is written. Errors
// are *[Error].
func Parse(text []byte) (*Node, error) {
	lines, err := check(text)
	if err != nil {
		return nil, err
	}
	file, err := parseYAML(lines.joined())
	if err != nil {
		return nil, err
	}
	b := builder{lines: lines}
	return b.document(file)
}

// parseYAML calls the library. It is written by others and reads what anybody may have typed, so a panic
// in it is turned into an error here, at the border.
func parseYAML(text string) (file *ast.File, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = &Error{Pos: Pos{1, 1}, Message: "this text is no document that can be read", Want: "begin with a starter and change it step by step"}
		}
	}()
	file, err = parser.ParseBytes([]byte(text), 0, parser.AllowDuplicateMapKey())
	var syntax *yaml.SyntaxError
	if errors.As(err, &syntax) {
		at := Pos{1, 1}
		if tk := syntax.GetToken(); tk != nil && tk.Position != nil {
			at = Pos{max(tk.Position.Line, 1), max(tk.Position.Column, 1)}
		}
		return nil, explain(syntax.GetMessage(), at)
	}
	if err != nil {
		return nil, &Error{Pos: Pos{1, 1}, Message: err.Error()}
	}
	return file, nil
}

// explanations put the library's messages into a maker's words.
var explanations = []struct{ part, message, want string }{
	{"sequence end token", "this list is not closed", "write ] at its end"},
	{"',' or ']' must be specified", "this list is not closed", "write ] at its end, and a comma between its values"},
	{"',' or '}' must be specified", "the braces before this are not closed", "write } at their end, and a comma between their entries"},
	{"could not find flow map", "these braces are not closed", "write } at their end, and a comma between their entries"},
	{"mapping value is not allowed", "a second colon in one entry, or an indent that fits no entry above it", "put a value that has a colon in it into quotes, and indent all entries of a section alike"},
	{"could not find end character", "this quote is not closed", "close it, or write inches as in"},
	{"tab character", "a tab in the indent", "indent with spaces"},
	{"is a reserved character", "a value can't begin with this character", "put the value into quotes"},
	{"unexpected directive", "a value can't begin with %", "put the value into quotes"},
	{"unexpected key name", "a name without its value", "write name: value"},
	{"value is not allowed in this context", "text behind a value that is closed already", "put the whole value into quotes, or leave the quotes out"},
}

func explain(message string, at Pos) *Error {
	for _, x := range explanations {
		if !strings.Contains(message, x.part) {
			continue
		}
		return &Error{Pos: at, Message: x.message, Want: x.want}
	}
	return &Error{Pos: at, Message: message, Want: "write name: value, and indent all entries of a section alike"}
}

// textLines is a text cut into lines, without their ends.
type textLines []string

func (l textLines) joined() string { return strings.Join(l, "\n") }

// from returns the rest of the line from a place on; ok is false when there is no such place.
func (l textLines) from(p Pos) (rest string, ok bool) {
	if p.Line < 1 || p.Line > len(l) || p.Column < 1 {
		return "", false
	}
	rest = l[p.Line-1]
	for range p.Column - 1 {
		_, size := utf8.DecodeRuneInString(rest)
		if size == 0 {
			return "", false
		}
		rest = rest[size:]
	}
	return rest, true
}

// check refuses what no document needs and cuts the text into lines. A byte order mark and the carriage
// returns of some editors are left out of the lines, so that columns count what is seen.
func check(text []byte) (textLines, error) {
	if len(text) > MaxBytes {
		return nil, &Error{Pos: Pos{1, 1}, Message: fmt.Sprintf("the document is larger than %d bytes", MaxBytes), Want: "split it into several pieces"}
	}
	lines := textLines(strings.Split(strings.TrimPrefix(string(text), byteOrderMark), "\n"))
	if len(lines) > maxLines {
		return nil, &Error{Pos: Pos{maxLines + 1, 1}, Message: fmt.Sprintf("the document has more than %d lines", maxLines), Want: "split it into several pieces"}
	}
	var c counts
	for i := range lines {
		lines[i] = strings.TrimSuffix(lines[i], "\r")
		if err := c.line(lines[i], i+1); err != nil {
			return nil, err
		}
	}
	return lines, nil
}

const byteOrderMark = "\uFEFF"

// counts are the brackets that are open and the colons so far.
type counts struct{ depth, colons int }

// line checks one line and counts on.
func (c *counts) line(line string, number int) error {
	column := 0
	for i, r := range line {
		column++
		at := Pos{number, column}
		if r == utf8.RuneError {
			if _, size := utf8.DecodeRuneInString(line[i:]); size == 1 {
				return &Error{Pos: at, Message: "this byte is not UTF-8 text", Want: "save the file as UTF-8"}
			}
		}
		switch {
		case control(r):
			return &Error{Pos: at, Message: fmt.Sprintf("the control character %U", r), Want: "leave it out"}
		case column > maxLine:
			return &Error{Pos: at, Message: fmt.Sprintf("a line longer than %d characters", maxLine), Want: "write one entry a line"}
		case r == '[' || r == '{':
			c.depth++
		case r == ']' || r == '}':
			c.depth = max(c.depth-1, 0)
		case r == ':':
			c.colons++
		}
		if c.depth > maxNested {
			return &Error{Pos: at, Message: fmt.Sprintf("more than %d brackets inside one another", maxNested), Want: "close them"}
		}
		if c.colons > maxColons {
			return &Error{Pos: at, Message: fmt.Sprintf("more than %d entries", maxColons), Want: "split it into several pieces"}
		}
	}
	return nil
}

// control reports whether r is a character that is not seen, but for the tab.
func control(r rune) bool {
	return r < ' ' && r != '\t' || r == 0x7F || r == '\uFEFF' || r == '\u0085' || r == '\u2028' || r == '\u2029'
}
