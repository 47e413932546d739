package piece

import (
	"strconv"
	"strings"

	"rodwright/piece/markup"
)

// Edit returns text with the one value at path replaced by value, which is a single line as a maker types it.
// Every other byte stays: comments, order, blank lines.
//
// A path names the entries from the top down, parted by slashes, and the places of lists counted from 1:
//
//	sizes/low level
//	panels/deep board/sits/2
//	holds/seed trays/weight
//
// A thing in a list may be named by its name: entry. A size in its long form is edited at its is: entry. The
// new text is not read as a document: it may be wrong, as a text on the way may be. An error is an [*Error].
func Edit(text []byte, path, value string) ([]byte, error) {
	n, err := find(text, path)
	if err != nil {
		return nil, err
	}
	out, err := markup.Replace(text, n, value)
	if err != nil {
		return nil, asError("", err)
	}
	return out, nil
}

// ValueAt returns the value at path as it is written, without its quotes, and its place. Paths are those of
// [Edit].
func ValueAt(text []byte, path string) (value string, at Pos, err error) {
	n, err := find(text, path)
	if err != nil {
		return "", Pos{}, err
	}
	return n.Text, n.Pos, nil
}

// find walks a path down to a single value.
func find(text []byte, path string) (*markup.Node, error) {
	n, err := markup.Parse(text)
	if err != nil {
		return nil, asError("", err)
	}
	steps := strings.Split(path, "/")
	for i, step := range steps {
		next := child(n, step)
		if next == nil {
			where := strings.Join(steps[:i+1], "/")
			return nil, &Error{Pos: n.Pos, Message: "there is no " + where, Want: near(step, childNames(n))}
		}
		n = next
	}
	if is := n.Entry("is"); n.Kind == markup.Map && is != nil && len(steps) == 2 && steps[0] == "sizes" {
		n = is
	}
	if n.Kind != markup.Scalar {
		return nil, &Error{Pos: n.Pos, Message: path + " is " + n.Kind.String() + ", not a single value", Want: near("", childNames(n))}
	}
	return n, nil
}

// child returns one step down: an entry of a map, or an item of a list by its number or its name.
func child(n *markup.Node, step string) *markup.Node {
	if n.Kind == markup.Map {
		return n.Entry(step)
	}
	if i, err := strconv.Atoi(step); err == nil && i >= 1 && i <= len(n.Items) {
		return n.Items[i-1]
	}
	for _, item := range n.Items {
		if name := item.Entry("name"); name != nil && name.Text == step {
			return item
		}
	}
	return nil
}

func childNames(n *markup.Node) (names []string) {
	for _, e := range n.Entries {
		names = append(names, e.Key)
	}
	for i, item := range n.Items {
		if name := item.Entry("name"); name != nil {
			names = append(names, name.Text)
		} else {
			names = append(names, strconv.Itoa(i+1))
		}
	}
	return names
}
