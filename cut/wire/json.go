package wire

import (
	"encoding/json"
	"fmt"
	"strings"
	"unicode/utf8"
)

// form is the kind of a JSON value.
type form uint8

const (
	null form = iota
	boolean
	number
	text
	array
	object
)

func (f form) String() string {
	return [...]string{"null", "true or false", "a number", "a text", "a list", "an object"}[f]
}

// value is a JSON value that knows its place.
type value struct {
	form   form
	at     int    // byte offset
	raw    string // of a number or boolean as written; of a text, its content
	list   []*value
	fields []field
}

type field struct {
	key string
	at  int
	v   *value
}

// scanner reads JSON. encoding/json tells places only of some errors and keeps none.
type scanner struct {
	src string
	pos int
}

// syntaxError is a place where JSON ends to be JSON.
type syntaxError struct {
	at  int
	why string
}

func (e *syntaxError) Error() string { return e.why }

func (s *scanner) fail(format string, args ...any) error {
	return &syntaxError{s.pos, fmt.Sprintf(format, args...)}
}

// maxDepth bounds nesting; a problem needs five levels.
const maxDepth = 32

// parse reads one JSON value that is the whole text.
func parse(src string) (*value, error) {
	if !utf8.ValidString(src) {
		return nil, &syntaxError{firstInvalid(src), "this is no UTF-8 text"}
	}
	s := &scanner{src: strings.TrimPrefix(src, "\ufeff")}
	s.pos = 0
	v, err := s.value(0)
	if err != nil {
		return nil, err
	}
	if s.space(); s.pos < len(s.src) {
		return nil, s.fail("more text behind the end of the object")
	}
	return v, nil
}

func firstInvalid(src string) int {
	for i, r := range src {
		if r == utf8.RuneError {
			if _, n := utf8.DecodeRuneInString(src[i:]); n == 1 {
				return i
			}
		}
	}
	return len(src)
}

func (s *scanner) space() {
	for s.pos < len(s.src) && strings.IndexByte(" \t\r\n", s.src[s.pos]) >= 0 {
		s.pos++
	}
}

func (s *scanner) value(depth int) (*value, error) {
	s.space()
	if depth > maxDepth {
		return nil, s.fail("nested deeper than %d levels", maxDepth)
	}
	if s.pos >= len(s.src) {
		return nil, s.fail("the text ends where a value is missing")
	}
	switch c := s.src[s.pos]; {
	case c == '{':
		return s.object(depth)
	case c == '[':
		return s.array(depth)
	case c == '"':
		at := s.pos
		t, err := s.text()
		return &value{form: text, at: at, raw: t}, err
	case c == '-' || c >= '0' && c <= '9':
		return s.number()
	}
	for _, word := range []string{"null", "true", "false"} {
		if strings.HasPrefix(s.src[s.pos:], word) {
			v := &value{form: boolean, at: s.pos, raw: word}
			if word == "null" {
				v.form = null
			}
			s.pos += len(word)
			return v, nil
		}
	}
	r, _ := utf8.DecodeRuneInString(s.src[s.pos:])
	return nil, s.fail("unexpected %q where a value is missing", r)
}

func (s *scanner) object(depth int) (*value, error) {
	v := &value{form: object, at: s.pos}
	s.pos++
	for first := true; ; first = false {
		s.space()
		if s.take('}') {
			return v, nil
		}
		if !first {
			if !s.take(',') {
				return nil, s.fail("a comma or } is missing")
			}
			s.space()
		}
		f := field{at: s.pos}
		if s.pos >= len(s.src) || s.src[s.pos] != '"' {
			return nil, s.fail("a key in quotes is missing")
		}
		var err error
		if f.key, err = s.text(); err != nil {
			return nil, err
		}
		if s.space(); !s.take(':') {
			return nil, s.fail("a colon is missing behind the key %q", f.key)
		}
		if f.v, err = s.value(depth + 1); err != nil {
			return nil, err
		}
		v.fields = append(v.fields, f)
	}
}

func (s *scanner) array(depth int) (*value, error) {
	v := &value{form: array, at: s.pos}
	s.pos++
	for first := true; ; first = false {
		s.space()
		if s.take(']') {
			return v, nil
		}
		if !first && !s.take(',') {
			return nil, s.fail("a comma or ] is missing")
		}
		e, err := s.value(depth + 1)
		if err != nil {
			return nil, err
		}
		v.list = append(v.list, e)
	}
}

func (s *scanner) take(c byte) bool {
	if s.pos < len(s.src) && s.src[s.pos] == c {
		s.pos++
		return true
	}
	return false
}

// text reads a quoted text.
func (s *scanner) text() (string, error) {
	from := s.pos
	for s.pos++; s.pos < len(s.src); s.pos++ {
		switch c := s.src[s.pos]; {
		case c == '\\':
			s.pos++
		case c == '"':
			s.pos++
			var out string
			if err := json.Unmarshal([]byte(s.src[from:s.pos]), &out); err != nil {
				s.pos = from
				return "", s.fail("a text with an escape that can't be read")
			}
			return out, nil
		case c < ' ':
			return "", s.fail("a line ends within a text")
		}
	}
	s.pos = from
	return "", s.fail("the closing quote of this text is missing")
}

// number reads a number and checks that it is one of JSON.
func (s *scanner) number() (*value, error) {
	from := s.pos
	for s.pos < len(s.src) && strings.IndexByte("+-.eE0123456789", s.src[s.pos]) >= 0 {
		s.pos++
	}
	v := &value{form: number, at: from, raw: s.src[from:s.pos]}
	if !json.Valid([]byte(v.raw)) {
		s.pos = from
		return nil, s.fail("%s is not a number", v.raw)
	}
	return v, nil
}
