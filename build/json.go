package build

import (
	"bytes"
	"encoding/json"

	"rodwright/length"
	"rodwright/money"
	"rodwright/part"
	"rodwright/steps"
)

// buildJSON is a whole build in JSON. Lengths are millimetres, exact to the nanometre; masses kilograms;
// money plain numbers in the shop's currency, null where unknown.
type buildJSON struct {
	Piece     string        `json:"piece"`
	Shop      string        `json:"shop"`
	Currency  string        `json:"currency"`
	Unit      string        `json:"unit"`
	Fineness  string        `json:"fineness"`
	InputHash string        `json:"input_hash"`
	Sizes     []sizeJSON    `json:"sizes"`
	Parts     []partJSON    `json:"parts"`
	Totals    totalsJSON    `json:"totals"`
	Findings  []findingJSON `json:"findings"`
	Cut       cutJSON       `json:"cut"`
	Buy       []buyJSON     `json:"buy"`
	Supplies  []supplyJSON  `json:"supplies"`
	Steps     []stepJSON    `json:"steps"`
	Time      timeJSON      `json:"time"`
	Price     priceJSON     `json:"price"`
	Unknown   []string      `json:"unknown"`
	Under     *underJSON    `json:"under_way,omitempty"`

	Accepted []acceptedJSON `json:"accepted,omitempty"` // layouts, in the order of cut's
}

type sizeJSON struct {
	Name    string `json:"name"`
	Formula string `json:"formula"`
	Origin  string `json:"origin"`
	Value   mm     `json:"value_mm"`
	Formed  mm     `json:"formula_mm"`
	OnSite  *mm    `json:"measured_mm,omitempty"`
	Note    string `json:"note,omitempty"`
}

type buyJSON struct {
	Item     string   `json:"item"` // as the shop's prices name it
	Name     string   `json:"name"` // for people
	Count    rounded  `json:"count"`
	Unit     string   `json:"unit"`
	Pack     rounded  `json:"pack"`
	Needed   rounded  `json:"needed"`
	Price    *rounded `json:"price"`
	FromRack rounded  `json:"from_rack"`
	Assumed  []string `json:"assumed,omitempty"`
}

type supplyJSON struct {
	Name     string   `json:"name"`
	For      []string `json:"for"`
	Quantity rounded  `json:"quantity"`
	Unit     string   `json:"unit"`
	Cautions []string `json:"cautions"`
}

type stepJSON struct {
	N           int      `json:"n"`
	Work        string   `json:"work"` // kind of work, as facts name it
	Title       string   `json:"title"`
	Parts       []string `json:"parts"`
	Tool        string   `json:"tool"`
	Substitutes []string `json:"substitutes"`
	Measures    []string `json:"measures,omitempty"`
	HandsH      rounded  `json:"hands_h"`
	WaitH       rounded  `json:"wait_h"`
	Cautions    []string `json:"cautions"`
	After       []int    `json:"after"`
}

type timeJSON struct {
	HandsH rounded  `json:"hands_h"`
	Days   int      `json:"calendar_days"`
	Notes  []string `json:"assumed"`
}

type priceJSON struct {
	Material    *rounded `json:"material"`
	Consumables *rounded `json:"consumables"`
	Hours       *rounded `json:"hours"`
	Overhead    *rounded `json:"overhead"`
	Cost        *rounded `json:"cost"`
	Margin      *rounded `json:"margin"`
	Price       *rounded `json:"price"`
	Tax         *rounded `json:"tax"`
	Total       *rounded `json:"total"`
	Deposit     *rounded `json:"deposit"`
	Warnings    []string `json:"warnings"`
	Assumed     []string `json:"assumed"`
}

// JSON writes the whole build as one object, always the same bytes for the same build.
func (b *Build) JSON() ([]byte, error) {
	cuts, err := cutOf(b.Layout, length.MM)
	if err != nil {
		return nil, err
	}
	return indented(buildJSON{
		Piece: b.Doc.Name, Shop: b.Shop.Name, Currency: b.Shop.Currency, Unit: b.Doc.Unit.String(),
		Fineness: b.Doc.Fineness.String(), InputHash: b.Hash, Sizes: b.sizes(),
		Parts: partsJSON(b.Parts), Totals: totals(b.Parts.Totals), Findings: findingsJSON(b.Findings, b.Doc.Fineness.Finer()),
		Cut: cuts, Buy: buyOf(b.Buy), Supplies: suppliesOf(b.Parts.Supplies), Steps: stepsOf(b.Work),
		Time:  timeJSON{rounded(b.Work.HandsH), b.Work.Days, nonNil(b.Work.Assumed)},
		Price: priceOf(b.Quote), Unknown: nonNil(b.Quote.Unknown),
		Under: underOf(b.Under), Accepted: acceptedOf(b.Accepted),
	})
}

// FindingsJSON writes the findings alone, as in [Build.JSON].
func (b *Build) FindingsJSON() ([]byte, error) {
	return indented(struct {
		Piece     string        `json:"piece"`
		InputHash string        `json:"input_hash"`
		Findings  []findingJSON `json:"findings"`
	}{b.Doc.Name, b.Hash, findingsJSON(b.Findings, b.Doc.Fineness.Finer())})
}

func indented(v any) ([]byte, error) {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	err := e.Encode(v)
	return out.Bytes(), err
}

func (b *Build) sizes() []sizeJSON {
	out := make([]sizeJSON, len(b.Doc.Sizes))
	for i, s := range b.Doc.Sizes {
		out[i] = sizeJSON{Name: s.Name, Formula: s.Formula, Origin: string(s.Origin), Value: mm(s.Value), Formed: mm(s.Formed), Note: s.Note}
		if s.OnSite != nil {
			v := mm(*s.OnSite)
			out[i].OnSite = &v
		}
	}
	return out
}

func buyOf(list *money.List) []buyJSON {
	out := make([]buyJSON, len(list.Lines))
	for i, l := range list.Lines {
		out[i] = buyJSON{
			Item: l.Item, Name: l.Name, Count: rounded(l.Count), Unit: l.Unit, Pack: rounded(l.Pack), Needed: rounded(l.Needed),
			Price: amount(l.Price), FromRack: rounded(l.FromRack), Assumed: l.Assumed,
		}
	}
	return out
}

func suppliesOf(all []part.Supply) []supplyJSON {
	out := make([]supplyJSON, len(all))
	for i, s := range all {
		out[i] = supplyJSON{s.Name, nonNil(s.For), rounded(s.Quantity.Value), string(s.Quantity.Unit), nonNil(s.Cautions)}
	}
	return out
}

func stepsOf(w *steps.Work) []stepJSON {
	out := make([]stepJSON, len(w.Steps))
	for i, s := range w.Steps {
		out[i] = stepJSON{
			N: s.N, Work: s.Work, Title: s.Title, Parts: nonNil(s.Parts), Tool: s.Tool, Substitutes: nonNil(s.Substitutes), Measures: s.Measures,
			HandsH: rounded(s.HandsH), WaitH: rounded(s.WaitH), Cautions: nonNil(s.Cautions), After: append([]int{}, s.After...),
		}
	}
	return out
}

func priceOf(q *money.Quote) priceJSON {
	return priceJSON{
		Material: amount(q.Material), Consumables: amount(q.Consumables), Hours: amount(q.Labour), Overhead: amount(q.Overhead),
		Cost: amount(q.Cost), Margin: amount(q.Margin), Price: amount(q.Price), Tax: amount(q.Tax), Total: amount(q.Total),
		Deposit: amount(q.Deposit), Warnings: nonNil(q.Warnings), Assumed: nonNil(q.Assumed),
	}
}

// amount writes money, or null where it is not known.
func amount(a money.Amount) *rounded {
	if !a.Known {
		return nil
	}
	v := rounded(a.Cents.Value())
	return &v
}
