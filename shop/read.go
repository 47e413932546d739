package shop

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"rodwright/length"
	"rodwright/trade/pipe"
)

// Read reads a shop's own file, in YAML. Settings it leaves out keep the values of [Defaults] and are
// named in Assumed; prices, tools, boards and times it leaves out the shop does not have. Every error is
// an *Error with its place.
func Read(file string, text []byte) (*Shop, error) {
	s := Defaults()
	err := s.readFile(text)
	var e *Error
	if errors.As(err, &e) {
		e.File = file
		return nil, e
	}
	if err != nil {
		return nil, err
	}
	return s, nil
}

// readFile reads a shop's own file and says which of its sections the trade's habits stand in for.
func (s *Shop) readFile(text []byte) error {
	top, err := root(text)
	if err != nil {
		return err
	}
	if err := s.read(top); err != nil {
		return err
	}
	if s.Name == "" {
		return fault(top, "write name: and the shop's name", "the shop has no name")
	}
	if s.Currency == "" {
		return fault(top, "write for example currency: EUR", "the shop has no currency")
	}
	entries, err := mapping(top, "the shop")
	for _, what := range []string{"pipe", "panels", "settings"} {
		if !slices.ContainsFunc(entries, func(e *ast.MappingValueNode) bool { return keyText(e) == what }) {
			s.Assumed = append(s.Assumed, what+": the trade's habits, common practice")
		}
	}
	return err
}

// read reads the sections of the file under top.
func (s *Shop) read(top ast.Node) error {
	assumed := false
	err := section(top, "the shop", []field{
		{"name", textInto(&s.Name)},
		{"currency", textInto(&s.Currency)},
		{"prices are assumed", flagInto(&assumed)},
		{"pipe", s.readPipe},
		{"panels", s.readPanels},
		{"settings", s.readSettings},
		{"money", s.readMoney},
		{"boards", each("boards", s.readBoardSize)},
		{"fittings", each("fittings", s.readFitting)},
		{"tools", each("tools", s.readTool)},
		{"operations", s.readOperations},
		{"rack", s.readRack},
		{"prices", s.readPrices},
	})
	if err != nil {
		return err
	}
	if assumed {
		for item, p := range s.prices {
			p.Assumed = true
			s.prices[item] = p
		}
	}
	return s.validate(top)
}

func (s *Shop) readPipe(n ast.Node) error {
	p := &s.Pipe
	return section(n, "pipe", []field{
		{"npt sticks", lengthsInto(&p.NPT)},
		{"iso sticks", lengthsInto(&p.ISO)},
		{"kerf", lengthInto(&p.Kerf)},
		{"trim", lengthInto(&p.Trim)},
		{"useful", lengthInto(&p.Useful)},
		{"nipples up to", lengthInto(&p.NippleUpTo)},
		{"least threaded", lengthInto(&p.LeastThreaded)},
		{"own threads", flagInto(&p.ThreadsAtShop)},
	})
}

// lengthsInto reads a list of lengths.
func lengthsInto(to *[]length.Length) func(ast.Node) error {
	return func(n ast.Node) error {
		*to = nil
		return each("lengths", func(v ast.Node) error {
			var l length.Length
			err := lengthInto(&l)(v)
			*to = append(*to, l)
			return err
		})(n)
	}
}

func (s *Shop) readPanels(n ast.Node) error {
	p := &s.Panel
	return section(n, "panels", []field{
		{"end trim", lengthInto(&p.EndTrim)},
		{"edge trim", lengthInto(&p.EdgeTrim)},
		{"kerf", lengthInto(&p.Kerf)},
		{"jointing", lengthInto(&p.Jointing)},
		{"board trim", lengthInto(&p.BoardTrim)},
		{"strip least", lengthInto(&p.StripLeast)},
		{"strip most", lengthInto(&p.StripMost)},
		{"salvage", percentInto(&p.Salvage, 100)},
		{"tail least", lengthInto(&p.TailLeast)},
		{"flattening", lengthInto(&p.Flattening)},
		{"bow", lengthInto(&p.Bow)},
		{"bow over", lengthInto(&p.BowOver)},
		{"twist", lengthInto(&p.Twist)},
		{"sheet trim", lengthInto(&p.SheetTrim)},
		{"sheet useful", lengthInto(&p.SheetUseful)},
		{"least milled", lengthInto(&p.LeastMilled)},
		{"glue spread", numberInto(&p.GluePerJoint, 1000)},
	})
}

func (s *Shop) readSettings(n ast.Node) error {
	t := &s.Settings
	return section(n, "settings", []field{
		{"working gap", lengthInto(&t.WorkingGap)},
		{"inside radius", lengthInto(&t.InsideRadius)},
		{"screw allowance", lengthInto(&t.ScrewAllowance)},
		{"hole clearance", lengthInto(&t.HoleClearance)},
		{"corner gap", lengthInto(&t.CornerGap)},
		{"sag ratio", numberInto(&t.SagRatio, 10000)},
		{"lasting ratio", numberInto(&t.LastingRatio, 10000)},
		{"sway ratio", numberInto(&t.SwayRatio, 10000)},
		{"tip angle", numberInto(&t.TipDegrees, 60)},
		{"lift", numberInto(&t.LiftKg, 200)},
		{"people", countInto(&t.People, 100)},
		{"hands a day", numberInto(&t.HandsPerDay, 24)},
		{"backlog days", numberInto(&t.Backlog, 2000)},
		{"slack", percentInto(&t.Slack, 300)},
		{"waste", percentInto(&t.Waste, 90)},
		{"spare", percentInto(&t.Spare, 300)},
		{"straps", countInto(&t.Straps, 20)},
		{"coats", countInto(&t.Coats, 20)},
		{"first grit", countInto(&t.FirstGrit, 1000)},
		{"last grit", countInto(&t.LastGrit, 1000)},
		{"adhesive", textInto(&t.Adhesive)},
		{"finish", textInto(&t.Finish)},
		{"metal finish", textInto(&t.MetalFinish)},
	})
}

func (s *Shop) readMoney(n ast.Node) error {
	m := &s.Money
	return section(n, "money", []field{
		{"margin", shareInto(&m.Margin, 95)},
		{"tax", shareInto(&m.Tax, 100)},
		{"deposit", shareInto(&m.Deposit, 100)},
		{"consumables", shareInto(&m.Consumables, 100)},
	})
}

func (s *Shop) readBoardSize(n ast.Node) error {
	var b BoardSize
	err := section(n, "a board", []field{
		{"quarters", quartersInto(&b.Quarters)},
		{"length", lengthInto(&b.Length)},
		{"width", lengthInto(&b.Width)},
		{"rough edges", countInto(&b.RoughEdges, 2)},
		{"surfaced", flagInto(&b.Surfaced)},
	})
	s.Boards = append(s.Boards, b)
	return positive(n, err, "a board", b.Length, b.Width)
}

// quartersInto reads a thickness in quarters, for example 5/4.
func quartersInto(to *string) func(ast.Node) error {
	return func(n ast.Node) error {
		text, err := scalar(n)
		if err != nil {
			return err
		}
		digits, ok := strings.CutSuffix(text, "/4")
		if q, err := strconv.Atoi(digits); !ok || err != nil || q < 1 || q > 32 {
			return fault(n, "write for example 5/4", "%q is no thickness in quarters", text)
		}
		*to = text
		return nil
	}
}

// positive passes an earlier error on, or complains of the first length that is not there.
func positive(n ast.Node, err error, what string, ls ...length.Length) error {
	for _, l := range ls {
		if err == nil && l <= 0 {
			return fault(n, "write its length and width with units", "%s has no size", what)
		}
	}
	return err
}

func (s *Shop) readFitting(n ast.Node) error {
	var m MeasuredFitting
	err := section(n, "a fitting", []field{
		{"pipe", pipeInto(&m.Pipe)},
		{"kind", func(n ast.Node) error {
			text, err := scalar(n)
			if err != nil {
				return err
			}
			if m.Kind, err = pipe.ParseKind(text); err != nil {
				return fault(n, "", "%s", err)
			}
			return nil
		}},
		{"centre to end", lengthInto(&m.CentreToEnd)},
		{"band", lengthInto(&m.Band)},
		{"plate", lengthInto(&m.Plate)},
		{"plate thickness", lengthInto(&m.PlateThick)},
		{"hole circle", lengthInto(&m.HoleCircle)},
		{"mass kg", numberInto(&m.MassKg, 100)},
	})
	if err == nil && (m.Pipe == "" || m.Kind == "") {
		err = fault(n, "write for example {pipe: 3/4, kind: tee, centre to end: 1 5/16 in}", "a fitting needs its pipe and its kind")
	}
	s.Fittings = append(s.Fittings, m)
	return err
}

// pipeInto reads the name of a pipe size.
func pipeInto(to *string) func(ast.Node) error {
	return func(n ast.Node) error {
		text, err := scalar(n)
		if err != nil {
			return err
		}
		size, err := pipe.Lookup(text)
		if err != nil {
			return fault(n, "", "%s", err)
		}
		*to = size.ID
		return nil
	}
}
