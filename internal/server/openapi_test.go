package server_test

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"testing"
)

func TestTheInterfaceDescribesEveryRoute(t *testing.T) {
	h := opened(t, "low-bench")
	text := h.reads(t, "/openapi.json")
	var doc struct {
		OpenAPI string
		Info    struct{ Title, Version, Description string }
		Paths   map[string]map[string]struct {
			OperationID, Summary, Description string
			Tags                              []string
			Responses                         map[string]struct {
				Content map[string]json.RawMessage
			}
		}
	}
	if err := json.Unmarshal([]byte(text), &doc); err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(doc.OpenAPI, "3.1.") || doc.Info.Version != "0.0.0-test" || doc.Info.Description == "" {
		t.Errorf("%s, %+v", doc.OpenAPI, doc.Info)
	}
	want := []string{
		"/api/answers", "/api/answers/{topic}", "/api/events", "/api/pieces", "/api/pieces/{id}/book.html", "/api/pieces/{id}/book.pdf",
		"/api/pieces/{id}/book/article", "/api/pieces/{id}/build",
		"/api/pieces/{id}/compare", "/api/pieces/{id}/cutting", "/api/pieces/{id}/cutting/more", "/api/pieces/{id}/drawings", "/api/pieces/{id}/drawings/{drawing}", "/api/pieces/{id}/entries", "/api/pieces/{id}/findings/{picture}",
		"/api/pieces/{id}/log", "/api/pieces/{id}/moments/{number}", "/api/pieces/{id}/preview",
		"/api/pieces/{id}/searches", "/api/pieces/{id}/searches/{search}", "/api/pieces/{id}/searches/{search}/accept", "/api/pieces/{id}/searches/{search}/pictures", "/api/pieces/{id}/sizes", "/api/pieces/{id}/solids", "/api/pieces/{id}/take",
		"/api/pieces/{id}/text", "/api/pieces/{id}/things", "/api/pieces/{id}/weigh", "/api/pieces/{id}/wrong", "/api/pieces/{id}/yields",
	}
	if got := slices.Sorted(maps.Keys(doc.Paths)); !slices.Equal(got, want) {
		t.Errorf("described: %q", got)
	}
	for path, methods := range doc.Paths {
		for method, op := range methods {
			if op.OperationID == "" || op.Summary == "" || op.Description == "" || len(op.Tags) != 1 {
				t.Errorf("%s %s: %+v", method, path, op)
			}
			if op.Responses["default"].Content["application/problem+json"] == nil || len(op.Responses["200"].Content) != 1 {
				t.Errorf("%s %s answers %v", method, path, op.Responses)
			}
		}
	}
	for _, foreign := range []string{"$schema", "http://", "https://", "Huma"} {
		if strings.Contains(text, foreign) {
			t.Errorf("the description says %q", foreign)
		}
	}
}

// Every reference of the description leads to something in it.
func TestTheDescriptionRefersToItself(t *testing.T) {
	h := opened(t, "low-bench")
	var doc map[string]any
	h.into(t, "/openapi.json", &doc)
	schemas := doc["components"].(map[string]any)["schemas"].(map[string]any)
	var visit func(any)
	visit = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			if ref, ok := v["$ref"].(string); ok && schemas[strings.TrimPrefix(ref, "#/components/schemas/")] == nil {
				t.Errorf("%s leads nowhere", ref)
			}
			for _, w := range v {
				visit(w)
			}
		case []any:
			for _, w := range v {
				visit(w)
			}
		}
	}
	visit(doc)
	line := schemas["Line"].(map[string]any)["properties"].(map[string]any)
	for _, name := range []string{"id", "name", "number", "changed", "worst", "failing", "tight", "unknown", "massKg", "size", "total", "currency", "days"} {
		if line[name] == nil {
			t.Errorf("a piece of the list has no %s", name)
		}
	}
}
