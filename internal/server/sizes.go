package server

import (
	"context"
	"fmt"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/build"
)

// sizesBody is everything of a document that can be typed.
type sizesBody struct {
	Sizes  []sizeBody  `json:"sizes" doc:"The named sizes, in the order of the document."`
	Fields []fieldBody `json:"fields" doc:"Every other value that is typed, in the order of the document; those that only name a size are left out."`
}

type sizeBody struct {
	Name    string   `json:"name"`
	Path    string   `json:"path" doc:"What an edit names: sizes/low level."`
	Formula string   `json:"formula" doc:"As it is written."`
	Value   float64  `json:"value" doc:"In millimetres; one measured on site wins over the formula."`
	Text    string   `json:"text" doc:"The value by the tape; ≈ marks one that is rounded."`
	Origin  string   `json:"origin" enum:"assumed,client,measured,rule,standard"`
	Note    string   `json:"note"`
	Uses    []string `json:"uses" doc:"The names of the sizes that its formula uses."`
}

type fieldBody struct {
	Path  string `json:"path" doc:"What an edit names: panels/deep board/thickness."`
	Label string `json:"label"`
	Group string `json:"group" doc:"What it is a value of, in words."`
	Value string `json:"value" doc:"As it is written."`
	Kind  string `json:"kind" enum:"length,count,word"`
}

func (s *Server) registerSizes(api huma.API) {
	get(s, api, route{
		id: "get-sizes", path: "/api/pieces/{id}/sizes", tag: "pieces", summary: "What can be typed",
		about: "The named sizes with their formulas, and every other value of the document that is typed, each with the path that an edit names.",
	}, func(ctx context.Context, in *ShownIn) (*valued[sizesBody], error) {
		o, err := s.open(ctx, in.ID, in.Units)
		if err != nil {
			return nil, err
		}
		return value(s, o, in.Match, func() (sizesBody, error) { return sizesOf(o.build) })
	})
}

func sizesOf(b *build.Build) (sizesBody, error) {
	out := sizesBody{Sizes: []sizeBody{}}
	for _, s := range b.Doc.Sizes {
		out.Sizes = append(out.Sizes, sizeBody{
			Name: s.Name, Path: "sizes/" + s.Name, Formula: s.Formula, Value: s.Value.MM(), Text: b.Doc.Fineness.Show(s.Value),
			Origin: string(s.Origin), Note: s.Note, Uses: append([]string{}, s.Uses...),
		})
	}
	var err error
	if out.Fields, err = fieldsOf(b.Doc); err != nil {
		return out, fmt.Errorf("fields of %s: %w", b.Doc.Name, err)
	}
	return out, nil
}
