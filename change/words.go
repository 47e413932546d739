package change

import (
	"fmt"
	"math"
	"strings"

	"rodwright/length"
	"rodwright/shop"
)

// Words says what differs between two builds, a sentence for each thing, lengths to the given fineness.
func (r Ripple) Words(fine length.Fineness) []string {
	var out []string
	for _, c := range r.Cuts {
		out = append(out, fmt.Sprintf("%s %s: %s %s → %s.", c.Tag, c.Name, c.What, fine.Show(length.FromMM(float64(c.From))), fine.Show(length.FromMM(float64(c.To)))))
	}
	if len(r.Parts.Added) > 0 {
		out = append(out, "New: "+strings.Join(r.Parts.Added, ", ")+".")
	}
	if len(r.Parts.Gone) > 0 {
		out = append(out, "No more: "+strings.Join(r.Parts.Gone, ", ")+".")
	}
	for _, f := range r.Findings {
		out = append(out, f.words())
	}
	for _, s := range r.Boards {
		out = append(out, fmt.Sprintf("To buy, %s: %g → %g %s.", s.Item, s.From, s.To, s.Unit))
	}
	return append(out, r.sums()...)
}

// words says how a verdict turned.
func (t Turn) words() string {
	switch {
	case t.From == "":
		return fmt.Sprintf("New: %s, %s %s.", t.Check, t.Place, t.To)
	case t.To == "":
		return fmt.Sprintf("No more: %s, %s %s.", t.Check, t.Place, t.From)
	}
	return fmt.Sprintf("%s, %s: %s → %s.", t.Check, t.Place, t.From, t.To)
}

// sums says how weight, days and money differ.
func (r Ripple) sums() (out []string) {
	if math.Abs(r.MassKg.From-r.MassKg.To) >= 0.05 {
		out = append(out, fmt.Sprintf("Weight %.1f → %.1f kg.", r.MassKg.From, r.MassKg.To))
	}
	if r.Days.From != r.Days.To {
		out = append(out, fmt.Sprintf("Days of work %d → %d.", r.Days.From, r.Days.To))
	}
	if !r.Money.same() {
		out = append(out, fmt.Sprintf("Price %s → %s %s.", amount(r.Money.From), amount(r.Money.To), r.Money.Currency))
	}
	return out
}

func amount(cents *int64) string {
	if cents == nil {
		return "not known"
	}
	return shop.Cents(*cents).String()
}
