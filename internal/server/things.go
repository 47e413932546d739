package server

import (
	"context"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/fate"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/piece"
)

type thingsIn struct {
	PieceIn
	TapeIn
}

type thingsOut struct {
	Cache string `header:"Cache-Control"`
	Body  thingsBody
}

// thingsBody is what there is of a piece under way.
type thingsBody struct {
	Number    int64          `json:"number" doc:"Of the last entry."`
	Things    []thingBody    `json:"things" doc:"The parts that were made, in the order they were first told of."`
	Goods     []goodsBody    `json:"goods" doc:"What was bought, in order."`
	Distances []distanceBody `json:"distances" doc:"What was measured of the standing frame, in order."`
}

type thingBody struct {
	ID       string     `json:"id" doc:"Of the entry that first told of it."`
	Label    string     `json:"label" doc:"The tag that is written on it."`
	Tag      string     `json:"tag" doc:"In the plan now; empty where it serves nothing."`
	Place    string     `json:"place" doc:"What it is for; empty: it is on the rack."`
	State    string     `json:"state" doc:"How far it has come: blank cut, glued, sized, shaped, filled, sanded, finished, fitted."`
	Kind     string     `json:"kind" enum:"panel,pipe"`
	Material string     `json:"material"`
	Size     [3]float64 `json:"size" doc:"Along the grain, across it and thick, in millimetres; of a pipe its length first."`
	Measured bool       `json:"measured" doc:"Somebody measured it; else it is as drawn."`
	HoursH   float64    `json:"hoursH" doc:"Hours with hands spent on it."`
	Stock    string     `json:"stock" doc:"The tag of the stock it was cut from."`
	Spoiled  string     `json:"spoiled" doc:"What went wrong with it; empty: it can be used."`
	Todo     string     `json:"todo" doc:"What is still to be done so that it serves; empty where it serves as it is."`
	Why      string     `json:"why" doc:"Why it serves nothing though it is meant for a place."`
}

type goodsBody struct {
	ID       string     `json:"id" doc:"Of the entry that told of it."`
	Tag      string     `json:"tag"`
	Kind     string     `json:"kind" enum:"board,stick,sheet,item"`
	Material string     `json:"material"`
	Quarters string     `json:"quarters" doc:"Of a board: 5/4."`
	Size     [3]float64 `json:"size" doc:"Along, across and thick, in millimetres, as bought."`
	Left     float64    `json:"left" doc:"Of its length, by the cuts that were told."`
	Item     string     `json:"item" doc:"Of what is sold by the piece."`
	Count    float64    `json:"count"`
	Cents    *int64     `json:"cents" doc:"What was paid; null where nobody said."`
}

type distanceBody struct {
	From    string  `json:"from"`
	To      string  `json:"to"`
	Value   float64 `json:"value" doc:"As measured, in millimetres."`
	Over    string  `json:"over" enum:",outside,inside" doc:"Which faces the tape was laid to; empty: the centres."`
	Drawn   float64 `json:"drawn" doc:"As drawn, over the same faces."`
	Now     float64 `json:"now" doc:"As the frame stands by all that was measured."`
	Bearing string  `json:"bearing" enum:"moves,agrees,contradicts,compared,no such thing,same place" doc:"What it does to the frame."`
	Number  int64   `json:"number" doc:"Of its entry; 0 where it follows from a pipe's own length."`
}

func (s *Server) registerThings(api huma.API) {
	get(s, api, route{
		id: "get-things", path: "/api/pieces/{id}/things", tag: "pieces", summary: "What there is of a piece under way",
		about: "The parts that were made, what was bought, and the distances that were measured.",
	}, s.things)
}

func (s *Server) things(ctx context.Context, in *thingsIn) (*thingsOut, error) {
	o, err := s.open(ctx, in.ID, in.Units)
	if err != nil {
		return nil, err
	}
	out := &thingsOut{Cache: ask}
	out.Body = thingsBody{o.Number, []thingBody{}, []goodsBody{}, []distanceBody{}}
	if o.build.Under == nil {
		return out, nil
	}
	for _, t := range o.build.Under.Settled {
		out.Body.Things = append(out.Body.Things, thingOf(t))
	}
	for _, g := range o.build.Under.Record.Goods {
		out.Body.Goods = append(out.Body.Goods, goodsOf(g))
	}
	if stands := o.build.Resolved.Standing; stands != nil {
		for _, d := range stands.Distances {
			out.Body.Distances = append(out.Body.Distances, distanceOf(d))
		}
	}
	return out, nil
}

func thingOf(of fate.Settled) thingBody {
	t := of.Thing
	out := thingBody{
		ID: t.ID, Label: t.Label, Place: t.Place, State: t.State.String(), Kind: t.Shape.Kind, Material: t.Shape.Material, Size: inMM(t.Shape.Size),
		Measured: t.Shape.Measured, HoursH: t.HandsH, Stock: t.Stock, Spoiled: t.Spoiled, Why: of.Why,
	}
	if of.Need != nil {
		out.Tag = of.Need.Tag
		if of.Way.Kind != fate.AsIs {
			out.Todo = of.Way.Words
		}
	}
	return out
}

func goodsOf(g journal.Piece) goodsBody {
	return goodsBody{
		ID: g.ID, Tag: g.Tag, Kind: g.Kind, Material: g.Material, Quarters: g.Quarters, Size: inMM(g.Size), Left: length.Length(g.Left).MM(),
		Item: g.Item, Count: g.Count, Cents: g.Cents,
	}
}

var bearings = [...]string{
	piece.Moves: "moves", piece.Agrees: "agrees", piece.Contradicts: "contradicts", piece.Compared: "compared",
	piece.NoSuchThing: "no such thing", piece.SamePlace: "same place",
}

func distanceOf(d piece.Stood) distanceBody {
	return distanceBody{d.From, d.To, d.Value.MM(), string(d.Over), d.Drawn.MM(), d.Now.MM(), bearings[d.Bearing], d.Number}
}

func inMM(size [3]journal.MM) (out [3]float64) {
	for k, v := range size {
		out[k] = length.Length(v).MM()
	}
	return out
}
