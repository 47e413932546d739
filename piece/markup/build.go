package markup

import (
	"fmt"
	"strings"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"
)

// builder turns the library's tree into nodes.
type builder struct {
	lines textLines
	nodes int
}

func posOf(tk *token.Token) Pos {
	if tk == nil || tk.Position == nil {
		return Pos{1, 1}
	}
	return Pos{max(tk.Position.Line, 1), max(tk.Position.Column, 1)}
}

// document returns the one map of the file.
func (b *builder) document(file *ast.File) (*Node, error) {
	var root *Node
	for _, doc := range file.Docs {
		if doc.Body == nil {
			continue
		}
		n, err := b.node(doc.Body, Pos{1, 1}, false)
		if err != nil {
			return nil, err
		}
		if root != nil {
			return nil, &Error{Pos: n.Pos, Message: "a second document begins here", Want: "write one piece a file"}
		}
		root = n
	}
	if root == nil {
		root = &Node{Kind: Empty, Pos: Pos{1, 1}}
	}
	if root.Kind != Map && root.Kind != Empty {
		return nil, &Error{Pos: root.Pos, Message: "the document is " + root.Kind.String() + ", not names with values", Want: "begin with rodwright: 1"}
	}
	return root, nil
}

// node builds one value; key is the place of the name it stands under.
func (b *builder) node(n ast.Node, key Pos, flow bool) (*Node, error) {
	if b.nodes++; b.nodes > maxNodes {
		return nil, &Error{Pos: key, Message: fmt.Sprintf("the document has more than %d values", maxNodes), Want: "split it into several pieces"}
	}
	switch n := n.(type) {
	case nil:
		return &Node{Kind: Empty, Pos: key}, nil
	case *ast.MappingNode:
		return b.mapping(n.Values, posOf(n.Start), flow || n.IsFlowStyle, n.IsFlowStyle)
	case *ast.MappingValueNode:
		return b.mapping([]*ast.MappingValueNode{n}, posOf(n.Start), flow, false)
	case *ast.SequenceNode:
		return b.list(n, flow || n.IsFlowStyle)
	case *ast.AnchorNode, *ast.AliasNode:
		return nil, &Error{Pos: posOf(n.GetToken()), Message: "anchors and aliases (& and *) are not used here", Want: "name a size and use its name, or put the value into quotes"}
	case *ast.TagNode:
		return nil, &Error{Pos: posOf(n.GetToken()), Message: "tags (!) are not used here", Want: "leave the tag out"}
	case *ast.LiteralNode:
		return &Node{Kind: Scalar, Pos: posOf(n.Start), TextPos: posOf(n.Start), Text: strings.TrimSpace(n.Value.Value), Block: true}, nil
	}
	return b.scalar(n, key, flow)
}

func (b *builder) mapping(values []*ast.MappingValueNode, at Pos, flow, braces bool) (*Node, error) {
	m := &Node{Kind: Map, Pos: at, flow: flow}
	seen := make(map[string]Pos, len(values))
	for i, v := range values {
		key, err := b.key(v.Key)
		if err != nil {
			return nil, err
		}
		if i == 0 && !braces { // a map without braces begins at its first name
			m.Pos = key.Pos
		}
		if first, ok := seen[key.Text]; ok {
			return nil, &Error{Pos: key.Pos, Message: fmt.Sprintf("%q is named twice, first at %d:%d", key.Text, first.Line, first.Column), Want: "give each a name of its own"}
		}
		seen[key.Text] = key.Pos
		value, err := b.node(v.Value, key.Pos, flow)
		if err != nil {
			return nil, err
		}
		m.Entries = append(m.Entries, Entry{Key: key.Text, KeyPos: key.Pos, Value: value})
	}
	return m, nil
}

// key builds a name, which must be a plain word or words.
func (b *builder) key(k ast.MapKeyNode) (*Node, error) {
	switch k.(type) {
	case *ast.MergeKeyNode:
		return nil, &Error{Pos: posOf(k.GetToken()), Message: "merge keys (<<) are not used here", Want: "write every entry where it belongs"}
	case *ast.MappingKeyNode:
		return nil, &Error{Pos: posOf(k.GetToken()), Message: "a name can't begin with ?", Want: "write name: value"}
	}
	n, err := b.node(k, posOf(k.GetToken()), false)
	if err != nil {
		return nil, err
	}
	if n.Kind != Scalar || n.Block || n.Text == "" {
		return nil, &Error{Pos: n.Pos, Message: "a name is missing before the colon", Want: "write name: value"}
	}
	return n, nil
}

func (b *builder) list(s *ast.SequenceNode, flow bool) (*Node, error) {
	l := &Node{Kind: List, Pos: posOf(s.Start), flow: flow}
	for i, v := range s.Values {
		at := l.Pos
		if i < len(s.Entries) && s.Entries[i] != nil && s.Entries[i].Start != nil {
			at = posOf(s.Entries[i].Start) // the dash of an item, for one that is empty
		}
		item, err := b.node(v, at, flow)
		if err != nil {
			return nil, err
		}
		l.Items = append(l.Items, item)
	}
	return l, nil
}

// scalar builds a value from its token: the text as written, not what YAML makes of it.
func (b *builder) scalar(n ast.Node, key Pos, flow bool) (*Node, error) {
	tk := n.GetToken()
	at := posOf(tk)
	rest, _ := b.lines.from(at)
	if n.Type() == ast.NullType && !strings.HasPrefix(rest, tk.Value) {
		return &Node{Kind: Empty, Pos: key}, nil
	}
	s := &Node{Kind: Scalar, Pos: at, TextPos: at, Text: tk.Value, flow: flow}
	switch tk.Type {
	case token.SingleQuoteType, token.DoubleQuoteType:
		s.TextPos = at.After(1)
		s.written = quoted(rest)
	default:
		if strings.HasPrefix(rest, tk.Value) {
			s.written = tk.Value
		}
	}
	if s.written == "" && tk.Value != "" || strings.Contains(s.Text, "\n") {
		return nil, &Error{Pos: at, Message: "a value stands on one line", Want: "write it on one line"}
	}
	return s, nil
}

// quoted returns the quoted text that rest begins with, quotes included; empty when it is not closed.
func quoted(rest string) string {
	if rest == "" {
		return ""
	}
	quote := rest[0]
	for i := 1; i < len(rest); i++ {
		switch {
		case quote == '"' && rest[i] == '\\':
			i++
		case quote == '\'' && strings.HasPrefix(rest[i:], "''"):
			i++
		case rest[i] == quote:
			return rest[:i+1]
		}
	}
	return ""
}
