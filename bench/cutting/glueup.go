package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"rodwright/cut"
	"rodwright/cut/panel"
	"rodwright/cut/verify"
	"rodwright/length"
)

// gluedProblem is a problem of glued-up panels as the file has it: sizes in sixteenths of an inch, both edges of
// the boards rough, `joint` lost per strip; a defect over the whole width is a split, any other a knot.
type gluedProblem struct {
	Seed    int
	Kerf    length.Length
	RipKerf length.Length `json:"rip_kerf"`
	Joint   length.Length
	Trim    length.Length `json:"edge_trim"`
	Least   length.Length `json:"min_strip"`
	Most    length.Length `json:"max_strip"`
	Tail    length.Length `json:"min_tail"`
	Salvage float64
	Boards  []struct {
		Len, Wid length.Length
		Cost     float64
		Defects  [][4]length.Length
	}
	Panels []struct {
		Len, Wid length.Length
		Qty      cut.Count
		Clear    bool
	}
}

func (g gluedProblem) problem() *panel.Problem {
	const unit = length.Inch / 16
	p := &panel.Problem{
		Unit: length.In, Kerf: g.Kerf * unit, Jointing: g.Joint * unit / 2, BoardEdgeTrim: g.Trim * unit, Salvage: g.Salvage,
		MinTail: g.Tail * unit, Strip: cut.Span{Least: g.Least * unit, Most: g.Most * unit},
	}
	for i, b := range g.Boards {
		board := panel.Board{Tag: fmt.Sprint("B", i), Length: b.Len * unit, Width: b.Wid * unit, RoughEdges: 2, Price: cut.Priced(b.Cost)}
		for _, d := range b.Defects {
			kind := cut.Knot
			if d[2] == 0 && d[3] == b.Wid {
				kind = cut.Split
			}
			board.Defects = append(board.Defects, cut.Defect{Kind: kind, Face: cut.BothFaces, Rect: cut.Rect{
				X: d[0] * unit, Y: d[2] * unit, Length: (d[1] - d[0]) * unit, Width: (d[3] - d[2]) * unit,
			}})
		}
		p.Boards = append(p.Boards, board)
	}
	for i, q := range g.Panels {
		show := cut.Character
		if q.Clear {
			show = cut.Clear
		}
		p.Panels = append(p.Panels, panel.Panel{Tag: fmt.Sprint("A", i), Length: q.Len * unit, Width: q.Wid * unit, Count: q.Qty, Show: show})
	}
	return p
}

// gluedProblems reads the problems of glued-up panels.
func (r *run) gluedProblems() (list []gluedProblem, err error) {
	text, err := os.ReadFile(filepath.Join(r.data, "glue-up", "instances.json"))
	if err != nil {
		return nil, err
	}
	return list, json.Unmarshal(text, &list)
}

// runGlueUps lays out the problems of glued-up panels. What is known of them is known of a model that wants a
// little more than the panels' widths, for strips divided between two: a layout may cost less than its bound.
func runGlueUps(r *run) error {
	list, err := r.gluedProblems()
	if err != nil {
		return err
	}
	rows, err := table(filepath.Join(r.data, "best", "glue_up.csv"))
	if err != nil {
		return err
	}
	best := map[string]float64{}
	for _, row := range rows {
		best[strings.TrimSpace(row["seed"])] = float(row["best_cost"])
	}
	var all []outcome
	for _, g := range list {
		name := fmt.Sprint(g.Seed)
		if !r.wants(name) {
			continue
		}
		p := g.problem()
		k := known{"glue-up", name, 0, best[name] + 0.006} // printed with two decimals
		o, err := r.timed(k, func(ctx context.Context) (*cut.Answer, error) {
			return panel.Solve(ctx, p, cut.Limits{Nodes: cut.Endless})
		}, func(a *cut.Answer) []verify.Fault { return verify.Panel(p, a) })
		if err != nil {
			return err
		}
		if n := len(o.answer.NotPlaced); n > 0 {
			r.refute("%s: %d panels not made", name, n)
		}
		all = append(all, o)
	}
	summary(all)
	return nil
}
