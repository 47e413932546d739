package server

import (
	"context"
	"encoding/json"
	"net/http"
	"time"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/book"
	"rodwright/build"
	"rodwright/cut"
	"rodwright/cut/wire"
	"rodwright/draw/cutting"
	"rodwright/draw/svg"
	"rodwright/journal"
	"rodwright/layout"
	"rodwright/length"
)

type beginIn struct {
	PieceIn
	Body struct {
		Kind     string `json:"kind" enum:"stick,panel,sheet" doc:"What is cut, as in the build's cut."`
		Material string `json:"material" minLength:"1" maxLength:"100" doc:"Of what, as in the build's cut: 3/4, white-oak 5/4."`
		Seconds  int    `json:"seconds,omitempty" minimum:"1" maximum:"120" doc:"How long to look at most; left out, 20."`
	}
}

// usualSeconds is how long a search looks when nobody says.
const usualSeconds = 20

// SearchIn names a search of a piece.
type SearchIn struct {
	PieceIn
	Search string `path:"search" maxLength:"36" doc:"The id of a search."`
}

type searchOut struct {
	Cache string `header:"Cache-Control"`
	Body  searchBody
}

// searchBody is a search as it stands.
type searchBody struct {
	ID       string     `json:"id"`
	Kind     string     `json:"kind" enum:"stick,panel,sheet"`
	Material string     `json:"material"`
	Number   int64      `json:"number" doc:"Of the last entry of the piece that it was begun on."`
	State    string     `json:"state" enum:"running,done,cancelled,failed"`
	Seconds  float64    `json:"seconds" doc:"How long it looks at most."`
	Took     float64    `json:"took" doc:"How long it has looked, in seconds."`
	Before   goodBody   `json:"before" doc:"The layout that it was begun with."`
	Best     goodBody   `json:"best" doc:"The best so far."`
	Better   bool       `json:"better" doc:"The best so far is better than the layout it was begun with, or its bound is closer."`
	Fits     bool       `json:"fits" doc:"The piece still cuts just these parts from this stock, so that the layout can be accepted."`
	Accepted int64      `json:"accepted" doc:"The number of the entry that accepts it; 0 where none does."`
	Layout   layoutJSON `json:"layout" doc:"The best so far."`
}

// goodBody is how good a layout is.
type goodBody struct {
	Cost      float64 `json:"cost" doc:"Money; where there are no prices, a length or an area."`
	Bound     float64 `json:"bound" doc:"No layout costs less."`
	BoundOf   string  `json:"boundOf" enum:",without recut" doc:"Of which layouts that is true; empty: of all."`
	Gap       float64 `json:"gap" doc:"The share of the cost that another could save at most."`
	Proven    bool    `json:"proven" doc:"No layout costs less than this."`
	NotPlaced int     `json:"notPlaced" doc:"Parts that no stock is left for."`
}

func goodOf(a *cut.Answer) goodBody {
	return goodBody{a.Cost, a.Bound, string(a.Of), a.Gap(), a.Proven, len(a.NotPlaced)}
}

// layoutJSON is a layout that was written already.
type layoutJSON []byte

// MarshalJSON returns the layout as it is.
func (l layoutJSON) MarshalJSON() ([]byte, error) { return json.RawMessage(l).MarshalJSON() }

// Schema says that it is an object; package cut/wire writes it.
func (layoutJSON) Schema(huma.Registry) *huma.Schema {
	return &huma.Schema{Type: huma.TypeObject, Description: "A layout as in the build's cut, in millimetres."}
}

type searchesOut struct {
	Cache string `header:"Cache-Control"`
	Body  struct {
		Searches []searchBody `json:"searches" doc:"In the order they were begun."`
	}
}

type comparedOut struct {
	Cache string `header:"Cache-Control"`
	Body  struct {
		Before []pictureBody `json:"before" doc:"Of the layout that the search was begun with."`
		Best   []pictureBody `json:"best" doc:"Of the best so far."`
	}
}

// pictureBody is a drawing of pieces of stock that are cut alike.
type pictureBody struct {
	Title string `json:"title"`
	SVG   string `json:"svg" doc:"To put into a page."`
}

type acceptIn struct {
	SearchIn
	WriterIn
	TapeIn
	Body struct {
		Base int64  `json:"base" minimum:"0" doc:"The number of the last entry that the writer has seen."`
		ID   string `json:"id,omitempty" maxLength:"36" doc:"A UUID of version 7 that the writer makes, so that the same sent again is known."`
	}
}

func (s *Server) registerSearches(api huma.API) {
	const path = "/api/pieces/{id}/searches"
	handle(s, api, route{
		id: "begin-search", path: path, tag: "layouts", summary: "Look deeper for a layout",
		about: "Begins to look for a cheaper way to cut one material of the piece as it stands, or for a proof that none is cheaper. Where that runs already, it is told. Few run at once.",
	}.operation(http.MethodPost, api), s.beginSearch)
	get(s, api, route{
		id: "list-searches", path: path, tag: "layouts", summary: "The searches of a piece",
		about: "Those that run, and the last that are over.",
	}, s.listSearches)
	get(s, api, route{
		id: "get-search", path: path + "/{search}", tag: "layouts", summary: "How a search stands",
		about: "With the best layout so far and how good it is known to be.",
	}, s.oneSearch)
	get(s, api, route{
		id: "compare-search", path: path + "/{search}/pictures", tag: "layouts", summary: "What a search found beside what there was",
		about: "Drawings of how stock is cut by the layout at hand and by the best so far.",
	}, s.searchPictures)
	handle(s, api, route{
		id: "cancel-search", path: path + "/{search}", tag: "layouts", summary: "End a search",
		about: "The best so far stays. One that is over stays as it is.",
	}.operation(http.MethodDelete, api), s.cancelSearch)
	handle(s, api, route{
		id: "accept-layout", path: path + "/{search}/accept", tag: "layouts", summary: "Accept what a search found",
		about: "Writes an entry: the stock is cut by this layout as long as parts, stock and prices are the same; withdrawing the entry ends that. " +
			"Where the piece was changed since, so that other parts are cut or from other stock, it is a conflict. The same sent again changes nothing.",
	}.operation(http.MethodPost, api), s.acceptLayout)
}

func (s *Server) beginSearch(ctx context.Context, in *beginIn) (*searchOut, error) {
	now, err := s.open(ctx, in.ID, "")
	if err != nil {
		return nil, err
	}
	of, _, ok := now.build.LayoutOf(layout.Kind(in.Body.Kind), in.Body.Material)
	if !ok {
		p := problem(http.StatusUnprocessableEntity, "nothing of "+quoted(in.Body.Material)+" is cut for this piece as a "+in.Body.Kind, "take a kind and a material of the build's cut")
		p.Path = "material"
		return nil, p
	}
	seconds := in.Body.Seconds
	if seconds == 0 {
		seconds = usualSeconds
	}
	j, err := s.begin(now.ID, now.Number, of, time.Duration(seconds)*time.Second)
	if err != nil {
		return nil, err
	}
	return tellSearch(j, now.build)
}

// tellSearch tells how a search stands, for the piece as it stands.
func tellSearch(j *search, now *build.Build) (*searchOut, error) {
	body, err := bodyOf(j, now)
	return &searchOut{"no-store", body}, err
}

func bodyOf(j *search, now *build.Build) (searchBody, error) {
	at := j.stands()
	text, err := wire.JSON(at.best, length.MM, j.of.Kind != layout.OfSticks)
	return searchBody{
		ID: j.id, Kind: string(j.of.Kind), Material: j.of.Material, Number: j.number, State: at.state, Seconds: j.limit.Seconds(), Took: at.took.Seconds(),
		Before: goodOf(j.of.Answer), Best: goodOf(at.best), Better: layout.Gains(j.of.Answer, at.best), Fits: j.fits(now), Accepted: at.accepted, Layout: text,
	}, err
}

// fits reports whether the problem of the search is one of the piece as it stands.
func (j *search) fits(now *build.Build) bool {
	is, _, ok := now.LayoutOf(j.of.Kind, j.of.Material)
	return ok && is.Key() == j.key
}

func (s *Server) listSearches(ctx context.Context, in *PieceIn) (*searchesOut, error) {
	now, err := s.open(ctx, in.ID, "")
	if err != nil {
		return nil, err
	}
	out := &searchesOut{Cache: "no-store"}
	out.Body.Searches = []searchBody{}
	for _, j := range s.searches.of(in.ID) {
		body, err := bodyOf(j, now.build)
		if err != nil {
			return nil, err
		}
		out.Body.Searches = append(out.Body.Searches, body)
	}
	return out, nil
}

func (s *Server) oneSearch(ctx context.Context, in *SearchIn) (*searchOut, error) {
	now, err := s.open(ctx, in.ID, "")
	if err != nil {
		return nil, err
	}
	j, err := s.search(in.ID, in.Search)
	if err != nil {
		return nil, err
	}
	return tellSearch(j, now.build)
}

func (s *Server) searchPictures(ctx context.Context, in *struct {
	SearchIn
	TapeIn
},
) (*comparedOut, error) {
	now, err := s.open(ctx, in.ID, in.Units)
	if err != nil {
		return nil, err
	}
	j, err := s.search(in.ID, in.Search)
	if err != nil {
		return nil, err
	}
	best, err := j.of.Accept(j.stands().best)
	if err != nil {
		return nil, err
	}
	out := &comparedOut{Cache: "no-store"}
	out.Body.Before, out.Body.Best = picturesOf(j.of, now.build), picturesOf(best, now.build)
	return out, nil
}

func picturesOf(l layout.Layout, b *build.Build) []pictureBody {
	out := []pictureBody{}
	for _, d := range cutting.Of(l, book.A4.Style(b.Doc.Fineness)) {
		out = append(out, pictureBody{d.Title, string(svg.Render(d))})
	}
	return out
}

// cancelWithin is how long the end of a search is waited for.
const cancelWithin = 2 * time.Second

func (s *Server) cancelSearch(ctx context.Context, in *SearchIn) (*searchOut, error) {
	now, err := s.open(ctx, in.ID, "")
	if err != nil {
		return nil, err
	}
	j, err := s.search(in.ID, in.Search)
	if err != nil {
		return nil, err
	}
	j.cancel()
	select {
	case <-j.ended:
	case <-ctx.Done():
	case <-time.After(cancelWithin):
	}
	return tellSearch(j, now.build)
}

func (s *Server) acceptLayout(ctx context.Context, in *acceptIn) (*writtenOut, error) {
	s.writing.Lock()
	defer s.writing.Unlock()
	h, err := s.history(ctx, in.ID)
	if err != nil {
		return nil, err
	}
	if err := seen("base", in.Body.Base, h.Number); err != nil {
		return nil, err
	}
	j, err := s.search(in.ID, in.Search)
	if err != nil {
		return nil, err
	}
	id, err := idOf(in.Body.ID, "id")
	if err != nil {
		return nil, err
	}
	if _, again := h.entry(id); !again {
		if err := h.takes(j); err != nil {
			return nil, err
		}
	}
	kept, err := build.Acceptable(j.of.Task, j.stands().best)
	if err != nil {
		return nil, err
	}
	out, err := s.write(ctx, h, in.WriterIn, in.TapeIn, []journal.Entry{
		{ID: id, Actor: in.actor(), Base: in.Body.Base, Kind: journal.Accepted, Layout: &kept},
	})
	if err == nil {
		j.change(func() { j.accepted = out.Body.Entries[0].Number })
	}
	return out, err
}

// takes refuses a search that still runs, and one for other parts or other stock than the piece has now.
func (h *history) takes(j *search) error {
	if j.stands().state == searching {
		return problem(http.StatusConflict, "the search still runs", "cancel it first, or wait until it is done")
	}
	now, err := h.whole.Now()
	if err != nil {
		return inFile(err, h.Name)
	}
	is, _, ok := now.Build.LayoutOf(j.of.Kind, j.of.Material)
	switch {
	case !ok:
		return problem(http.StatusConflict, "nothing of "+j.of.Material+" is cut for this piece any more", "")
	case is.Key() != j.key:
		return problem(http.StatusConflict, "the piece was changed since this was looked for: "+is.Misfit(j.stands().best), "look deeper again")
	}
	return nil
}
