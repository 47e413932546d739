package table

// Span is a range in which publications put one property of a thing. The zero Span means that none does.
type Span struct {
	Low, High float64
	Note      string
	Source    Source
}

// Span returns the row's low and high cells, times a factor that brings them to the unit wanted, with its
// note and source.
func (r Row) Span(factor float64) Span {
	return Span{r.Float("low") * factor, r.Float("high") * factor, r.Text("note"), r.Source()}
}

// Known reports whether a publication gives the property.
func (s Span) Known() bool { return s.Source.Key != "" }

// Middle returns the middle of the span.
func (s Span) Middle() float64 { return (s.Low + s.High) / 2 }
