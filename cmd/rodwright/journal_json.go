package main

import (
	"bytes"
	"encoding/json"

	"rodwright/build"
	"rodwright/change"
	"rodwright/fate"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/piece"
)

// entryJSON is an entry for programs.
type entryJSON struct {
	Number  int64        `json:"number"`
	ID      string       `json:"id"`
	Actor   string       `json:"actor"`
	At      int64        `json:"at"` // milliseconds since 1970
	Base    int64        `json:"base"`
	Kind    string       `json:"kind"`
	Stands  bool         `json:"stands"`
	Words   string       `json:"words"`
	Path    string       `json:"path,omitempty"`
	Old     string       `json:"old,omitempty"`
	New     string       `json:"new,omitempty"`
	Names   string       `json:"names,omitempty"`
	MayUndo bool         `json:"mayUndo"` // an undo by the asker takes exactly this
	What    journal.What `json:"what,omitempty"`
	Order   *orderJSON   `json:"order,omitempty"`
}

// orderJSON is a change that the client asked for.
type orderJSON struct {
	No       int       `json:"no"`
	ID       string    `json:"id"`
	Number   int64     `json:"number"`
	Words    string    `json:"words"`
	Edits    []putJSON `json:"edits"`
	Cents    *int64    `json:"cents"`
	Ready    string    `json:"ready"`
	Answered bool      `json:"answered"`
	Yes      bool      `json:"yes"`
}

type putJSON struct {
	Path  string `json:"path"`
	Value string `json:"value"`
}

// listJSON is a log and what there is of its piece. Things are left out where the piece can't be derived.
type listJSON struct {
	Piece     string         `json:"piece"`
	Number    int64          `json:"number"`
	Entries   []entryJSON    `json:"entries"`
	Orders    []orderJSON    `json:"orders"`
	Things    []thingJSON    `json:"things"`
	Goods     []goodsJSON    `json:"goods"`
	Distances []distanceJSON `json:"distances"`
	Pushes    []pushJSON     `json:"pushes"`
	Finished  bool           `json:"finished"`
	Delivered bool           `json:"delivered"`
}

type thingJSON struct {
	ID       string        `json:"id"`
	Label    string        `json:"label"`
	Tag      string        `json:"tag"`
	Place    string        `json:"place"`
	State    string        `json:"state"`
	Material string        `json:"material"`
	Size     [3]journal.MM `json:"size"`
	Measured bool          `json:"measured"`
	HandsH   float64       `json:"hoursH"`
	Spoiled  string        `json:"spoiled"`
	ToDo     string        `json:"todo"`
	Why      string        `json:"why"`
}

type goodsJSON struct {
	ID string `json:"id"` // of the entry that told of them
	journal.Goods
	Left journal.MM `json:"left"` // of the length
}

type distanceJSON struct {
	journal.Distance
	Number int64 `json:"number"` // of the entry that told of it
}

type pushJSON struct {
	journal.Push
	Number int64 `json:"number"` // of the entry that told of it
}

// entriesJSON are the entries of a log from the given place on, in words to the fineness.
func entriesJSON(l change.Log, from int, fine length.Fineness, actor string) []entryJSON {
	stands := journal.Standing(l.Entries)
	undo, _ := journal.Undoable(l.Entries, actor)
	redo, _ := journal.Redoable(l.Entries, actor)
	orders := ordersJSON(journal.Fold(l.Entries))
	out := []entryJSON{}
	for i := from; i < len(l.Entries); i++ {
		e := l.Entries[i]
		j := entryJSON{
			Number: e.Number, ID: e.ID, Actor: e.Actor, At: e.At.UnixMilli(), Base: e.Base, Kind: string(e.Kind), Stands: stands[i],
			Words: journal.Words(l.Entries, i, fine, l.Shop.Currency), Path: e.Path, Old: e.Old, New: e.New, Names: e.Names,
			MayUndo: e.ID == undo.ID || e.ID == redo.ID,
		}
		if e.Fact != nil {
			j.What = e.Fact.What
		}
		for k := range orders {
			if orders[k].ID == e.ID {
				j.Order = &orders[k]
			}
		}
		out = append(out, j)
	}
	return out
}

func ordersJSON(rec *journal.Record) []orderJSON {
	out := []orderJSON{}
	for _, o := range rec.Orders {
		j := orderJSON{No: o.No, ID: o.ID, Number: o.Number, Words: o.Words, Cents: o.Cents, Ready: o.Ready, Answered: o.Answered, Yes: o.Yes}
		for _, p := range o.Edits {
			j.Edits = append(j.Edits, putJSON{p.Path, p.New})
		}
		out = append(out, j)
	}
	return out
}

// listOf is a log for programs. Now is nil where the piece can't be derived.
func listOf(l change.Log, now *change.Truth, actor string) listJSON {
	rec := journal.Fold(l.Entries)
	out := listJSON{
		Piece: l.Name, Number: int64(len(l.Entries)), Entries: entriesJSON(l, 0, finenessOf(l), actor), Orders: ordersJSON(rec),
		Things: []thingJSON{}, Goods: []goodsJSON{}, Distances: []distanceJSON{}, Pushes: []pushJSON{}, Finished: rec.Finished, Delivered: rec.Delivered,
	}
	for _, g := range rec.Goods {
		out.Goods = append(out.Goods, goodsJSON{g.ID, g.Goods, g.Left})
	}
	for _, d := range rec.Distances {
		out.Distances = append(out.Distances, distanceJSON{d.Distance, d.Number})
	}
	for _, t := range rec.Pushes {
		out.Pushes = append(out.Pushes, pushJSON{t.Push, t.Number})
	}
	if now != nil {
		out.Piece, out.Things = now.Build.Doc.Name, thingsJSON(now.Build)
	}
	return out
}

func thingsJSON(b *build.Build) []thingJSON {
	out := []thingJSON{}
	if b.Under == nil {
		return out
	}
	for _, s := range b.Under.Settled {
		t := s.Thing
		j := thingJSON{
			ID: t.ID, Label: t.Label, Place: t.Place, State: t.State.String(), Material: t.Shape.Material, Size: t.Shape.Size, Measured: t.Shape.Measured,
			HandsH: t.HandsH, Spoiled: t.Spoiled, ToDo: toDo(s), Why: s.Why,
		}
		if s.Need != nil {
			j.Tag = s.Need.Tag
		}
		out = append(out, j)
	}
	return out
}

// toDo is what puts a part right; empty where it serves as it is, or not at all.
func toDo(s fate.Settled) string {
	if s.Need == nil || s.Way.Kind == fate.AsIs {
		return ""
	}
	return s.Way.Words
}

// finenessOf is to what lengths of a log are told: finer than the piece's tape, so that what was measured is not rounded.
func finenessOf(l change.Log) length.Fineness {
	doc, err := piece.Read(l.Name, l.Start)
	if err != nil {
		return length.Fineness{}
	}
	return doc.Fineness.Finer()
}

// json is what was written for programs; nothing where nothing was.
func (w *written) json() []entryJSON {
	if w == nil || len(w.entries) == 0 {
		return []entryJSON{}
	}
	return entriesJSON(w.log, len(w.log.Entries)-len(w.entries), finenessOf(w.log), w.entries[0].Actor)
}

// printJSON prints one JSON object.
func (m *Main) printJSON(v any) error {
	text, err := indented(v)
	if err == nil {
		_, err = m.Stdout.Write(text)
	}
	return err
}

// indented writes JSON as a person can read it too.
func indented(v any) ([]byte, error) {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	err := e.Encode(v)
	return out.Bytes(), err
}
