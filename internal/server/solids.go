package server

import (
	"context"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/build"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/solid"
)

// point is a place in the piece in millimetres: along from the left, from front to back, up.
type point [3]float64

// solidsBody is the piece in space.
type solidsBody struct {
	Solids []solidBody `json:"solids"`
	Min    point       `json:"min" doc:"Of the box round the piece without what it holds."`
	Max    point       `json:"max"`
}

// solidBody is one body: a box, a cylinder or a slab.
type solidBody struct {
	Tag      string        `json:"tag" doc:"Of the physical part; empty for what is held."`
	Name     string        `json:"name"`
	Kind     string        `json:"kind" enum:"panel,stick,fitting,foot,held"`
	Box      *boxBody      `json:"box,omitempty"`
	Cylinder *cylinderBody `json:"cylinder,omitempty"`
	Slab     *slabBody     `json:"slab,omitempty"`
}

type boxBody struct {
	Min point `json:"min"`
	Max point `json:"max"`
}

type cylinderBody struct {
	A      point   `json:"a" doc:"One end of its axis."`
	B      point   `json:"b"`
	Radius float64 `json:"radius"`
}

type slabBody struct {
	Min      point         `json:"min"`
	Max      point         `json:"max"`
	Openings []openingBody `json:"openings"`
}

type openingBody struct {
	Min    [2]float64 `json:"min" doc:"In plan."`
	Max    [2]float64 `json:"max"`
	Radius float64    `json:"radius" doc:"Of its corners."`
	Depth  float64    `json:"depth" doc:"From the underside; 0 goes through."`
}

func (s *Server) registerSolids(api huma.API) {
	get(s, api, route{
		id: "get-solids", path: "/api/pieces/{id}/solids", tag: "drawings", summary: "The piece in space",
		about: "Every body as a box, a cylinder or a slab with openings, in millimetres.",
	}, func(ctx context.Context, in *ShownIn) (*valued[solidsBody], error) {
		o, err := s.open(ctx, in.ID, in.Units)
		if err != nil {
			return nil, err
		}
		return value(s, o, in.Match, func() (solidsBody, error) { return solidsOf(o.build), nil })
	})
}

func solidsOf(b *build.Build) solidsBody {
	r := b.Resolved
	out := solidsBody{Solids: []solidBody{}, Min: at(solid.Vec(r.Min)), Max: at(solid.Vec(r.Max))}
	for _, body := range r.Solids() {
		s := solidBody{Name: body.Name}
		s.Kind, s.Tag = kindOf(b, body)
		s.shape(body.Shape)
		out.Solids = append(out.Solids, s)
	}
	return out
}

// kindOf says what a body is, and the tag of its part.
func kindOf(b *build.Build, body piece.Body) (kind, tag string) {
	tags := b.Parts
	switch body.Kind {
	case piece.PanelBody:
		return "panel", tags.PanelTags[body.Index]
	case piece.StickBody:
		return "stick", tags.StickTags[body.Index]
	case piece.FittingBody:
		return "fitting", tags.NodeTags[body.Index]
	case piece.FootBody:
		return "foot", tags.FootTags[body.Index]
	default:
		return "held", ""
	}
}

func (s *solidBody) shape(of solid.Shape) {
	switch v := of.(type) {
	case solid.Box:
		s.Box = &boxBody{at(v.Min), at(v.Max)}
	case solid.Cylinder:
		s.Cylinder = &cylinderBody{at(v.A), at(v.B), v.Radius.MM()}
	case solid.Slab:
		slab := &slabBody{at(v.Min), at(v.Max), []openingBody{}}
		for _, o := range v.Openings {
			slab.Openings = append(slab.Openings, openingBody{flat(o.Min), flat(o.Max), o.Radius.MM(), o.Depth.MM()})
		}
		s.Slab = slab
	}
}

func at(v solid.Vec) point { return point{v.X.MM(), v.Y.MM(), v.Z.MM()} }

func flat(v [2]length.Length) [2]float64 { return [2]float64{v[0].MM(), v[1].MM()} }
