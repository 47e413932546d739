package wire

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math"

	"rodwright/cut"
	"rodwright/length"
)

// The answer as it is written; see package cut for the meaning of each field.
type (
	jsonAnswer struct {
		Unit             string
		Cost, Bound, Gap float64
		Proven           bool
		Of               string
		TookMS           float64
		Waste            jsonWaste
		Used             []jsonUsed
		Bought           []string
		Panels           []jsonPanel
		Cuts             []jsonSetting
		NotPlaced        []jsonNotPlaced
	}
	jsonWaste struct {
		Kerf   float64 `json:"kerf"`
		Trim   float64 `json:"trim"`
		Defect float64 `json:"defect"`
		Useful float64 `json:"leftover_useful"`
		Lost   float64 `json:"leftover_lost"`
	}
	jsonUsed struct {
		Stock string       `json:"stock"`
		Parts []jsonPlaced `json:"parts"`
		Left  []jsonOffcut `json:"left"`
	}
	jsonPlaced struct {
		Tag    string     `json:"tag"`
		At     [2]float64 `json:"at"`
		Size   [2]float64 `json:"size"`
		Turned bool       `json:"turned"`
	}
	jsonOffcut struct {
		At   [2]float64 `json:"at"`
		Size [2]float64 `json:"size"`
	}
	jsonPanel struct {
		Tag    string      `json:"tag"`
		Strips []jsonStrip `json:"strips"`
	}
	jsonStrip struct {
		Board    string     `json:"board"`
		At       [2]float64 `json:"at"`
		Size     [2]float64 `json:"size"`
		Ring     string     `json:"ring"`
		NetWidth float64    `json:"net_width"`
	}
	jsonSetting struct {
		N       int      `json:"n"`
		On      string   `json:"on"`
		Machine string   `json:"machine"`
		Setting float64  `json:"setting"`
		Makes   []string `json:"makes"`
	}
	jsonNotPlaced struct {
		Tag string `json:"tag"`
		Why string `json:"why"`
	}
)

// JSON writes an answer in the problem's unit. The waste of sticks is a length, that of boards and sheets
// an area; area says which.
func JSON(a *cut.Answer, u length.Unit, area bool) ([]byte, error) {
	out := jsonAnswer{
		Unit: u.String(), Cost: a.Cost, Bound: a.Bound, Gap: math.Round(a.Gap()*1e9) / 1e9, Proven: a.Proven, Of: string(a.Of), TookMS: a.TookMS,
		Waste: wasteOf(a.Waste, u, area), Used: []jsonUsed{}, Bought: a.Bought, Cuts: []jsonSetting{}, NotPlaced: []jsonNotPlaced{},
	}
	for _, s := range a.Used {
		out.Used = append(out.Used, usedOf(s, u))
	}
	for _, g := range a.Panels {
		out.Panels = append(out.Panels, panelOf(g, u))
	}
	for _, s := range a.Cuts {
		makes := append([]string{}, s.Makes...)
		out.Cuts = append(out.Cuts, jsonSetting{s.N, s.On, string(s.Machine), cut.In(s.Setting, u), makes})
	}
	for _, n := range a.NotPlaced {
		out.NotPlaced = append(out.NotPlaced, jsonNotPlaced(n))
	}
	return out.lines()
}

// lines writes the answer with one line for each key and each element of a list, so that it can be read
// and compared by people too.
func (a jsonAnswer) lines() ([]byte, error) {
	w := &lineWriter{}
	for _, f := range []struct {
		key string
		v   any
	}{
		{"unit", a.Unit}, {"cost", a.Cost}, {"bound", a.Bound}, {"gap", a.Gap}, {"proven", a.Proven}, {"took_ms", a.TookMS},
		{"waste", a.Waste},
	} {
		w.field(f.key, f.v)
	}
	if a.Of != "" {
		w.field("bound_of", a.Of)
	}
	listOf(w, "used", a.Used)
	if len(a.Bought) > 0 {
		listOf(w, "bought", a.Bought)
	}
	if len(a.Panels) > 0 {
		listOf(w, "panels", a.Panels)
	}
	listOf(w, "cuts", a.Cuts)
	listOf(w, "not_placed", a.NotPlaced)
	w.WriteString("\n}\n")
	return w.Bytes(), w.err
}

// lineWriter writes an object line by line and keeps the first error.
type lineWriter struct {
	bytes.Buffer
	err error
}

func (w *lineWriter) key(key string) {
	start := "{\n"
	if w.Len() > 0 {
		start = ",\n"
	}
	fmt.Fprintf(w, "%s  %q: ", start, key)
}

func (w *lineWriter) value(v any) {
	b, err := json.Marshal(v)
	w.err = errors.Join(w.err, err)
	w.Write(b)
}

func (w *lineWriter) field(key string, v any) {
	w.key(key)
	w.value(v)
}

// listOf writes a list with one line for each element.
func listOf[T any](w *lineWriter, key string, list []T) {
	w.key(key)
	w.WriteString("[")
	for i, e := range list {
		if i > 0 {
			w.WriteString(",")
		}
		w.WriteString("\n    ")
		w.value(e)
	}
	if len(list) > 0 {
		w.WriteString("\n  ")
	}
	w.WriteString("]")
}

// perUnit is how many millimetres, or square millimetres, a unit of waste has.
func perUnit(u length.Unit, area bool) float64 {
	mm := u.Size().MM()
	if area {
		return mm * mm
	}
	return mm
}

func wasteOf(w cut.Waste, u length.Unit, area bool) jsonWaste {
	per := perUnit(u, area)
	in := func(v float64) float64 { return math.Round(v/per*1e6) / 1e6 }
	return jsonWaste{in(w.Kerf), in(w.Trim), in(w.Defect), in(w.LeftoverUseful), in(w.LeftoverLost)}
}

func pairOf(p [2]length.Length, u length.Unit) [2]float64 {
	return [2]float64{cut.In(p[0], u), cut.In(p[1], u)}
}

func usedOf(s cut.Used, u length.Unit) jsonUsed {
	out := jsonUsed{Stock: s.Stock, Parts: []jsonPlaced{}, Left: []jsonOffcut{}}
	for _, q := range s.Parts {
		out.Parts = append(out.Parts, jsonPlaced{q.Tag, pairOf(q.At, u), pairOf(q.Size, u), q.Turned})
	}
	for _, o := range s.Left {
		out.Left = append(out.Left, jsonOffcut{pairOf(o.At, u), pairOf(o.Size, u)})
	}
	return out
}

func panelOf(g cut.GluedPanel, u length.Unit) jsonPanel {
	out := jsonPanel{Tag: g.Tag, Strips: []jsonStrip{}}
	for _, s := range g.Strips {
		out.Strips = append(out.Strips, jsonStrip{
			s.Board, pairOf(s.At, u), pairOf(s.Size, u), string(s.Ring), cut.In(s.NetWidth, u),
		})
	}
	return out
}
