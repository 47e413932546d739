package server_test

import (
	"encoding/json"
	"net/http"
	"slices"
	"strings"
	"testing"

	"rodwright/change"
	"rodwright/journal"
)

func edit(path, value string) journal.Entry {
	return journal.Entry{Actor: "maker", Kind: journal.Edit, Path: path, New: value}
}

func (h *house) previews(name, body string) *http.Request {
	return request("POST", "/api/pieces/"+h.ids[name]+"/preview", body)
}

type tried struct {
	Number int64
	Build  json.RawMessage
	Ripple change.Ripple
	Views  map[string]string
	Solids struct{ Solids []json.RawMessage }
}

func TestAPreviewTellsTheRippleAndStoresNothing(t *testing.T) {
	h := opened(t, "packing-table")
	before := h.reads(t, "/api/pieces/"+h.ids["packing-table"]+"/text")
	w := h.answers(h.previews("packing-table", `{"base":0,"edits":[{"path":"sizes/height","value":"36 in"}]}`))
	var got tried
	if err := json.Unmarshal(w.Body.Bytes(), &got); err != nil || w.Code != http.StatusOK {
		t.Fatalf("%d %v", w.Code, err)
	}
	if len(got.Ripple.Cuts) != 2 || got.Ripple.Cuts[0].To != 698.5 || got.Number != 0 || len(got.Solids.Solids) == 0 {
		t.Errorf("number %d, %+v", got.Number, got.Ripple)
	}
	for _, side := range []string{"front", "side", "top"} {
		if !strings.HasPrefix(got.Views[side], "<svg") {
			t.Errorf("%s: %.40q", side, got.Views[side])
		}
	}
	if h.reads(t, "/api/pieces/"+h.ids["packing-table"]+"/text") != before {
		t.Error("the document changed")
	}
	// What was tried and then written is the same build.
	h.append(t, "packing-table", "sizes/height", "36 in")
	var kept, offered any
	h.into(t, "/api/pieces/"+h.ids["packing-table"]+"/build", &kept)
	if err := json.Unmarshal(got.Build, &offered); err != nil {
		t.Fatal(err)
	}
	a, _ := json.Marshal(kept)
	b, _ := json.Marshal(offered)
	if string(a) != string(b) {
		t.Error("the build that was tried is another than the one that came of it")
	}
}

func TestNoEditsMoveNothing(t *testing.T) {
	h := opened(t, "low-bench")
	w := h.answers(h.previews("low-bench", `{"base":0,"edits":[]}`))
	var got tried
	if err := json.Unmarshal(w.Body.Bytes(), &got); err != nil || !got.Ripple.Empty() {
		t.Errorf("%d %v %+v", w.Code, err, got.Ripple)
	}
}

func TestAWrongEditIsToldWithItsPathPlaceAndWhatIsRight(t *testing.T) {
	h := opened(t, "packing-table")
	for _, c := range []struct{ says, edits, path, detail, right string }{
		{"a path that is not there", `{"path":"sizes/hight","value":"36 in"}`, "sizes/hight", "there is no sizes/hight", "height"},
		{"no length", `{"path":"sizes/height","value":"tall"}`, "sizes/height", "tall", ""},
		{"a size that is not there", `{"path":"sizes/height","value":"hight + 1 in"}`, "sizes/height", "hight", "height"},
		{"two values of which the second is wrong", `{"path":"sizes/depth","value":"31 in"},{"path":"sizes/inset","value":"3 cubits"}`, "sizes/inset", "cubits", ""},
		{"a value on several lines", `{"path":"sizes/height","value":"36 in\n37 in"}`, "sizes/height", "", ""},
	} {
		p := h.refuses(t, h.previews("packing-table", `{"base":0,"edits":[`+c.edits+`]}`), http.StatusUnprocessableEntity)
		if p.Path != c.path || !strings.Contains(p.Detail, c.detail) || !strings.Contains(p.Right, c.right) {
			t.Errorf("%s: %+v", c.says, p)
		}
		if p.Place == nil || p.Place.File != "packing-table" || p.Place.Line < 1 || p.Place.Column < 1 {
			t.Errorf("%s: place %+v", c.says, p.Place)
		}
	}
}

// The rails of a table whose top lies at 3 in would lie above it: it can be read, and not be set out.
func TestAnEditThatCannotBeSetOutIsTold(t *testing.T) {
	h := opened(t, "packing-table")
	p := h.refuses(t, h.previews("packing-table", `{"base":0,"edits":[{"path":"sizes/height","value":"3 in"}]}`), http.StatusUnprocessableEntity)
	if p.Place == nil || p.Path != "sizes/height" {
		t.Errorf("%+v", p)
	}
}

func TestARequestThatIsNoPreviewIsRefused(t *testing.T) {
	h := opened(t, "low-bench")
	for body, path := range map[string]string{
		`{"base":1,"edits":[]}`:                             "base", // nobody has written entry 1
		`{"base":-1,"edits":[]}`:                            "base",
		`{"base":0}`:                                        "",
		`{"base":0,"edits":[{"path":"","value":"1"}]}`:      "edits[0].path",
		`{"base":0,"edits":[{"path":"sizes/length"}]}`:      "edits[0]",
		`{"base":0,"edits":[],"also":1}`:                    "also",
		`{"base":0,"edits":[{"path":"a","value":{"b":1}}]}`: "edits[0].value",
	} {
		if p := h.refuses(t, h.previews("low-bench", body), http.StatusUnprocessableEntity); p.Path != path {
			t.Errorf("%s: path %q, want %q: %s", body, p.Path, path, p.Detail)
		}
	}
	for _, body := range []string{`{`, `[]`, `"x"`, `nonsense`} {
		w := h.answers(h.previews("low-bench", body))
		if w.Code != http.StatusBadRequest && w.Code != http.StatusUnprocessableEntity {
			t.Errorf("%s: %d %s", body, w.Code, w.Body)
		}
	}
}

func TestAHugeBodyIsRefused(t *testing.T) {
	h := opened(t, "low-bench")
	huge := `{"base":0,"edits":[{"path":"sizes/length","value":"` + strings.Repeat("1", 2<<20) + `"}]}`
	h.refuses(t, h.previews("low-bench", huge), http.StatusRequestEntityTooLarge)
	h.refuses(t, request("POST", "/api/answers/movement", huge), http.StatusRequestEntityTooLarge)
}

type typedValues struct {
	Sizes []struct {
		Name, Path, Formula, Text, Origin string
		Value                             float64
		Uses                              []string
	}
	Fields []struct{ Path, Label, Group, Value, Kind string }
}

func TestSizesAreToldWithFormulaAndValue(t *testing.T) {
	h := opened(t, "stepped-stand")
	var got typedValues
	h.into(t, "/api/pieces/"+h.ids["stepped-stand"]+"/sizes", &got)
	for _, s := range got.Sizes {
		if s.Name == "high level" { // low level + 21 in = 17 1/2 + 21 = 38 1/2 in = 977.9 mm
			if s.Path != "sizes/high level" || s.Formula != "low level + 21 in" || s.Value != 977.9 || s.Text != "38 1/2 in" || s.Origin != "rule" || !slices.Equal(s.Uses, []string{"low level"}) {
				t.Errorf("%+v", s)
			}
			return
		}
	}
	t.Error("there is no high level")
}

func TestEveryOtherValueThatIsTypedHasAField(t *testing.T) {
	h := opened(t, "stepped-stand", "packing-table", "wall-shelf")
	for name, want := range map[string]map[string]string{
		"stepped-stand": {
			"panels/deep board/thickness": "1 1/16 in", "panels/high board/length": "length - 1 in", "rails/side/level": "8 1/2 in",
			"holds/seed trays/weight": "12 lb", "holes/drains/from edge": "1 1/2 in", "holes/drains/count": "5", "feet/casters/wheel": "3 in", "edges/deep board/front": "chamfer 3/32 in",
		},
		"packing-table": {"holes/cord/at/2/1": "64 in", "panels/top/corners/front left": "1 in", "rails/back stretcher/share": "3/4", "holds/paper roll/at/1": "36 in", "place/doors/studio": "36 × 80 in"},
		"wall-shelf":    {"sizes/length/measured": "996", "panels/shelf/thickness": "21", "arms/bracket/reach": "300", "joints/wall flange/screw": "14 × 3 in"},
	} {
		var got typedValues
		h.into(t, "/api/pieces/"+h.ids[name]+"/sizes", &got)
		for _, f := range got.Fields {
			if v, ok := want[f.Path]; ok && v == f.Value && f.Label != "" && f.Group != "" {
				delete(want, f.Path)
			}
			if f.Value == "length" || f.Value == "depth" {
				t.Errorf("%s: %s only names a size", name, f.Path)
			}
		}
		if len(want) > 0 {
			t.Errorf("%s: not told: %v; told %v", name, want, got.Fields)
		}
	}
}
