package server

import (
	"encoding/json"
	"fmt"
	"net/http"
	"reflect"
	"strings"

	"github.com/danielgtaylor/huma/v2"
	"github.com/danielgtaylor/huma/v2/adapters/humago"
)

const about = "Everything that is derived from the pieces of one shop. Lengths are millimetres and masses kilograms unless a name says otherwise; " +
	"money is in hundredths where a name says cents. Errors are problem details (RFC 9457) with the place in the document, the path of the value and what would be right."

// newAPI returns the interface without routes. Its description is served by [describe]; no page about it is, since
// such pages fetch themselves from elsewhere.
func newAPI(mux *http.ServeMux, version string) huma.API {
	c := huma.DefaultConfig("Rodwright, the interface of one shop", version)
	c.Info.Description = about
	c.OpenAPIPath, c.DocsPath, c.SchemasPath = "", "", ""
	c.CreateHooks = nil // answers are our own bytes, without links to schemas
	c.Transformers = []huma.Transformer{reworded}
	c.Tags = []*huma.Tag{
		{Name: "pieces", Description: "The pieces of the shop, and what is derived from each."},
		{Name: "drawings", Description: "Drawings, the piece in space and the plan."},
		{Name: "changes", Description: "What was decided, what an edit would do, and word of changes."},
		{Name: "layouts", Description: "Looking deeper for how stock is cut, and accepting what is found."},
		{Name: "answers", Description: "One formula of the trade, answered at once, without a piece."},
	}
	return humago.New(mux, c)
}

// route is what describes an operation.
type route struct {
	id, path, tag, summary, about string
	media                         string // of the answer, where it is not JSON of the declared form
	mediaAbout                    string
}

// operation declares a route: with the answer it gives and with problems for everything else.
func (r route) operation(method string, api huma.API) huma.Operation {
	op := huma.Operation{
		OperationID: r.id, Method: method, Path: r.path, Summary: r.summary, Description: r.about, Tags: []string{r.tag},
		MaxBodyBytes: mostBody, Responses: map[string]*huma.Response{},
	}
	if r.media != "" {
		kind := huma.TypeString
		if strings.HasSuffix(r.media, "json") {
			kind = huma.TypeObject
		}
		op.Responses["200"] = &huma.Response{
			Description: r.mediaAbout, Content: map[string]*huma.MediaType{r.media: {Schema: &huma.Schema{Type: kind, Description: r.mediaAbout}}},
		}
	}
	schema := api.OpenAPI().Components.Schemas.Schema(reflect.TypeFor[Problem](), true, "")
	op.Responses["default"] = &huma.Response{Description: "What went wrong.", Content: map[string]*huma.MediaType{problemType: {Schema: schema}}}
	return op
}

// mostBody is the most that is read of a request's body: far above the edits that anybody tries at once.
const mostBody = 1 << 20

// describe serves the OpenAPI document of the interface. The library's own form of an error is left out of it: every
// one leaves here as a problem.
func describe(mux *http.ServeMux, api huma.API) error {
	for _, unused := range []string{"ErrorModel", "ErrorDetail"} {
		delete(api.OpenAPI().Components.Schemas.Map(), unused)
	}
	text, err := json.MarshalIndent(api.OpenAPI(), "", "  ")
	if err != nil {
		return fmt.Errorf("description of the interface: %w", err)
	}
	mux.HandleFunc("GET /openapi.json", func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "application/openapi+json")
		w.Header().Set("Cache-Control", "no-cache")
		w.Write(text) // whoever asked may be gone
	})
	return nil
}

// split sends what belongs to the interface there, and everything else to the page.
func split(api, page http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if p := r.URL.Path; p == "/api" || strings.HasPrefix(p, "/api/") || p == "/openapi.json" {
			api.ServeHTTP(w, r)
			return
		}
		page.ServeHTTP(w, r)
	})
}

// strict answers requests that no route takes with a problem.
func strict(mux *http.ServeMux) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		refuse, pattern := mux.Handler(r)
		if pattern != "" {
			mux.ServeHTTP(w, r)
			return
		}
		probe := &refusal{header: http.Header{}, status: http.StatusNotFound}
		refuse.ServeHTTP(probe, r)
		if allow := probe.header.Get("Allow"); allow != "" {
			w.Header().Set("Allow", allow)
			problem(http.StatusMethodNotAllowed, "this is not "+r.Method+" here", "it is "+allow).write(w)
			return
		}
		problem(http.StatusNotFound, "there is no "+r.Method+" "+r.URL.Path, "/openapi.json lists what there is").write(w)
	})
}

// refusal takes what the mux would answer, to be said as a problem.
type refusal struct {
	header http.Header
	status int
}

func (r *refusal) Header() http.Header         { return r.header }
func (r *refusal) Write(b []byte) (int, error) { return len(b), nil }
func (r *refusal) WriteHeader(status int)      { r.status = status }
