// Package answer holds the quick answers of the bench: one formula of the trade, answered at once, without
// a piece.
//
// Vocabulary. A topic is one question, such as movement or pipe-cut. It is asked with keys, each a value
// with its unit, and answered with one or more figures, the main one first, each with its formula, its
// inputs and its source. Cautions stand where the work can hurt someone; what was taken for granted is
// said in words.
//
// Start with [Ask]; [Topics] lists what can be asked and [Run] is the verb answer of the command line.
// A missing or unknown key, a value of the wrong kind or outside the range where the formula holds is an
// [*Error] that names the key, what it got and what it takes. Nothing is guessed.
//
// The formulas stand in the packages of the trade, the same ones that serve a whole piece: this package
// reads, checks, calls and shows.
package answer
