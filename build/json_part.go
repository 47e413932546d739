package build

import (
	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
)

// partJSON is one part in the JSON of a build.
type partJSON struct {
	Tag       string        `json:"tag"`
	Name      string        `json:"name"`
	Kind      part.Kind     `json:"kind"`
	Material  string        `json:"material"`
	Count     int           `json:"count"`
	Tags      []string      `json:"tags"`
	Finished  []mm          `json:"finished_mm,omitempty"`
	Blank     []mm          `json:"blank_mm,omitempty"`
	Rough     string        `json:"rough,omitempty"`
	MassKg    rounded       `json:"mass_kg"`
	Position  []mm          `json:"position_mm,omitempty"`
	Sits      string        `json:"sits,omitempty"`
	Datum     string        `json:"datum,omitempty"`
	Features  []featureJSON `json:"features,omitempty"`
	Profiles  []profileJSON `json:"profiles,omitempty"`
	Cut       *mm           `json:"cut_mm,omitempty"`
	Loosest   *mm           `json:"loosest_mm,omitempty"`
	Tightest  *mm           `json:"tightest_mm,omitempty"`
	Between   *mm           `json:"between_mm,omitempty"`
	Ends      []string      `json:"ends,omitempty"`
	From      string        `json:"from,omitempty"`
	FromWhy   string        `json:"from_why,omitempty"` // of a pipe that could be bought or cut
	State     string        `json:"state,omitempty"`    // how far the least made of them is
	States    []string      `json:"states,omitempty"`   // of each, as tags, where any is made
	Assumed   []string      `json:"assumed,omitempty"`
	BoardFeet *tallyJSON    `json:"board_feet,omitempty"`
}

type tallyJSON struct {
	Retail rounded `json:"retail"`
	NHLA   rounded `json:"nhla"`
	Volume rounded `json:"volume"`
}

func tally(t part.Tally) tallyJSON {
	return tallyJSON{rounded(t.Retail), rounded(t.NHLA), rounded(t.Volume)}
}

type featureJSON struct {
	Kind   string `json:"kind"`
	Name   string `json:"name,omitempty"`
	At     []mm   `json:"at_mm"`
	Size   []mm   `json:"size_mm"`
	Round  bool   `json:"round,omitempty"`
	Radius mm     `json:"radius_mm"`
	Depth  mm     `json:"depth_mm"` // 0: through
	Opens  string `json:"opens,omitempty"`
	Why    string `json:"why"`
}

type profileJSON struct {
	Side    part.Side `json:"side"`
	Profile string    `json:"profile"`
	Size    mm        `json:"size_mm"`
	Run     mm        `json:"run_mm"`
}

func partsJSON(list *part.List) []partJSON {
	out := make([]partJSON, len(list.Parts))
	for i := range list.Parts {
		out[i] = onePart(&list.Parts[i])
	}
	return out
}

func onePart(p *part.Part) partJSON {
	out := partJSON{
		Tag: p.Tag, Name: p.Name, Kind: p.Kind, Material: p.Material, Count: p.Count, Tags: p.Tags,
		MassKg: rounded(p.MassKg), Assumed: p.Assumed,
	}
	if p.Kind == part.Panel || p.Kind == part.Pipe {
		out.State, out.States = statesOf(p)
	}
	switch p.Kind {
	case part.Panel:
		panelJSON(p, &out)
	case part.Pipe:
		pipeJSON(p, &out)
	}
	return out
}

func panelJSON(p *part.Part, out *partJSON) {
	out.Finished, out.Blank = mms(p.Finished[:]...), mms(p.Blank[:]...)
	out.Rough, out.Sits, out.Datum = p.Rough, p.Sits, p.Datum
	out.Position = mms(p.At.X, p.At.Y, p.At.Z)
	if !p.Sheet {
		t := tally(p.BoardFeet)
		out.BoardFeet = &t
	}
	for _, f := range p.Features {
		out.Features = append(out.Features, featureJSON{
			Kind: string(f.Kind), Name: f.Name, At: mms(f.At[:]...), Size: mms(f.Size[:]...), Round: f.Round,
			Radius: mm(f.Radius), Depth: mm(f.Depth), Opens: string(f.Opens), Why: f.Why,
		})
	}
	for _, e := range p.Profiles {
		out.Profiles = append(out.Profiles, profileJSON{e.Side, e.Profile, mm(e.Size), mm(e.Run)})
	}
}

// statesOf tells the state of the least made of a kind and, where any is made, that of each.
func statesOf(p *part.Part) (least string, each []string) {
	low := journal.Fitted
	for i := range p.Tags {
		low = min(low, p.State(i))
		if p.States != nil {
			each = append(each, p.State(i).String())
		}
	}
	return low.String(), each
}

func pipeJSON(p *part.Part, out *partJSON) {
	exact := func(l length.Length) *mm { v := mm(l); return &v }
	out.Cut, out.Between = exact(p.Cut), exact(p.Between)
	out.Loosest, out.Tightest = exact(p.Loosest), exact(p.Tightest)
	out.Ends = []string{string(p.Ends[0]), string(p.Ends[1])}
	out.From, out.FromWhy = p.From, p.FromWhy
}

// totalsJSON are the sums over the piece.
type totalsJSON struct {
	MassKg    rounded   `json:"mass_kg"`
	HeldKg    rounded   `json:"held_kg"`
	BoardFeet rounded   `json:"board_feet"`
	Tallies   tallyJSON `json:"board_feet_tallies"`
	Pipe      mm        `json:"pipe_mm"`
	Fittings  int       `json:"fittings"`
	Unions    int       `json:"unions"`
	Screws    int       `json:"screws"`
	FinishM2  rounded   `json:"finish_m2"`
}

func totals(t part.Totals) totalsJSON {
	return totalsJSON{
		MassKg: rounded(t.MassKg), HeldKg: rounded(t.HeldKg), BoardFeet: rounded(t.BoardFeet.Retail), Tallies: tally(t.BoardFeet),
		Pipe: mm(t.Pipe), Fittings: t.Fittings, Unions: t.Unions, Screws: t.Screws, FinishM2: rounded(t.FaceM2),
	}
}
