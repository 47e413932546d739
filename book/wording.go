package book

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"rodwright/build"
	"rodwright/figure"
	"rodwright/layout"
	"rodwright/length"
	"rodwright/part"
	"rodwright/shop"
	"rodwright/trade/pipe"
	"rodwright/trade/sheet"
	"rodwright/trade/wood"
)

// wording turns what other rooms say into what this reader understands: names from price lists and tags of
// stock into trade words, measures of the other system into the reader's own.
type wording struct {
	to    length.Fineness
	names *strings.Replacer // trade names, marked so that no measure in them is changed
}

// open and shut stand round a name while the words beside it are translated; no document can hold them.
const open, shut = "\x01", "\x02"

func wordingOf(b *build.Build) *wording {
	names := map[string]string{}
	for _, p := range b.Parts.Parts {
		nameWood(names, p)
		if p.Kind == part.Hardware {
			names[p.Name] = p.Name
			plural := strings.Replace(p.Name, "wood screw ", "wood screws ", 1)
			names[plural] = plural
		}
		if p.Kind == part.Pipe {
			names["pipes of "+p.Material] = "pipes of size " + p.Material
			if size, err := pipe.Lookup(p.Material); err == nil && p.From == part.FromNipple {
				names[shop.NippleItem(size, p.Cut)] = shop.NippleItem(size, p.Cut)
			}
		}
	}
	for _, l := range b.Layout.All() {
		nameStock(names, l)
	}
	nameBits(names, b)
	return &wording{to: b.Doc.Fineness, names: replacer(names)}
}

// nameWood names a panel's material: white-oak, and Oak, white as tables have it, are white oak.
func nameWood(names map[string]string, p part.Part) {
	if p.Kind != part.Panel {
		return
	}
	plain := materialWords(p.Material)
	names[p.Material] = plain
	if s, err := wood.Lookup(p.Material); err == nil && strings.Contains(s.Name, ", ") {
		names[s.Name] = plain
	}
}

// materialWords names a wood or a sheet by its id: white oak, birch plywood 18 mm.
func materialWords(id string) string {
	if s, err := sheet.Lookup(id); err == nil {
		return s.Name
	}
	return strings.ReplaceAll(id, "-", " ")
}

// nameStock names what a layout opens as its drawings do: boards and sheets by their number in the layout,
// sticks by their length.
func nameStock(names map[string]string, l layout.Layout) {
	for i, u := range l.Answer.Used {
		switch {
		case l.Kind == layout.OfBoards:
			names[u.Stock] = fmt.Sprintf("board %d", i+1)
		case l.Kind == layout.OfSticks && i < len(l.Opened) && !l.Opened[i].FromRack:
			names[u.Stock] = stickWords(u.Stock, l.Material)
		}
	}
}

// nameBits names the drills for pilots from the reader's set: steps take them from the maker's own.
func nameBits(names map[string]string, b *build.Build) {
	for _, f := range b.Parts.Fasteners {
		p, ok := panelOf(b.Parts, f)
		if !ok {
			continue
		}
		if l, ok := pilot(f, p); ok {
			names["pilot "+bitText(l, b.Doc.Unit.Metric())] = "pilot " + bitText(l, b.Doc.Fineness.Unit.Metric())
		}
	}
}

// stickWords names a stick as it is bought: pipe 3/4 21 ft is a 21 ft stick of pipe 3/4.
func stickWords(item, size string) string {
	long, ok := strings.CutPrefix(item, "pipe "+size+" ")
	if !ok {
		return item
	}
	return long + " stick of pipe " + size
}

// replacer replaces names, the longest that fits first.
func replacer(names map[string]string) *strings.Replacer {
	var from []string
	for n := range names {
		from = append(from, n)
	}
	slices.SortFunc(from, func(a, b string) int {
		if len(a) != len(b) {
			return len(b) - len(a)
		}
		return strings.Compare(a, b)
	})
	var pairs []string
	for _, n := range from {
		pairs = append(pairs, n, open+names[n]+shut)
	}
	return strings.NewReplacer(pairs...)
}

// say tells a text in the reader's words.
func (w *wording) say(text string) string {
	var out strings.Builder
	for i, s := range strings.Split(w.names.Replace(text), open) {
		name, plain, named := strings.Cut(s, shut)
		if i == 0 || !named {
			name, plain = "", s
		}
		out.WriteString(name)
		out.WriteString(w.measures(plain))
	}
	return out.String()
}

// says is say for several texts.
func (w *wording) says(texts []string) []string {
	out := make([]string, 0, len(texts))
	for _, t := range texts {
		out = append(out, w.say(t))
	}
	return out
}

// measure finds one or more numbers before a unit: 8 to 12 in, 0.97 in, 23 kg, 48 × 382 mm.
var measure = regexp.MustCompile(`-?` + number + `(?:(?: to | × |–)` + number + `)* (in|ft|mm|cm|m|kg|N|psi|F|C)\b`)

const number = `(?:\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?)`

var numbers = regexp.MustCompile(`-?` + number)

// behind are words after which "in" is no unit: 4 in all.
var behind = regexp.MustCompile(`^ (?:the|its|a|an|all|each|every|one|place|order|which|turn)\b`)

// measures translates the measures in plain words into the reader's system.
func (w *wording) measures(text string) string {
	var out strings.Builder
	at := 0
	for _, m := range measure.FindAllStringSubmatchIndex(text, -1) {
		out.WriteString(text[at:m[0]])
		at = m[1]
		whole, unit := text[m[0]:m[1]], text[m[2]:m[3]]
		if joined(text[:m[0]]) || strings.ContainsAny(next(text[m[1]:]), "/²³°") || unit == "in" && behind.MatchString(text[m[1]:]) {
			out.WriteString(whole)
			continue
		}
		out.WriteString(w.measure(text[m[0]:m[2]-1], unit))
	}
	return out.String() + text[at:]
}

func next(text string) string {
	for _, r := range text {
		return string(r)
	}
	return ""
}

// joined reports whether what stands before a number makes it part of a tag or of a longer number.
func joined(before string) bool {
	if before == "" {
		return false
	}
	b := before[len(before)-1]
	return b == '.' || b == '/' || b == '_' || b >= '0' && b <= '9' || b >= 'A' && b <= 'Z' || b >= 'a' && b <= 'z'
}

// measure tells numbers of a unit in the reader's system; what is in it already stays.
func (w *wording) measure(figures, unit string) string {
	same := figures + " " + unit
	if u, ok := length.UnitOf(unit); ok {
		if u.Metric() == w.to.Unit.Metric() {
			return same
		}
		return numbers.ReplaceAllStringFunc(figures, func(n string) string { return w.length(n, u) }) + " " + w.unit()
	}
	if unit == "kg" && !w.to.Unit.Metric() {
		return same + " (" + each(figures, func(v float64) float64 { return v / poundKg }) + " lb)"
	}
	for _, c := range conversions {
		if c.from == unit && c.metric == w.to.Unit.Metric() {
			return each(figures, c.scale) + " " + c.into
		}
	}
	return same
}

// poundKg is the mass of one pound avoirdupois, exact by the international agreement of 1959 (NIST Special
// Publication 811, 2008 edition, Appendix B.8).
const poundKg = 0.45359237

// conversions are the units besides lengths and masses, by whom they are for. The pound-force is a pound in
// standard gravity, 9.80665 m/s² (NIST Special Publication 811, 2008 edition, Appendix B.8). Temperatures are told
// in whole degrees.
var conversions = []struct {
	metric     bool
	from, into string
	scale      func(float64) float64
}{
	{false, "N", "lbf", func(v float64) float64 { return v / (poundKg * 9.80665) }},
	{false, "C", "°F", func(v float64) float64 { return math.Round(v*9/5 + 32) }},
	{false, "F", "°F", func(v float64) float64 { return v }},
	{true, "C", "°C", func(v float64) float64 { return v }},
	{true, "F", "°C", func(v float64) float64 { return math.Round((v - 32) * 5 / 9) }},
	{true, "psi", "MPa", func(v float64) float64 { return v * poundKg * 9.80665 / 645.16 }},
}

// each converts every number of a text to three digits.
func each(figures string, scale func(float64) float64) string {
	return numbers.ReplaceAllStringFunc(figures, func(n string) string { return digits(scale(value(n))) })
}

// length tells one number of a unit in the reader's unit. What was told finely, below an inch or with
// decimals, is told finely again.
func (w *wording) length(n string, u length.Unit) string {
	l := length.FromMM(value(n) * u.Size().MM())
	to := w.to
	if strings.Contains(n, ".") || l < length.Inch {
		to = to.Finer()
	}
	if to.Round(l) == 0 && l != 0 {
		return figure.Digits(value(n)*u.Size().MM()/to.Unit.Size().MM(), 1)
	}
	return to.Number(l)
}

// value is the number in a text that numbers has found.
func value(n string) float64 {
	n, minus := strings.CutPrefix(n, "-")
	total := 0.0
	for _, word := range strings.Fields(n) {
		above, below, fraction := strings.Cut(word, "/")
		v := decimal(above)
		if d := decimal(below); fraction && d != 0 {
			v /= d
		}
		total += v
	}
	if minus {
		return -total
	}
	return total
}
