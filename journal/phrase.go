package journal

import (
	"errors"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"rodwright/length"
)

// phrase is a run of words of a line.
type phrase struct {
	words []word
	end   int // the column behind it, from 1
}

// word is a word of a line and the column where it begins, from 1.
type word struct {
	text string
	at   int
}

// phraseOf parts a line into its words.
func phraseOf(line string) phrase {
	var p phrase
	for at, column := 0, 1; at < len(line); {
		rest := line[at:]
		n := strings.IndexFunc(rest, unicode.IsSpace)
		if n < 0 {
			n = len(rest)
		}
		if n > 0 {
			p.words = append(p.words, word{rest[:n], column})
		}
		column += utf8.RuneCountInString(rest[:n])
		if n > 0 {
			p.end = column
		}
		if n < len(rest) { // the space
			_, size := utf8.DecodeRuneInString(rest[n:])
			n, column = n+size, column+1
		}
		at += n
	}
	p.end = max(p.end, 1)
	return p
}

// from returns the words from the given one on.
func (p phrase) from(i int) phrase { return phrase{p.words[i:], p.end} }

// upto returns the words before the given one.
func (p phrase) upto(i int) phrase {
	if i < len(p.words) {
		p.end = p.words[i].at
	}
	return phrase{p.words[:i], p.end}
}

// atColon parts the phrase at the first colon at the end of a word, or that is one.
func (p phrase) atColon() (before, behind phrase, ok bool) {
	for i, w := range p.words {
		text, ok := strings.CutSuffix(w.text, ":")
		if !ok {
			continue
		}
		before = p.upto(i)
		if before.end = w.at + utf8.RuneCountInString(text); text != "" {
			before.words = append(before.words[:i:i], word{text, w.at})
		}
		return before, p.from(i + 1), true
	}
	return p, p, false
}

// String returns the words with one space between them.
func (p phrase) String() string {
	texts := make([]string, len(p.words))
	for i, w := range p.words {
		texts[i] = w.text
	}
	return strings.Join(texts, " ")
}

// index returns where the text is the first time among the words, or -1.
func (p phrase) index(text string) int {
	for i, w := range p.words {
		if w.text == text {
			return i
		}
	}
	return -1
}

// lastIndex returns where the text is the last time among the words, or -1.
func (p phrase) lastIndex(text string) int {
	for i := len(p.words) - 1; i >= 0; i-- {
		if p.words[i].text == text {
			return i
		}
	}
	return -1
}

// wrong is an error at the given word, or behind the last.
func (p phrase) wrong(i int, message, want string) error {
	at := p.end
	if i < len(p.words) {
		at = p.words[i].at
	}
	return &SayError{at, message, want}
}

// column returns where in the line the letter of the phrase with that number from 0 stands.
func (p phrase) column(offset int) int {
	for _, w := range p.words {
		n := utf8.RuneCountInString(w.text)
		if offset <= n {
			return w.at + offset
		}
		offset -= n + 1
	}
	return p.end
}

const wantLength = "a length, as 14 3/8 in, 1' 2 3/8\" or 365 mm"

// measure reads the phrase as a length of more than nothing.
func (p phrase) measure(unit length.Unit) (MM, error) {
	if len(p.words) == 0 {
		return 0, p.wrong(0, "a length is missing", wantLength)
	}
	l, err := length.Parse(p.String(), unit)
	var bad *length.ParseError
	switch {
	case errors.As(err, &bad):
		return 0, &SayError{p.column(bad.Offset), "this is no length: " + bad.Why, wantLength}
	case err != nil:
		return 0, p.wrong(0, "this is no length", wantLength)
	case l <= 0:
		return 0, p.wrong(0, "the length is not more than nothing", wantLength)
	}
	return MM(l), nil
}

// mostWords is more words than a length has: - 1 ft 2 3/8 in.
const mostWords = 8

// longest returns where the longest end of the phrase begins that is a length, not before the word numbered least.
func (p phrase) longest(least int, unit length.Unit) (int, bool) {
	for i := max(least, len(p.words)-mostWords); i < len(p.words); i++ {
		if _, err := length.Parse(p.from(i).String(), unit); err == nil {
			return i, true
		}
	}
	return 0, false
}

// measures reads up to three lengths joined by × or x. One without a unit takes that of the next.
func (p phrase) measures(unit length.Unit) (size [3]MM, n int, err error) {
	parts := p.parts()
	if len(parts) > len(size) {
		return size, 0, parts[len(size)].wrong(0, "this is a fourth measure", "at most three: along the grain, across it and how thick")
	}
	for i := len(parts) - 1; i >= 0; i-- {
		if u, ok := unitAtEnd(parts[i].String()); ok {
			unit = u
		}
		if size[i], err = parts[i].measure(unit); err != nil {
			return size, 0, err
		}
	}
	return size, len(parts), nil
}

// parted sets what is written onto the first × apart from it: 8×tee 1.
func (p phrase) parted() phrase {
	for i, w := range p.words {
		before, behind, crossed := strings.Cut(w.text, "×")
		if crossed && behind != "" {
			number := before + "×"
			item := word{behind, w.at + utf8.RuneCountInString(number)}
			return phrase{slices.Concat(p.words[:i], []word{{number, w.at}, item}, p.words[i+1:]), p.end}
		}
		if crossed {
			break
		}
	}
	return p
}

// crosses sets each sign between measures apart from them: no unit has an x.
var crosses = strings.NewReplacer("×", " × ", "x", " × ", "X", " × ")

// parts cuts the phrase at each × and x.
func (p phrase) parts() []phrase {
	out := []phrase{{end: p.end}}
	for _, w := range p.words {
		at := w.at
		for _, text := range strings.Fields(crosses.Replace(w.text)) {
			last := &out[len(out)-1]
			if text == "×" {
				last.end = at
				out = append(out, phrase{end: p.end})
			} else {
				last.words = append(last.words, word{text, at})
			}
			at += utf8.RuneCountInString(text)
		}
	}
	return out
}

// unitAtEnd returns the unit that a length is written in, if it ends in one.
func unitAtEnd(text string) (length.Unit, bool) {
	for _, mark := range []struct {
		text string
		unit length.Unit
	}{{`"`, length.In}, {"″", length.In}, {"”", length.In}, {"''", length.In}, {"'", length.Ft}, {"′", length.Ft}, {"’", length.Ft}} {
		if strings.HasSuffix(text, mark.text) {
			return mark.unit, true
		}
	}
	return length.UnitOf(text[len(strings.TrimRightFunc(text, unicode.IsLetter)):])
}
