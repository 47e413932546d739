package pipe

import (
	"math"
	"math/rand/v2"
	"slices"

	"rodwright/figure"
	"rodwright/length"
)

// What a joint, a pipe and a fitting give, either way, of what they are drawn.
const (
	FeltTurns    = 1.0 // of a joint that is wrenched by feel
	SetTurns     = 0.5 // of a pipe whose distance is set by measuring while it is wrenched
	PointedTurns = 0.5 // of a pipe between two fittings that must both point their way; half of it where one does so in two ways

	// CentreGive is how far a fitting's centre-to-end may be off the table. That there is such a tolerance is in
	// ASME B16.3 § 7.3; its size here, 1/16 in for the sizes of furniture, is from memory.
	CentreGive = length.Inch / 16
	// BenchGive is the same for a fitting that was measured on the bench, within a mark of the tape.
	BenchGive = length.Inch / 32
)

// Give is something by which a length may come out longer or shorter, either way alike, as often as it is in
// the chain. One is independent of the other.
type Give struct {
	By    length.Length // at most, either way; not less than zero
	Times int
}

// Stack is everything by which the length of one chain may come out otherwise than drawn.
type Stack []Give

// chains is how many chains are made up by [Stack.Usual]; seed is that of their numbers, and stride parts the seeds of
// joints that give alike: 2⁶⁴ over the golden ratio, so that they lie far apart.
const (
	chains = 2000
	seed   = 0x726f6477
	stride = 0x9e3779b97f4a7c15
)

var (
	worstFormula = figure.Formula{
		Text: "worst = Σ n·t", Source: "arithmetic: every joint off the same way, as far as it goes",
		Range: "t: what one joint, fitting or pipe gives either way; n: how often it is in the chain",
	}
	rssFormula = figure.Formula{
		Text: "root sum of squares = √(Σ n·t²)", Source: "variances of independent errors add, any text on statistics",
		Range: "many independent joints; a single one gives its whole t",
	}
	usualFormula = figure.Formula{
		Text:   "of 2 000 chains made up by chance, 95 in 100 are off by at most this",
		Source: "Monte Carlo method, any text on statistics; PCG numbers of a fixed seed, so that it is the same every time",
		Range:  "every error between −t and t as likely as any other; the span so found has a standard error of about 2 %",
	}
)

// With returns the stack and one more give, times over. What gives nothing is left out; like is counted with
// like, so that equal chains have equal stacks whatever their order.
func (s Stack) With(by length.Length, times int) Stack {
	if by <= 0 || times <= 0 {
		return s
	}
	out := slices.Clone(s)
	at, there := slices.BinarySearchFunc(out, by, func(g Give, by length.Length) int { return int(min(max(g.By-by, -1), 1)) })
	if there {
		out[at].Times += times
		return out
	}
	return slices.Insert(out, at, Give{by, times})
}

// And returns both stacks as one.
func (s Stack) And(other Stack) Stack {
	for _, g := range other {
		s = s.With(g.By, g.Times)
	}
	return s
}

// Worst returns by how much the chain is off when everything in it is off the same way:
//
//	worst = Σ n·t
func (s Stack) Worst() (sum length.Length) {
	for _, g := range s {
		sum += g.By * length.Length(g.Times)
	}
	return sum
}

// RootSumSquare returns the root of the sum of squares, to the nanometre:
//
//	√(Σ n·t²)
func (s Stack) RootSumSquare() length.Length {
	sum := 0.0
	for _, g := range s {
		sum += float64(g.Times) * g.By.MM() * g.By.MM()
	}
	return length.FromMM(math.Sqrt(sum))
}

// Usual returns by how much 95 in 100 chains are off at most, from 2 000 that are made up by chance, every error
// between −t and t as likely as any other. It is the same every time, never more than [Stack.Worst], and tends
// to 1.96/√3 times [Stack.RootSumSquare] in long chains (the central limit theorem).
func (s Stack) Usual() length.Length {
	if len(s) == 0 {
		return 0
	}
	off := make([]float64, chains)
	for _, g := range s {
		by := 2 * g.By.MM()
		for n := range g.Times { // each joint has numbers of its own, so that one more leaves the others as they were
			chance := rand.New(rand.NewPCG(seed^uint64(g.By), uint64(n)*stride))
			for k := range off {
				off[k] += by * (chance.Float64() - 0.5)
			}
		}
	}
	for k := range off {
		off[k] = math.Abs(off[k])
	}
	slices.Sort(off)
	return min(length.FromMM(off[chains*95/100-1]), s.Worst())
}

// Figures returns worst case, root sum of squares and the span of 95 in 100, each with its reason.
func (s Stack) Figures() []figure.Figure {
	var inputs []figure.Input
	for _, g := range s {
		inputs = append(inputs, figure.In("n", float64(g.Times), figure.Count), figure.InLength("t", g.By))
	}
	return []figure.Figure{
		figure.OfLength("off at worst", s.Worst(), &worstFormula, inputs...),
		figure.OfLength("root sum of squares", s.RootSumSquare(), &rssFormula, inputs...),
		figure.OfLength("off in 95 of 100", s.Usual(), &usualFormula, inputs...),
	}
}

// TurnsLeft returns how many turns a joint of normal make-up can still be tightened, and by how many fewer it may be
// left when it is put together; never less than none. A taper thread that is tight is not turned back.
//
// Wrench-tight is 1.5 to 3.6 turns past hand-tight: common practice, no source.
func (s Size) TurnsLeft() (tighter, looser float64) {
	if s.Pitch <= 0 {
		return 0, 0
	}
	turns := float64(s.Engagement-s.HandTight) / float64(s.Pitch)
	return max(mostTurns-turns, 0), max(turns-leastTurns, 0)
}

const leastTurns, mostTurns = 1.5, 3.6
