package check

import (
	"errors"
	"math"

	beams "rodwright/mechanics/frame"
	"rodwright/part"
	"rodwright/trade/screw"
	"rodwright/trade/strap"
)

// worst is the most that one kind of thing bears in any case.
type worst struct {
	at     int     // the member, stub or foot; -1 where there is none
	by     float64 // MPa, share or N
	name   string  // of the case
	tips   bool    // it goes over before the load has come to its full
	pull   float64 // N on each screw
	across float64 // N on each screw
	moment float64 // N·mm on the flange
}

// strong is what the cases come to.
type strong struct{ root, flange, strap, foot worst }

// try keeps the worse of two.
func (w *worst) try(with worst) {
	if with.at >= 0 && (w.at < 0 || with.by > w.by) {
		*w = with
	}
}

// prover runs the cases on a frame with its joints of one stiffness.
type prover struct {
	*skeleton
	screws  []grip
	areas   []float64 // of the pipe over that left at the thread's root, by member
	results *strong
}

// prove works out all sums of loads and keeps the worst of each kind.
func (k *skeleton) prove(g gives, standing *beams.Mix, l *loading, into *strong) error {
	p := &prover{skeleton: k, results: into, screws: k.holding(), areas: k.rootAreas()}
	var wheels *beams.Mix
	for _, c := range l.sums {
		on := standing
		if c.wheels {
			if wheels == nil {
				m, err := beams.New(rolling(k.jointed(g), k.floor))
				if err != nil {
					return err
				}
				if wheels, err = m.Mix(l.wheels...); err != nil {
					return err
				}
			}
			on = wheels
		}
		if err := p.run(on, c); err != nil {
			return err
		}
	}
	return nil
}

// run works out a sum. A piece that goes over under it is reckoned as held down.
func (p *prover) run(on *beams.Mix, c burden) error {
	a, err := on.Solve(c.name, c.inHands, c.shares, c.shifts...)
	var tips *beams.Tips
	tipped := errors.As(err, &tips)
	if tipped {
		a, err = on.Solve(c.name, true, c.shares, c.shifts...)
	}
	if err != nil {
		return err
	}
	p.read(&a, c, tipped)
	return nil
}

// read keeps what a case asks of threads, screws and feet.
func (p *prover) read(a *beams.Answer, c burden, tipped bool) {
	w := worst{name: c.name, tips: tipped}
	for i := range a.Members {
		if m := &a.Members[i]; p.sticks[i] >= 0 {
			w.at, w.by = i, m.Bending+math.Abs(m.Axial)*p.areas[i]
			p.results.root.try(w)
		}
	}
	for n, s := range p.stubs {
		switch {
		case p.screws[n].count == 0:
		case s.member < 0:
			p.strapped(n, p.onPipe(a, s), w)
		default:
			p.screwed(n, s, &a.Members[s.member], w)
		}
	}
	if c.wheels || c.inHands {
		return
	}
	for _, i := range p.s.feet {
		if at, ok := p.floor[i]; ok {
			w.at, w.by = i, a.Nodes[at].Push[beams.AlongZ]
			p.results.foot.try(w)
		}
	}
}

// rootAreas are the shares of area by which the stress of a pull grows at the root of the thread.
func (k *skeleton) rootAreas() []float64 {
	out := make([]float64, len(k.sticks))
	for i, st := range k.sticks {
		if st < 0 {
			continue
		}
		if size := k.p.Sticks[st].Section.Pipe; size != nil {
			root, bore := size.Root.MM(), size.Bore.MM()
			out[i] = size.SectionArea() / (math.Pi / 4 * (root*root - bore*bore))
		}
	}
	return out
}

// grip is how the screws of a stub hold.
type grip struct {
	count            int
	rim, circle      float64 // mm, radii of the plate and of the circle of its screws
	bears            float64 // mm, how far along its pipe a panel bears beside a strap
	withdraw, across float64 // N that one screw is designed for
}

// holding looks up the screws of every stub. One of which the design value is not known is left out.
func (k *skeleton) holding() []grip {
	out := make([]grip, len(k.stubs))
	for n, s := range k.stubs {
		if s.fastener >= 0 {
			out[n] = k.gripOf(s)
		}
	}
	return out
}

// casterPlate is half the lesser side of a caster's plate and the reach of its screws, mm: 2 3/8 × 3 5/8 in with its
// screws 1 3/4 in apart. Common practice, no source.
const (
	casterPlate  = 30
	casterScrews = 22
)

func (k *skeleton) gripOf(s stub) grip {
	f := k.p.Parts.Fasteners[s.fastener]
	h := grip{rim: casterPlate, circle: casterScrews}
	if f.Node >= 0 {
		fit := k.p.Nodes[f.Node].Fitting
		h.rim, h.circle = fit.Plate.MM()/2, fit.HoleCircle.MM()/2
		if h.circle <= 0 {
			h.circle = 0.7 * h.rim
		}
	}
	if s.strap {
		h.bears = k.bearsBeside(f)
		if st, err := strap.Lookup(k.p.strapSize(f)); err == nil {
			h.rim, h.circle = st.HoleSpacing.MM(), st.HoleSpacing.MM()/2
		}
	}
	var err error
	if h.withdraw, h.across, err = k.p.designed(f); err == nil && h.rim > 0 {
		h.count = f.Count
	}
	return h
}

// strapSize is the size of the pipe under a strap.
func (p *Piece) strapSize(f part.Fastener) string {
	if size := p.Sticks[p.Panels[f.Panel].Seats[f.Seat].Stick].Section.Pipe; size != nil {
		return size.ID
	}
	return ""
}

// designed are the loads that one screw is designed for along and across it, N.
func (p *Piece) designed(f part.Fastener) (along, across float64, err error) {
	spec := p.Panels[f.Panel].Spec
	if spec.Wood == nil || spec.Sheet != "" {
		return 0, 0, errors.New("what screws hold in " + spec.Sheet)
	}
	sc, err := screw.Lookup(f.Gauge)
	if err != nil {
		return 0, 0, err
	}
	bite := min(f.Length-f.Grip, thickness(p.Panels[f.Panel]))
	_, design, err := screw.Withdrawal(spec.Wood.Species, sc.Shank, max(bite, 0), screw.Side)
	if err != nil {
		return 0, 0, err
	}
	side, err := screw.Lateral(spec.Wood.Species, sc.Shank, max(bite, leastBiteIn*sc.Shank))
	if err != nil {
		return 0, 0, err
	}
	short := min(1, bite.MM()/(leastBiteIn*sc.Shank).MM())
	return design.Value, side.Value * max(short, 0), nil
}

// leastBiteIn is how many of its diameters a screw must bite before the handbook gives a load across it. A shorter bite is
// reckoned in proportion: common practice, no source.
const leastBiteIn = 4

// bitesShort reports whether a screw bites less than that.
func (p *Piece) bitesShort(f part.Fastener) bool {
	sc, err := screw.Lookup(f.Gauge)
	return err == nil && min(f.Length-f.Grip, thickness(p.Panels[f.Panel])) < leastBiteIn*sc.Shank
}

// bearsBeside is how far a panel lies on its pipe beside a strap, to its nearer edge, in mm; 20 mm at least.
func (k *skeleton) bearsBeside(f part.Fastener) float64 {
	flat := &k.p.Panels[f.Panel]
	seat := flat.Seats[f.Seat]
	if k.p.Sticks[seat.Stick].Dir.X != 0 {
		return max(20, min(seat.At[0]-flat.Min.X, flat.Max.X-seat.At[0]).MM())
	}
	return max(20, min(seat.At[1]-flat.Min.Y, flat.Max.Y-seat.At[1]).MM())
}

// screwed keeps what the screws of a flange, or of a strap with a stub, bear.
func (p *prover) screwed(n int, s stub, m *beams.Strain, w worst) {
	if s.strap { // own z of its stub is the pipe's axis
		p.strapped(n, [6]float64{m.Start[2], m.Start[1], m.End[0], m.Start[5], m.Start[4], m.Start[3]}, w)
		return
	}
	h := &p.screws[n]
	count := float64(h.count)
	w.at, w.moment = n, math.Hypot(m.Start[4], m.Start[5])
	w.across = math.Hypot(m.Start[1], m.Start[2])/count + math.Abs(m.Start[3])/(count*h.circle)
	pull := m.End[0]
	if s.turned {
		pull = -pull
	}
	w.pull = max(0, pull/count+w.moment*prying(h.rim, h.circle)/count)
	p.keep(&p.results.flange, h, w)
}

// strapped keeps what the screws of a strap bear: forces along the pipe, across it and up, and moments about these. Along
// its pipe it slides.
func (p *prover) strapped(n int, f [6]float64, w worst) {
	h := &p.screws[n]
	count := float64(h.count)
	w.at, w.moment = n, math.Hypot(f[3], f[4])
	w.across = math.Abs(f[1])/count + math.Abs(f[5])/(count*h.circle)
	w.pull = max(0, (f[2]+math.Abs(f[4])/h.bears+math.Abs(f[3])/h.rim)/count)
	p.keep(&p.results.strap, h, w)
}

func (p *prover) keep(as *worst, h *grip, w worst) {
	share, err := screw.Combined(w.pull, w.across, h.withdraw, h.across)
	if err == nil {
		w.by = share.Value
		as.try(w)
	}
}

// onPipe is what a panel does to a pipe at the node that they share: what the node puts on the two lengths of that pipe.
// Level pipes have their own z up.
func (p *prover) onPipe(a *beams.Answer, s stub) (f [6]float64) {
	name := p.frame.Nodes[s.at].Name
	for i := range p.frame.Members {
		if p.sticks[i] != s.stick {
			continue
		}
		if p.frame.Members[i].From == name {
			for x := range f {
				f[x] += a.Members[i].Start[x]
			}
		}
		if p.frame.Members[i].To == name {
			for x := range f {
				f[x] += a.Members[i].End[x]
			}
		}
	}
	return f
}

// prying is the pull on the worst of n screws of a round plate that turns about its rim under a moment, times n ÷ moment:
//
//	(R + r) ÷ (R² + r²/2)
//
// with R the radius of the rim and r that of the screws' circle: they pull as they are far from the rim, Σ (R + r·cos)² is
// n·(R² + r²/2) for three screws and more.
func prying(rim, circle float64) float64 { return (rim + circle) / (rim*rim + circle*circle/2) }
