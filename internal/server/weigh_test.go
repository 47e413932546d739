package server_test

import (
	"encoding/json"
	"fmt"
	"math"
	"net/http"
	"strings"
	"testing"
	"time"

	"rodwright/change"
	"rodwright/internal/server"
)

type weighed struct {
	Number int64
	change.Weighed
}

type ways struct {
	Number int64
	Fact   string
	Ways   []change.WayOut
}

// total is the total of the quote of an example, in hundredths.
func (h *house) total(t testing.TB, name string) int64 {
	t.Helper()
	var got struct{ Price struct{ Total *float64 } }
	h.into(t, h.at(name, "build"), &got)
	if got.Price.Total == nil {
		t.Fatal("the total is not known")
	}
	return int64(math.Round(*got.Price.Total * 100))
}

// begun is a house with a packing table under way: the upper parts of the front legs are cut, 26 1/2 in each.
func begun(t testing.TB, more ...string) *house {
	t.Helper()
	h := opened(t, "packing-table")
	h.writes(t, "packing-table", append([]string{fact("made C2.1 cut-pipe"), fact("made C2.2 cut-pipe")}, more...)...)
	return h
}

// The table is lowered by an inch: the cut legs are an inch too long, 25.4 mm, which is cut off each.
func TestWhatIsWeighedIsWhatTakingItGives(t *testing.T) {
	h := begun(t)
	before := h.total(t, "packing-table")
	body := `{"base":2,"edits":[{"path":"sizes/height","value":"34 in"}]}`
	var w weighed
	h.posts(t, h.at("packing-table", "weigh"), body, &w)
	if w.Number != 2 || w.Nothing || len(w.Fates) != 2 || len(w.Words) == 0 {
		t.Fatalf("%+v", w)
	}
	for _, f := range w.Fates {
		if f.Kind != "cut down" || len(f.Off) != 1 || f.Off[0].MM != 25.4 || f.Unchanged {
			t.Errorf("%+v", f)
		}
	}
	if h.number(t, "packing-table") != 2 {
		t.Error("weighing wrote something")
	}
	var got written
	h.posts(t, h.at("packing-table", "take"), body, &got)
	if len(got.Entries) < 1 || got.Entries[0].Path != "sizes/height" || got.Number != 2+int64(len(got.Entries)) {
		t.Errorf("%+v", got)
	}
	if w.Cost.Total == nil || h.total(t, "packing-table")-before != *w.Cost.Total {
		t.Errorf("the quote went from %d to %d, and %v was told", before, h.total(t, "packing-table"), w.Cost.Total)
	}
	if h.reads(t, h.at("packing-table", "build")) != h.derives(t, "packing-table") {
		t.Error("the build is not that of the log")
	}
	var now things
	h.into(t, h.at("packing-table", "things"), &now)
	for i, thing := range now.Things {
		if thing.Todo != w.Fates[i].Words || thing.Place != w.Fates[i].To || thing.Tag != w.Fates[i].Tag {
			t.Errorf("%+v; weighed %+v", thing, w.Fates[i])
		}
	}
}

// The front legs are made shorter than the back ones: what was cut for the front serves at the back then.
func TestPartsThatAreForAnotherPlaceAreWrittenOnce(t *testing.T) {
	h := opened(t, "packing-table")
	h.writes(t, "packing-table", fact("made C2.1 cut-pipe"), fact("spoiled C2.1 bent"), fact("made C4.1 cut-pipe 28 1/2 in"), fact("made C2.1 cut-pipe 25 1/2 in"))
	body := func(base int64) string {
		return fmt.Sprintf(`{"base":%d,"ids":[%q],"edits":[{"path":"sizes/height","value":"36 in"}]}`, base, id(50))
	}
	var w weighed
	h.posts(t, h.at("packing-table", "weigh"), `{"base":4,"edits":[{"path":"sizes/height","value":"36 in"}]}`, &w)
	var first, again written
	h.posts(t, h.at("packing-table", "take"), body(4), &first)
	h.posts(t, h.at("packing-table", "take"), body(4), &again)
	if first.Number != again.Number || len(first.Entries) != len(again.Entries) || first.Entries[0].ID != id(50) {
		t.Errorf("%+v, then %+v", first, again)
	}
	if p := h.refuses(t, request("POST", h.at("packing-table", "take"), strings.Replace(body(4), "36 in", "37 in", 1)), http.StatusUnprocessableEntity); p.Path != "id" {
		t.Errorf("%+v", p)
	}
	for _, f := range w.Fates {
		moved := false
		for _, e := range first.Entries {
			moved = moved || e.What == "meant" && strings.Contains(e.Words, f.Label)
		}
		if moved != (f.From != f.To) {
			t.Errorf("%+v: written %v in %+v", f, moved, first.Entries)
		}
	}
}

func TestEditsWithoutEffectAreSaidToChangeNothing(t *testing.T) {
	h := begun(t)
	var w weighed
	h.posts(t, h.at("packing-table", "weigh"), `{"base":2,"edits":[]}`, &w)
	if !w.Nothing || *w.Cost.Total != 0 {
		t.Errorf("%+v", w)
	}
}

func TestWhatCannotBeWeighedIsToldWithItsPath(t *testing.T) {
	h := begun(t)
	for _, route := range []string{"weigh", "take"} {
		for edit, path := range map[string]string{
			`{"path":"sizes/hight","value":"3 in"}`: "sizes/hight", `{"path":"sizes/height","value":"tall"}`: "sizes/height", `{"path":"sizes/height","value":"3 in"}`: "sizes/height",
		} {
			p := h.refuses(t, request("POST", h.at("packing-table", route), `{"base":2,"edits":[`+edit+`]}`), http.StatusUnprocessableEntity)
			if p.Path != path || p.Place == nil || p.Place.File != "packing-table" {
				t.Errorf("%s %s: %+v", route, edit, p)
			}
		}
		if p := h.refuses(t, request("POST", h.at("packing-table", route), `{"base":3,"edits":[]}`), http.StatusUnprocessableEntity); p.Path != "base" || p.Right == "" {
			t.Errorf("%+v", p)
		}
	}
	if p := h.refuses(t, request("POST", h.at("packing-table", "take"), `{"base":2,"edits":[],"ids":["x"]}`), http.StatusUnprocessableEntity); p.Path != "ids[0]" {
		t.Errorf("%+v", p)
	}
}

func TestWhatWasTakenMeanwhileIsNotTakenOver(t *testing.T) {
	h := begun(t, `{"kind":"edit","path":"sizes/height","new":"34 in"}`)
	h.refuses(t, request("POST", h.at("packing-table", "take"), `{"base":2,"edits":[{"path":"sizes/height","value":"33 in"}]}`), http.StatusConflict)
	var got written
	h.posts(t, h.at("packing-table", "take"), `{"base":2,"edits":[{"path":"sizes/depth","value":"29 in"}]}`, &got)
	if got.Entries[0].Base != 2 {
		t.Errorf("%+v", got)
	}
}

// The clock of the shop stands at the 4th of May 2026: the piece is ready as many days later as it may be promised in.
func TestAnOrderWaitsForItsAnswer(t *testing.T) {
	h := begun(t)
	h.Server = served(t, server.Options{Store: h.store, Now: func() time.Time { return time.Date(2026, 5, 4, 9, 0, 0, 0, time.UTC) }})
	asked := fmt.Sprintf(`{"id":%q,"kind":"asked","words":"a little lower","edits":[{"path":"sizes/height","value":"34 in"}]}`, id(60))
	edits := `{"base":2,"edits":[{"path":"sizes/height","value":"34 in"}]}`
	var w weighed
	h.posts(t, h.at("packing-table", "weigh"), edits, &w)
	before := h.total(t, "packing-table")
	text := h.reads(t, h.at("packing-table", "text"))

	got := h.writes(t, "packing-table", asked)
	o := got.Entries[0].Order
	ready := time.Date(2026, 5, 4+w.Promise.To, 0, 0, 0, 0, time.UTC).Format(time.DateOnly)
	if o == nil || o.No != 1 || *o.Cents != *w.Cost.Total || o.Ready != ready || o.Answered || o.Words != "a little lower" || o.Edits[0].Value != "34 in" {
		t.Fatalf("%+v; want ready %s", o, ready)
	}
	if h.total(t, "packing-table") != before || h.reads(t, h.at("packing-table", "text")) != text {
		t.Error("what waits is in the piece already")
	}
	// A day later the same request comes again.
	h.Server = served(t, server.Options{Store: h.store, Now: func() time.Time { return time.Date(2026, 5, 5, 9, 0, 0, 0, time.UTC) }})
	if again := h.writes(t, "packing-table", asked); again.Number != 3 || again.Entries[0].Order.Ready != ready {
		t.Errorf("%+v", again)
	}

	yes := fmt.Sprintf(`{"id":%q,"kind":"answer","names":%q,"yes":true}`, id(61), id(60))
	first := h.writes(t, "packing-table", yes)
	again := h.writes(t, "packing-table", yes)
	if first.Number != again.Number || len(first.Entries) != len(again.Entries) {
		t.Errorf("%+v, then %+v", first, again)
	}
	if d := h.total(t, "packing-table") - before; d != *o.Cents {
		t.Errorf("the quote moved by %d, and the client was told %d", d, *o.Cents)
	}
	if h.reads(t, h.at("packing-table", "build")) != h.derives(t, "packing-table") {
		t.Error("the build is not that of the log")
	}
	var log written
	h.into(t, h.at("packing-table", "log"), &log)
	if len(log.Orders) != 1 || !log.Orders[0].Answered || !log.Orders[0].Yes || log.Orders[0].ID != id(60) || log.Orders[0].Number != 3 {
		t.Errorf("%+v", log.Orders)
	}
	// Withdrawn, it is as if nothing had been asked.
	h.writes(t, "packing-table", fmt.Sprintf(`{"kind":"withdrawn","names":%q}`, id(61)))
	if h.reads(t, h.at("packing-table", "text")) != text {
		t.Error("a withdrawn yes is in the document still")
	}
}

// A yes writes what made parts are for from then on, as taking the edits would.
func TestAYesSaysWhatMadePartsAreFor(t *testing.T) {
	facts := []string{fact("made C4.1 cut-pipe 28 1/2 in"), fact("made C2.1 cut-pipe 25 1/2 in"), fact("made C2.2 cut-pipe 20 in")}
	h, other := opened(t, "packing-table"), opened(t, "packing-table")
	h.writes(t, "packing-table", facts...)
	other.writes(t, "packing-table", facts...)
	var taken written
	other.posts(t, other.at("packing-table", "take"), `{"base":3,"edits":[{"path":"sizes/height","value":"37 in"}]}`, &taken)
	h.writes(t, "packing-table", fmt.Sprintf(`{"id":%q,"kind":"asked","edits":[{"path":"sizes/height","value":"37 in"}]}`, id(70)))
	got := h.writes(t, "packing-table", fmt.Sprintf(`{"id":%q,"kind":"answer","names":%q,"yes":true}`, id(71), id(70)))
	if len(got.Entries) != len(taken.Entries) {
		t.Fatalf("%+v; taking wrote %+v", got.Entries, taken.Entries)
	}
	for i := 1; i < len(got.Entries); i++ {
		if got.Entries[i].Words != taken.Entries[i].Words || got.Entries[i].What != "meant" {
			t.Errorf("%+v; taking wrote %+v", got.Entries[i], taken.Entries[i])
		}
	}
}

func TestANoLeavesThePieceAsItIs(t *testing.T) {
	h := opened(t, "packing-table")
	before := h.reads(t, h.at("packing-table", "build"))
	h.writes(t, "packing-table", fmt.Sprintf(`{"id":%q,"kind":"asked","edits":[{"path":"sizes/height","value":"34 in"}]}`, id(80)))
	if h.reads(t, h.at("packing-table", "build")) != before {
		t.Error("what was asked for changed the build")
	}
	h.writes(t, "packing-table", fmt.Sprintf(`{"kind":"answer","names":%q}`, id(80)))
	if h.reads(t, h.at("packing-table", "build")) != before {
		t.Error("a no changed the build")
	}
	var log written
	h.into(t, h.at("packing-table", "log"), &log)
	if o := log.Orders[0]; !o.Answered || o.Yes {
		t.Errorf("%+v", o)
	}
	p := h.refuses(t, request("POST", h.at("packing-table", "entries"), fmt.Sprintf(`{"base":2,"entries":[{"kind":"answer","names":%q,"yes":true}]}`, id(80))), http.StatusUnprocessableEntity)
	if p.Path != "names" {
		t.Errorf("%+v", p)
	}
}

// An order whose value was changed since it was asked for is not taken unseen.
func TestAYesToWhatChangedMeanwhileIsAConflict(t *testing.T) {
	h := opened(t, "packing-table")
	h.writes(t, "packing-table", fmt.Sprintf(`{"id":%q,"kind":"asked","edits":[{"path":"sizes/height","value":"34 in"}]}`, id(80)), `{"kind":"edit","path":"sizes/height","new":"36 in"}`)
	p := h.refuses(t, request("POST", h.at("packing-table", "entries"), fmt.Sprintf(`{"base":2,"entries":[{"kind":"answer","names":%q,"yes":true}]}`, id(80))), http.StatusConflict)
	if p.Path != "sizes/height" {
		t.Errorf("%+v", p)
	}
}

// A leg is cut 3/4 in too short.
func TestWhenSomethingGoesWrongTheWaysOutAreListed(t *testing.T) {
	h := begun(t)
	say := "wrong C2.1 25 3/4 in: cut too short"
	var got ways
	h.posts(t, h.at("packing-table", "wrong"), fmt.Sprintf(`{"base":2,"say":%q}`, say), &got)
	if got.Fact != say || len(got.Ways) < 2 || got.Number != 2 {
		t.Fatalf("%+v", got)
	}
	for i, w := range got.Ways {
		if w.Kind == "" || w.Words == "" || i > 0 && w.Cents != nil && got.Ways[i-1].Cents != nil && *w.Cents < *got.Ways[i-1].Cents {
			t.Errorf("way %d: %+v", i, w)
		}
	}
	if h.number(t, "packing-table") != 2 {
		t.Error("asking wrote something")
	}
	for route, body := range map[string]string{
		"finished": `{"base":2,"say":"finished"}`, "a part not made": `{"base":2,"say":"wrong C4.1 25 in: short"}`, "no words": `{"base":2,"say":" "}`,
	} {
		if p := h.refuses(t, request("POST", h.at("packing-table", "wrong"), body), http.StatusUnprocessableEntity); p.Path != "say" || p.Right == "" {
			t.Errorf("%s: %+v", route, p)
		}
	}
}

// Each way out, taken, costs what it was said to cost.
func TestAWayOutIsTakenWithWhatWentWrong(t *testing.T) {
	for _, say := range []string{"wrong C2.1 25 3/4 in: cut too short", "spoiled C2.1 bent"} {
		var offered ways
		begins := begun(t)
		begins.posts(t, begins.at("packing-table", "wrong"), fmt.Sprintf(`{"base":2,"say":%q}`, say), &offered)
		if len(offered.Ways) == 0 {
			t.Errorf("%s: there is no way out", say)
		}
		for i, way := range offered.Ways {
			h := begun(t)
			before := h.total(t, "packing-table")
			var edits []string
			for _, e := range way.Edits {
				edits = append(edits, fmt.Sprintf(`{"path":%q,"value":%q}`, e.Path, e.New))
			}
			body := fmt.Sprintf(`{"base":2,"ids":[%q],"say":%q,"way":%q,"edits":[%s]}`, id(90), say, way.Kind, strings.Join(edits, ","))
			var first, again written
			h.posts(t, h.at("packing-table", "take"), body, &first)
			h.posts(t, h.at("packing-table", "take"), body, &again)
			if first.Number != again.Number || len(first.Entries) != len(again.Entries) {
				t.Errorf("%s %d: %+v, then %+v", say, i, first, again)
			}
			if first.Entries[0].What != strings.Fields(say)[0] {
				t.Errorf("%s %d: %+v", say, i, first.Entries[0])
			}
			if d := h.total(t, "packing-table") - before; way.Cents == nil || d != *way.Cents {
				t.Errorf("%s, %s: the quote moved by %d, and %v was told", say, way.Words, d, way.Cents)
			}
		}
	}
	h := begun(t)
	for body, path := range map[string]string{
		`{"base":2,"edits":[],"say":"spoiled C2.1 bent"}`: "way", `{"base":2,"edits":[],"say":"spoiled C2.1 bent","way":"pray"}`: "way", `{"base":2,"edits":[],"say":"spoiled","way":"make again"}`: "say",
	} {
		if p := h.refuses(t, request("POST", h.at("packing-table", "take"), body), http.StatusUnprocessableEntity); p.Path != path {
			t.Errorf("%s: %+v", body, p)
		}
	}
}

// A stick of 21 ft, 252 in: a leg of 26 1/2 in comes out of what lies behind the start.
func TestBoughtStockSaysWhatItStillGives(t *testing.T) {
	h := opened(t, "packing-table")
	h.writes(t, "packing-table", fact("bought stick 1 21 ft as S1 for 41"))
	var whole, rest change.Yield
	h.into(t, h.at("packing-table", "yields?stock=S1"), &whole)
	h.into(t, h.at("packing-table", "yields?stock=S1&start=200+in"), &rest)
	if whole.Stock != "S1" || whole.Left != 6400.8 || len(whole.Parts) == 0 || rest.Start != 5080 || len(rest.Parts) != len(whole.Parts) {
		t.Fatalf("%+v; %+v", whole, rest)
	}
	for i, p := range whole.Parts {
		if rest.Parts[i].Count > p.Count {
			t.Errorf("%+v; behind 200 in %+v", p, rest.Parts[i])
		}
	}
	for query, path := range map[string]string{"stock=S2": "stock", "stock=S1&start=far": "start", "stock=S1&start=300+in": "start", "start=3": "stock"} {
		if p := h.refuses(t, request("GET", h.at("packing-table", "yields?"+query), ""), http.StatusUnprocessableEntity); p.Path != path {
			t.Errorf("%s: %+v", query, p)
		}
	}
}

func TestTwoMomentsOfAPieceAreLaidSideBySide(t *testing.T) {
	h := begun(t, `{"kind":"edit","path":"sizes/height","new":"36 in"}`)
	type compared struct {
		From, To int64
		Words    []string
		Ripple   change.Ripple
	}
	var all, edit, none compared
	h.into(t, h.at("packing-table", "compare"), &all)
	h.into(t, h.at("packing-table", "compare?from=2&to=3"), &edit)
	h.into(t, h.at("packing-table", "compare?from=1&to=1"), &none)
	if all.From != 0 || all.To != 3 || !none.Ripple.Empty() || len(none.Words) != 0 {
		t.Errorf("%+v, %+v", all, none)
	}
	if len(edit.Ripple.Cuts) != 2 || edit.Ripple.Cuts[0].To != 698.5 || !strings.Contains(strings.Join(edit.Words, " "), `27 1/2 in`) {
		t.Errorf("%+v", edit)
	}
	if text := h.reads(t, h.at("packing-table", "compare?from=2&units=metric")); !strings.Contains(text, "mm") {
		t.Error(text)
	}
	for query, path := range map[string]string{"from=4": "from", "from=0&to=4": "to", "from=-1": "from"} {
		if p := h.refuses(t, request("GET", h.at("packing-table", "compare?"+query), ""), http.StatusUnprocessableEntity); p.Path != path {
			t.Errorf("%s: %+v", query, p)
		}
	}
}

// A preview of a piece under way is derived with what was made.
func TestAPreviewKnowsWhatWasMade(t *testing.T) {
	h := begun(t)
	w := h.answers(h.previews("packing-table", `{"base":2,"edits":[]}`))
	var got tried
	if err := json.Unmarshal(w.Body.Bytes(), &got); err != nil || !got.Ripple.Empty() {
		t.Fatalf("%d %v %+v", w.Code, err, got.Ripple)
	}
	var kept, offered any
	h.into(t, h.at("packing-table", "build"), &kept)
	if err := json.Unmarshal(got.Build, &offered); err != nil {
		t.Fatal(err)
	}
	a, _ := json.Marshal(kept)
	b, _ := json.Marshal(offered)
	if string(a) != string(b) {
		t.Error("without edits it is another build")
	}
}

// The height was 35 in before the edit that follows the two facts of begun, and is 36 in after it: any moment is shown again.
func TestAnyMomentOfAPieceIsShownAgain(t *testing.T) {
	h := begun(t, `{"kind":"edit","path":"sizes/height","new":"36 in"}`)
	type moment struct {
		Number int64
		Text   string
		Build  struct {
			Sizes []struct {
				Name  string
				Value float64 `json:"value_mm"`
			}
		}
		Views struct{ Front string }
	}
	height := func(m moment) float64 {
		for _, s := range m.Build.Sizes {
			if s.Name == "height" {
				return s.Value
			}
		}
		return 0
	}
	for number, want := range map[int]float64{0: 35 * 25.4, 2: 35 * 25.4, 3: 36 * 25.4} {
		var m moment
		h.into(t, h.at("packing-table", fmt.Sprintf("moments/%d", number)), &m)
		if int(m.Number) != number || height(m) != want || !strings.Contains(m.Views.Front, "<svg") {
			t.Errorf("%d: %d, %g, %s", number, m.Number, height(m), m.Text)
		}
	}
	if p := h.refuses(t, request("GET", h.at("packing-table", "moments/4"), ""), http.StatusUnprocessableEntity); p.Path != "number" {
		t.Errorf("%+v", p)
	}
}

// On the stepped stand the left posts stand some 14 in apart. 17 in would put the back one outside the board that goes round
// it: the piece could not be set out any more. It is refused, and nothing is stored.
func TestAFactWithWhichThePieceCannotStandIsRefused(t *testing.T) {
	h := opened(t, "stepped-stand")
	at := h.at("stepped-stand", "entries")
	p := h.refuses(t, request("POST", at, `{"base":0,"entries":[{"kind":"fact","say":"measured front left post to back left post 17 in"}]}`), http.StatusUnprocessableEntity)
	if p.Right == "" || !strings.Contains(p.Detail, "set out") {
		t.Errorf("%+v", p)
	}
	var log struct{ Number int64 }
	h.into(t, h.at("stepped-stand", "log"), &log)
	if log.Number != 0 {
		t.Errorf("%d entries were stored", log.Number)
	}
}
