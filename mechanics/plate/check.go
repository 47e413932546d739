package plate

import (
	"errors"
	"fmt"
)

// What a plate may be: far beyond anything of a shop, near enough that a slip is noticed.
const (
	leastSize, mostSize           = 1, 50_000  // mm
	leastThickness, mostThickness = 0.1, 1_000 // mm
	mostPressure                  = 1_000      // N/mm²
	mostForce                     = 1e9        // N
	mostDensity                   = 25_000     // kg/m³
	mostEI                        = 1e18       // N·mm²
	mostSpring                    = 1e9        // N/mm
	mostThings                    = 200        // of each kind
	slimmest                      = 100        // the longer side over the shorter
)

// between reports a number that is not in a range, or no number at all.
func between(name string, v, lo, hi float64, unit string) error {
	if v >= lo && v <= hi {
		return nil
	}
	if unit != "" {
		unit = " " + unit
	}
	return fmt.Errorf("%s must lie between %g and %g%s, is %g", name, lo, hi, unit, v)
}

func (p *Plate) check() error {
	err := errors.Join(
		between("width", p.Width, leastSize, mostSize, "mm"),
		between("depth", p.Depth, leastSize, mostSize, "mm"),
		between("thickness", p.Thickness, leastThickness, mostThickness, "mm"),
		p.Material.check(),
		p.counts(),
	)
	if err == nil && max(p.Width, p.Depth) > slimmest*min(p.Width, p.Depth) {
		err = fmt.Errorf("a plate of %g × %g mm is a thread: one side may be %d times the other", p.Width, p.Depth, slimmest)
	}
	if err == nil {
		err = errors.Join(p.checkCuts(), p.checkSupports(), p.checkLoad())
	}
	return err
}

func (p *Plate) counts() error {
	for _, c := range []struct {
		name string
		n    int
	}{
		{"openings", len(p.Openings)},
		{"holes", len(p.Holes)},
		{"posts", len(p.Posts)},
		{"discs", len(p.Discs)},
		{"rails", len(p.Rails)},
		{"patches of load", len(p.Load.Patches)},
		{"point loads", len(p.Load.Points)},
	} {
		if c.n > mostThings {
			return fmt.Errorf("a plate has at most %d %s, this one %d", mostThings, c.name, c.n)
		}
	}
	return nil
}

func (p *Plate) checkCuts() error {
	var err error
	for i, o := range p.Openings {
		err = errors.Join(err, o.check(fmt.Sprintf("opening %d", i+1)))
	}
	for i, h := range p.Holes {
		name := fmt.Sprintf("hole %d", i+1)
		err = errors.Join(err, somewhere(name, h.X, h.Y), between(name+": radius", h.R, 1e-3, mostSize, "mm"))
	}
	return err
}

func (r Rect) check(name string) error {
	return errors.Join(somewhere(name, r.X, r.Y),
		between(name+": width", r.W, 1e-3, 4*mostSize, "mm"), between(name+": depth", r.H, 1e-3, 4*mostSize, "mm"))
}

// somewhere reports a place that is nowhere near any plate.
func somewhere(name string, x, y float64) error {
	return errors.Join(between(name+": x", x, -2*mostSize, 2*mostSize, "mm"), between(name+": y", y, -2*mostSize, 2*mostSize, "mm"))
}

// within reports a place beside the plate.
func (p *Plate) within(name string, x, y float64) error {
	if x >= 0 && x <= p.Width && y >= 0 && y <= p.Depth {
		return nil
	}
	return fmt.Errorf("%s at %g, %g mm lies beside the plate of %g × %g mm", name, x, y, p.Width, p.Depth)
}

func (p *Plate) checkSupports() error {
	var err error
	for i, e := range p.Edges {
		if e < Free || e > Held {
			err = errors.Join(err, fmt.Errorf("edge %d is supported in a way there is not: %d", i+1, e))
		}
	}
	for i, s := range p.Posts {
		name := fmt.Sprintf("post %d", i+1)
		err = errors.Join(err, p.within(name, s.X, s.Y), between(name+": spring", s.Spring, 0, mostSpring, "N/mm"))
	}
	for i, s := range p.Discs {
		name := fmt.Sprintf("disc %d", i+1)
		err = errors.Join(err, p.within(name, s.X, s.Y), between(name+": radius", s.R, 0.1, mostSize, "mm"))
	}
	for i, s := range p.Rails {
		err = errors.Join(err, p.checkRail(fmt.Sprintf("rail %d", i+1), s))
	}
	return err
}

func (p *Plate) checkRail(name string, r Rail) error {
	err := errors.Join(p.within(name, r.FromX, r.FromY), p.within(name, r.ToX, r.ToY), between(name+": EI", r.EI, 0, mostEI, "N·mm²"))
	switch {
	case err != nil:
		return err
	case (r.FromX == r.ToX) == (r.FromY == r.ToY):
		return fmt.Errorf("%s must run along x or along y and have a length, runs from %g, %g to %g, %g mm", name, r.FromX, r.FromY, r.ToX, r.ToY)
	case r.Loose && r.EI == 0:
		return fmt.Errorf("%s is loose and has no stiffness: give its EI", name)
	}
	return nil
}

func (p *Plate) checkLoad() error {
	err := errors.Join(
		between("pressure", p.Load.Pressure, -mostPressure, mostPressure, "N/mm²"),
		between("density", p.Load.Density, 0, mostDensity, "kg/m³"))
	for i, l := range p.Load.Patches {
		name := fmt.Sprintf("patch %d of load", i+1)
		err = errors.Join(err, l.check(name), between(name+": pressure", l.Pressure, -mostPressure, mostPressure, "N/mm²"))
	}
	for i, l := range p.Load.Points {
		name := fmt.Sprintf("point load %d", i+1)
		err = errors.Join(err, p.within(name, l.X, l.Y), between(name, l.N, -mostForce, mostForce, "N"))
	}
	return err
}
