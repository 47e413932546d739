package explain

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"rodwright/cut"
	"rodwright/length"
)

// Speech is how an explanation is put into words.
type Speech struct {
	Noun   string                     // stick, board, sheet
	Length func(length.Length) string // with its unit
	Metric bool                       // areas in square metres; else in square inches
	Money  func(float64) string       // nil where money is not named
}

// NounOf is what the stock of a problem is called.
func NounOf(p cut.Problem) string {
	switch {
	case p.Sticks != nil:
		return "stick"
	case p.Boards != nil:
		return "board"
	}
	return "sheet"
}

// Amount prints millimetres of sticks, square millimetres of boards and sheets.
func (s Speech) Amount(v float64) string {
	switch {
	case s.Noun == "stick":
		return s.Length(length.FromMM(v))
	case s.Metric:
		return digits(v/1e6, 4) + " m²"
	}
	sq := v / (25.4 * 25.4)
	if sq < 10 {
		return digits(sq, 2) + " sq in"
	}
	return strconv.FormatFloat(math.Round(sq), 'f', -1, 64) + " sq in"
}

// Size prints the size of a piece of stock or of an offcut: its length, or length by width.
func (s Speech) Size(size [2]length.Length) string {
	if size[1] == 0 {
		return s.Length(size[0])
	}
	l, w := s.Length(size[0]), s.Length(size[1])
	if at := strings.LastIndexByte(w, ' '); at >= 0 { // the unit once: 96 × 6 in
		l = strings.TrimSuffix(l, w[at:])
	}
	return l + " × " + strings.TrimPrefix(w, "≈ ")
}

// digits prints v with at most n significant digits, whole numbers in full.
func digits(v float64, n int) string {
	short, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', n, 64), 64)
	return strconv.FormatFloat(short, 'f', -1, 64)
}

// several counts: 1 board, 3 boards.
func several(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// named are the uses as they head a share.
var named = map[Use]string{
	Parts: "parts", Later: "jointing and trim of the blanks", SawCuts: "saw cuts", Trimming: "ends and edges", Defects: "defects",
	Kept: "kept", Lost: "lost",
}

// Name is what a use is called beside its share.
func (u Use) Name() string { return named[u] }

// Percent prints a share in whole percent, small ones finer.
func (s Share) Percent() string {
	if v := 100 * s.Of; v < 1 {
		return digits(v, 1) + " %"
	}
	return strconv.FormatFloat(math.Round(100*s.Of), 'f', -1, 64) + " %"
}

// Words tells where the stock went: 504 in opened: parts 412 in (82 %), saw cuts 1 in (0.2 %), kept 91 in (18 %).
func (s Speech) Shares(p cut.Problem, a *cut.Answer) string {
	var says []string
	for _, x := range Shares(p, a) {
		says = append(says, fmt.Sprintf("%s %s (%s)", x.Use.Name(), s.Amount(x.Amount), x.Percent()))
	}
	if says == nil {
		return ""
	}
	return s.Amount(p.Opened(a)) + " opened: " + strings.Join(says, ", ") + "."
}

// Why answers: why not fewer?
func (s Speech) Why(r Reason, scope cut.Scope) string {
	switch r.Ground {
	case Nothing:
		return ""
	case One:
		return "1 " + s.Noun + " is the least there can be."
	case Room:
		return s.room(r) + s.alike(r, scope)
	case Few:
		return s.few(r) + s.alike(r, scope)
	}
	return s.bound(r, scope)
}

// fewer names the pieces that are not enough: 3 sticks of 252 in, the 3 largest boards.
func (s Speech) fewer(r Reason) string {
	switch {
	case r.Size[0] > 0:
		return several(r.Fewer, s.Noun) + " of " + s.Size(r.Size)
	case r.Fewer == 1:
		return "the largest " + s.Noun
	}
	return fmt.Sprintf("the %d largest %ss", r.Fewer, s.Noun)
}

// apart prints two amounts so that they can be told apart.
func (s Speech) apart(a, b float64) (string, string) {
	x, y := s.Amount(a), s.Amount(b)
	for n := 5; x == y && n < 12; n++ {
		per, unit := 1.0, " mm"
		switch {
		case s.Noun == "stick" && !s.Metric:
			per, unit = 25.4, " in"
		case s.Noun != "stick" && s.Metric:
			per, unit = 1e6, " m²"
		case s.Noun != "stick":
			per, unit = 25.4*25.4, " sq in"
		}
		x, y = digits(a/per, n)+unit, digits(b/per, n)+unit
	}
	return x, y
}

func (s Speech) room(r Reason) string {
	holds, needs := s.apart(r.Holds, r.Needs)
	hold := "hold"
	if r.Fewer == 1 {
		hold = "holds"
	}
	var within, what string
	switch s.Noun {
	case "stick":
		within, what = "once their ends are off", "the parts with the saw cuts between them need"
	case "board":
		within, what = "within their rough edges", "the strips with their joints and the trim of the blanks need at least"
	default:
		within, what = "within their trimmed edges", "the parts alone need"
	}
	if r.Fewer == 1 {
		within = strings.Replace(within, "their", "its", 1)
	}
	return fmt.Sprintf("%s %s %s %s; %s %s. So %d is the least", capital(s.fewer(r)), hold, holds, within, what, needs, r.Opened)
}

func (s Speech) few(r Reason) string {
	large := fmt.Sprintf("%d parts are %s or more", r.Large, s.Size(r.Least))
	if s.Noun == "stick" {
		large += " long"
	}
	each := "no two of them come out of one " + s.Noun
	if r.Each > 1 {
		each = fmt.Sprintf("no more than %d of them come out of one %s", r.Each, s.Noun)
	}
	if r.Size[0] > 0 {
		each += " of " + s.Size(r.Size)
	}
	return fmt.Sprintf("%s, and %s. So %d is the least", large, each, r.Opened)
}

// alike ends a sentence on stock of one size where there is other stock too.
func (s Speech) alike(r Reason, scope cut.Scope) string {
	if !r.Alike {
		return "."
	}
	says := fmt.Sprintf(" of this size. Fewer, larger %ss may do, but ", s.Noun)
	if r.Cost == r.Bound {
		return says + "no layout " + of(scope) + "costs less."
	}
	return says + "none was found that costs less; " + s.open(r, scope) + "."
}

// of names the layouts that a claim is true of, set off by a comma from what is claimed.
func of(scope cut.Scope) string {
	if w := scope.Words(); w != "" {
		return w + ", "
	}
	return ""
}

// bound tells what the proven bound says.
func (s Speech) bound(r Reason, scope cut.Scope) string {
	switch {
	case r.Ground == Open && r.Upper:
		return fmt.Sprintf("No better filling was found; one worth up to %s %% more is not ruled out.", s.gap(r))
	case r.Upper:
		return "Every way to cut was weighed or ruled out: no filling is worth more."
	case r.Ground == Open:
		return fmt.Sprintf("No layout was found that costs less; %s.", s.open(r, scope))
	case r.OneKind:
		return fmt.Sprintf("Every way to cut was weighed or ruled out: no layout %scosts less, and as all of this stock is alike, fewer %ss are not enough.", of(scope), s.Noun)
	}
	less := ""
	if s.Money != nil {
		less = " than " + s.Money(r.Bound)
	}
	return fmt.Sprintf("Every way to cut was weighed or ruled out: no layout %scosts less%s. Fewer but larger %ss may do, for more money.", of(scope), less, s.Noun)
}

// open tells how much is not ruled out.
func (s Speech) open(r Reason, scope cut.Scope) string {
	says := fmt.Sprintf("one that costs up to %s %% less is not ruled out", s.gap(r))
	if w := scope.Words(); w != "" {
		says += ", " + w
	}
	return says
}

// gap prints what is not ruled out, rounded up so that nothing is promised: to 0.1 %, or to two digits where it is less.
func (s Speech) gap(r Reason) string {
	v := 100 * r.Gap
	step := math.Min(0.1, math.Pow(10, math.Floor(math.Log10(math.Max(v, 1e-4)))-1))
	return digits(math.Ceil(v/step-1e-9)*step, 4)
}

func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}

// OneMores tells what one more piece of each kind of stock would change, a sentence each; kinds of which nothing is
// gained by buying one more are told together. names are what the kinds are called.
func (s Speech) OneMores(changes []Change, names []string) (says []string) {
	var vain, saves []string
	for i, c := range changes {
		if !c.Vain() {
			says = append(says, s.OneMore(c, names[i]))
			continue
		}
		name := names[i]
		if len(vain) > 0 {
			name = strings.TrimPrefix(name, s.Noun+" of ")
		}
		vain = append(vain, name)
		if s.Money != nil {
			saves = append(saves, s.Money(c.Free))
		}
	}
	if vain == nil {
		return says
	}
	says = append(says, "Nothing is gained by buying one more "+or(vain))
	if saves != nil {
		says[len(says)-1] += "; one that lies there already saves " + or(saves)
	}
	says[len(says)-1] += "."
	return says
}

// or lists words: 1, 2 or 3.
func or(words []string) string {
	last := len(words) - 1
	if last == 0 {
		return words[0]
	}
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// Vain reports whether the whole costs the same with one more piece that is paid for: what such a layout has else,
// one that buys no more has as well.
func (c Change) Vain() bool { return c.Taken && math.Abs(c.More) <= cent }

// OneMore tells what one more piece of stock would change. name is what the kind is called.
func (s Speech) OneMore(c Change, name string) string {
	head := "One more " + name + ": "
	if !c.Taken {
		return head + "nothing changes; no better layout was found that cuts it up."
	}
	var says []string
	if s.Money != nil {
		says = append(says, s.price(c))
	}
	if c.Is.Opened != c.Was.Opened {
		says = append(says, fmt.Sprintf("%s opened, not %d", several(c.Is.Opened, s.Noun), c.Was.Opened))
	}
	if c.Is.Longest != c.Was.Longest {
		says = append(says, fmt.Sprintf("longest offcut kept %s, not %s", s.offcut(c.Is), s.offcut(c.Was)))
	}
	if c.Is.Settings != c.Was.Settings {
		says = append(says, fmt.Sprintf("%s, not %d", several(c.Is.Settings, "setting"), c.Was.Settings))
	}
	if says == nil {
		return head + "another layout, as good as this one."
	}
	return head + strings.Join(says, "; ") + "."
}

func (s Speech) offcut(x Summary) string {
	if x.Longest[0] == 0 {
		return "none"
	}
	return s.Size(x.Longest)
}

// cent is the least that is told of a difference in money.
const cent = 0.005

// price tells what one more piece costs when it is bought, and what it saves when it lies there already.
func (s Speech) price(c Change) string {
	var says string
	switch {
	case c.More > cent:
		says = "bought, the whole costs " + s.Money(c.More) + " more"
	case c.More < -cent:
		says = "bought, the whole costs " + s.Money(-c.More) + " less"
	default:
		says = "bought, the whole costs the same"
	}
	if c.Free > cent {
		says += "; lying there already, " + s.Money(c.Free) + " less"
	}
	return says
}
