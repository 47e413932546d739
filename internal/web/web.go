// Package web holds the page in the browser, built and embedded.
//
// The sources are in ui, the built page in dist; both are kept, so that the program is built without Node.
// Command bundle makes dist from ui and says when it is stale. The page speaks to the server through its
// HTTP interface alone: nothing of the product is imported here.
package web

import (
	"embed"
	"fmt"
	"io/fs"
)

//go:embed dist
var built embed.FS

// Files returns the built page: index.html for every path of the page, and beside it the script, its parts,
// the style, the icon and the licences of what is bundled. The names of scripts and styles change with their
// contents, so that they may be cached for ever; index.html may not.
func Files() fs.FS {
	files, err := fs.Sub(built, "dist")
	if err != nil {
		panic(fmt.Sprintf("web: the embedded folder has a valid name: %v", err))
	}
	return files
}
