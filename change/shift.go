package change

import (
	"fmt"
	"strings"

	"rodwright/fate"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
)

// probe is by how much a size is changed to see what depends on it.
const probe = length.Millimetre

// mostShift is the part of a size by which it is shifted at most, an eighth: farther it would be another design.
const mostShift = 8

// shift changes a size of the design so that the part is right as it is. Every length of the document that is written
// as such and that the part's size follows in proportion is tried.
func (o *waysOut) shift() error {
	need := needAt(o.now.needs(), o.wrong.Place)
	if need == nil || o.wrong.Shape == nil {
		return nil
	}
	for k := range 3 {
		has, want := length.Length(o.wrong.Shape.Size[k]), sizeOf(need.Part, k)
		if has == want || has == 0 || want == 0 {
			continue
		}
		if err := o.shiftTo(need, k, has-want); err != nil {
			return err
		}
	}
	return nil
}

// sizeOf is one of the sizes of a part: along the grain, across it, thick; of a pipe its length.
func sizeOf(p *part.Part, k int) length.Length {
	if p.Kind == part.Pipe {
		return [3]length.Length{p.Cut}[k]
	}
	return p.Finished[k]
}

func (o *waysOut) shiftTo(need *fate.Need, k int, by length.Length) error {
	doc := o.now.Build.Doc
	for _, c := range written(doc) {
		moved, ok := o.probe(c, need.Place, k)
		if !ok || moved == 0 {
			continue
		}
		to := nearest(c.value+by.Scale(int64(probe), int64(moved)), doc.Unit)
		if (to - c.value).Abs() > c.value/mostShift {
			continue
		}
		edit := journal.Put{Path: c.path, New: exact(to, doc.Unit)}
		w, err := Weigh(o.after, edit)
		if err != nil { // the design does not go that way
			continue
		}
		got := needAt(w.After.needs(), need.Place)
		if got == nil || (sizeOf(got.Part, k)-sizeOf(need.Part, k)-by).Abs() > fate.Marking {
			continue
		}
		kind, also := ShiftDesign, siblings(w, o.wrong.Thing)
		if len(also) > 0 {
			kind = TrimSiblings
		}
		words := fmt.Sprintf("change %s from %s to %s%s", c.name, doc.Fineness.Show(c.value), doc.Fineness.Show(to), c.says)
		if len(also) > 0 {
			words += ", and trim " + strings.Join(also, ", ") + " to match"
		}
		o.add(kind, words, w, nil)
	}
	return nil
}

// siblings are the other parts already made that are cut down by a change.
func siblings(w *Weighed, but string) (out []string) {
	for _, f := range w.Fates {
		if f.Thing != but && !f.Unchanged && f.Kind == string(fate.CutDown) {
			out = append(out, f.Label)
		}
	}
	return out
}

// candidate is a length that stands in the document.
type candidate struct {
	path  string
	name  string
	value length.Length
	says  string // whose it is, where it is not the maker's to change alone
}

// written lists the lengths that stand in the document as such: named sizes, and the panels' own.
func written(doc *piece.Document) (out []candidate) {
	for _, s := range doc.Sizes {
		if len(s.Uses) > 0 {
			continue
		}
		c := candidate{path: "sizes/" + s.Name, name: s.Name, value: s.Formed}
		switch s.Origin {
		case piece.Client:
			c.says = " (it is the client's: ask first)"
		case piece.Measured:
			continue // what was measured on site does not follow the maker
		}
		out = append(out, c)
	}
	for _, p := range doc.Panels {
		for _, field := range []string{"length", "width", "thickness", "level"} {
			path := "panels/" + p.Name + "/" + field
			text, _, err := piece.ValueAt(doc.Text, path)
			if err != nil {
				continue
			}
			if v, err := length.Parse(text, doc.Unit); err == nil {
				out = append(out, candidate{path: path, name: field + " of " + p.Name, value: v})
			}
		}
	}
	return out
}

// probe returns by how much a part's size moves when a length of the document moves by the probe.
func (o *waysOut) probe(c candidate, place string, k int) (length.Length, bool) {
	b := o.now.Build
	text, err := piece.Edit(o.now.Text, c.path, exact(c.value+probe, b.Doc.Unit))
	if err != nil {
		return 0, false
	}
	doc, err := piece.Read(o.now.Log.Name, text)
	if err != nil {
		return 0, false
	}
	r, err := piece.ResolveStanding(doc, o.now.Log.Shop, fate.Facts(frameOnly(o.now.Record), nil))
	if err != nil {
		return 0, false
	}
	list, err := part.TakeOff(r, o.now.Log.Shop)
	if err != nil {
		return 0, false
	}
	was, is := needAt(o.now.needs(), place), needAt(fate.Needs(r, list), place)
	if was == nil || is == nil {
		return 0, false
	}
	if was.Part.Kind == part.Pipe { // a stock nipple jumps: what it bridges does not
		return is.Part.Exact - was.Part.Exact, true
	}
	return sizeOf(is.Part, k) - sizeOf(was.Part, k), true
}

// nearest is the length nearest to l that a tape has: a multiple of 1/64 in or of 1/2 mm.
func nearest(l length.Length, unit length.Unit) length.Length {
	if unit == length.In || unit == length.Ft {
		return length.SixtyFourth.Round(l)
	}
	return length.HalfMM.Round(l)
}

// exact writes a length so that it is read back to the nanometre: as a fraction of an inch where it is one, else in
// millimetres.
func exact(l length.Length, unit length.Unit) string {
	if unit == length.In && l%(length.Inch/64) == 0 {
		return length.SixtyFourth.Text(l)
	}
	text, err := length.Millimetres(l).MarshalJSON()
	if err != nil {
		return length.HalfMM.Text(l)
	}
	return string(text) + " mm"
}
