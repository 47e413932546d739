package server_test

import (
	"context"
	"encoding/json"
	"net/http"
	"slices"
	"strings"
	"testing"

	"rodwright/build"
	"rodwright/examples"
	"rodwright/internal/server"
	"rodwright/internal/store"
	"rodwright/piece"
	"rodwright/shop"
)

const nobody = "01890000-0000-7000-8000-000000000000" // an id that no piece has

type listed struct {
	Pieces []struct {
		ID, Name, Worst, Currency, Problem string
		Number                             int64
		MassKg                             *float64
		Size                               *[3]float64
		Total                              *int64
		Days                               *int
		Failing, Tight, Unknown            int
	}
}

// The packing table is 72 × 30 × 35 in: 1828.8 × 762 × 889 mm.
func TestTheListTellsSizeWeightPriceAndFindings(t *testing.T) {
	h := opened(t)
	var got listed
	h.into(t, "/api/pieces", &got)
	if len(got.Pieces) != len(examples.Names()) {
		t.Fatalf("%d pieces", len(got.Pieces))
	}
	for _, p := range got.Pieces {
		if p.MassKg == nil || *p.MassKg < 1 || p.Size == nil || p.Days == nil || *p.Days < 1 || p.Currency != "EUR" || p.Problem != "" {
			t.Errorf("%+v", p)
		}
		if p.Name == "packing-table" && (*p.Size != [3]float64{1828.8, 762, 889} || p.Worst != "tight" || p.Tight != 7 || p.Failing != 0) {
			t.Errorf("packing table: %+v, size %v", p, *p.Size)
		}
		if p.Name == "stepped-stand" && p.Worst != "fails" {
			t.Errorf("stepped stand: %+v", p)
		}
	}
}

func TestABuildIsTheBytesOfTheCommandLine(t *testing.T) {
	h := opened(t)
	for name, id := range h.ids {
		text, err := examples.Text(name)
		if err != nil {
			t.Fatal(err)
		}
		doc, err := piece.Read(name, text)
		if err != nil {
			t.Fatal(err)
		}
		b, err := build.Derive(build.Input{Document: doc, Shop: shop.Sample()}, nil)
		if err != nil {
			t.Fatal(err)
		}
		want, err := b.JSON()
		if err != nil {
			t.Fatal(err)
		}
		for range 2 { // the second answer is kept from the first
			if got := h.reads(t, "/api/pieces/"+id+"/build"); got != string(want) {
				t.Errorf("%s: other bytes", name)
			}
		}
		if got := h.reads(t, "/api/pieces/"+id+"/text"); got != string(text) {
			t.Errorf("%s: another document", name)
		}
	}
}

func TestUnitsChangeWhatIsShownAndNothingElse(t *testing.T) {
	h := opened(t, "packing-table")
	var inch, metric struct {
		Unit, Fineness string
		Parts          []struct {
			Tag string
			Cut float64 `json:"cut_mm"`
		}
	}
	at := "/api/pieces/" + h.ids["packing-table"] + "/build"
	h.into(t, at+"?units=inch", &inch)
	h.into(t, at+"?units=metric", &metric)
	if inch.Fineness != "1/16" || metric.Fineness != "1 mm" || !slices.Equal(inch.Parts, metric.Parts) {
		t.Errorf("inch: %s, metric: %s", inch.Fineness, metric.Fineness)
	}
	if h.reads(t, at) != h.reads(t, at+"?units=inch") {
		t.Error("its own units make other bytes than none")
	}
}

// Every derived answer is known by the hash of what it was derived from.
func TestWhatTheAskerHasIsNotSentAgain(t *testing.T) {
	h := opened(t, "low-bench")
	at := "/api/pieces/" + h.ids["low-bench"]
	for _, path := range []string{"/build", "/sizes", "/solids", "/drawings", "/drawings/front.svg", "/drawings/front.dxf", "/book.html"} {
		first := h.answers(request("GET", at+path, ""))
		tag := first.Header().Get("ETag")
		if first.Code != http.StatusOK || tag == "" || first.Body.Len() == 0 {
			t.Fatalf("%s: %d, ETag %q: %s", path, first.Code, tag, first.Body)
		}
		again := request("GET", at+path, "")
		again.Header.Set("If-None-Match", `"other", W/`+tag)
		if w := h.answers(again); w.Code != http.StatusNotModified || w.Body.Len() != 0 || w.Header().Get("ETag") != tag {
			t.Errorf("%s: %d with %d bytes", path, w.Code, w.Body.Len())
		}
		other := request("GET", at+path, "")
		other.Header.Set("If-None-Match", `"other"`)
		if w := h.answers(other); w.Code != http.StatusOK {
			t.Errorf("%s: %d for another tag", path, w.Code)
		}
	}
}

func TestTheTagChangesWithThePieceAndWithTheProgram(t *testing.T) {
	h := opened(t, "low-bench")
	at := "/api/pieces/" + h.ids["low-bench"] + "/build"
	first := h.answers(request("GET", at, "")).Header().Get("ETag")
	newer := &house{Server: served(t, server.Options{Store: h.store, Version: "0.0.1-test"})}
	if got := newer.answers(request("GET", at, "")).Header().Get("ETag"); got == first {
		t.Error("another program has the same tag")
	}
	h.append(t, "low-bench", "sizes/length", "50 in")
	if got := h.answers(request("GET", at, "")).Header().Get("ETag"); got == first {
		t.Error("another document has the same tag")
	}
}

// append writes one edit into the log of an example.
func (h *house) append(t testing.TB, name, path, value string) store.Change {
	t.Helper()
	_, number, err := h.store.Text(context.Background(), h.ids[name])
	if err != nil {
		t.Fatal(err)
	}
	e := edit(path, value)
	e.Base = number
	kept, err := h.store.Append(context.Background(), h.ids[name], e)
	if err != nil {
		t.Fatal(err)
	}
	return store.Change{Piece: h.ids[name], Number: kept[0].Number}
}

func TestAnIDThatNoPieceHasIsToldEverywhere(t *testing.T) {
	h := opened(t, "low-bench")
	for _, path := range []string{"build", "text", "sizes", "drawings", "drawings/front.svg", "solids", "book.pdf", "book.html", "book/article", "log"} {
		for _, id := range []string{nobody, "low-bench", "x", "%2e%2e"} {
			if p := h.refuses(t, request("GET", "/api/pieces/"+id+"/"+path, ""), http.StatusNotFound); !strings.Contains(p.Detail, "no piece") {
				t.Errorf("%s: %+v", path, p)
			}
		}
	}
	h.refuses(t, request("POST", "/api/pieces/"+nobody+"/preview", `{"base":0,"edits":[]}`), http.StatusNotFound)
}

func TestWrongUnitsAreToldWithWhatIsRight(t *testing.T) {
	h := opened(t, "low-bench")
	for path, name := range map[string]string{"build?units=cubits": "units", "book.html?paper=papyrus": "paper", "log?after=-1": "after", "log?after=x": "after", "drawings?width=1": "width"} {
		p := h.refuses(t, request("GET", "/api/pieces/"+h.ids["low-bench"]+"/"+path, ""), http.StatusUnprocessableEntity)
		if p.Path != name || !strings.HasPrefix(p.Detail, name+": ") {
			t.Errorf("%s: %+v", path, p)
		}
	}
}

// A document can be written that can't be derived. It is listed with the reason, and opening it tells the place.
func TestAPieceThatCannotBeDerivedIsListedWithItsReason(t *testing.T) {
	h := opened(t, "low-bench")
	h.append(t, "low-bench", "sizes/length", "two cubits")
	var got listed
	h.into(t, "/api/pieces", &got)
	if p := got.Pieces[0]; p.Problem == "" || p.Worst != "unknown" || p.Days != nil || p.Size != nil || p.Total != nil {
		t.Errorf("%+v", p)
	}
	p := h.refuses(t, request("GET", "/api/pieces/"+h.ids["low-bench"]+"/build", ""), http.StatusUnprocessableEntity)
	if p.Place == nil || p.Place.File != "low-bench" || p.Place.Line < 2 || p.Place.Column < 2 {
		t.Errorf("%+v", p)
	}
}

func TestTheShopsOwnSettingsServeOnceTheyAreSaved(t *testing.T) {
	h := opened(t, "low-bench")
	if _, err := h.store.SaveShop(context.Background(), store.Write{Actor: "maker"}, []byte("name: attic\ncurrency: CHF\n")); err != nil {
		t.Fatal(err)
	}
	var got struct{ Shop, Currency string }
	h.into(t, "/api/pieces/"+h.ids["low-bench"]+"/build", &got)
	if got.Shop != "attic" || got.Currency != "CHF" {
		t.Errorf("%+v", got)
	}
}

func TestTheLogIsReadFromANumberOn(t *testing.T) {
	h := opened(t, "low-bench")
	h.append(t, "low-bench", "sizes/length", "50 in")
	h.append(t, "low-bench", "sizes/length", "51 in")
	for path, want := range map[string]int{"log": 2, "log?after=1": 1, "log?after=2": 0, "log?after=99": 0} {
		text := h.reads(t, "/api/pieces/"+h.ids["low-bench"]+"/"+path)
		var got struct {
			Entries []struct {
				Number    int64
				Kind, New string
			}
			Number int64
		}
		if err := json.Unmarshal([]byte(text), &got); err != nil {
			t.Fatal(err)
		}
		if len(got.Entries) != want || got.Number != 2 || strings.Contains(text, "null") {
			t.Errorf("%s: %s", path, text)
		}
	}
}
