package server_test

import (
	"math"
	"net/http"
	"strings"
	"testing"
)

type atSaw struct {
	Layouts []struct {
		Kind, Material, Opened, Why, Changes, Note string
		Shares                                     []struct{ Share float64 }
		Cautions                                   []string
		Runs                                       []struct {
			Head  string
			Every bool
			Steps []struct {
				N              int
				On, Does, Left string
			}
		}
	}
}

func TestEveryLayoutIsToldAsItIsFollowedAtTheSaw(t *testing.T) {
	h := opened(t)
	for name := range h.ids {
		var got atSaw
		h.into(t, h.at(name, "cutting"), &got)
		for _, l := range got.Layouts {
			sum, n := 0.0, 0
			for _, s := range l.Shares {
				sum += s.Share
			}
			if math.Abs(sum-1) > 1e-9 || l.Why == "" || l.Changes == "" || l.Note == "" || len(l.Cautions) == 0 || l.Opened == "" {
				t.Errorf("%s, %s: shares come to %v; %+v", name, l.Material, sum, l)
			}
			for _, r := range l.Runs {
				for _, s := range r.Steps {
					if s.On == "" || s.Does == "" || r.Head == "" {
						t.Errorf("%s, %s: %+v", name, l.Material, r)
					}
					if !r.Every {
						if n++; s.N != n {
							t.Errorf("%s, %s: step %d is numbered %d", name, l.Material, n, s.N)
						}
					}
				}
			}
		}
		if len(got.Layouts) == 0 {
			t.Errorf("%s: nothing is cut", name)
		}
	}
}

func TestLengthsAtTheSawAreByTheTapeThatIsAskedFor(t *testing.T) {
	h := opened(t)
	metric := h.reads(t, h.at("packing-table", "cutting?units=metric"))
	if strings.Contains(metric, " in ") || !strings.Contains(metric, " mm is left") {
		t.Errorf("in millimetres: %s", metric)
	}
}

func TestOneMoreStickIsWeighedOrRefusedInWords(t *testing.T) {
	h := opened(t)
	var got struct {
		Changes []struct {
			Name, Words string
			More, Free  float64
			Taken       bool
		}
		Words []string
	}
	h.into(t, h.at("packing-table", "cutting/more?kind=stick&material=1"), &got)
	if len(got.Changes) != 2 {
		t.Fatalf("sticks of two lengths are sold: %+v", got.Changes)
	}
	for _, c := range got.Changes {
		if !strings.HasPrefix(c.Words, "One more "+c.Name) || c.Taken && c.Free <= 0 || c.More < -1e-6 {
			t.Errorf("%+v", c)
		}
	}
	if len(got.Words) != 1 || !strings.HasPrefix(got.Words[0], "Nothing is gained by buying one more stick of 252 in or 120 in; one that lies there already saves 78.00 EUR or ") {
		t.Errorf("as many sticks as are wanted can be bought already: %q", got.Words)
	}
	if w := h.answers(request("GET", h.at("packing-table", "cutting/more?kind=sheet&material=cork"), "")); w.Code != http.StatusNotFound || !strings.Contains(w.Body.String(), "no layout of") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
}
