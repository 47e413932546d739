package server_test

import (
	"bytes"
	"net/http"
	"strings"
	"testing"
)

type toldFindings struct {
	Findings []struct {
		Check, Place string
		Picture      *struct{ Kind, Name string }
	}
}

func TestEveryPictureThatABuildTellsOfIsDrawn(t *testing.T) {
	h := opened(t)
	for name, id := range h.ids {
		at := "/api/pieces/" + id
		var got toldFindings
		h.into(t, at+"/build", &got)
		for _, f := range got.Findings {
			if f.Picture == nil {
				continue
			}
			w := h.answers(request("GET", at+"/findings/"+f.Picture.Name+".svg?width=80", ""))
			if w.Code != http.StatusOK || w.Header().Get("Content-Type") != "image/svg+xml" || !bytes.HasPrefix(w.Body.Bytes(), []byte("<svg")) {
				t.Errorf("%s, %s %s: %d %v %.60s", name, f.Check, f.Place, w.Code, w.Header(), w.Body)
			}
			wellFormed(t, name+" "+f.Picture.Name, w.Body.String())
		}
	}
}

func TestAPictureThatIsNotThereIsToldWithTheOnesThatAre(t *testing.T) {
	h := opened(t, "stepped-stand")
	at := "/api/pieces/" + h.ids["stepped-stand"] + "/findings/"
	if p := h.refuses(t, request("GET", at+"attic.svg", ""), http.StatusNotFound); !strings.Contains(p.Right, "has") {
		t.Errorf("%+v", p)
	}
	for _, file := range []string{"attic", "attic.png", ".svg", "attic.svg.dxf"} {
		h.refuses(t, request("GET", at+file, ""), http.StatusNotFound)
	}
}
