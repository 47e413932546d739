package server_test

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
)

// FuzzRequest sends what anybody may send: it is answered, and nothing of it is the server's fault.
func FuzzRequest(f *testing.F) {
	h := opened(f, "low-bench")
	at := "/api/pieces/" + h.ids["low-bench"]
	for _, seed := range [][4]string{
		{"GET", "/", "", ""}, {"GET", at + "/build", "units=inch", ""}, {"GET", at + "/drawings/front.svg", "width=90&units=metric", ""},
		{"POST", at + "/preview", "", `{"base":0,"edits":[{"path":"sizes/length","value":"50 in"}]}`},
		{"POST", "/api/answers/movement", "", `{"width":"20 in"}`}, {"GET", at + "/log", "after=1", ""}, {"GET", "/../x", "%", ""},
		{"POST", at + "/entries", "", `{"base":0,"entries":[{"kind":"fact","say":"made A1 size"},{"kind":"edit","path":"sizes/length","new":"50 in"}]}`},
		{"POST", at + "/weigh", "units=inch", `{"base":0,"edits":[{"path":"sizes/length","value":"50 in"}]}`},
		{"POST", at + "/wrong", "", `{"base":0,"say":"wrong A1 47 in: short"}`}, {"GET", at + "/yields", "stock=P1&start=3", ""},
		{"GET", at + "/cutting", "units=inch", ""}, {"GET", at + "/cutting/more", "kind=stick&material=3/4", ""},
		{"GET", at + "/compare", "from=0&to=1", ""}, {"GET", at + "/things", "units=metric", ""},
		{"POST", at + "/searches", "", `{"kind":"stick","material":"3/4","seconds":1}`}, {"POST", at + "/searches/0/accept", "", `{"base":0}`}, {"DELETE", at + "/searches/0", "", ""},
		{"POST", at + "/preview", "units=", `{"base":0,"edits":[{"path":"holds/1/weight","value":"\u0000"}]}`},
	} {
		f.Add(seed[0], seed[1], seed[2], seed[3])
	}
	f.Fuzz(func(t *testing.T, method, path, query, body string) {
		if strings.Contains(path, "/events") {
			return // a stream ends with the server
		}
		r := httptest.NewRequest("GET", "/", strings.NewReader(body))
		r.Method, r.URL, r.Host = method, &url.URL{Path: path, RawQuery: query}, "localhost"
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code >= http.StatusInternalServerError {
			t.Errorf("%s %q?%q %q: %d %s", method, path, query, body, w.Code, w.Body)
		}
	})
}

// FuzzWordsOfAFact tells anything as a fact of a piece under way, and as something that went wrong with it.
func FuzzWordsOfAFact(f *testing.F) {
	h := opened(f, "packing-table")
	h.writes(f, "packing-table", fact("made C2.1 cut-pipe"), fact("bought stick 1 21 ft as S1"))
	for _, seed := range []string{
		"made C2.2 cut-pipe 26 1/2 in from S1 taking 26 5/8 in in 25 min again", "made A1 size 72 × 30 in", "made C2.1 thread", "finished",
		"measured front left post to back left post 25 in outside", "measured floor to top 0 in", "measured top to top 3 in",
		"bought board white-oak 5/4 118 × 6 3/4 × 1 1/8 in as P1 1 rough edge for 38.50", "bought sheet birch-plywood-18 96 × 48 in as B1", "bought 8 × tee 1 for 31.20",
		"wrong C2.1 25 3/4 in: cut too short", "wrong C2.1 1 mm: cut", "wrong C2.1 9999 m: long", "wrong A1: hole", "spoiled C2.1 bent", "spoiled Z9 x", "delivered", "", "made", "\x00", "made C2.1 cut-pipe -3 in",
	} {
		f.Add(seed, "inch")
		f.Add(seed, "metric")
	}
	f.Fuzz(func(t *testing.T, say, units string) {
		line, err := json.Marshal(say)
		if err != nil {
			t.Fatal(err)
		}
		query := "?" + url.Values{"units": {units}}.Encode()
		told := `{"base":2,"entries":[{"kind":"fact","say":` + string(line) + `},` + fact("finished") + `,{"kind":"undo","names":"x"}]}`
		for path, body := range map[string]string{
			"entries": told, // the second fact is read of the piece with the first; the undo is refused, so that nothing is kept
			"wrong":   `{"base":2,"say":` + string(line) + `}`,
		} {
			w := h.answers(request("POST", h.at("packing-table", path)+query, body))
			if w.Code >= http.StatusInternalServerError {
				t.Errorf("%s %q: %d %s", path, say, w.Code, w.Body)
			}
		}
	})
}
