package server_test

import (
	"bytes"
	"encoding/json"
	"net/http"
	"strings"
	"testing"

	"rodwright/trade/answer"
)

// example returns the example of a topic by its keys.
func example(t *testing.T, topic answer.Topic) map[string]string {
	t.Helper()
	words, err := answer.Pairs(topic.Call)
	if err != nil {
		t.Fatal(err)
	}
	return words
}

func TestEveryQuestionIsAnsweredAsOnTheCommandLine(t *testing.T) {
	h := opened(t, "low-bench")
	for _, topic := range answer.Topics() {
		body, err := json.Marshal(example(t, topic))
		if err != nil {
			t.Fatal(err)
		}
		w := h.answers(request("POST", "/api/answers/"+topic.Name, string(body)))
		var want, errs bytes.Buffer
		if code := answer.Run(append([]string{topic.Name, "--json"}, topic.Call...), &want, &errs); code != answer.Done {
			t.Fatalf("%s: %s", topic.Name, errs.String())
		}
		if w.Code != http.StatusOK || w.Body.String() != want.String() {
			t.Errorf("%s: %d %s", topic.Name, w.Code, w.Body)
		}
	}
}

func TestEveryQuestionIsListedWithItsInputs(t *testing.T) {
	h := opened(t, "low-bench")
	var got struct {
		Topics []struct {
			Topic, Question string
			Inputs          []struct{ Name, Help, Example, Takes string }
		}
	}
	h.into(t, "/api/answers", &got)
	if len(got.Topics) != len(answer.Topics()) {
		t.Fatalf("%d questions", len(got.Topics))
	}
	for i, topic := range answer.Topics() {
		if g := got.Topics[i]; g.Topic != topic.Name || g.Question == "" || len(g.Inputs) != len(topic.Keys) || g.Inputs[0].Help == "" || g.Inputs[0].Example == "" {
			t.Errorf("%+v", g)
		}
	}
}

func TestAWrongQuestionIsToldWithTheInputAndWhatIsRight(t *testing.T) {
	h := opened(t, "low-bench")
	p := h.refuses(t, request("POST", "/api/answers/movment", "{}"), http.StatusNotFound)
	if !strings.Contains(p.Right, "movement") {
		t.Errorf("%+v", p)
	}
	words := example(t, answer.Topics()[0])
	first := answer.Topics()[0].Keys[0].Name
	words[first] = "nonsense"
	body, err := json.Marshal(words)
	if err != nil {
		t.Fatal(err)
	}
	if p := h.refuses(t, request("POST", "/api/answers/"+answer.Topics()[0].Name, string(body)), http.StatusUnprocessableEntity); p.Path != first || !strings.Contains(p.Detail, "nonsense") {
		t.Errorf("%+v", p)
	}
	h.refuses(t, request("POST", "/api/answers/movement", `{"width": 5}`), http.StatusUnprocessableEntity)
}
