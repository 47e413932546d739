// Package table reads the trade's tables: comma-separated text with a source on every row, embedded in
// the package that uses it.
//
// The last two columns of a table are source, with the keys of the publications joined by +, and how:
// read when the row was seen in a copy of the publication, memory when it was written from knowledge
// of it. read_columns and memory_columns, if there, name the cells that differ from their row. A Source
// turns all that into words for a maker.
//
// Start with [Read] for an embedded table and [Row.Source] for where a number comes from. Every lookup by
// id in the trade answers an unknown id with an [UnknownError]. The package knows no trade itself.
package table
