package check

import (
	"errors"
	"fmt"
	"math"
	"runtime"
	"sync"
	"sync/atomic"

	"rodwright/figure"
	"rodwright/finding"
	bend "rodwright/mechanics/plate"
	"rodwright/piece"
	"rodwright/trade/beam"
	"rodwright/trade/plate"
)

// strengthShare is how many times the stress of use clear wood must bear before it breaks, 3: knots, short grain and a load
// that stays are in it. Common practice, no source.
const strengthShare = 3

// dampFrom is the relative humidity in percent from which a load counts as standing on damp wood. Common practice, no
// source.
const dampFrom = 65

var (
	sagLimit = figure.Formula{
		Text: "limit = span ÷ ratio of the shop", Source: "common practice, no source",
		Range: "span between the supports that bear it, twice what overhangs them",
	}
	stressLimit = figure.Formula{
		Text: "limit = strength in bending ÷ 3", Source: "Wood Handbook FPL-GTR-282 (2021) Table 5-3 for clear wood; the factor: common practice, no source",
		Range: "clear wood along the grain at 12 % MC",
	}
)

// Sag says of every panel how far it sags at once and in the end under what it holds and its own weight, and how hard it is
// stressed: as a plate with its notches and holes, on its supports where they are. Flanges and feet bear it at their axes and
// let it turn, which is the greater sag; rails bend with it; what only bears lets it lift. Panels are worked out side by
// side, each on its own, and told in order.
func Sag(p *Piece) []finding.Finding {
	each := make([][]finding.Finding, len(p.Panels))
	failed := make([]any, len(p.Panels))
	var next atomic.Int64
	var all sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(p.Panels)) {
		all.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(p.Panels); i = int(next.Add(1)) - 1 {
				each[i], failed[i] = p.sagOrPanic(i)
			}
		})
	}
	all.Wait()
	var out []finding.Finding
	for i := range each {
		if failed[i] != nil {
			panic(failed[i])
		}
		out = append(out, each[i]...)
	}
	return out
}

// sagOrPanic returns a panic, which belongs to the caller of all: another goroutine's could not be caught.
func (p *Piece) sagOrPanic(i int) (out []finding.Finding, failed any) {
	defer func() { failed = recover() }()
	return p.sag(i), nil
}

// sagging is what is known of one panel while its sag is judged.
type sagging struct {
	panel       int
	model, full *bend.Plate // with what stays; with all that may come upon it besides
	stuff       plate.Stuff
	factor      figure.Figure // lasting
	stays, all  plate.Bent    // the answers to both
	span        float64
	assumed     []string
}

func (p *Piece) sag(i int) []finding.Finding {
	flat := &p.Panels[i]
	f := finding.Finding{Check: "sag", Place: flat.Name, Parts: tags(p.Parts.PanelTags[i])}
	s := sagging{panel: i}
	var err error
	if s.stuff, s.factor, err = p.stuffOf(i); err != nil {
		return unknown(f, err.Error())
	}
	s.model = p.plateOf(i)
	if len(s.model.Posts)+len(s.model.Discs)+len(s.model.Rails) == 0 {
		return []finding.Finding{unborne(f, flat)}
	}
	if err := p.bendBoth(&s); err != nil {
		if errors.Is(err, plate.ErrUnheld) {
			err = fmt.Errorf("what bears %s: %w", flat.Name, err)
		}
		return unknown(f, err.Error())
	}
	s.span = spanOf(s.model, s.all)
	return p.judgeSag(f, s)
}

// bendBoth works the panel out under what stays, and under all that may come upon it too where the document names such
// loads.
func (p *Piece) bendBoth(s *sagging) (err error) {
	if s.stays, err = p.bend(s.model, s.stuff); err != nil {
		return err
	}
	s.all = s.stays
	full, names := p.press(s.model, s.panel)
	s.full = s.model
	if full != nil {
		s.full = full
		if s.all, err = p.bend(full, s.stuff); err != nil {
			return err
		}
	}
	s.assumed = append(s.assumed, loadInWords(len(s.model.Load.Patches), names))
	if fast := p.heldFast(s.full, s.stuff); fast != "" {
		s.assumed = append(s.assumed, fast)
	}
	return nil
}

// loadInWords says what presses on a panel.
func loadInWords(things int, names []string) string {
	out := "its own weight"
	if things > 0 {
		out += fmt.Sprintf(" and the %d things it holds, where they stand", things)
	}
	if things == 1 {
		out = "its own weight and the one thing it holds, where it stands"
	}
	for _, n := range names {
		out += ", " + n
	}
	if len(names) > 0 {
		out += "; in the end only what stays"
	}
	return "it bears " + out
}

var borneFormula = figure.Formula{
	Text: "a support bears a panel where there is wood over it", Source: "geometry of the piece", Range: "what lies in a notch or beside the panel bears nothing",
}

// unborne says of a panel that no wood of it lies over anything that could bear it.
func unborne(f finding.Finding, flat *piece.FlatPanel) finding.Finding {
	f.Verdict = finding.Fails
	f.Figure = figure.Of("supports under its wood", 0, figure.Count, &borneFormula, figure.In("seats", float64(len(flat.Seats)), figure.Count))
	f.Limit = figure.Of("supports under its wood", 1, figure.Count, &borneFormula)
	f.Sense, f.Because = finding.AtLeast, []figure.Figure{f.Figure}
	f.Mend = "let its notches open to the other side, or move it, so that its wood lies on 1 support at least"
	return f
}

// judgeSag lays the sags and the stress of a panel against their limits.
func (p *Piece) judgeSag(f finding.Finding, s sagging) []finding.Finding {
	f.Assumed = s.assumed
	lasting, err := beam.LastingSag(s.stays.Sag.Value, s.factor.Value)
	if err != nil {
		return unknown(f, err.Error())
	}
	lasting = lasting.Assuming(s.factor.Assumed...)
	set := p.Shop.Settings
	at := finding.View{From: "front", Marks: []finding.Mark{p.markOn(s.panel, s.all.BelowSupports)}}
	first := p.laid(f, s, "", s.all.Sag, limitOf(s.span, set.SagRatio), at)
	first.Picture = bentPicture(s.full, s.all.Field)
	at = finding.View{From: "front", Marks: []finding.Mark{p.markOn(s.panel, s.stays.BelowSupports)}}
	end := p.laid(f, s, ", in the end", lasting, limitOf(spanOf(s.model, s.stays), set.LastingRatio), at)
	end.Because = append(end.Because, s.stays.Sag)
	out := []finding.Finding{first, end}
	if !math.IsNaN(s.stuff.Strength) {
		limit := figure.Of("limit of stress", s.stuff.Strength/strengthShare, figure.MPa, &stressLimit, figure.In("strength", s.stuff.Strength, figure.MPa))
		out = append(out, p.laid(f, s, ", its stress", s.all.Stress, limit, finding.View{From: "top", Marks: []finding.Mark{p.markOn(s.panel, s.all.Along)}}))
	}
	return out
}

func (p *Piece) laid(f finding.Finding, s sagging, place string, value, limit figure.Figure, at finding.View) finding.Finding {
	f.Place += place
	f.Figure, f.Limit, f.Because, f.View = value, limit, []figure.Figure{value}, at
	if f.Verdict = finding.Judge(value.Value, limit.Value, finding.AtMost); f.Verdict != finding.Stands {
		f.Mend = p.mendSag(s, value, limit)
	}
	return f
}

func limitOf(span, ratio float64) figure.Figure {
	return figure.Of("limit of sag", span/ratio, figure.MM, &sagLimit, figure.In("span", span, figure.MM), figure.In("ratio", ratio, figure.Ratio))
}

func (p *Piece) markOn(i int, at bend.Peak) finding.Mark {
	flat := &p.Panels[i]
	return finding.Mark{At: [3]float64{flat.Min.X.MM() + at.X, flat.Min.Y.MM() + at.Y, flat.Max.Z.MM()}, Text: "most here"}
}

// bend works a plate out, once for each input where the results of earlier ones are kept.
func (p *Piece) bend(model *bend.Plate, s plate.Stuff) (plate.Bent, error) {
	type answer struct {
		bent plate.Bent
		err  error
	}
	got := p.kept("plate", model, s, func() any {
		worked := *model // its material is set as it is worked out
		bent, err := plate.Bend(&worked, s, heldInWords(model))
		return answer{bent, err}
	}).(answer)
	return got.bent, got.err
}

// kept keeps an answer by all that a plate depends on.
func (p *Piece) kept(stage string, model *bend.Plate, s plate.Stuff, compute func() any) any {
	if p.Keep == nil {
		return compute()
	}
	return p.Keep(stage, fmt.Appendf(nil, "%+v %+v", *model, s), compute)
}

// gravity is the standard acceleration of free fall, m/s².
const gravity = 9.80665
