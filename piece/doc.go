// Package piece holds the piece of furniture itself: the document its maker writes, and the exact geometry
// that follows from it.
//
// A document says relations in the trade's words: posts at the corners of a board, rails between posts, how
// each panel sits, what must be held. Nothing derived is written in it. [Read] reads it with places, works
// out its formulas and refuses what it can't read with file, line, column and what would be right; [Edit]
// changes one value in the text and leaves every other byte alone; [Resolve] places panels, sticks, fittings
// and openings to the nanometre.
//
// The words: a post is an upright stick, a rail a level one between posts or rails, an arm a level one out
// of a wall; a node is a joint, a fitting or an end; a band is the thick rim of a fitting. X runs along the
// piece from the left, Y from front to back, Z up from the floor.
//
// The package judges nothing: that a piece tips or binds is for package check to say.
package piece
