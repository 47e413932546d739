package piece

import (
	"slices"
	"strings"

	"rodwright/length"
	"rodwright/piece/markup"
)

// readLoads reads what may come upon the piece besides what it holds.
func (r *reading) readLoads(n *markup.Node) {
	for _, e := range r.entries(n, "loads", "lean: {on: top, edge: front, weight: 60 kg}") {
		f, ok := r.fields(e.Value, "the load "+e.Key, "on", "edge", "at", "weight", "push", "towards")
		if !ok {
			continue
		}
		l := Load{Name: e.Key, Pos: e.KeyPos}
		f.require("on", "the panel it comes upon")
		l.On, _ = f.panel("on")
		r.readSpot(f, &l)
		f.exclude("push", "weight")
		f.exclude("weight", "towards")
		switch {
		case f.has("push"):
			l.PushN, _ = f.force("push")
			f.require("towards", sideWords)
			l.Towards = f.side("towards")
		case f.has("weight"):
			l.MassKg, _ = f.mass("weight")
		default:
			f.require("weight", "60 kg, or push: 100 N")
		}
		r.doc.Loads = append(r.doc.Loads, l)
	}
}

const sideWords = "front, back, left or right"

// side reads a side of a panel.
func (f fields) side(key string) PanelSide {
	word, _ := f.choice(key, string(FrontSide), string(BackSide), string(LeftSide), string(RightSide))
	return PanelSide(word)
}

// readSpot reads where a load comes upon its panel: at the middle of an edge, or at a place on it.
func (r *reading) readSpot(f fields, l *Load) {
	f.exclude("at", "edge")
	n := f.node("at")
	if n == nil {
		f.require("edge", sideWords+", or at: [x, y] from the panel's left front corner")
		l.Edge = f.side("edge")
		return
	}
	at, ok := r.point(n, "at", 2)
	if !ok {
		return
	}
	l.At = &[2]length.Length{at[0], at[1]}
	i := slices.IndexFunc(r.doc.Panels, func(p Panel) bool { return p.Name == l.On })
	if i < 0 {
		return
	}
	x, y := r.doc.Panels[i].extent()
	if x > 0 && y > 0 && (at[0] < 0 || at[0] > x || at[1] < 0 || at[1] > y) {
		r.fail(n.Pos, "measure from the left front corner of "+l.On, "at: lies beside %s", l.On)
	}
}

// forces are the units a push is written in, in newtons: a mass stands for its weight.
var forces = []struct {
	symbol string
	newton float64
}{{"N", 1}, {"kN", 1000}, {"lbf", poundKg * standardGravity}, {"lb", poundKg * standardGravity}, {"lbs", poundKg * standardGravity}, {"kg", standardGravity}}

// standardGravity is that of the General Conference on Weights and Measures, 1901, m/s², exact.
const standardGravity = 9.80665

// mostForce is the weight of the greatest mass that is read.
const mostForce = maxKg * standardGravity

// force reads a push under a key, in newtons: 100 N, 20 lb.
func (f fields) force(key string) (float64, bool) {
	n := f.scalar(key)
	if n == nil {
		return 0, false
	}
	v, rest, why := length.ScanNumber(n.Text)
	if why == "" {
		for _, u := range forces {
			if strings.TrimSpace(rest) != u.symbol {
				continue
			}
			newton, _ := v.Float64()
			if newton *= u.newton; newton > 0 && newton <= mostForce {
				return newton, true
			}
			f.fail(n.TextPos, "write a push above zero and below 980 kN", "%s: is %q", key, clipped(n.Text))
			return 0, false
		}
	}
	f.fail(n.TextPos, "write for example 100 N or 20 lb", "%s: %q is no push with its unit", key, clipped(n.Text))
	return 0, false
}
