package check

import (
	"os"
	"strings"
	"testing"

	"rodwright/finding"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/piece/random"
	"rodwright/shop"
)

// stepped is the example that is notched round its back posts, as far as distances of it were measured.
func stepped(t *testing.T, distances ...piece.Distance) *Piece {
	t.Helper()
	text, err := os.ReadFile("../examples/stepped-stand.piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	doc, err := piece.Read("stand.piece.yaml", text)
	if err != nil {
		t.Fatal(err)
	}
	r, err := piece.ResolveStanding(doc, shop.Sample(), piece.Facts{Distances: distances})
	if err != nil {
		t.Fatal(err)
	}
	l, err := part.TakeOff(r, shop.Sample())
	if err != nil {
		t.Fatal(err)
	}
	return Of(r, l, shop.Sample())
}

// A rail between two tees of 3/4 in: 2 joints by 1/14 in, 2 fittings by 1/16 in, and a quarter of a pitch of 1/14 in, as a
// tee on a post points its way in two positions: 0.1429 + 0.125 + 0.0179 = 0.2857 in. By hand; root of the squares:
// √(2·0.0714² + 2·0.0625² + 0.0179²) = 0.1354 in. Set by measure: half a pitch and that quarter, 0.0536 in.
func TestARailBetweenTwoTeesComesOutByItsJointsFittingsAndPointing(t *testing.T) {
	p := rungs(t, "14 in")
	for i, s := range p.Sticks {
		if s.Role != piece.RailRole {
			continue
		}
		g := p.giveOf(i)
		near(t, "worst", g.felt.Worst().Inches(), 0.2857, 1e-4)
		near(t, "root sum of squares", g.felt.RootSumSquare().Inches(), 0.1354, 1e-4)
		near(t, "set by measure", g.set.Worst().Inches(), 0.0536, 1e-4)
	}
}

func TestAFittingThatTheShopMeasuredGivesLess(t *testing.T) {
	p := rungs(t, "14 in")
	own := *p.Shop
	own.Fittings = append(own.Fittings, shop.MeasuredFitting{Pipe: "3/4", Kind: "tee", CentreToEnd: inch(1.3)})
	for i, s := range p.Sticks {
		if s.Role == piece.RailRole {
			before := p.giveOf(i).felt.Worst()
			after := Of(p.Resolved, p.Parts, &own).giveOf(i).felt.Worst()
			near(t, "less", (before - after).Inches(), 2.0/32, 1e-9)
		}
	}
}

// A cap leaves a pipe free: it need not point anywhere.
func TestACapFreesAPipeFromPointing(t *testing.T) {
	p := rungs(t, "14 in")
	for i, s := range p.Sticks {
		want := 0.0
		if s.Role == piece.RailRole {
			want = 0.25
		}
		near(t, s.Name, p.pointing(i), want, 0)
	}
}

// The notches allow a pitch and the working gap, 1/14 + 1/16 in; a frame wrenched by feel may be off by more: measure.
func TestAPanelNotchedRoundPostsIsCutToTheStandingFrame(t *testing.T) {
	fs := Stack(stepped(t))
	f := only(t, fs, "the opening round back left post")
	verdict(t, f, finding.Tight)
	near(t, "allows", f.Limit.Value/25.4, 1.0/14+1.0/16, 1e-6)
	says(t, f.Mend, "measured front left post to back left post …", "measured front right post to back right post …", "within half a turn")
	m := only(t, Measure(stepped(t)), "the standing frame")
	verdict(t, m, finding.Tight)
	says(t, m.Mend, "measured back left post to back right post …")
}

func TestADistanceThatTheJournalHasIsDone(t *testing.T) {
	drawn := stepped(t)
	var told []piece.Distance
	for n, tape := range strings.Split(strings.TrimPrefix(only(t, Measure(drawn), "the standing frame").Mend, "measure before cutting, to 1/32 in: "), "; ") {
		from, to, ok := strings.Cut(strings.TrimSuffix(strings.TrimPrefix(tape, "measured "), " …"), " to ")
		if !ok {
			t.Fatalf("%q is not in the journal's words", tape)
		}
		told = append(told, piece.Distance{From: from, To: to, Value: apartOf(t, drawn, from, to), Number: int64(n + 1)})
	}
	f := only(t, Measure(stepped(t, told...)), "the standing frame")
	verdict(t, f, finding.Stands)
	for _, f := range Stack(stepped(t, told...)) {
		verdict(t, f, finding.Stands)
	}
}

// apartOf is how far two posts are drawn apart, along the piece or front to back.
func apartOf(t *testing.T, p *Piece, from, to string) length.Length {
	t.Helper()
	at := map[string]piece.Vec{}
	for i, s := range p.Sticks {
		at[p.postName(i)] = p.Nodes[s.A].At
	}
	a, b := at[from], at[to]
	return max((a.X - b.X).Abs(), (a.Y - b.Y).Abs())
}

// The worst case is never less than the 95 % span, on any piece.
func TestNoChainOfARandomPieceIsSurerAtWorstThanUsually(t *testing.T) {
	for seed := range uint64(60) {
		p, err := tryDerive(shop.Sample(), random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range append(Stack(p), Level(p)...) {
			worst, usual, root := because(t, f, "off at worst").Value, because(t, f, "off in 95 of 100").Value, because(t, f, "root sum of squares").Value
			if worst < usual || worst < root {
				t.Fatalf("seed %d: worst %v, usual %v, root %v", seed, worst, usual, root)
			}
		}
	}
}
