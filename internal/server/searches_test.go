package server_test

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"strings"
	"testing"
	"time"

	"rodwright/build"
	"rodwright/cut"
	"rodwright/examples"
	"rodwright/journal"
	"rodwright/layout"
	"rodwright/piece"
	"rodwright/shop"
)

type good struct {
	Cost, Bound, Gap float64
	BoundOf          string
	Proven           bool
	NotPlaced        int
}

type searched struct {
	ID, Kind, Material, State string
	Number, Accepted          int64
	Seconds, Took             float64
	Before, Best              good
	Better, Fits              bool
	Layout                    struct {
		Unit string
		Used []any
	}
}

// cutting is what a build tells of its layouts.
type cutting struct {
	Cut      map[string]map[string]struct{ Cost, Bound float64 }
	Accepted []struct {
		Kind, Material, ID, State, Why string
		Entry                          int64
	}
}

func looking(kind, material string, seconds int) string {
	return fmt.Sprintf(`{"kind":%q,"material":%q,"seconds":%d}`, kind, material, seconds)
}

// over waits until a search is no longer running.
func (h *house) over(t testing.TB, name, id string) (s searched) {
	t.Helper()
	for range 3000 {
		if h.into(t, h.at(name, "searches/"+id), &s); s.State != "running" {
			return s
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Fatal("the search goes on")
	return s
}

func (h *house) cancels(t testing.TB, name, id string) (s searched) {
	t.Helper()
	w := h.answers(request("DELETE", h.at(name, "searches/"+id), ""))
	if err := json.Unmarshal(w.Body.Bytes(), &s); w.Code != http.StatusOK || err != nil {
		t.Fatalf("%d %s", w.Code, w.Body)
	}
	return s
}

// lavish accepts, past the interface, a layout of the low bench's pipe that opens a stick more than it needs, at 28 of
// the sample shop. It returns what the layout costs that is derived.
func (h *house) lavish(t testing.TB) (least float64) {
	t.Helper()
	text, err := examples.Text("low-bench")
	if err != nil {
		t.Fatal(err)
	}
	doc, err := piece.Read("low-bench", text)
	if err != nil {
		t.Fatal(err)
	}
	b, err := build.Derive(build.Input{Document: doc, Shop: shop.Sample()}, nil)
	if err != nil {
		t.Fatal(err)
	}
	l, _, _ := b.LayoutOf(layout.OfSticks, "3/4")
	a := *l.Answer
	a.Used = append(a.Used[:len(a.Used):len(a.Used)], cut.Used{Stock: a.Used[0].Stock})
	a.Cost, a.Bound, a.Proven, a.Waste = l.Answer.Cost+28, l.Answer.Cost-1, false, cut.Waste{}
	kept, err := build.Acceptable(l.Task, &a)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := h.store.Append(context.Background(), h.ids["low-bench"], journal.Entry{Actor: "ben", Kind: journal.Accepted, Layout: &kept}); err != nil {
		t.Fatal(err)
	}
	return l.Answer.Cost
}

func TestASearchFindsABetterLayoutThatIsCutByOnceItIsAccepted(t *testing.T) {
	h := opened(t, "low-bench")
	least := h.lavish(t)
	var before cutting
	h.into(t, h.at("low-bench", "build"), &before)
	if was := before.Cut["stick"]["3/4"]; was.Cost != least+28 || len(before.Accepted) != 1 || before.Accepted[0].State != "taken" || !strings.Contains(before.Accepted[0].Why, fmt.Sprintf("%.2f is known", least)) {
		t.Fatalf("%+v, %+v", was, before.Accepted)
	}
	var begun searched
	h.posts(t, h.at("low-bench", "searches"), looking("stick", "3/4", 30), &begun)
	if begun.Before.Cost != least+28 || begun.Seconds != 30 || !begun.Fits || begun.Number != 1 {
		t.Errorf("%+v", begun)
	}
	got := h.over(t, "low-bench", begun.ID)
	if got.State != "done" || !got.Better || got.Best != (good{Cost: least, Bound: least, Proven: true}) || got.Layout.Unit != "mm" || len(got.Layout.Used) == 0 {
		t.Fatalf("%+v", got)
	}
	var pictures struct{ Before, Best []struct{ Title, SVG string } }
	h.into(t, h.at("low-bench", "searches/"+got.ID+"/pictures"), &pictures)
	if len(pictures.Before) == 0 || len(pictures.Best) == 0 || !strings.HasPrefix(pictures.Best[0].SVG, "<svg") {
		t.Errorf("%d and %d pictures", len(pictures.Before), len(pictures.Best))
	}
	if h.number(t, "low-bench") != 1 {
		t.Error("a search writes something")
	}

	var w written
	accept := fmt.Sprintf(`{"base":1,"id":%q}`, id(70))
	for range 2 { // the same sent again writes nothing
		h.posts(t, h.at("low-bench", "searches/"+got.ID+"/accept"), accept, &w)
	}
	if w.Number != 2 || len(w.Entries) != 1 || w.Entries[0].Kind != "accepted" || !strings.HasPrefix(w.Entries[0].Words, "layout of pipe 3/4 accepted, cost ") || !strings.HasSuffix(w.Entries[0].Words, ", none costs less") {
		t.Fatalf("%+v", w)
	}
	var after cutting
	h.into(t, h.at("low-bench", "build"), &after)
	if is := after.Cut["stick"]["3/4"]; is.Cost != least || len(after.Accepted) != 1 || after.Accepted[0].State != "taken" || after.Accepted[0].Entry != 2 || after.Accepted[0].Why != "" {
		t.Errorf("cut by %+v; %+v", is, after.Accepted)
	}
	if s := h.over(t, "low-bench", got.ID); s.Accepted != 2 || !s.Fits {
		t.Errorf("%+v", s)
	}
	if h.reads(t, h.at("low-bench", "build")) != h.derives(t, "low-bench") {
		t.Error("the build is not that of the log")
	}

	h.writes(t, "low-bench", fmt.Sprintf(`{"kind":"withdrawn","names":%q}`, w.Entries[0].ID))
	var back cutting
	h.into(t, h.at("low-bench", "build"), &back)
	if back.Cut["stick"]["3/4"].Cost != least+28 || back.Accepted[0].Entry != 1 {
		t.Errorf("withdrawn it is cut by %+v; %+v", back.Cut["stick"], back.Accepted)
	}
}

func TestNobodySendsALayoutOfTheirOwn(t *testing.T) {
	h := opened(t, "low-bench")
	h.refuses(t, request("POST", h.at("low-bench", "entries"), `{"base":0,"entries":[{"kind":"accepted"}]}`), http.StatusUnprocessableEntity)
}

func TestALayoutIsNotAcceptedForAPieceThatWasChangedMeanwhile(t *testing.T) {
	h := opened(t, "low-bench")
	var begun searched
	h.posts(t, h.at("low-bench", "searches"), looking("stick", "3/4", 5), &begun)
	got := h.over(t, "low-bench", begun.ID)
	if got.State != "done" || got.Better || !got.Best.Proven || got.Best != got.Before {
		t.Errorf("of a layout that is proven: %+v", got)
	}
	h.writes(t, "low-bench", `{"kind":"edit","path":"sizes/length","new":"50 in"}`)
	path := h.at("low-bench", "searches/"+got.ID)
	p := h.refuses(t, request("POST", path+"/accept", `{"base":0}`), http.StatusConflict)
	if !strings.Contains(p.Detail, "changed since") || p.Right != "look deeper again" {
		t.Errorf("%+v", p)
	}
	var now searched
	if h.into(t, path, &now); now.Fits {
		t.Error("a search for other parts is told to fit")
	}
	h.writes(t, "low-bench", `{"kind":"edit","path":"sizes/length","new":"48 in"}`)
	if h.into(t, path, &now); !now.Fits {
		t.Error("with the old length again it does not fit")
	}
	if p := h.refuses(t, request("POST", path+"/accept", `{"base":9}`), http.StatusUnprocessableEntity); p.Path != "base" {
		t.Errorf("%+v", p)
	}
	var w written
	h.posts(t, path+"/accept", `{"base":2}`, &w)
	if w.Number != 3 || w.Entries[0].Base != 2 {
		t.Errorf("%+v", w)
	}
}

func TestFewSearchesRunAtOnceAndEachCanBeEnded(t *testing.T) {
	h := opened(t, "large", "stepped-stand")
	before := cutting{}
	h.into(t, h.at("large", "build"), &before)
	var first, same searched
	h.posts(t, h.at("large", "searches"), looking("panel", "white-oak 6/4", 120), &first)
	h.posts(t, h.at("large", "searches"), looking("panel", "white-oak 6/4", 60), &same)
	if first.State != "running" || same.ID != first.ID {
		t.Errorf("%+v, then %+v", first, same)
	}
	if p := h.refuses(t, request("POST", h.at("large", "searches/"+first.ID+"/accept"), `{"base":0}`), http.StatusConflict); !strings.Contains(p.Detail, "still runs") {
		t.Errorf("%+v", p)
	}
	h.writes(t, "large", `{"kind":"edit","path":"sizes/length","new":"93 in"}`) // another problem
	var second searched
	h.posts(t, h.at("large", "searches"), looking("panel", "white-oak 6/4", 120), &second)
	if p := h.refuses(t, request("POST", h.at("stepped-stand", "searches"), looking("stick", "3/4", 1)), http.StatusTooManyRequests); p.Right == "" {
		t.Errorf("%+v", p)
	}
	for _, s := range []searched{first, second} {
		began := time.Now()
		got := h.cancels(t, "large", s.ID)
		if took := time.Since(began); got.State != "cancelled" && took < 1500*time.Millisecond {
			t.Errorf("%+v after %v", got, took)
		}
		if got = h.over(t, "large", s.ID); got.State != "cancelled" || got.Best.Cost > got.Before.Cost {
			t.Errorf("%+v", got)
		}
	}
	if again := h.cancels(t, "large", first.ID); again.State != "cancelled" {
		t.Errorf("ended twice: %+v", again)
	}
	var all struct{ Searches []searched }
	if h.into(t, h.at("large", "searches"), &all); len(all.Searches) != 2 || all.Searches[0].ID != first.ID || all.Searches[0].Fits || !all.Searches[1].Fits {
		t.Errorf("%+v", all)
	}
	if h.into(t, h.at("stepped-stand", "searches"), &all); len(all.Searches) != 0 {
		t.Errorf("of another piece: %+v", all)
	}
}

func TestASearchForWhatIsNotCutIsRefused(t *testing.T) {
	h := opened(t, "low-bench")
	for _, c := range []struct{ body, path string }{
		{looking("stick", "ebony", 5), "material"}, {looking("panel", "3/4", 5), "material"}, {looking("rod", "3/4", 5), "kind"},
		{looking("stick", "3/4", 121), "seconds"}, {`{"kind":"stick"}`, ""},
	} {
		if p := h.refuses(t, request("POST", h.at("low-bench", "searches"), c.body), http.StatusUnprocessableEntity); c.path != "" && p.Path != c.path {
			t.Errorf("%s: %+v", c.body, p)
		}
	}
	for _, r := range []*http.Request{
		request("GET", h.at("low-bench", "searches/7"), ""), request("DELETE", h.at("low-bench", "searches/7"), ""),
		request("POST", h.at("low-bench", "searches/7/accept"), `{"base":0}`), request("GET", h.at("low-bench", "searches/7/pictures"), ""),
		request("GET", "/api/pieces/nothing/searches", ""),
	} {
		h.refuses(t, r, http.StatusNotFound)
	}
	h.Close()
	h.refuses(t, request("POST", h.at("low-bench", "searches"), looking("stick", "3/4", 5)), http.StatusServiceUnavailable)
}

func TestSearchesEndWithTheServer(t *testing.T) {
	r := run(t, opened(t, "large"))
	var begun searched
	r.posts(t, r.at("large", "searches"), looking("panel", "white-oak 6/4", 120), &begun)
	r.stop()
	select {
	case err := <-r.done:
		if err != nil {
			t.Fatal(err)
		}
	case <-time.After(20 * time.Second):
		t.Fatal("the server does not stop")
	}
	var s searched
	if r.into(t, r.at("large", "searches/"+begun.ID), &s); s.State != "cancelled" {
		t.Errorf("%+v", s)
	}
}
