package markup

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

// Replace returns text with the scalar node n, which was parsed from it, holding value instead. Only the
// bytes of that one scalar change. Value is written plainly where it can be, else in double quotes, and the
// result is read again before it is returned: it has the same tree with this one scalar changed. A node
// that is no scalar, or that runs over several lines, is an *[Error].
func Replace(text []byte, n *Node, value string) ([]byte, error) {
	if n.Kind != Scalar || n.Block || n.written == "" {
		return nil, &Error{Pos: n.Pos, Message: "only a single value on one line is replaced in place, here stands " + describe(n), Want: "edit the text itself"}
	}
	start, ok := byteOffset(text, n.Pos)
	if !ok || !strings.HasPrefix(string(text[start:]), n.written) {
		return nil, &Error{Pos: n.Pos, Message: "the text is no longer the one that was read", Want: "read it again"}
	}
	candidates, err := write(value, n)
	if err != nil {
		return nil, err
	}
	before, err := Parse(text)
	if err != nil {
		return nil, err
	}
	for _, written := range candidates {
		out := slices.Concat(text[:start], []byte(written), text[start+len(n.written):])
		if after, err := Parse(out); err == nil && sameBut(before, after, n.Pos, value) {
			return out, nil
		}
	}
	return nil, &Error{Pos: n.Pos, Message: "the value can't be replaced here without changing others", Want: "edit the text itself"}
}

// sameBut reports whether two trees are alike but for the scalar that stands at a place in the first, which
// has the given text in the second.
func sameBut(a, b *Node, at Pos, text string) bool {
	if a.Kind != b.Kind || len(a.Entries) != len(b.Entries) || len(a.Items) != len(b.Items) {
		return false
	}
	if a.Kind == Scalar {
		return a.Pos == at && b.Text == text || a.Pos != at && a.Text == b.Text
	}
	for i := range a.Entries {
		if a.Entries[i].Key != b.Entries[i].Key || !sameBut(a.Entries[i].Value, b.Entries[i].Value, at, text) {
			return false
		}
	}
	for i := range a.Items {
		if !sameBut(a.Items[i], b.Items[i], at, text) {
			return false
		}
	}
	return true
}

func describe(n *Node) string {
	if n.Block {
		return "a value of several lines"
	}
	return n.Kind.String()
}

// write returns the ways value can stand in the text, the best first.
func write(value string, n *Node) ([]string, error) {
	for _, r := range value {
		if r < ' ' || r == 0x7F || r == utf8.RuneError {
			return nil, &Error{Pos: n.Pos, Message: fmt.Sprintf("the new value has the character %U", r), Want: "write one line of plain text"}
		}
	}
	inQuotes := `"` + escapes.Replace(value) + `"`
	if plain(value, n.flow) {
		return []string{value, inQuotes}, nil
	}
	return []string{inQuotes}, nil
}

// escapes are what a value in double quotes can't hold as it is.
var escapes = strings.NewReplacer(`\`, `\\`, `"`, `\"`)

// plain reports whether a value can stand without quotes and be read back as it is.
func plain(value string, flow bool) bool {
	switch {
	case value == "" || strings.TrimSpace(value) != value:
		return false
	case strings.Contains(value, ": ") || strings.HasSuffix(value, ":") || strings.Contains(value, " #"):
		return false
	case strings.ContainsAny(value, "\\\t"):
		return false
	case flow && strings.ContainsAny(value, ",[]{}:"):
		return false
	case strings.ContainsAny(value[:1], "!&*?|>@`%#'\"[]{},:~<-="):
		return signed(value)
	}
	return true
}

// signed reports whether value is a negative number: the one plain value that begins with a mark.
func signed(value string) bool {
	return len(value) > 1 && value[0] == '-' && (value[1] >= '0' && value[1] <= '9' || value[1] == '.')
}

// byteOffset turns a place into a byte of text.
func byteOffset(text []byte, p Pos) (int, bool) {
	rest := string(text)
	at := 0
	if strings.HasPrefix(rest, byteOrderMark) {
		at = len(byteOrderMark)
	}
	for range p.Line - 1 {
		i := strings.IndexByte(rest[at:], '\n')
		if i < 0 {
			return 0, false
		}
		at += i + 1
	}
	for range p.Column - 1 {
		_, size := utf8.DecodeRuneInString(rest[at:])
		if size == 0 {
			return 0, false
		}
		at += size
	}
	return at, true
}
