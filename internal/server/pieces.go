package server

import (
	"context"
	"crypto/sha256"
	"sync"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/build"
	"rodwright/change"
	"rodwright/finding"
	"rodwright/internal/store"
)

// line is one piece in the list of pieces. What can't be known while its document can't be derived is null, and
// problem says why.
type line struct {
	ID      string `json:"id"`
	Name    string `json:"name"`
	Number  int64  `json:"number" doc:"Of its last entry."`
	Changed int64  `json:"changed" doc:"When, in milliseconds since 1970, UTC."`
	Summary
}

// Summary is what the list says of a build.
type Summary struct {
	Worst    string      `json:"worst" enum:"stands,tight,fails,unknown"`
	Failing  int         `json:"failing" doc:"How many findings fail."`
	Tight    int         `json:"tight"`
	Unknown  int         `json:"unknown"`
	MassKg   *float64    `json:"massKg"`
	Size     *[3]float64 `json:"size" doc:"Along, across and up, in millimetres."`
	Fineness string      `json:"fineness,omitempty" doc:"To which the piece is drawn: 1/16, 1 mm; what it is shown in."`
	Total    *int64      `json:"total" doc:"Of the quote, in cents; null where it is not known."`
	Currency string      `json:"currency"`
	Days     *int        `json:"days" doc:"Calendar days of the work."`
	Problem  string      `json:"problem,omitempty" doc:"Why nothing can be derived from its document."`
}

type pieceList struct {
	Cache string `header:"Cache-Control"`
	Body  struct {
		Pieces []line `json:"pieces" doc:"Those changed last first."`
	}
}

func (s *Server) registerPieces(api huma.API) {
	get(s, api, route{
		id: "list-pieces", path: "/api/pieces", tag: "pieces", summary: "The pieces of the shop",
		about: "Each with its size, weight, price and how its findings stand.",
	}, s.pieces)
	get(s, api, route{
		id: "get-build", path: "/api/pieces/{id}/build", tag: "pieces", summary: "Everything derived from a piece",
		about: "Without units these are the bytes of: rodwright derive --json.", media: "application/json", mediaAbout: "The build.",
	}, func(ctx context.Context, in *ShownIn) (*content, error) {
		o, err := s.open(ctx, in.ID, in.Units)
		if err != nil {
			return nil, err
		}
		return s.bytes(o, in.Match, "application/json", o.shared.json)
	})
	get(s, api, route{
		id: "get-text", path: "/api/pieces/{id}/text", tag: "pieces", summary: "The document of a piece",
		about: "As it stands after its last entry.", media: "text/plain", mediaAbout: "The document, UTF-8.",
	}, func(ctx context.Context, in *PieceIn) (*content, error) {
		text, _, err := s.store.Text(ctx, in.ID)
		return &content{Status: 200, Type: "text/plain; charset=utf-8", Cache: ask, Body: text}, err
	})
}

func (s *Server) pieces(ctx context.Context, _ *struct{}) (*pieceList, error) {
	ps, err := s.store.Pieces(ctx)
	if err != nil {
		return nil, err
	}
	rules, err := s.settings(ctx)
	if err != nil {
		return nil, err
	}
	out := &pieceList{Cache: ask}
	out.Body.Pieces = make([]line, 0, len(ps))
	for _, p := range ps {
		l, err := s.line(ctx, p, rules)
		if err != nil {
			return nil, err
		}
		out.Body.Pieces = append(out.Body.Pieces, l)
	}
	return out, nil
}

func (s *Server) line(ctx context.Context, p store.Piece, rules settings) (line, error) {
	text, number, err := s.store.Text(ctx, p.ID)
	if err != nil {
		return line{}, err
	}
	facts, err := s.told(ctx, p.ID, number)
	if err != nil {
		return line{}, err
	}
	sum := s.summaries.get(deriveKey{sha256.Sum256(text), rules.number, "", facts.key}, func() func() Summary {
		return sync.OnceValue(func() Summary {
			b, err := s.derive(text, facts, rules, "").build()
			if err != nil {
				return Summary{Worst: finding.Unknown.String(), Currency: rules.shop.Currency, Problem: err.Error()}
			}
			return summed(b)
		})
	})
	return line{p.ID, p.Name, number, p.Changed.UnixMilli(), sum()}, nil
}

func summed(b *build.Build) Summary {
	r := b.Resolved
	size := [3]float64{(r.Max.X - r.Min.X).MM(), (r.Max.Y - r.Min.Y).MM(), (r.Max.Z - r.Min.Z).MM()}
	mass := change.MassOf(b)
	out := Summary{
		Worst: finding.Worst(b.Findings).String(), MassKg: &mass, Size: &size, Currency: b.Quote.Currency, Days: &b.Work.Days,
		Fineness: b.Doc.Fineness.String(),
	}
	for _, f := range b.Findings {
		switch f.Verdict {
		case finding.Fails:
			out.Failing++
		case finding.Tight:
			out.Tight++
		case finding.Unknown:
			out.Unknown++
		}
	}
	if b.Quote.Total.Known {
		cents := int64(b.Quote.Total.Cents)
		out.Total = &cents
	}
	return out
}
