package server

import (
	"context"
	"fmt"
	"net/http"
	"slices"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/change"
	"rodwright/internal/store"
	"rodwright/journal"
)

type takeIn struct {
	PieceIn
	WriterIn
	TapeIn
	Body struct {
		Base  int64      `json:"base" minimum:"0" doc:"The number of the last entry that the writer has seen."`
		Edits []editBody `json:"edits" maxItems:"500" doc:"Made one after the other."`
		IDs   []string   `json:"ids,omitempty" maxItems:"1000" doc:"A UUID of version 7 for each entry, in the order they are written, so that the same sent again is known. Entries that have none get one that follows from the first."`
		Say   string     `json:"say,omitempty" maxLength:"10000" doc:"What went wrong, where a way out of that is taken: it is written first."`
		Way   string     `json:"way,omitempty" maxLength:"100" doc:"The kind of the way out that is taken; its edits go with it."`
	}
}

func (s *Server) registerTake(api huma.API) {
	handle(s, api, route{
		id: "take", path: "/api/pieces/{id}/take", tag: "changes", summary: "Take edits that were weighed, or a way out",
		about: "Weighs them again on the piece as it stands, and writes the edits and what made parts are for from then on, all of it or none. The same sent again changes nothing.",
	}.operation(http.MethodPost, api), s.take)
}

func (s *Server) take(ctx context.Context, in *takeIn) (*writtenOut, error) {
	if (in.Body.Say == "") != (in.Body.Way == "") {
		p := problem(http.StatusUnprocessableEntity, "a way out is taken with what went wrong, and what went wrong with a way out", "send say and way together, or neither")
		p.Path = "way"
		return nil, p
	}
	s.writing.Lock()
	defer s.writing.Unlock()
	h, err := s.history(ctx, in.ID)
	if err != nil {
		return nil, err
	}
	if err := seen("base", in.Body.Base, h.Number); err != nil {
		return nil, err
	}
	t := &taking{Server: s, history: h, in: in}
	wanted, err := t.entries(ctx)
	if err != nil {
		return nil, err
	}
	return s.write(ctx, h, in.WriterIn, in.TapeIn, wanted)
}

// taking makes the entries of edits that are taken: what went wrong, the edits, and what made parts are for.
type taking struct {
	*Server
	*history
	in *takeIn
}

func (t *taking) entries(ctx context.Context) ([]journal.Entry, error) {
	ids, err := t.ids()
	if err != nil {
		return nil, err
	}
	fact, meant, err := t.outcome(ctx, ids)
	if err != nil {
		return nil, err
	}
	var out []journal.Entry
	if fact != nil {
		out = append(out, journal.Entry{Kind: journal.Fact, Fact: fact})
	}
	for _, e := range t.in.Body.Edits {
		out = append(out, journal.Entry{Kind: journal.Edit, Path: e.Path, New: e.Value})
	}
	for i := range meant {
		out = append(out, journal.Entry{Kind: journal.Fact, Fact: &meant[i]})
	}
	for i := range out {
		out[i].ID, out[i].Actor, out[i].Base = idAt(ids, i), t.in.actor(), t.in.Body.Base
	}
	return out, nil
}

// idAt is the id of the entry counted from 0: the one that was sent, or one that follows from the first.
func idAt(ids []string, i int) string {
	if i < len(ids) {
		return ids[i]
	}
	return following(ids[0], i)
}

// ids are those that were sent, as they are kept; at least one.
func (t *taking) ids() ([]string, error) {
	sent := t.in.Body.IDs
	if len(sent) == 0 {
		sent = []string{""}
	}
	out := make([]string, len(sent))
	for i, id := range sent {
		var err error
		if out[i], err = idOf(id, fmt.Sprintf("ids[%d]", i)); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// outcome returns what went wrong, if anything, and what made parts are for once the edits are taken. Of what was sent
// before it is what was written then.
func (t *taking) outcome(ctx context.Context, ids []string) (*journal.Happened, []journal.Happened, error) {
	n := len(t.in.Body.Edits)
	if t.in.Body.Say != "" {
		n++
	}
	there := 0
	for i := range n {
		if _, ok := t.entry(idAt(ids, i)); ok {
			there++
		}
	}
	switch {
	case there > 0 && there < n:
		return nil, nil, &store.InputError{Field: "ids", Why: "were used for other entries"}
	case there > 0:
		return t.again(ids, n)
	}
	now, err := t.whole.Now()
	if err != nil {
		return nil, nil, err
	}
	if t.in.Body.Say != "" {
		fact, way, err := t.wayOut(now)
		return fact, way.Meant, err
	}
	w, err := t.weighed(ctx, now, t.in.Body.Edits)
	if err != nil {
		return nil, nil, err
	}
	return nil, w.Meant, nil
}

// again returns what was written when the same was sent before: n entries, and what follows from them.
func (t *taking) again(ids []string, n int) (fact *journal.Happened, meant []journal.Happened, err error) {
	if t.in.Body.Say != "" {
		kept, _ := t.entry(ids[0])
		if fact, err = t.toldAgain(t.in.Body.Say, t.in.TapeIn, kept, "say"); err != nil {
			return nil, nil, err
		}
	}
	for i := n; ; i++ {
		e, ok := t.entry(idAt(ids, i))
		if !ok || e.Fact == nil {
			return fact, meant, nil
		}
		meant = append(meant, *e.Fact)
	}
}

// wayOut finds the way that is taken among those there are.
func (t *taking) wayOut(now *change.Truth) (*journal.Happened, change.WayOut, error) {
	fact, ways, err := waysOut(now, t.in.Body.Say, t.in.TapeIn)
	if err != nil {
		return nil, change.WayOut{}, err
	}
	edits := puts(t.in.Body.Edits)
	i := slices.IndexFunc(ways, func(w change.WayOut) bool { return w.Kind == t.in.Body.Way && slices.Equal(w.Edits, edits) })
	if i < 0 {
		p := problem(http.StatusUnprocessableEntity, "there is no way out of the kind "+quoted(t.in.Body.Way)+" with these edits", "ask again which there are")
		p.Path = "way"
		return nil, change.WayOut{}, p
	}
	return &fact, ways[i], nil
}
