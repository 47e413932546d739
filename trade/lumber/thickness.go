package lumber

import (
	"cmp"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

// Skim is what truing both faces of a flat board takes at least: 1/16 in, common practice, no source.
const Skim = length.Inch / 16

var (
	leftFormula = figure.Formula{
		Text: "left = surfaced − bow − twist − 1/16 in − wanted", Source: "common practice, no source",
		Range: "a board flattened whole; cut short first it loses less",
	}
	bowFormula = figure.Formula{
		Text: "bow = bow of the board · (part ÷ board)²", Source: "geometry of an arc that is flat against its radius",
		Range: "a board bowed evenly",
	}
)

// ThicknessLeft returns, in mm, what is left over the wanted thickness when a board of the given thickness
// is flattened:
//
//	left = surfaced − bow − twist − 1/16 in − wanted
//
// Negative: the stock is too thin.
func ThicknessLeft(surfaced, bow, twist, wanted length.Length) (figure.Figure, error) {
	err := cmp.Or(within.Length("thickness of the board", surfaced), within.Room("bow", bow), within.Room("twist", twist), within.Length("wanted thickness", wanted))
	if err != nil {
		return figure.Figure{}, err
	}
	return figure.OfLength("left", surfaced-bow-twist-Skim-wanted, &leftFormula,
		figure.InLength("surfaced", surfaced), figure.InLength("bow", bow), figure.InLength("twist", twist), figure.InLength("wanted", wanted)), nil
}

// NextStock returns the thinnest stock, 4/4 to 16/4, that surfaced on two sides still gives the wanted
// thickness after flattening. Past 16/4 there is none and the error says so: glue up.
func NextStock(wanted, bow, twist length.Length) (Stock, error) {
	err := cmp.Or(within.Length("wanted thickness", wanted), within.Room("bow", bow), within.Room("twist", twist))
	if err != nil {
		return Stock{}, err
	}
	var thickest Stock
	for _, s := range Quarters() {
		thickest = s
		if s.Surfaced >= wanted+bow+twist+Skim {
			return s, nil
		}
	}
	return Stock{}, &within.Error{
		Name: "thickness to buy", Got: length.Sixteenth.Text(wanted + bow + twist + Skim),
		Want: "at most " + length.Sixteenth.Text(thickest.Surfaced) + ", the thickest stock (" + thickest.ID + ") surfaced; glue up two layers",
	}
}

// BowOver returns, in mm, the bow that is left in a part cut from a bowed board before it is flattened: bow
// goes with the square of the length.
func BowOver(bow, board, part length.Length) (figure.Figure, error) {
	err := cmp.Or(within.Room("bow", bow), within.Length("board", board), within.Length("part", part))
	if err == nil && part > board {
		err = &within.Error{Name: "part", Got: length.Sixteenth.Text(part), Want: "no longer than the board, " + length.Sixteenth.Text(board)}
	}
	if err != nil {
		return figure.Figure{}, err
	}
	share := part.MM() / board.MM()
	return figure.Of("bow of the part", bow.MM()*share*share, figure.MM, &bowFormula,
		figure.InLength("bow", bow), figure.InLength("board", board), figure.InLength("part", part)), nil
}
