package server

import (
	"context"
	"net/http"
	"strings"

	"github.com/danielgtaylor/huma/v2"
)

// PieceIn is what every request about one piece says.
type PieceIn struct {
	ID string `path:"id" maxLength:"64" doc:"The piece's id."`
}

// ShownIn is what a request for something derived says.
type ShownIn struct {
	PieceIn
	Match string `header:"If-None-Match" doc:"The ETag that the asker has."`
	Units string `query:"units" enum:"inch,metric" doc:"The tape to show lengths by; left out, the piece's own."`
}

// valued is an answer in JSON that is known by its ETag.
type valued[T any] struct {
	Status int
	ETag   string `header:"ETag"`
	Cache  string `header:"Cache-Control"`
	Body   T
}

// content is an answer of bytes.
type content struct {
	Status int
	Type   string `header:"Content-Type"`
	ETag   string `header:"ETag"`
	Cache  string `header:"Cache-Control"`
	Name   string `header:"Content-Disposition"`
	Body   []byte
}

// ask makes the browser ask each time whether what it has is new.
const ask = "no-cache"

// tag is the ETag of everything derived from a build: the hash of its input, and what of the program may change
// the answer.
func (s *Server) tag(o *opened) string {
	return `"` + strings.TrimPrefix(o.build.Hash, "sha256:") + "." + strings.Map(tagged, s.edition) + `"`
}

// tagged keeps what may stand in an ETag (RFC 9110, 8.8.3).
func tagged(r rune) rune {
	if r > ' ' && r < 0x7f && r != '"' && r != ',' {
		return r
	}
	return '-'
}

// has reports whether an If-None-Match header names the tag.
func has(match, tag string) bool {
	for m := range strings.SplitSeq(match, ",") {
		if m = strings.TrimSpace(m); m == "*" || strings.TrimPrefix(m, "W/") == tag {
			return true
		}
	}
	return false
}

// value answers with what fresh returns, or says that the asker has it.
func value[T any](s *Server, o *opened, match string, fresh func() (T, error)) (*valued[T], error) {
	out := &valued[T]{Status: http.StatusOK, ETag: s.tag(o), Cache: ask}
	if has(match, out.ETag) {
		out.Status = http.StatusNotModified
		return out, nil
	}
	var err error
	out.Body, err = fresh()
	return out, err
}

// bytes answers with the bytes that fresh returns, or says that the asker has them.
func (s *Server) bytes(o *opened, match, kind string, fresh func() ([]byte, error)) (*content, error) {
	out := &content{Status: http.StatusOK, Type: kind, ETag: s.tag(o), Cache: ask}
	if has(match, out.ETag) {
		out.Status, out.Type = http.StatusNotModified, ""
		return out, nil
	}
	var err error
	out.Body, err = fresh()
	return out, err
}

// handle registers an operation whose errors are told as problems.
func handle[I, O any](s *Server, api huma.API, op huma.Operation, answer func(context.Context, *I) (*O, error)) {
	huma.Register(api, op, func(ctx context.Context, in *I) (*O, error) {
		out, err := answer(ctx, in)
		if err != nil {
			return nil, s.problemOf(ctx, err)
		}
		return out, nil
	})
}

// get registers something that can be read.
func get[I, O any](s *Server, api huma.API, r route, answer func(context.Context, *I) (*O, error)) {
	handle(s, api, r.operation(http.MethodGet, api), answer)
}
