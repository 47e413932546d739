package html

import _ "embed" // the style sheets

// Style is the style sheet of an article, every rule within the class book. Its colours are custom properties
// of the page, with those of pencil on paper where the page sets none.
//
//go:embed book.css
var Style string

// ground is the style of a page by itself: its colours by light and dark, and what is around the article.
//
//go:embed page.css
var ground string
