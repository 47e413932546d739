package server_test

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"strings"
	"testing"

	"rodwright/build"
	"rodwright/journal"
	"rodwright/piece"
	"rodwright/shop"
)

// written is what is told of a log.
type written struct {
	Number              int64
	Entries             []told
	Orders              []order
	Finished, Delivered bool
}

type told struct {
	Number, Base                                        int64
	ID, Actor, Kind, Words, Path, Old, New, Names, What string
	Stands, MayUndo                                     bool
	At                                                  int64
	Order                                               *order
}

type order struct {
	No               int
	ID, Words, Ready string
	Number           int64
	Cents            *int64
	Answered, Yes    bool
	Edits            []struct{ Path, Value string }
}

// at is the path of what there is of an example.
func (h *house) at(name, what string) string { return "/api/pieces/" + h.ids[name] + "/" + what }

// posts sends a body that must be taken, and reads the answer.
func (h *house) posts(t testing.TB, path, body string, v any) {
	t.Helper()
	w := h.answers(request("POST", path, body))
	if w.Code != http.StatusOK {
		t.Fatalf("POST %s %s: %d %s", path, body, w.Code, w.Body)
	}
	if err := json.Unmarshal(w.Body.Bytes(), v); err != nil {
		t.Fatalf("POST %s: %v", path, err)
	}
}

// writes writes entries after the last one there is.
func (h *house) writes(t testing.TB, name string, entries ...string) (got written) {
	t.Helper()
	h.posts(t, h.at(name, "entries"), fmt.Sprintf(`{"base":%d,"entries":[%s]}`, h.number(t, name), strings.Join(entries, ",")), &got)
	return got
}

func (h *house) number(t testing.TB, name string) int64 {
	t.Helper()
	var got written
	h.into(t, h.at(name, "log"), &got)
	return got.Number
}

// fact is an entry that tells a fact in words.
func fact(say string) string {
	text, err := json.Marshal(map[string]string{"kind": "fact", "say": say})
	if err != nil {
		return err.Error()
	}
	return string(text)
}

// id is the id of an entry, by a number.
func id(n int) string { return fmt.Sprintf("01890000-0000-7000-8000-%012x", n) }

type things struct {
	Number int64
	Things []struct {
		ID, Label, Tag, Place, State, Kind, Material, Stock, Spoiled, Todo, Why string
		Size                                                                    [3]float64
		Measured                                                                bool
		HoursH                                                                  float64
	}
	Goods []struct {
		ID, Tag, Kind, Material, Quarters, Item string
		Size                                    [3]float64
		Left, Count                             float64
		Cents                                   *int64
	}
	Distances []struct {
		From, To, Over, Bearing string
		Value, Drawn, Now       float64
		Number                  int64
	}
}

// The upper part of a front leg of the packing table is cut 26 1/2 in: 673.1 mm. A cut of 26 5/8 in, 676.275 mm, out of
// a stick of 21 ft, 6400.8 mm, leaves 5724.525 mm.
func TestWhatWasDoneIsWrittenAndShown(t *testing.T) {
	h := opened(t, "packing-table")
	got := h.writes(t, "packing-table",
		fact("bought stick 1 21 ft as S1 for 41"),
		fact("made C2.1 cut-pipe 26 1/2 in from S1 taking 26 5/8 in in 25 min"))
	if got.Number != 2 || len(got.Entries) != 2 || !got.Entries[1].Stands || got.Entries[1].What != "made" || got.Entries[1].Actor != "maker" || got.Entries[1].At == 0 {
		t.Fatalf("%+v", got)
	}
	if w := got.Entries[1].Words; w != "made C2.1 cut-pipe 26 1/2 in from S1 taking 26 5/8 in in 25 min" {
		t.Errorf("%q", w)
	}
	var now things
	h.into(t, h.at("packing-table", "things"), &now)
	if len(now.Things) != 1 || len(now.Goods) != 1 || now.Number != 2 {
		t.Fatalf("%+v", now)
	}
	leg := now.Things[0]
	if leg.ID != got.Entries[1].ID || leg.Label != "C2.1" || leg.Tag != "C2.1" || leg.Place == "" || leg.State != "blank cut" || leg.Size[0] != 673.1 || !leg.Measured || leg.Stock != "S1" || leg.Todo != "" {
		t.Errorf("%+v", leg)
	}
	if s := now.Goods[0]; s.Tag != "S1" || s.Size[0] != 6400.8 || s.Left != 5724.525 || *s.Cents != 4100 {
		t.Errorf("%+v", s)
	}
}

// What is derived with the facts is what deriving the document with the log gives, whichever page asks.
func TestABuildOfAPieceUnderWayIsThatOfItsLog(t *testing.T) {
	h := opened(t, "packing-table")
	at := h.at("packing-table", "build")
	before := h.answers(request("GET", at, ""))
	h.writes(t, "packing-table", fact("made C2.1 cut-pipe"), `{"kind":"edit","path":"sizes/height","new":"34 in"}`)
	after := h.answers(request("GET", at, ""))
	if before.Header().Get("ETag") == after.Header().Get("ETag") {
		t.Error("what was made changes no tag")
	}
	if want := h.derives(t, "packing-table"); after.Body.String() != want {
		t.Error("the build is not that of the log")
	}
	var got struct {
		Under struct{ Made []struct{ Label string } }
	}
	if err := json.Unmarshal(after.Body.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	var list listed
	h.into(t, "/api/pieces", &list)
	if list.Pieces[0].Number != 2 || list.Pieces[0].Problem != "" {
		t.Errorf("%+v", list.Pieces[0])
	}
	if book := h.reads(t, h.at("packing-table", "book.html")); len(book) == 0 {
		t.Error("no book")
	}
}

// derives returns the build of an example from its text and log, as the command line writes it.
func (h *house) derives(t testing.TB, name string) string {
	t.Helper()
	ctx := context.Background()
	text, _, err := h.store.Text(ctx, h.ids[name])
	if err != nil {
		t.Fatal(err)
	}
	log, err := h.store.Log(ctx, h.ids[name], 0)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := piece.Read(name, text)
	if err != nil {
		t.Fatal(err)
	}
	b, err := build.Derive(build.Input{Document: doc, Shop: shop.Sample(), Record: journal.Fold(log)}, nil)
	if err != nil {
		t.Fatal(err)
	}
	out, err := b.JSON()
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

func TestTheSameSentAgainChangesNothing(t *testing.T) {
	h := opened(t, "packing-table")
	body := fmt.Sprintf(`{"base":0,"entries":[
		{"id":%q,"kind":"fact","say":"made C2.1 cut-pipe 26 1/2 in","at":1700000000000},
		{"id":%q,"kind":"fact","say":"made C2.1 thread"},
		{"id":%q,"kind":"edit","path":"sizes/height","new":"36 in"}]}`, id(1), id(2), id(3))
	var first, second, third written
	h.posts(t, h.at("packing-table", "entries"), body, &first)
	h.posts(t, h.at("packing-table", "entries"), body, &second)
	h.writes(t, "packing-table", fact("made C2.2 cut-pipe")) // the plan is another by now
	h.posts(t, h.at("packing-table", "entries"), strings.Replace(body, `"base":0`, `"base":4`, 1), &third)
	if first.Number != 3 || second.Number != 3 || third.Number != 4 || first.Entries[0].At != 1700000000000 {
		t.Errorf("%d, then %d, then %d", first.Number, second.Number, third.Number)
	}
	for i := range first.Entries {
		if first.Entries[i].ID != third.Entries[i].ID || third.Entries[i].Number != first.Entries[i].Number {
			t.Errorf("entry %d: %+v, then %+v", i, first.Entries[i], third.Entries[i])
		}
	}
	var now things
	h.into(t, h.at("packing-table", "things"), &now)
	if len(now.Things) != 2 {
		t.Errorf("%d parts were made", len(now.Things))
	}
	p := h.refuses(t, request("POST", h.at("packing-table", "entries"), fmt.Sprintf(`{"base":4,"entries":[{"id":%q,"kind":"fact","say":"made C2.2 cut-pipe 26 1/2 in"}]}`, id(1))), http.StatusUnprocessableEntity)
	if p.Path != "id" {
		t.Errorf("another entry of the same id: %+v", p)
	}
}

func TestEditsOfOtherValuesMergeAndOfTheSameAreToldBoth(t *testing.T) {
	h := opened(t, "packing-table")
	h.writes(t, "packing-table", `{"kind":"edit","path":"sizes/height","new":"36 in"}`)
	var got written
	h.posts(t, h.at("packing-table", "entries"), `{"base":0,"entries":[{"kind":"edit","path":"sizes/depth","new":"29 in"}]}`, &got)
	if got.Number != 2 {
		t.Errorf("%+v", got)
	}
	w := h.answers(request("POST", h.at("packing-table", "entries"), `{"base":0,"entries":[{"kind":"edit","path":"sizes/height","new":"37 in"}]}`))
	var p struct {
		Path, Yours, Theirs, Actor, Right string
		Number                            int64
	}
	if err := json.Unmarshal(w.Body.Bytes(), &p); err != nil || w.Code != http.StatusConflict {
		t.Fatalf("%d %v %s", w.Code, err, w.Body)
	}
	if p.Path != "sizes/height" || p.Yours != "37 in" || p.Theirs != "36 in" || p.Actor != "maker" || p.Number != 1 || p.Right == "" {
		t.Errorf("%+v", p)
	}
	if n := h.number(t, "packing-table"); n != 2 {
		t.Errorf("%d entries", n)
	}
}

func TestAnUndoIsOfferedToWhoMayTakeIt(t *testing.T) {
	h := opened(t, "packing-table")
	first := h.writes(t, "packing-table", `{"kind":"edit","path":"sizes/height","new":"36 in"}`).Entries[0]
	if !first.MayUndo || first.Old != "35 in" || first.New != "36 in" {
		t.Errorf("%+v", first)
	}
	other := request("GET", h.at("packing-table", "log"), "")
	other.Header.Set("X-Actor", "helper")
	var seen written
	if err := json.Unmarshal(h.answers(other).Body.Bytes(), &seen); err != nil || seen.Entries[0].MayUndo {
		t.Errorf("%v: another may undo it: %+v", err, seen.Entries)
	}
	undo := h.writes(t, "packing-table", fmt.Sprintf(`{"kind":"undo","names":%q}`, first.ID)).Entries[0]
	var got written
	h.into(t, h.at("packing-table", "log"), &got)
	if got.Entries[0].Stands || got.Entries[0].MayUndo || !undo.MayUndo || undo.Names != first.ID {
		t.Errorf("%+v", got.Entries)
	}
}

func TestWhoWritesIsNamed(t *testing.T) {
	h := opened(t, "packing-table")
	r := request("POST", h.at("packing-table", "entries"), `{"base":0,"entries":[`+fact("finished")+`]}`)
	r.Header.Set("X-Actor", "helper")
	var got written
	if err := json.Unmarshal(h.answers(r).Body.Bytes(), &got); err != nil || got.Entries[0].Actor != "helper" {
		t.Errorf("%v %+v", err, got)
	}
	h.into(t, h.at("packing-table", "log"), &got)
	if !got.Finished || got.Delivered {
		t.Errorf("%+v", got)
	}
	r = request("POST", h.at("packing-table", "entries"), `{"base":0,"entries":[`+fact("finished")+`]}`)
	r.Header.Set("X-Actor", strings.Repeat("a", 101))
	if p := h.refuses(t, r, http.StatusUnprocessableEntity); p.Path != "actor" {
		t.Errorf("%+v", p)
	}
}

func TestAFactIsWithdrawn(t *testing.T) {
	h := opened(t, "packing-table")
	before := h.reads(t, h.at("packing-table", "build"))
	made := h.writes(t, "packing-table", fact("made C2.1 cut-pipe")).Entries[0]
	got := h.writes(t, "packing-table", fmt.Sprintf(`{"kind":"withdrawn","names":%q}`, made.ID))
	if got.Number != 2 || got.Entries[0].Words == "" {
		t.Errorf("%+v", got)
	}
	if h.reads(t, h.at("packing-table", "build")) != before {
		t.Error("what was withdrawn is in the build")
	}
	var now things
	h.into(t, h.at("packing-table", "things"), &now)
	if len(now.Things) != 0 {
		t.Errorf("%+v", now)
	}
}

// The side rails of the table lie between posts that stand 24 in apart or so: what they are drawn at is told with it.
func TestAMeasuredDistanceIsToldAgainstTheDrawing(t *testing.T) {
	h := opened(t, "packing-table")
	h.writes(t, "packing-table", fact("measured front left post to back left post 25 in"))
	var now things
	h.into(t, h.at("packing-table", "things"), &now)
	if len(now.Distances) != 1 {
		t.Fatalf("%+v", now)
	}
	if d := now.Distances[0]; d.From != "front left post" || d.Value != 635 || d.Drawn == 0 || d.Now == 0 || d.Bearing == "" || d.Number != 1 {
		t.Errorf("%+v", d)
	}
}

func TestWhatCannotBeWrittenIsToldWithPathAndWhatIsRight(t *testing.T) {
	h := opened(t, "packing-table")
	for _, c := range []struct{ entry, path, right string }{
		{fact("made Z9 cut-pipe"), "entries[0].say", "C2.1"},
		{fact("made C2.1 polish"), "entries[0].say", "cut-pipe"},
		{fact("nonsense"), "entries[0].say", "made"},
		{fact("spoiled C2.1 bent"), "entries[0].say", "made C2.1"},
		{fact("measured moon to floor 3 in"), "entries[0].say", "front left post"},
		{fact("made C2.1 cut-pipe 26 cubits"), "entries[0].say", ""},
		{`{"kind":"fact"}`, "entries[0].say", "say"},
		{`{"kind":"edit","new":"3 in"}`, "entries[0].path", "path"},
		{`{"kind":"edit","path":"sizes/hight","new":"3 in"}`, "sizes/hight", "height"},
		{`{"kind":"edit","path":"sizes/height","new":"3 in","say":"made"}`, "entries[0].say", "out"},
		{`{"kind":"told"}`, "entries[0].kind", ""},
		{`{"kind":"withdrawn","names":"x"}`, "names", ""},
		{`{"kind":"answer","names":"` + id(9) + `","yes":true}`, "names", ""},
		{`{"id":"x","kind":"fact","say":"finished"}`, "entries[0].id", "UUID"},
		{`{"kind":"asked","words":"lower"}`, "entries[0].edits", ""},
		{`{"kind":"asked","edits":[{"path":"sizes/hight","value":"3 in"}]}`, "sizes/hight", "height"},
		{`{"kind":"fact","say":"finished","at":99999999999999}`, "at", ""},
	} {
		p := h.refuses(t, request("POST", h.at("packing-table", "entries"), `{"base":0,"entries":[`+c.entry+`]}`), http.StatusUnprocessableEntity)
		if p.Path != c.path || !strings.Contains(p.Right, c.right) {
			t.Errorf("%s: %+v", c.entry, p)
		}
	}
	if p := h.refuses(t, request("POST", h.at("packing-table", "entries"), `{"base":1,"entries":[`+fact("finished")+`]}`), http.StatusUnprocessableEntity); p.Path != "base" {
		t.Errorf("%+v", p)
	}
	if p := h.refuses(t, request("POST", h.at("packing-table", "entries"), `{"base":0,"entries":[`+fact("finished")+`,`+fact("made")+`]}`), http.StatusUnprocessableEntity); p.Path != "entries[1].say" {
		t.Errorf("%+v", p)
	}
	if n := h.number(t, "packing-table"); n != 0 {
		t.Errorf("%d entries were written", n)
	}
}

func TestAPieceThatIsNotThereHasNothingWritten(t *testing.T) {
	h := opened(t, "low-bench")
	for path, body := range map[string]string{
		"entries": `{"base":0,"entries":[` + fact("finished") + `]}`, "weigh": `{"base":0,"edits":[]}`, "take": `{"base":0,"edits":[]}`, "wrong": `{"base":0,"say":"spoiled A1 split"}`,
	} {
		h.refuses(t, request("POST", "/api/pieces/"+nobody+"/"+path, body), http.StatusNotFound)
	}
	for _, path := range []string{"log", "things", "yields?stock=P1", "compare?from=0"} {
		h.refuses(t, request("GET", "/api/pieces/"+nobody+"/"+path, ""), http.StatusNotFound)
	}
}

// The log of a document that can't be derived any more is told still.
func TestALogIsToldWhereItsDocumentCannotBeRead(t *testing.T) {
	h := opened(t, "low-bench")
	h.append(t, "low-bench", "sizes/length", "two cubits")
	var got written
	h.into(t, h.at("low-bench", "log"), &got)
	if len(got.Entries) != 1 || !strings.Contains(got.Entries[0].Words, "two cubits") {
		t.Errorf("%+v", got)
	}
	undone := h.writes(t, "low-bench", fmt.Sprintf(`{"kind":"undo","names":%q}`, got.Entries[0].ID))
	if undone.Number != 2 {
		t.Errorf("%+v", undone)
	}
}
