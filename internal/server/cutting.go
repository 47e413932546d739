package server

import (
	"context"
	"math"
	"net/http"
	"slices"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/build"
	"rodwright/cut"
	"rodwright/cut/explain"
	"rodwright/cut/sawing"
	"rodwright/layout"
	"rodwright/shop"
	"rodwright/steps"
)

type cuttingBody struct {
	Layouts []cuttingLine `json:"layouts" doc:"Sticks, then boards, then sheets, each sorted by material."`
}

// cuttingLine is one layout as it is followed at the saw, and what explains it.
type cuttingLine struct {
	Kind     string      `json:"kind" enum:"stick,panel,sheet"`
	Material string      `json:"material"`
	Opened   string      `json:"opened" doc:"All stock that is opened: a length of sticks, an area else."`
	Shares   []shareLine `json:"shares" doc:"Where it goes; the shares add up to 1."`
	Why      string      `json:"why" doc:"Why fewer pieces of stock are not enough; empty where there is nothing to say."`
	Cost     string      `json:"cost" doc:"What the cost is made of where it is not the price of the stock alone; empty else."`
	Changes  string      `json:"changes" doc:"How often a stop or fence is set, and whether fewer would do."`
	Note     string      `json:"note" doc:"How a setting is measured."`
	Cautions []string    `json:"cautions"`
	Runs     []runLine   `json:"runs" doc:"In order."`
}

type shareLine struct {
	Use   string  `json:"use" enum:"parts,later,saw cuts,trimming,defects,kept,lost"`
	Name  string  `json:"name"`
	Text  string  `json:"text" doc:"How much, with its unit."`
	Share float64 `json:"share" doc:"Of all that is opened, 0 to 1."`
}

type runLine struct {
	Head  string     `json:"head" doc:"What stop or fence is set to; or that ends or edges are squared."`
	Every bool       `json:"every" doc:"Done to every piece of stock before anything is cut; its steps have no numbers."`
	Steps []stepLine `json:"steps"`
}

type stepLine struct {
	N    int    `json:"n" doc:"The number in rings on the drawings of boards and sheets; 0 where every piece is squared."`
	On   string `json:"on" doc:"The piece of stock, as the drawings number it."`
	Does string `json:"does"`
	Left string `json:"left" doc:"What is left of what was cut, to check by; empty where nothing is."`
}

type oneMoreIn struct {
	ShownIn
	Kind     string `query:"kind" required:"true" enum:"stick,panel,sheet" doc:"Of the layout."`
	Material string `query:"material" required:"true" minLength:"1" maxLength:"100" doc:"Of the layout: white-oak 5/4, 3/4."`
}

type oneMoreBody struct {
	Changes []oneMoreLine `json:"changes" doc:"One for each size that is sold, and for what lies in the rack and is not opened."`
	Words   []string      `json:"words" doc:"The same in sentences; kinds of which nothing is gained by buying one more stand in one."`
}

type oneMoreLine struct {
	Name  string  `json:"name"`
	Rack  bool    `json:"rack" doc:"It lies in the rack."`
	Taken bool    `json:"taken" doc:"The best layout found with it cuts it up."`
	More  float64 `json:"more" doc:"What the whole costs more when it is paid for; below 0 less."`
	Free  float64 `json:"free" doc:"What the whole costs less when it is not."`
	Words string  `json:"words"`
}

func (s *Server) registerCutting(api huma.API) {
	get(s, api, route{
		id: "get-cutting", path: "/api/pieces/{id}/cutting", tag: "layouts", summary: "How stock is cut, at the saw",
		about: "For each layout the cuts by setting of stop and fence, where the stock goes, and why fewer pieces of it are not enough.",
	}, func(ctx context.Context, in *ShownIn) (*valued[cuttingBody], error) {
		o, err := s.open(ctx, in.ID, in.Units)
		if err != nil {
			return nil, err
		}
		return value(s, o, in.Match, func() (cuttingBody, error) {
			out := cuttingBody{Layouts: []cuttingLine{}}
			for _, l := range o.build.Layout.All() {
				out.Layouts = append(out.Layouts, cuttingOf(o.build, l))
			}
			return out, nil
		})
	})
	get(s, api, route{
		id: "get-one-more", path: "/api/pieces/{id}/cutting/more", tag: "layouts", summary: "What one more piece of stock would change",
		about: "Solves one layout again with one more piece of each kind of stock. Takes up to a few seconds.",
	}, s.oneMore)
}

// speechOf tells a layout to the fineness of the document, with money where the shop has prices.
func speechOf(b *build.Build, l layout.Layout) explain.Speech {
	out := explain.Speech{Noun: l.Noun(), Length: b.Doc.Fineness.Show, Metric: b.Doc.Fineness.Unit.Metric()}
	if l.Priced(b.Shop) {
		out.Money = func(v float64) string { return shop.Cents(math.Round(100*v)).String() + " " + b.Quote.Currency }
	}
	return out
}

func cuttingOf(b *build.Build, l layout.Layout) cuttingLine {
	speech, p, list := speechOf(b, l), l.Problem(), l.Cuts()
	saw := sawing.Speech{Length: speech.Length, Fine: b.Doc.Fineness.Finer().Show, Noun: speech.Noun, Piece: l.PieceName}
	out := cuttingLine{
		Kind: string(l.Kind), Material: l.Material, Opened: speech.Amount(p.Opened(l.Answer)), Shares: []shareLine{},
		Why: speech.Why(explain.WhyNotFewer(p, l.Answer), l.Answer.Of), Cost: speech.Cost(p, l.Answer), Changes: list.Changes(), Note: saw.Note(p.Kerf()),
		Cautions: append([]string{}, steps.SawCautions(steps.Kind(l.Kind))...), Runs: []runLine{},
	}
	for _, x := range explain.Shares(p, l.Answer) {
		out.Shares = append(out.Shares, shareLine{string(x.Use), x.Use.Name(), speech.Amount(x.Amount), x.Of})
	}
	heads := saw.Heads(list)
	for k, r := range list.Runs {
		line := runLine{Head: heads[k], Every: r.Steps[0].N == 0, Steps: []stepLine{}}
		for _, step := range r.Steps {
			line.Steps = append(line.Steps, stepLine(saw.Step(list, step)))
		}
		out.Runs = append(out.Runs, line)
	}
	return out
}

// oneMoreNodes bounds each search for what one more piece of stock would change: as much as a layout of a
// derivation gets.
const oneMoreNodes = 20_000

func (s *Server) oneMore(ctx context.Context, in *oneMoreIn) (*valued[oneMoreBody], error) {
	o, err := s.open(ctx, in.ID, in.Units)
	if err != nil {
		return nil, err
	}
	all := o.build.Layout.All()
	at := slices.IndexFunc(all, func(l layout.Layout) bool { return string(l.Kind) == in.Kind && l.Material == in.Material })
	if at < 0 {
		return nil, problem(http.StatusNotFound, "the piece has no layout of "+quoted(in.Material), "GET /api/pieces/{id}/cutting lists them")
	}
	return value(s, o, in.Match, func() (oneMoreBody, error) {
		out := oneMoreBody{Changes: []oneMoreLine{}, Words: []string{}}
		changes, err := all[at].OneMore(ctx, cut.Limits{Nodes: oneMoreNodes})
		speech := speechOf(o.build, all[at])
		out.Words = append(out.Words, layout.OneMores(speech, changes)...)
		for _, c := range changes {
			out.Changes = append(out.Changes, oneMoreLine{c.Name, c.FromRack, c.Taken, c.More, c.Free, speech.OneMore(c.Change, c.Name)})
		}
		return out, err
	})
}
