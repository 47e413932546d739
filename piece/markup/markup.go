// Package markup reads the text of a piece document into a tree of scalars, maps and lists that know their
// places, and puts a new scalar into the text without touching anything else.
//
// The text is YAML, of which a document uses little: maps, lists, and scalars that stand on one line. Every
// scalar is kept as the maker wrote it: 010 stays 010, 1_000 stays 1_000, yes stays yes. What a document
// has no use for (anchors, aliases, tags, merge keys, several documents in one file) is an error with its
// place, and so is a text larger or deeper than any piece needs. Start with [Parse].
package markup

import "fmt"

// Pos is a place in a text, line and column counted from 1 in characters. The zero Pos is no place.
type Pos struct{ Line, Column int }

// Before reports whether p stands earlier in the text than q.
func (p Pos) Before(q Pos) bool {
	return p.Line < q.Line || p.Line == q.Line && p.Column < q.Column
}

// After returns the place n characters further on in the same line.
func (p Pos) After(n int) Pos { return Pos{p.Line, p.Column + n} }

// Error is one thing wrong in a text.
type Error struct {
	Pos     Pos
	Message string
	Want    string // what would be right; may be empty
}

// Error gives line:column, what is wrong and what would be right.
func (e *Error) Error() string {
	s := fmt.Sprintf("%d:%d: %s", e.Pos.Line, e.Pos.Column, e.Message)
	if e.Want != "" {
		s += "; " + e.Want
	}
	return s
}

// Kind is what a node of the tree is.
type Kind uint8

// The kinds of nodes.
const (
	Empty  Kind = iota // nothing was written
	Scalar             // one value, as text
	Map                // names with values
	List               // values in order
)

// String names the kind in a maker's words.
func (k Kind) String() string {
	return [...]string{"nothing", "a single value", "names with values", "a list"}[k]
}

// Node is one value of the tree.
type Node struct {
	Kind    Kind
	Pos     Pos     // where it begins; for Empty the place of its key
	Text    string  // of a scalar, without its quotes
	TextPos Pos     // where Text begins: behind the opening quote, if there is one
	Block   bool    // a scalar of several lines, written with | or >
	Entries []Entry // of a map, in the order of the text
	Items   []*Node // of a list
	flow    bool    // inside [ ] or { }
	written string  // a scalar as it stands in the text, with its quotes; empty when it can't be replaced
}

// Entry is one name of a map with its value.
type Entry struct {
	Key    string
	KeyPos Pos
	Value  *Node
}

// Entry returns the value under key, nil when there is none.
func (n *Node) Entry(key string) *Node {
	for _, e := range n.Entries {
		if e.Key == key {
			return e.Value
		}
	}
	return nil
}

// The bounds of a text. They lie far above any piece, and keep a hostile text from costing time or stack: the
// library's time grows with the square of the lines of one quoted value and of the entries of one map.
const (
	MaxBytes  = 1 << 18 // of the whole text
	maxLines  = 10_000
	maxColons = 10_000 // as many entries as there can be
	maxLine   = 2000   // characters of one line
	maxNested = 20     // brackets inside one another
	maxNodes  = 50_000 // values of the tree
)
