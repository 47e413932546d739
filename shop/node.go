package shop

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"

	"rodwright/length"
	"rodwright/trade/table"
)

// Error is one thing wrong in a shop's file, with its place and what would be right.
type Error struct {
	File         string
	Line, Column int // from 1
	Message      string
	Want         string
}

// Error gives file:line:column, what is wrong and what would be right.
func (e *Error) Error() string {
	text := fmt.Sprintf("%s:%d:%d: %s", e.File, max(e.Line, 1), max(e.Column, 1), e.Message)
	if e.Want != "" {
		text += "; " + e.Want
	}
	return text
}

// field is one key of a section and what is done with its value.
type field struct {
	key  string
	into func(n ast.Node) error
}

// fault returns an error at the node's place.
func fault(n ast.Node, want, format string, args ...any) error {
	e := &Error{Message: fmt.Sprintf(format, args...), Want: want}
	if n != nil && n.GetToken() != nil && n.GetToken().Position != nil {
		e.Line, e.Column = n.GetToken().Position.Line, n.GetToken().Position.Column
	}
	return e
}

// root parses the text and returns its top node.
func root(text []byte) (ast.Node, error) {
	f, err := parser.ParseBytes(text, 0, parser.AllowDuplicateMapKey()) // section finds those, in our words
	if err != nil {
		return nil, syntax(err)
	}
	for _, d := range f.Docs {
		if d.Body != nil {
			return d.Body, nil
		}
	}
	return nil, &Error{Message: "the file is empty", Want: "begin with name: and the shop's name"}
}

// syntax turns the YAML parser's complaint into an error with its place.
func syntax(err error) error {
	e := &Error{Message: "this is not YAML: " + strings.SplitN(err.Error(), "\n", 2)[0], Want: "write key: value, one a line"}
	var s *yaml.SyntaxError
	if errors.As(err, &s) {
		e.Message = "this is not YAML: " + s.Message
		if s.Token != nil && s.Token.Position != nil {
			e.Line, e.Column = s.Token.Position.Line, s.Token.Position.Column
		}
	}
	return e
}

// mapping returns the entries of a map node.
func mapping(n ast.Node, what string) ([]*ast.MappingValueNode, error) {
	switch m := n.(type) {
	case *ast.MappingNode:
		return m.Values, nil
	case *ast.MappingValueNode:
		return []*ast.MappingValueNode{m}, nil
	}
	return nil, fault(n, "write key: value, one a line, further in than "+what, "%s must be a list of keys with values", what)
}

// section reads a map by its fields. A key that is no field, or comes twice, is an error.
func section(n ast.Node, what string, fields []field) error {
	entries, err := mapping(n, what)
	if err != nil {
		return err
	}
	seen := map[string]bool{}
	for _, e := range entries {
		key := keyText(e)
		if seen[key] {
			return fault(e.Key, "keep one of them", "%s is written twice in %s", key, what)
		}
		seen[key] = true
		i := slices.IndexFunc(fields, func(f field) bool { return f.key == key })
		if i < 0 {
			return fault(e.Key, "write one of "+strings.Join(nearKeys(key, fields), ", "), "%s has no %q", what, key)
		}
		if err := fields[i].into(e.Value); err != nil {
			return err
		}
	}
	return nil
}

func keyText(e *ast.MappingValueNode) string { return strings.TrimSpace(e.Key.GetToken().Value) }

// nearKeys returns the nearest keys of a section, or all where none is near.
func nearKeys(key string, fields []field) []string {
	var all []string
	for _, f := range fields {
		all = append(all, f.key)
	}
	if near := table.Near(key, all); len(near) > 0 {
		return near
	}
	return all
}

// each reads a list, one item after the other.
func each(what string, item func(n ast.Node) error) func(ast.Node) error {
	return func(n ast.Node) error {
		seq, ok := n.(*ast.SequenceNode)
		if !ok {
			return fault(n, "begin each with - ", "%s must be a list", what)
		}
		for _, v := range seq.Values {
			if err := item(v); err != nil {
				return err
			}
		}
		return nil
	}
}

// scalar returns the node's text as it was written.
func scalar(n ast.Node) (string, error) {
	if n == nil {
		return "", fault(n, "write a value", "a value is missing")
	}
	if _, ok := n.(ast.ScalarNode); !ok {
		return "", fault(n, "write one value", "one value is wanted here")
	}
	switch n.(type) {
	case *ast.NullNode, *ast.AnchorNode, *ast.AliasNode, *ast.TagNode:
		return "", fault(n, "write a value, or leave the key out", "a value is missing")
	case *ast.LiteralNode:
		return "", fault(n, "write it on one line", "one line is wanted here")
	}
	return strings.TrimSpace(n.GetToken().Value), nil
}

func textInto(to *string) func(ast.Node) error {
	return func(n ast.Node) (err error) {
		*to, err = scalar(n)
		return err
	}
}

// lengthInto reads a length, which must carry its unit and must not be negative.
func lengthInto(to *length.Length) func(ast.Node) error {
	return func(n ast.Node) error {
		text, err := scalar(n)
		if err != nil {
			return err
		}
		inch, err := length.Parse(text, length.In)
		if err != nil {
			return fault(n, "", "%s", err)
		}
		if mm, _ := length.Parse(text, length.MM); mm != inch {
			return fault(n, "write "+text+" in or "+text+" mm", "%s has no unit", text)
		}
		if inch < 0 {
			return fault(n, "write a length of 0 in or more", "%s is negative", text)
		}
		*to = inch
		return nil
	}
}

// number reads a plain number from 0 up to most.
func number(n ast.Node, most float64) (float64, error) {
	text, err := scalar(n)
	if err != nil {
		return 0, err
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || !(v >= 0 && v <= most) {
		return 0, fault(n, fmt.Sprintf("write a number from 0 to %g", most), "%q is no such number", text)
	}
	return v, nil
}

func numberInto(to *float64, most float64) func(ast.Node) error {
	return func(n ast.Node) (err error) {
		*to, err = number(n, most)
		return err
	}
}

func countInto(to *int, most int) func(ast.Node) error {
	return func(n ast.Node) error {
		v, err := number(n, float64(most))
		if err == nil && v != float64(int(v)) {
			return fault(n, "write a whole number", "%g is not whole", v)
		}
		*to = int(v)
		return err
	}
}

// percentInto reads a share written as 30 %, or with the word that a maker has not settled it.
func percentInto(to *float64, most float64) func(ast.Node) error {
	return func(n ast.Node) error {
		text, err := scalar(n)
		if err != nil {
			return err
		}
		digits, ok := strings.CutSuffix(text, "%")
		v, err := strconv.ParseFloat(strings.TrimSpace(digits), 64)
		if !ok || err != nil || !(v >= 0 && v <= most) {
			return fault(n, fmt.Sprintf("write a share from 0 %% to %g %%", most), "%q is no such share", text)
		}
		*to = v / 100
		return nil
	}
}

func shareInto(to *Share, most float64) func(ast.Node) error {
	return func(n ast.Node) error {
		to.Known = true
		return percentInto(&to.Value, most)(n)
	}
}

func flagInto(to *bool) func(ast.Node) error {
	return func(n ast.Node) error {
		text, err := scalar(n)
		if err != nil {
			return err
		}
		if text != "yes" && text != "no" {
			return fault(n, "write yes or no", "%q is neither yes nor no", text)
		}
		*to = text == "yes"
		return nil
	}
}

// hoursInto reads a time written in min, h or d (days of 24 h).
func hoursInto(to *float64) func(ast.Node) error {
	return func(n ast.Node) error {
		text, err := scalar(n)
		if err != nil {
			return err
		}
		digits, unit, _ := strings.Cut(text, " ")
		v, err := strconv.ParseFloat(digits, 64)
		scale, ok := map[string]float64{"min": 1. / 60, "h": 1, "d": 24}[strings.TrimSpace(unit)]
		if err != nil || !ok || !(v >= 0 && v <= 100000) {
			return fault(n, "write for example 10 min, 1.5 h or 7 d", "%q is no time", text)
		}
		*to = v * scale
		return nil
	}
}
