package part

import (
	"fmt"
	"strings"

	"rodwright/length"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/trade/lumber"
)

// panels takes off every panel: each is a part of its own, as no two of a piece lie alike.
func (t *takeOff) panels() error {
	t.list.PanelTags = make([]string, len(t.r.Panels))
	var parts []Part
	for i := range t.r.Panels {
		p, err := t.panel(&t.r.Panels[i])
		if err != nil {
			return err
		}
		p.Indexes = []int{i}
		parts = append(parts, p)
	}
	t.add("A", parts, t.list.PanelTags)
	return nil
}

func (t *takeOff) panel(flat *piece.FlatPanel) (Part, error) {
	f, o := frameOf(flat), outlineOf(flat)
	thick := flat.Max.Z - flat.Min.Z
	p := Part{
		Kind: Panel, Name: flat.Name, Count: 1, At: flat.Min, Sits: sits(flat), Datum: f.datum(),
		Finished: [3]length.Length{f.along, f.cross, thick},
		Features: f.features(flat), Profiles: f.profiles(flat),
		FaceM2: o.face / 1e6, EdgeM2: (o.edge*thick.MM() + o.walls) / 1e6,
	}
	m, err := t.materialOf(flat.Spec)
	if err != nil {
		return p, err
	}
	p.Material, p.Sheet, p.MassKg, p.Assumed = m.id, m.sheet, m.density*o.volume/1e9, m.assumed
	if m.sheet {
		p.Blank = p.Finished
		return p, nil
	}
	return p, t.blank(&p, flat.Spec)
}

// blank works out what must be glued up for a panel of wood: its blank, the stock it comes from and its
// joints.
//
// A blank is longer than the finished panel by the shop's end trim at each end, wider by its edge trim at
// each edge, and thicker by what flattening takes. It is tallied as one board of its rough thickness. Its
// strips are as wide as the shop glues them at most.
func (t *takeOff) blank(p *Part, spec *piece.Panel) error {
	w := t.s.Panel
	p.Blank = [3]length.Length{
		p.Finished[0] + 2*w.EndTrim, p.Finished[1] + 2*w.EdgeTrim, p.Finished[2] + flattening(w.Flattening),
	}
	stock, ok, err := t.stock(p, spec)
	if err != nil {
		return err
	}
	rough := p.Blank[2]
	if ok {
		p.Rough, rough = stock.ID, stock.Rough
	} else {
		p.Assumed = append(p.Assumed, p.Name+": no stock is thick enough in one layer")
	}
	if p.BoardFeet, err = tally(rough, p.Blank[1], p.Blank[0]); err != nil {
		return t.wrong(spec.Pos, p.Name+": "+err.Error(), "")
	}
	p.GlueLines = strips(p.Blank[1], w.StripMost) - 1
	return nil
}

// flattening is what truing a blank takes off its thickness: the shop's own, else the trade's.
func flattening(shops length.Length) length.Length {
	if shops > 0 {
		return shops
	}
	return lumber.Skim
}

// stock returns the stock a blank comes from: the document's, else the thinnest that still gives the
// finished thickness after bow, twist and flattening. It reports false when none is thick enough.
func (t *takeOff) stock(p *Part, spec *piece.Panel) (lumber.Stock, bool, error) {
	if spec.Stock != "" {
		s, err := lumber.Lookup(spec.Stock)
		if err != nil {
			return s, false, t.wrong(spec.Pos, p.Name+": "+err.Error(), "write the stock in quarters, for example 5/4")
		}
		return s, true, nil
	}
	w := t.s.Panel
	// NextStock takes the trade's skim; what this shop's flattening takes beyond it counts as bow.
	bow := bowOf(w, p.Blank[0]) + flattening(w.Flattening) - lumber.Skim
	s, err := lumber.NextStock(p.Finished[2], max(bow, 0), w.Twist)
	if err != nil {
		return s, false, nil
	}
	if bow > 0 || w.Twist > 0 {
		p.Assumed = append(p.Assumed, fmt.Sprintf("boards bow %s over %s and twist %s", length.SixtyFourth.Text(w.Bow), length.SixtyFourth.Text(w.BowOver), length.SixtyFourth.Text(w.Twist)))
	}
	return s, true, nil
}

// bowOf is the bow of a part of a board: it goes with the square of the length.
func bowOf(w shop.PanelWork, long length.Length) length.Length {
	if w.BowOver <= 0 {
		return w.Bow
	}
	share := long.MM() / w.BowOver.MM()
	return length.FromMM(w.Bow.MM() * share * share)
}

// tally counts one board all three ways.
func tally(thick, wide, long length.Length) (Tally, error) {
	var out [3]float64
	for i, by := range []lumber.Tally{lumber.Retail, lumber.NHLA, lumber.Volume} {
		f, err := lumber.BoardFeet(thick, wide, long, by)
		if err != nil {
			return Tally{}, err
		}
		out[i] = f.Value
	}
	return Tally{Retail: out[0], NHLA: out[1], Volume: out[2]}, nil
}

// strips returns how many strips of at most the given width make up a blank; one where the shop sets none.
func strips(wide, most length.Length) int {
	if most <= 0 || wide <= most {
		return 1
	}
	return int((wide + most - 1) / most)
}

// sits tells how a panel sits, each way once, in the order of the document.
func sits(flat *piece.FlatPanel) string {
	var ways []string
	for _, s := range flat.Spec.Seats {
		ways = append(ways, string(s.Kind))
	}
	if len(ways) == 0 {
		for _, s := range flat.Seats {
			ways = append(ways, string(s.Kind))
		}
	}
	return strings.Join(words(ways...), ", ")
}
