// Package pipe holds what the trade knows of threaded pipe: sizes, threads, fittings, nipples, and the lengths
// that follow from them.
//
// Vocabulary. The make-up or engagement e is how deep a pipe sits in a fitting when the joint is tight. The
// take-out of a joint is what it takes off a distance between centres: A − e for a fitting of centre-to-end
// A. A pipe between two joints is cut to the distance less both take-outs. A nipple is a short piece of pipe
// sold threaded; the close nipple is the shortest there is. A band is the thick rim at a fitting's mouth.
//
// Two standards are known, NPS pipe with NPT threads and DN pipe with R threads; a plan read in the other
// part of the world is computed anew with that part's dimensions, never converted.
//
// Start with [Lookup] for a size, [Size.Fitting] for a fitting of it and [CutLength] for a pipe between two.
// The package does not decide which fitting a joint needs, nor whether a frame can be put together.
package pipe
