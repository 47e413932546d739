package book

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"rodwright/figure"
	"rodwright/length"
)

// decimal is the value of digits that a pattern has found; anything else counts nothing.
func decimal(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0
	}
	return v
}

// digits prints a number to three significant digits, large ones rounded to them too.
func digits(v float64) string {
	if v >= 1000 {
		step := math.Pow(10, math.Floor(math.Log10(v))-2)
		v = math.Round(v/step) * step
	}
	return figure.Digits(v, 3)
}

// mass tells a weight in kg, for who reads inches with pounds beside it.
func (w *wording) mass(kg float64) string {
	text := digits(kg) + " kg"
	if w.to.Unit.Metric() {
		return text
	}
	return text + " (" + digits(kg/poundKg) + " lb)"
}

// size tells several lengths with one unit: 72 × 30 × 1 3/8 in.
func (w *wording) size(ls ...length.Length) string {
	var words []string
	for _, l := range ls {
		words = append(words, w.to.Number(l))
	}
	return strings.Join(words, " × ") + " " + w.unit()
}

func (w *wording) unit() string {
	if w.to.Unit.Metric() {
		return "mm"
	}
	return "in"
}

// several writes a count with its noun: 1 step, 3 steps.
func several(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + one + "s"
}

// phrase joins words as a sentence does: a, b and c.
func phrase(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// numbered names steps in ascending order: step 3; steps 3, 5 and 7–9.
func numbered(ns []int) string {
	var words []string
	for _, r := range runs(len(ns), func(i int) bool { return ns[i] == ns[i-1]+1 }) {
		words = append(words, ends(r, strconv.Itoa(ns[r[0]]), strconv.Itoa(ns[r[1]])))
	}
	if len(ns) == 1 {
		return "step " + words[0]
	}
	return "steps " + phrase(words)
}

// runs parts n things into runs, first and last of each, in which every one follows the one before. Two that
// follow each other are no run.
func runs(n int, follows func(i int) bool) (out [][2]int) {
	for i := 0; i < n; {
		end := i
		for end+1 < n && follows(end+1) {
			end++
		}
		if end == i+1 {
			end = i
		}
		out = append(out, [2]int{i, end})
		i = end + 1
	}
	return out
}

// ends tells a run by its first and last.
func ends(run [2]int, first, last string) string {
	if run[0] == run[1] {
		return first
	}
	return first + "–" + last
}

// capital writes a text with a capital.
func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 || first == utf8.RuneError {
		return text
	}
	return string(unicode.ToUpper(first)) + text[size:]
}

// duration tells hours: 25 min, 1 h 40 min, 24 h, 7 days. Less than ten hours are told to five minutes.
func duration(hours float64) string {
	switch {
	case hours >= 48:
		return several(int(math.Round(hours/24)), "day")
	case hours >= 10:
		return fmt.Sprintf("%.0f h", hours)
	}
	minutes := max(5, int(math.Round(hours*12))*5)
	switch h, m := minutes/60, minutes%60; {
	case h == 0:
		return fmt.Sprintf("%d min", m)
	case m == 0:
		return fmt.Sprintf("%d h", h)
	default:
		return fmt.Sprintf("%d h %d min", h, m)
	}
}

// spans shortens tags that follow each other: C1.1–C1.3, F1.2.
func spans(tags []string) string {
	var out []string
	for _, r := range runs(len(tags), func(i int) bool { return follows(tags[i-1], tags[i]) }) {
		out = append(out, ends(r, tags[r[0]], tags[r[1]]))
	}
	return strings.Join(out, ", ")
}

// follows reports whether tag b is the next after a: C1.2 after C1.1, or C2 after C1.
func follows(a, b string) bool {
	kind, n, physical := strings.Cut(a, ".")
	also, m, is := strings.Cut(b, ".")
	if physical != is || a == "" || b == "" {
		return false
	}
	if !physical {
		kind, n, also, m = a[:1], a[1:], b[:1], b[1:]
	}
	return kind == also && decimal(m) == decimal(n)+1
}

// once leaves out what is empty or was there before.
func once(texts []string) []string {
	var out []string
	for _, t := range texts {
		if t != "" && !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	return out
}
