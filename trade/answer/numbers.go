package answer

import (
	"sort"
	"strings"
	"unicode"
)

// withNumbers puts the numbers that went in into a formula's right side: D·C·ΔM becomes 508 mm·0.00365·4 %.
// Letters written together, as in 5WL³, are parted. A formula with letters of its own, that are no inputs,
// is not filled in: its inputs are listed instead, as are those that it does not spell.
func withNumbers(formula string, ins Inputs) string {
	_, right := sides(formula)
	f := filling{names: spelt(ins), used: map[string]bool{}}
	text := f.fill(f.optional(strings.TrimSpace(right)))
	if f.strange || len(f.used) == 0 {
		return f.behind(ins, map[string]bool{})
	}
	if rest := f.behind(ins, f.used); rest != "" {
		return text + ", " + rest
	}
	return text
}

// sides parts a formula at its equals sign. A left side that is itself reckoned is none: all is right side.
func sides(formula string) (left, right string) {
	left, right, ok := strings.Cut(formula, "=")
	if !ok || strings.ContainsAny(left, "·,≤≥") {
		return "", ""
	}
	return left, right
}

// filling is the state of one formula that numbers are put into.
type filling struct {
	names   []symbol
	used    map[string]bool // the inputs that found their place
	strange bool            // a letter of the formula is no input
}

// optional leaves out a term in brackets with a leading plus whose letters are no inputs.
func (f *filling) optional(right string) string {
	before, rest, ok := strings.Cut(right, "[+")
	if !ok {
		return right
	}
	term, after, ok := strings.Cut(rest, "]")
	if !ok {
		return right
	}
	trial := filling{names: f.names, used: map[string]bool{}}
	trial.fill(term)
	if trial.strange {
		return strings.TrimSpace(before) + after
	}
	return before + "+" + term + after
}

// fill replaces every run of letters that spells inputs, longer names with spaces first.
func (f *filling) fill(right string) string {
	var b strings.Builder
	runes := []rune(right)
	for i := 0; i < len(runes); {
		if s, ok := f.phrase(string(runes[i:])); ok && (i == 0 || !letter(runes[i-1])) {
			b.WriteString(bracketed(s.shown, false))
			f.used[s.name] = true
			i += len([]rune(s.letters))
			continue
		}
		end := i
		for end < len(runes) && letter(runes[end]) {
			end++
		}
		if end == i {
			b.WriteRune(runes[i])
			i++
			continue
		}
		raised := end < len(runes) && strings.ContainsRune("²³⁴½", runes[end])
		divided := i > 0 && (runes[i-1] == '/' || runes[i-1] == '÷')
		b.WriteString(f.replaced(string(runes[i:end]), raised, divided))
		i = end
	}
	return b.String()
}

// phrase returns the input of several words that text begins with.
func (f *filling) phrase(text string) (symbol, bool) {
	for _, s := range f.names {
		if strings.Contains(s.letters, " ") && strings.HasPrefix(text, s.letters) {
			return s, true
		}
	}
	return symbol{}, false
}

// symbol is an input by the letters a formula spells it with.
type symbol struct{ letters, shown, name string }

// spelt returns the inputs that are single words, long ones first so that MC1 is not read as M.
func spelt(ins Inputs) []symbol {
	var out []symbol
	for _, in := range ins {
		letters, _, _ := strings.Cut(in.Name, ",")
		out = append(out, symbol{letters, in.Shown, in.Name})
	}
	sort.SliceStable(out, func(i, j int) bool { return len(out[i].letters) > len(out[j].letters) })
	return out
}

func letter(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsDigit(r) && r < 0x80 || r == '\'' || r == '_' || r == '.' || r >= '₀' && r <= '₉'
}

// replaced returns the letters of one run with the numbers put in, or the run itself where it spells
// something else: a function, a word, or a letter that is no input.
func (f *filling) replaced(run string, raised, divided bool) string {
	rest := strings.TrimLeft(run, "0123456789.")
	if rest == "" {
		return run
	}
	var parts, found []string
	if len(rest) < len(run) {
		parts = append(parts, run[:len(run)-len(rest)])
	}
	for rest != "" {
		s, ok := first(rest, f.names)
		if !ok {
			f.strange = f.strange || !word(run)
			return run
		}
		found = append(found, s.name)
		parts = append(parts, bracketed(s.shown, false))
		rest = rest[len(s.letters):]
	}
	for _, name := range found {
		f.used[name] = true
	}
	last := len(parts) - 1
	parts[last] = bracketed(parts[last], raised)
	text := strings.Join(parts, " · ")
	if divided && last > 0 {
		return "(" + text + ")"
	}
	return text
}

// word reports whether a run of letters is prose or the name of a function, not a symbol.
func word(run string) bool {
	return len(run) > 1 && strings.ToLower(run) == run && strings.Trim(run, "abcdefghijklmnopqrstuvwxyz") == ""
}

// bracketed sets brackets round a negative number, and round one with its unit that is raised to a power.
func bracketed(shown string, raised bool) string {
	if strings.HasPrefix(shown, "-") || raised && strings.Contains(shown, " ") {
		return "(" + shown + ")"
	}
	return shown
}

func first(run string, names []symbol) (symbol, bool) {
	for _, s := range names {
		if s.letters != "" && strings.HasPrefix(run, s.letters) {
			return s, true
		}
	}
	return symbol{}, false
}

// behind lists the inputs that are not used.
func (f *filling) behind(ins Inputs, used map[string]bool) string {
	var rest []string
	for _, in := range ins {
		if !used[in.Name] {
			rest = append(rest, in.Name+" "+in.Shown)
		}
	}
	if len(rest) == 0 {
		return ""
	}
	return "with " + strings.Join(rest, ", ")
}
