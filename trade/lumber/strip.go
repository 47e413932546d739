package lumber

import (
	"cmp"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

// RoughEdge is what ripping a rough edge takes besides the kerf: 1/8 in, common practice, no source.
const RoughEdge = length.Inch / 8

var stripFormula = figure.Formula{
	Text: "net = board − rough edges · (kerf + 1/8 in) − 2 · jointing; count = ⌈blank ÷ net⌉", Source: "common practice, no source",
	Range: "one strip to a board",
}

// Strips is what a glued-up blank takes.
type Strips struct {
	Count  int
	Net    length.Length // the width each board gives, ready to glue
	Each   length.Length // the width of each when all are made alike: the blank ÷ Count, rounded
	Joints int
	Figure figure.Figure // Count
}

// StripsFor returns how many strips a blank of the given width takes from boards of the given width, with 0
// to 2 rough edges to rip off and both edges to joint:
//
//	net = board − rough edges · (kerf + 1/8 in) − 2 · jointing
func StripsFor(blank, board length.Length, roughEdges int, kerf, jointing length.Length) (Strips, error) {
	err := cmp.Or(within.Length("blank width", blank), within.Length("board width", board),
		within.Counted("rough edges", roughEdges, 0, 2), within.Room("kerf", kerf), within.Room("jointing", jointing))
	if err != nil {
		return Strips{}, err
	}
	net := board - length.Length(roughEdges)*(kerf+RoughEdge) - 2*jointing
	if err := within.Between("width left of the board", net.MM(), 1, length.Max.MM(), figure.MM); err != nil {
		return Strips{}, err
	}
	n := within.Cover(blank, net)
	s := Strips{Count: n, Net: net, Each: blank.Scale(1, int64(n)), Joints: n - 1}
	s.Figure = figure.Of("strips", float64(n), figure.Count, &stripFormula,
		figure.InLength("blank", blank), figure.InLength("board", board), figure.In("rough edges", float64(roughEdges), figure.Count),
		figure.InLength("kerf", kerf), figure.InLength("jointing", jointing))
	return s, nil
}

var pieceFormula = figure.Formula{
	Text: "n · part + (n − 1) · kerf ≤ stock − start", Source: arithmetic,
	Range: "the saw cut after the last part comes off what is left",
}

// Pieces is what one board or stick still gives.
type Pieces struct {
	Count  int
	Left   length.Length // after the last part and its saw cut
	Short  length.Length // by how much one more would not fit
	Figure figure.Figure // Count
}

// PiecesFrom returns how many equal parts come out of a stock whose first part begins at start.
func PiecesFrom(stock, part, kerf, start length.Length) (Pieces, error) {
	err := cmp.Or(within.Length("stock", stock), within.Length("part", part), within.Room("kerf", kerf), within.Room("start", start))
	if err == nil && start > stock {
		err = &within.Error{Name: "start", Got: length.Sixteenth.Text(start), Want: "within the stock, " + length.Sixteenth.Text(stock)}
	}
	if err != nil {
		return Pieces{}, err
	}
	room := stock - start
	n := (room + kerf) / (part + kerf)
	p := Pieces{Count: int(n), Left: max(0, room-n*(part+kerf)), Short: (n+1)*part + n*kerf - room}
	p.Figure = figure.Of("pieces", float64(n), figure.Count, &pieceFormula, figure.InLength("stock", stock),
		figure.InLength("start", start), figure.InLength("part", part), figure.InLength("kerf", kerf))
	return p, nil
}
