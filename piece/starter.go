package piece

import (
	"embed"
	"slices"

	"rodwright/trade/table"
)

//go:embed starters/*.piece.yaml
var starterFiles embed.FS

// starterNames are the starters in the order they are offered, the piece that shows most first.
var starterNames = []string{"stepped-stand", "low-bench", "long-table", "wall-shelf"}

// Starters returns the names of the documents a new piece can start from.
func Starters() []string { return slices.Clone(starterNames) }

// Starter returns the text of a starter, a document with comments that can be read and built as it is. The
// error for another name is a *table.UnknownError.
func Starter(name string) ([]byte, error) {
	if !slices.Contains(starterNames, name) {
		return nil, table.Unknown("starter", name, starterNames)
	}
	return starterFiles.ReadFile("starters/" + name + ".piece.yaml")
}
