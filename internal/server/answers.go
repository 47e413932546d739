package server

import (
	"bytes"
	"context"
	"encoding/json"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/trade/answer"
	"rodwright/trade/answer/quantity"
)

type topicBody struct {
	Topic    string      `json:"topic"`
	Question string      `json:"question"`
	Inputs   []inputBody `json:"inputs"`
	Rules    []string    `json:"rules" doc:"Which inputs go together, in words."`
	Answers  []string    `json:"answers" doc:"The names of what is answered, the main one first."`
	// Example is a whole call: inputs that go together, which the examples of the single inputs need not.
	Example map[string]string `json:"example" doc:"Inputs that go together, each as it is typed."`
}

type inputBody struct {
	Name     string   `json:"name"`
	Help     string   `json:"help"`
	Takes    string   `json:"takes"`
	Units    string   `json:"units,omitempty"`
	Choices  []string `json:"choices,omitempty"`
	Optional bool     `json:"optional"`
	Default  string   `json:"default,omitempty" doc:"What stands for it when left out."`
	Example  string   `json:"example"`
}

type topicsOut struct {
	Cache string `header:"Cache-Control"`
	Body  struct {
		Topics []topicBody `json:"topics"`
	}
}

type askIn struct {
	Topic string            `path:"topic" maxLength:"64"`
	Body  map[string]string `doc:"The inputs by name, each as it is typed: 20 1/4 in." maxProperties:"64"`
}

func (s *Server) registerAnswers(api huma.API) {
	get(s, api, route{
		id: "list-answers", path: "/api/answers", tag: "answers", summary: "What can be asked",
		about: "Every question with its inputs, for a form.",
	}, func(context.Context, *struct{}) (*topicsOut, error) {
		out := &topicsOut{Cache: ask}
		for _, t := range answer.Topics() {
			topic, err := topicOf(t)
			if err != nil {
				return nil, err
			}
			out.Body.Topics = append(out.Body.Topics, topic)
		}
		return out, nil
	})
	handle(s, api, route{
		id: "ask", path: "/api/answers/{topic}", tag: "answers", summary: "One question, answered",
		about: "The bytes of: rodwright answer TOPIC --json.", media: "application/json", mediaAbout: "The answer, with formulas, sources and cautions.",
	}.operation(http.MethodPost, api), func(_ context.Context, in *askIn) (*content, error) {
		a, err := answer.Ask(in.Topic, in.Body)
		if err != nil {
			return nil, err
		}
		text, err := indented(a)
		return &content{Status: http.StatusOK, Type: "application/json", Cache: "no-store", Body: text}, err
	})
}

func topicOf(t answer.Topic) (topicBody, error) {
	example, err := answer.Pairs(t.Call)
	if err != nil {
		return topicBody{}, err
	}
	out := topicBody{Topic: t.Name, Question: t.Asks, Inputs: []inputBody{}, Rules: []string{}, Answers: t.Answers, Example: example}
	for _, k := range t.Keys {
		units := ""
		if !k.Word {
			units = quantity.Units(k.Kind)
		}
		out.Inputs = append(out.Inputs, inputBody{k.Name, k.Means, k.Takes(), units, k.Choices, k.Optional, k.Default, k.Example})
	}
	for _, r := range t.Rules {
		out.Rules = append(out.Rules, r.String())
	}
	return out, nil
}

// indented writes JSON as the command line does.
func indented(v any) ([]byte, error) {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	err := e.Encode(v)
	return out.Bytes(), err
}
