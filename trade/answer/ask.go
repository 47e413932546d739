package answer

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"rodwright/length"
	"rodwright/trade/answer/quantity"
	"rodwright/trade/table"
)

// Ask answers the question of the given topic. The words are by key, as a maker writes them: width,
// 20 1/4 in. The error is an [*Error].
func Ask(topic string, words map[string]string) (*Answer, error) {
	t, err := Lookup(topic)
	if err != nil {
		return nil, err
	}
	in, err := t.read(words)
	if err != nil {
		return nil, err
	}
	var w work
	if err := t.reckon(in, &w); err != nil {
		return nil, in.blame(err)
	}
	return w.done(t.Name, in.imperial())
}

// Pairs reads words of the form key=value. A word without an equals sign or a key given twice is an
// [*Error].
func Pairs(args []string) (map[string]string, error) {
	words := make(map[string]string, len(args))
	for _, a := range args {
		key, value, ok := strings.Cut(a, "=")
		key = strings.TrimSpace(key)
		if !ok || key == "" {
			return nil, &Error{Why: fmt.Sprintf("%q is not key=value", a), Hint: `write for example width="20 1/4 in"`}
		}
		if _, twice := words[key]; twice {
			return nil, &Error{Key: key, Why: "is given twice"}
		}
		words[key] = value
	}
	return words, nil
}

// read reads and checks everything that was given, in the order of the topic's keys.
func (t Topic) read(words map[string]string) (given, error) {
	in := given{topic: t, values: map[string]quantity.Value{}}
	if err := t.known(words); err != nil {
		return in, err
	}
	for _, k := range t.Keys {
		text, ok := words[k.Name]
		if !ok && k.Default == "" {
			if !k.Optional {
				return in, &Error{Topic: t.Name, Key: k.Name, Why: fmt.Sprintf("is missing: %s; takes %s, for example %s=%q", k.Means, k.Takes(), k.Name, k.Example)}
			}
			continue
		}
		if !ok {
			text = k.Default
		}
		v, err := k.read(text)
		if err != nil {
			return in, &Error{Topic: t.Name, Key: k.Name, Why: err.Error(), cause: err}
		}
		in.values[k.Name] = v
		if ok {
			in.typed = append(in.typed, k.Name)
		}
	}
	for _, r := range t.Rules {
		if key, why := r.broken(in.has); why != "" {
			return in, &Error{Topic: t.Name, Key: key, Why: why}
		}
	}
	return in, nil
}

// known returns an error for the first key, by the alphabet, that the topic does not have.
func (t Topic) known(words map[string]string) error {
	names := t.keyNames()
	var strange []string
	for w := range words {
		if !slices.Contains(names, w) {
			strange = append(strange, w)
		}
	}
	if len(strange) == 0 {
		return nil
	}
	sort.Strings(strange)
	e := &Error{Topic: t.Name, Key: strange[0], Why: "is no key of this topic; its keys are " + strings.Join(names, ", ")}
	if near := table.Near(strange[0], names); len(near) > 0 {
		e.Hint = "near: " + strings.Join(near, ", ")
	}
	return e
}

// given holds the values of one question.
type given struct {
	topic  Topic
	values map[string]quantity.Value
	typed  []string // the keys that were written, in the topic's order; the others have their default
}

func (in given) has(key string) bool { _, ok := in.values[key]; return ok }

// defaulted reports whether key was left out and its default stands for it.
func (in given) defaulted(key string) bool { return in.has(key) && !slices.Contains(in.typed, key) }

func (in given) length(key string) length.Length { return in.values[key].Length }
func (in given) number(key string) float64       { return in.values[key].Number }
func (in given) count(key string) int            { return int(in.values[key].Number) }
func (in given) word(key string) string          { return in.values[key].Text }

// imperial reports whether the answer is to be shown in inches and pounds: as the first value with a
// unit was written, or, where none had one, as the pipe is measured.
func (in given) imperial() bool {
	for _, name := range in.typed {
		k, _ := in.topic.Key(name)
		if k.Word || k.Kind.Base() == "" || k.Kind == quantity.Percent {
			continue
		}
		return in.values[name].Imperial
	}
	return !strings.HasPrefix(strings.ToUpper(in.word("pipe")), "DN")
}

// wrong is the error for a key whose value was read but can't be used.
func (in given) wrong(key, want string) *Error {
	return &Error{Topic: in.topic.Name, Key: key, Why: fmt.Sprintf("got %q: %s", in.values[key].Text, want)}
}
