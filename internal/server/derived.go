package server

import (
	"context"
	"crypto/sha256"
	"errors"
	"sync"

	"rodwright/book"
	"rodwright/build"
	"rodwright/draw"
	"rodwright/internal/store"
	"rodwright/journal"
	"rodwright/piece"
	"rodwright/shop"
)

// deriveKey names everything that a build depends on.
type deriveKey struct {
	text  [sha256.Size]byte
	shop  int64     // the number of the settings' last write
	units string    // inch, metric, or empty for the document's own
	told  recordKey // zero where nothing was made, bought or measured
}

// derived is what was derived from one document. Its parts are worked out when they are first asked for, once,
// however many ask.
type derived struct {
	build func() (*build.Build, error)
	json  func() ([]byte, error)

	mu     sync.Mutex
	style  draw.Style // of plates
	plates []book.Plate
}

// opened is a piece as it stands, with what is derived from it.
type opened struct {
	store.Piece
	text   []byte
	told   told
	units  string
	rules  settings
	build  *build.Build
	shared *derived
}

// settings are the shop as it stands.
type settings struct {
	shop   *shop.Shop
	number int64
}

// lastShop keeps the settings that were read last.
type lastShop struct {
	mu   sync.Mutex
	last settings
}

// settings returns the shop's own settings, or the built-in sample while there are none.
func (s *Server) settings(ctx context.Context) (settings, error) {
	text, number, err := s.store.Shop(ctx)
	if err != nil {
		return settings{}, err
	}
	if number == 0 {
		return settings{s.sample, 0}, nil
	}
	s.shop.mu.Lock()
	defer s.shop.mu.Unlock()
	if s.shop.last.number != number {
		read, err := shop.Read("shop", text)
		if err != nil {
			return settings{}, err
		}
		s.shop.last = settings{read, number}
	}
	return s.shop.last, nil
}

// open reads a piece and derives it. Units is a word as book.Units takes it; it was checked with the request.
func (s *Server) open(ctx context.Context, id, units string) (*opened, error) {
	o, err := s.read(ctx, id)
	if err != nil {
		return nil, err
	}
	o.units = units
	o.shared = s.derive(o.text, o.told, o.rules, units)
	if o.build, err = o.shared.build(); err != nil {
		return nil, inFile(err, o.Name)
	}
	return o, nil
}

// read reads a piece as it stands, by its id.
func (s *Server) read(ctx context.Context, id string) (*opened, error) {
	text, number, err := s.store.Text(ctx, id)
	if err != nil {
		return nil, err
	}
	p, err := s.store.Piece(ctx, id)
	if err != nil {
		return nil, err
	}
	rules, err := s.settings(ctx)
	if err != nil {
		return nil, err
	}
	p.Number = number
	facts, err := s.told(ctx, id, number)
	if err != nil {
		return nil, err
	}
	return &opened{Piece: p, text: text, told: facts, rules: rules}, nil
}

// derive returns what is kept of a document in the shop and what was made of it, or begins to keep it.
func (s *Server) derive(text []byte, facts told, rules settings, units string) *derived {
	key := deriveKey{sha256.Sum256(text), rules.number, units, facts.key}
	return s.derived.get(key, func() *derived {
		d := &derived{build: sync.OnceValues(func() (*build.Build, error) { return s.work(text, facts.record, rules.shop, units) })}
		d.json = sync.OnceValues(func() ([]byte, error) {
			b, err := d.build()
			if err != nil {
				return nil, err
			}
			return b.JSON()
		})
		return d
	})
}

// work derives a build from a document and what was made of it, shown in the given units. It names no file in its errors, because several
// pieces may have one text; see inFile.
func (s *Server) work(text []byte, rec *journal.Record, in *shop.Shop, units string) (*build.Build, error) {
	doc, err := piece.Read("", text)
	if err != nil {
		return nil, err
	}
	fineness, err := book.Units(units, doc.Fineness)
	if err != nil {
		return nil, err
	}
	if fineness != doc.Fineness {
		doc = doc.Shown(fineness)
	}
	return build.Derive(build.Input{Document: doc, Shop: in, Record: rec}, s.memo)
}

// inFile puts the piece's name into an error of its document.
func inFile(err error, name string) error {
	var e *piece.Error
	if !errors.As(err, &e) {
		return err
	}
	named := *e
	named.File = name
	return &named
}

// drawings returns all drawings in a style. Those of the style asked for last are kept.
func (d *derived) drawings(b *build.Build, style draw.Style) []book.Plate {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.plates == nil || d.style != style {
		d.plates, d.style = book.Drawings(b, style), style
	}
	return d.plates
}
