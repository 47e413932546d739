package server_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"net/http"
	"strings"
	"testing"
)

type drawn struct {
	Drawings []struct {
		ID, Title, Kind, Alt string
		Per                  int64
	}
}

// TestEveryExampleIsServedWhole opens everything that there is of every example.
func TestEveryExampleIsServedWhole(t *testing.T) {
	h := opened(t)
	for name, id := range h.ids {
		at := "/api/pieces/" + id
		for _, path := range []string{"/build", "/text", "/sizes", "/solids", "/log", "/book.html", "/book/article", "/build?units=metric", "/sizes?units=inch", "/solids?units=metric"} {
			if h.reads(t, at+path) == "" {
				t.Errorf("%s%s is empty", name, path)
			}
		}
		if file := h.reads(t, at+"/book.pdf"); !strings.HasPrefix(file, "%PDF-") {
			t.Errorf("%s: a book that begins with %.20q", name, file)
		}
		var got drawn
		h.into(t, at+"/drawings", &got)
		kinds := map[string]int{}
		for _, d := range got.Drawings {
			kinds[d.Kind]++
			if d.Title == "" || d.Alt == "" || d.Per < 1 {
				t.Errorf("%s: %+v", name, d)
			}
			wellFormed(t, name+" "+d.ID, h.reads(t, at+"/drawings/"+d.ID+".svg"))
			if file := h.reads(t, at+"/drawings/"+d.ID+".dxf"); !strings.HasSuffix(strings.TrimSpace(file), "EOF") {
				t.Errorf("%s: %s.dxf does not end", name, d.ID)
			}
		}
		if kinds["view"] != 3 {
			t.Errorf("%s: %v", name, kinds)
		}
	}
}

func wellFormed(t *testing.T, what, text string) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			return
		} else if err != nil {
			t.Errorf("%s: %v", what, err)
			return
		}
	}
}

func TestADrawingIsAFileByItsEnding(t *testing.T) {
	h := opened(t, "low-bench")
	at := "/api/pieces/" + h.ids["low-bench"] + "/drawings/"
	if w := h.answers(request("GET", at+"front.svg?units=metric&width=90", "")); w.Header().Get("Content-Type") != "image/svg+xml" || !bytes.HasPrefix(w.Body.Bytes(), []byte("<svg")) {
		t.Errorf("%d %v %.40s", w.Code, w.Header(), w.Body)
	}
	w := h.answers(request("GET", at+"front.dxf", ""))
	if w.Header().Get("Content-Type") != "image/vnd.dxf" || w.Header().Get("Content-Disposition") != `attachment; filename="low-bench front.dxf"` {
		t.Errorf("%d %v", w.Code, w.Header())
	}
	for _, file := range []string{"front", "front.png", "front.svg.svg", "back.svg", ".svg", "front.dxf.svg"} {
		h.refuses(t, request("GET", at+file, ""), http.StatusNotFound)
	}
	if p := h.refuses(t, request("GET", at+"attic.svg", ""), http.StatusNotFound); !strings.Contains(p.Right, "front") {
		t.Errorf("%+v", p)
	}
}

func TestSolidsBelongToThePartsOfTheBuild(t *testing.T) {
	h := opened(t, "packing-table")
	var got struct {
		Solids []struct {
			Tag, Name, Kind string
			Box             *struct{ Min, Max [3]float64 }
			Cylinder        *struct {
				A, B   [3]float64
				Radius float64
			}
			Slab *struct {
				Min, Max [3]float64
				Openings []struct{ Radius float64 }
			}
		}
		Min, Max [3]float64
	}
	h.into(t, "/api/pieces/"+h.ids["packing-table"]+"/solids", &got)
	if got.Max != [3]float64{1828.8, 762, 889} {
		t.Errorf("up to %v", got.Max)
	}
	shapes := map[string]int{}
	for _, s := range got.Solids {
		switch {
		case s.Slab != nil:
			shapes["slab"]++
			if s.Tag != "A1.1" || s.Kind != "panel" || len(s.Slab.Openings) != 2 {
				t.Errorf("%+v", s)
			}
		case s.Cylinder != nil:
			shapes["cylinder"]++
			if s.Cylinder.Radius <= 0 {
				t.Errorf("%+v", s)
			}
		case s.Box != nil:
			shapes["box"]++
		default:
			t.Errorf("%+v has no shape", s)
		}
		if (s.Tag == "") != (s.Kind == "held") {
			t.Errorf("%s %q has the tag %q", s.Kind, s.Name, s.Tag)
		}
	}
	if shapes["slab"] != 1 || shapes["cylinder"] < 17 || shapes["box"] < 4 { // 17 pipes, 3 parcels and a roll
		t.Errorf("%v", shapes)
	}
}
