package answer

import (
	"sync"

	"rodwright/trade/table"
)

// Topic is one question that can be asked.
type Topic struct {
	Name    string
	Asks    string // the question, in a maker's words
	Keys    []Key
	Rules   []Rule   // which keys go with which
	Answers []string // the names of what is answered, the main one first
	Call    []string // an example, as words of the command line
	reckon  func(given, *work) error
}

// Key returns the topic's key with the given name.
func (t Topic) Key(name string) (Key, bool) {
	for _, k := range t.Keys {
		if k.Name == name {
			return k, true
		}
	}
	return Key{}, false
}

func (t Topic) keyNames() []string {
	names := make([]string, len(t.Keys))
	for i, k := range t.Keys {
		names[i] = k.Name
	}
	return names
}

// groups lists the topics by the work they belong to, in the order a piece is made.
var groups = []func() []Topic{airTopics, gapTopics, lumberTopics, pipeTopics, legTopics, strengthTopics, plateTopics, standTopics, screwTopics, glueTopics, fillTopics, fitTopics}

// Topics returns every topic, in the order in which a maker needs them.
var Topics = sync.OnceValue(func() []Topic {
	var all []Topic
	for _, g := range groups {
		all = append(all, g()...)
	}
	return all
})

// Lookup returns the topic with the given name. The error is an [*Error] that lists near ones.
func Lookup(name string) (Topic, error) {
	var names []string
	for _, t := range Topics() {
		if t.Name == name {
			return t, nil
		}
		names = append(names, t.Name)
	}
	return Topic{}, unknownTopic(name, table.Near(name, names))
}
