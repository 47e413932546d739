package server

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"strings"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/change"
	"rodwright/internal/store"
	"rodwright/journal"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/trade/answer"
)

// Problem is what went wrong with a request, as RFC 9457 has it, with members more.
type Problem struct {
	Type   string `json:"type" doc:"What kind of problem it is; about:blank: the status says it."`
	Title  string `json:"title" doc:"The status in words."`
	Status int    `json:"status" doc:"The status of the answer."`
	Detail string `json:"detail" doc:"What is wrong, in words for a person."`
	Right  string `json:"right,omitempty" doc:"What would be right."`
	Path   string `json:"path,omitempty" doc:"The value that is wrong: a path in the document, or a name in the request."`
	Place  *Place `json:"place,omitempty" doc:"Where in the document it is."`

	Yours  *string `json:"yours,omitempty" doc:"Of a conflict: the value that was to be written."`
	Theirs *string `json:"theirs,omitempty" doc:"Of a conflict: the value that stands there now."`
	Actor  string  `json:"actor,omitempty" doc:"Of a conflict: who wrote it."`
	Number int64   `json:"number,omitempty" doc:"Of a conflict: the number of the entry that wrote it."`
}

// Place is a place in a document, counted from 1 in characters.
type Place struct {
	File   string `json:"file" doc:"The piece's name."`
	Line   int    `json:"line"`
	Column int    `json:"column"`
}

const problemType = "application/problem+json"

// Error says what is wrong.
func (p *Problem) Error() string { return p.Detail }

// GetStatus returns the status of the answer.
func (p *Problem) GetStatus() int { return p.Status }

// ContentType marks the answer as a problem.
func (p *Problem) ContentType(string) string { return problemType }

func problem(status int, detail, right string) *Problem {
	return &Problem{Type: "about:blank", Title: http.StatusText(status), Status: status, Detail: detail, Right: right}
}

// write sends the problem where no operation of the interface does.
func (p *Problem) write(w http.ResponseWriter) {
	text, err := json.Marshal(p)
	if err != nil {
		panic(fmt.Sprintf("server: a problem is strings and numbers: %v", err))
	}
	w.Header().Set("Content-Type", problemType)
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(p.Status)
	w.Write(append(text, '\n')) // whoever asked may be gone
}

// problemOf says an error as a problem. What nobody who asks can mend is logged, and said without its reason.
func (s *Server) problemOf(ctx context.Context, err error) *Problem {
	var own *Problem
	var missing *store.NotFoundError
	var input *store.InputError
	var conflict *store.ConflictError
	var entry *journal.EntryError
	var document *piece.Error
	var settings *shop.Error
	var question *answer.Error
	switch {
	case errors.As(err, &own):
		return own
	case errors.As(err, &missing):
		return problem(http.StatusNotFound, missing.Error(), "")
	case errors.As(err, &input):
		p := problem(http.StatusUnprocessableEntity, input.Error(), "")
		p.Path = input.Field
		return p
	case errors.As(err, &conflict):
		return conflictProblem(conflict)
	case errors.As(err, &entry):
		p := problem(http.StatusUnprocessableEntity, entry.Error(), "")
		p.Path = entry.Field
		return p
	case errors.As(err, &document):
		return documentProblem(document)
	case errors.As(err, &settings):
		p := problem(http.StatusUnprocessableEntity, "the shop's settings can't be read: "+settings.Message, settings.Want)
		p.Place = &Place{settings.File, settings.Line, settings.Column}
		return p
	case errors.As(err, &question):
		return questionProblem(question)
	case ctx.Err() != nil:
		return problem(http.StatusServiceUnavailable, "the request was broken off", "ask again")
	}
	s.log.ErrorContext(ctx, "request failed", "error", err)
	return problem(http.StatusInternalServerError, "the server could not do this; its log says why", "nothing was changed; ask again")
}

func conflictProblem(e *store.ConflictError) *Problem {
	p := problem(http.StatusConflict, e.Error(), "take theirs, or send yours again with a base of the last entry")
	p.Path, p.Yours, p.Theirs, p.Actor, p.Number = e.Path, &e.Yours, &e.Theirs, e.Actor, e.Number
	return p
}

// saidProblem says of words that tell a fact what of them can't be, under the name that they were sent by. Other
// errors it lets pass.
func saidProblem(err error, path string) error {
	var line *journal.SayError
	var fact *change.FactError
	var p *Problem
	switch {
	case errors.As(err, &line):
		p = problem(http.StatusUnprocessableEntity, fmt.Sprintf("at letter %d: %s", line.At, line.Message), "write "+line.Want)
	case errors.As(err, &fact):
		p = problem(http.StatusUnprocessableEntity, fact.Message, fact.Want)
	default:
		return err
	}
	p.Path = path
	return p
}

func documentProblem(e *piece.Error) *Problem {
	p := problem(http.StatusUnprocessableEntity, e.Message, e.Want)
	p.Place = &Place{e.File, max(e.Pos.Line, 1), max(e.Pos.Column, 1)}
	return p
}

func questionProblem(e *answer.Error) *Problem {
	status := http.StatusUnprocessableEntity
	if _, err := answer.Lookup(e.Topic); err != nil {
		status = http.StatusNotFound
	}
	p := problem(status, e.Why, e.Hint)
	p.Path = e.Key
	return p
}

// reworded turns a refusal of the request's own form, which the declarations of the routes make, into a problem
// of ours: the first thing wrong is told, with its name.
func reworded(_ huma.Context, _ string, v any) (any, error) {
	e, ok := v.(*huma.ErrorModel)
	if !ok {
		return v, nil
	}
	p := problem(e.Status, e.Detail, "")
	if len(e.Errors) > 0 {
		first := e.Errors[0]
		_, name, _ := strings.Cut(first.Location, ".")
		p.Path, p.Detail = name, strings.TrimPrefix(name+": "+first.Message, ": ")
	}
	return p, nil
}
