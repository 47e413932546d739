package answer

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"

	"rodwright/figure"
)

// Answer is what one question came to.
type Answer struct {
	Topic    string   `json:"topic"`
	Answers  []Result `json:"answers"` // the main one first
	Because  []Reason `json:"because"`
	Cautions []string `json:"cautions"`
	Assumed  []string `json:"assumed"` // what was taken for granted, in words
}

// Result is one figure of an answer.
type Result struct {
	Name   string      `json:"name"`
	Value  Value       `json:"value"`
	Unit   figure.Unit `json:"unit"`
	Shown  string      `json:"shown"` // as a maker sets a tape or reads a scale
	metric string      // the value in its own unit, for people; empty where Shown says the same
}

// Value is a number, unrounded, or words where the unit is text.
type Value struct {
	Number float64
	Words  string
}

// MarshalJSON writes the number, or the words where there are any.
func (v Value) MarshalJSON() ([]byte, error) {
	if v.Words != "" {
		return json.Marshal(v.Words)
	}
	return json.Marshal(v.Number)
}

// UnmarshalJSON reads what MarshalJSON wrote.
func (v *Value) UnmarshalJSON(text []byte) error {
	*v = Value{}
	if len(text) > 0 && text[0] == '"' {
		return json.Unmarshal(text, &v.Words)
	}
	return json.Unmarshal(text, &v.Number)
}

// Reason is one formula that was used, with what went in.
type Reason struct {
	Formula string `json:"formula"`
	Inputs  Inputs `json:"inputs"`
	Source  string `json:"source"`
	Range   string `json:"range,omitempty"` // where the formula holds
	result  string // what it came to, for people
}

// Input is one value that went into a formula, by the letter or word the formula uses.
type Input struct{ Name, Shown string }

// Inputs keeps the order of the formula; in JSON it is one object.
type Inputs []Input

// MarshalJSON writes the inputs as one object, in their order.
func (ins Inputs) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, in := range ins {
		if i > 0 {
			b.WriteByte(',')
		}
		name, err := json.Marshal(in.Name)
		if err != nil {
			return nil, err
		}
		shown, err := json.Marshal(in.Shown)
		if err != nil {
			return nil, err
		}
		fmt.Fprintf(&b, "%s:%s", name, shown)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// UnmarshalJSON reads one object and keeps the order of its names.
func (ins *Inputs) UnmarshalJSON(text []byte) error {
	*ins = nil
	d := json.NewDecoder(bytes.NewReader(text))
	if _, err := d.Token(); err != nil {
		return err
	}
	for d.More() {
		name, err := d.Token()
		if err != nil {
			return err
		}
		var shown string
		if err := d.Decode(&shown); err != nil {
			return err
		}
		*ins = append(*ins, Input{fmt.Sprint(name), shown})
	}
	return nil
}

// work gathers what a topic finds out while it reckons.
type work struct {
	answers  []figure.Figure
	because  []figure.Figure
	cautions []string
	assumed  []string
}

// answer adds a figure under the name the topic promises.
func (w *work) answer(name string, f figure.Figure) {
	f.Name = name
	w.answers = append(w.answers, f)
}

// reason adds a figure that is no answer itself but stands behind one.
func (w *work) reason(fs ...figure.Figure) { w.because = append(w.because, fs...) }

// caution adds a warning for the one who does the work.
func (w *work) caution(words ...string) { w.cautions = append(w.cautions, words...) }

// assume adds what was taken for granted. Empty words are left out.
func (w *work) assume(words ...string) {
	for _, s := range words {
		if s != "" {
			w.assumed = append(w.assumed, s)
		}
	}
}

// done turns the work into an answer, shown in the system of units that the question was asked in.
func (w *work) done(topic string, imperial bool) (*Answer, error) {
	a := &Answer{Topic: topic, Answers: []Result{}, Because: []Reason{}, Cautions: unique(w.cautions), Assumed: []string{}}
	for _, f := range w.answers {
		if math.IsNaN(f.Value) || math.IsInf(f.Value, 0) {
			return nil, &Error{Topic: topic, Why: f.Name + " comes to no finite number with these values"}
		}
		a.Answers = append(a.Answers, resultOf(f, imperial))
	}
	seen := map[string]bool{}
	for _, f := range append(append([]figure.Figure(nil), w.because...), w.answers...) {
		w.assumed = append(w.assumed, f.Assumed...)
		if f.Formula == nil && f.Source == "" {
			continue
		}
		r := reasonOf(f)
		if key := fmt.Sprint(r.Formula, r.Inputs); !seen[key] {
			seen[key] = true
			a.Because = append(a.Because, r)
		}
	}
	a.Assumed = unique(w.assumed)
	return a, nil
}

// unique returns the words without repeats, in order; never nil, so that JSON has a list.
func unique(words []string) []string {
	out, seen := []string{}, map[string]bool{}
	for _, s := range words {
		if s != "" && !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	}
	return out
}
