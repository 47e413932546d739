package shop

import (
	"slices"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml/ast"
)

func (s *Shop) readTool(n ast.Node) error {
	var t Tool
	t.Count = 1
	err := section(n, "a tool", []field{
		{"id", textInto(&t.ID)},
		{"name", textInto(&t.Name)},
		{"does", each("does", func(v ast.Node) error {
			text, err := scalar(v)
			t.Does = append(t.Does, text)
			return err
		})},
		{"depth", lengthInto(&t.Depth)},
		{"width", lengthInto(&t.Width)},
		{"least", lengthInto(&t.Least)},
		{"force n", numberInto(&t.ForceN, 1e6)},
		{"count", countInto(&t.Count, 1000)},
	})
	if err == nil && (t.ID == "" || t.Name == "") {
		err = fault(n, "write for example {id: hole-saw, name: hole saws, does: [bore]}", "a tool needs its id and its name")
	}
	if _, twice := s.Tool(t.ID); err == nil && twice {
		err = fault(n, "keep one of them, with its count", "the tool %s is there twice", t.ID)
	}
	s.Tools = append(s.Tools, t)
	return err
}

// readOperations reads the times of the shop's own log. One of a kind of work that is there already takes
// its place.
func (s *Shop) readOperations(n ast.Node) error {
	own := map[string]bool{}
	return each("operations", func(v ast.Node) error {
		o, err := readOperation(v)
		if err != nil {
			return err
		}
		if own[o.ID] {
			return fault(v, "keep one of them", "the operation %s is there twice", o.ID)
		}
		own[o.ID] = true
		if i := slices.IndexFunc(s.Operations, func(p Operation) bool { return p.ID == o.ID }); i >= 0 {
			s.Operations[i] = o
			return nil
		}
		s.Operations = append(s.Operations, o)
		return nil
	})(n)
}

func readOperation(n ast.Node) (Operation, error) {
	o := Operation{Source: "the shop's file"}
	err := section(n, "an operation", []field{
		{"id", textInto(&o.ID)},
		{"per", textInto(&o.Per)},
		{"set-up", hoursInto(&o.SetUpH)},
		{"each", hoursInto(&o.UnitH)},
		{"wait", hoursInto(&o.WaitH)},
		{"source", textInto(&o.Source)},
	})
	if err == nil && o.ID == "" {
		err = fault(n, "write for example {id: thread, per: thread, set-up: 10 min, each: 4 min}", "an operation needs its id")
	}
	return o, err
}

func (s *Shop) readRack(n ast.Node) error {
	return section(n, "the rack", []field{
		{"boards", each("boards", s.readBoard)},
		{"sticks", each("sticks", s.readStick)},
		{"sheets", each("sheets", s.readSheet)},
	})
}

func (s *Shop) readBoard(n ast.Node) error {
	var b Board
	err := section(n, "a board", []field{
		{"tag", textInto(&b.Tag)},
		{"species", textInto(&b.Species)},
		{"quarters", quartersInto(&b.Quarters)},
		{"length", lengthInto(&b.Length)},
		{"width", lengthInto(&b.Width)},
		{"thickness", lengthInto(&b.Thickness)},
		{"rough edges", countInto(&b.RoughEdges, 2)},
		{"ring", textInto(&b.Ring)},
		{"defects", each("defects", func(v ast.Node) error {
			d := Defect{Face: "both"}
			err := section(v, "a defect", []field{
				{"kind", textInto(&d.Kind)},
				{"face", textInto(&d.Face)},
				{"x", lengthInto(&d.X)},
				{"y", lengthInto(&d.Y)},
				{"length", lengthInto(&d.Length)},
				{"width", lengthInto(&d.Width)},
			})
			b.Defects = append(b.Defects, d)
			return positive(v, err, "a defect", d.Length, d.Width)
		})},
	})
	s.Rack.Boards = append(s.Rack.Boards, b)
	return positive(n, err, "a board", b.Length, b.Width, b.Thickness)
}

func (s *Shop) readStick(n ast.Node) error {
	var t Stick
	err := section(n, "a stick", []field{
		{"tag", textInto(&t.Tag)},
		{"pipe", pipeInto(&t.Pipe)},
		{"length", lengthInto(&t.Length)},
	})
	s.Rack.Sticks = append(s.Rack.Sticks, t)
	return positive(n, err, "a stick", t.Length)
}

func (s *Shop) readSheet(n ast.Node) error {
	var t Sheet
	err := section(n, "a sheet", []field{
		{"tag", textInto(&t.Tag)},
		{"sheet", textInto(&t.Sheet)},
		{"length", lengthInto(&t.Length)},
		{"width", lengthInto(&t.Width)},
	})
	s.Rack.Sheets = append(s.Rack.Sheets, t)
	return positive(n, err, "a sheet", t.Length, t.Width)
}

// readPrices reads the prices under the names of items. Three ways to write one:
//
//	tee 3/4: 3.40                    each
//	white-oak 5/4: 9.80 per board foot       any quantity
//	wood screw 10 × 1 in: 7.20 per 100 each  in whole packs of that many
func (s *Shop) readPrices(n ast.Node) error {
	entries, err := mapping(n, "prices")
	if err != nil {
		return err
	}
	for _, e := range entries {
		item := keyText(e)
		if _, twice := s.prices[item]; twice {
			return fault(e.Key, "keep one of them", "%s is priced twice", item)
		}
		text, err := scalar(e.Value)
		if err != nil {
			return err
		}
		p, err := parsePrice(item, text)
		if err != nil {
			return fault(e.Value, "", "%s: %s", item, err)
		}
		s.prices[item] = p
	}
	return nil
}

// parsePrice reads the text behind an item's name.
func parsePrice(item, text string) (Price, error) {
	amount, per, packed := strings.Cut(text, " per ")
	p := Price{Item: item, Pack: 1, Unit: "each", Pieces: true}
	var err error
	if p.Cents, err = parseCents(strings.TrimSpace(amount)); err != nil || !packed {
		return p, err
	}
	p.Unit, p.Pieces = strings.TrimSpace(per), false
	count, unit, ok := strings.Cut(p.Unit, " ")
	if v, err := strconv.ParseFloat(count, 64); ok && err == nil && v > 0 && v <= 1e6 {
		p.Pack, p.Unit, p.Pieces = v, strings.TrimSpace(unit), true
	}
	return p, nil
}
