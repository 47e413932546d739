package answer

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"rodwright/trade/answer/quantity"
)

// WriteList writes all topics, each with its question, its keys with their units, and an example.
func WriteList(w io.Writer) error {
	var b strings.Builder
	b.WriteString("rodwright answer TOPIC key=value… [--json]\n")
	b.WriteString("values carry their unit; rodwright answer TOPIC --help says what each key is\n")
	for _, t := range Topics() {
		fmt.Fprintf(&b, "\n%s: %s\n  %s\n  %s\n", t.Name, t.Asks, t.usage(), t.call())
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// usage lists the topic's keys, optional ones in brackets, each with what it takes.
func (t Topic) usage() string {
	words := make([]string, len(t.Keys))
	for i, k := range t.Keys {
		words[i] = k.Name + "=" + k.unit()
		if k.Optional {
			words[i] = "[" + words[i] + "]"
		}
	}
	return strings.Join(words, " ")
}

// unit says in one word what a key takes: mm|in, flat|quarter|mixed.
func (k Key) unit() string {
	switch {
	case len(k.Choices) > 0:
		return strings.Join(k.Choices, "|")
	case k.Word:
		return k.Example
	case k.Kind == quantity.Count || k.Kind == quantity.Ratio || k.Kind == quantity.Money || k.Kind == quantity.Gauge:
		return "number"
	case k.Kind == quantity.Mix:
		return "a:b"
	case k.Kind == quantity.Rough:
		return "n/4|in|mm"
	case k.Kind == quantity.Amount:
		return "number|bf|…"
	}
	return strings.ReplaceAll(quantity.Units(k.Kind), ", ", "|")
}

// call returns the topic's example as it is typed.
func (t Topic) call() string {
	words := []string{"rodwright", "answer", t.Name}
	for _, a := range t.Call {
		key, value, _ := strings.Cut(a, "=")
		if strings.ContainsAny(value, " '\"#") {
			value = `"` + strings.ReplaceAll(value, `"`, `\"`) + `"`
		}
		words = append(words, key+"="+value)
	}
	return strings.Join(words, " ")
}

// WriteHelp writes what one topic asks and answers, key by key.
func (t Topic) WriteHelp(w io.Writer) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n\n", t.Name, t.Asks)
	for _, k := range t.Keys {
		fmt.Fprintf(&b, "  %s: %s\n      takes %s%s\n", k.Name, k.Means, k.takesLong(), k.leftOut())
	}
	for _, r := range t.Rules {
		fmt.Fprintf(&b, "  %s\n", r)
	}
	fmt.Fprintf(&b, "\nanswers: %s\n\nexample: %s\n", strings.Join(t.Answers, ", "), t.call())
	_, err := io.WriteString(w, b.String())
	return err
}

func (k Key) takesLong() string {
	if k.Word {
		return k.Takes() + ", for example " + k.Example
	}
	return fmt.Sprintf("%s (%s), for example %s", k.Kind, quantity.Units(k.Kind), k.Example)
}

func (k Key) leftOut() string {
	switch {
	case k.Default != "":
		return "; left out: " + k.Default
	case k.Optional:
		return "; may be left out"
	}
	return ""
}

// listed is a topic as programs read it.
type listed struct {
	Topic   string      `json:"topic"`
	Asks    string      `json:"asks"`
	Keys    []listedKey `json:"keys"`
	Rules   []string    `json:"rules"`
	Answers []string    `json:"answers"`
	Example []string    `json:"example"`
}

type listedKey struct {
	Name     string   `json:"name"`
	Means    string   `json:"means"`
	Takes    string   `json:"takes"`
	Units    string   `json:"units,omitempty"`
	Choices  []string `json:"choices,omitempty"`
	Optional bool     `json:"optional"`
	Default  string   `json:"default,omitempty"`
	Example  string   `json:"example"`
}

// MarshalJSON writes the topic for a program that builds a form of it.
func (t Topic) MarshalJSON() ([]byte, error) {
	out := listed{Topic: t.Name, Asks: t.Asks, Keys: []listedKey{}, Rules: []string{}, Answers: t.Answers, Example: t.Call}
	for _, k := range t.Keys {
		units := ""
		if !k.Word {
			units = quantity.Units(k.Kind)
		}
		out.Keys = append(out.Keys, listedKey{k.Name, k.Means, k.Takes(), units, k.Choices, k.Optional, k.Default, k.Example})
	}
	for _, r := range t.Rules {
		out.Rules = append(out.Rules, r.String())
	}
	return json.Marshal(out)
}
