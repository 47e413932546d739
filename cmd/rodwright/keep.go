package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"time"

	"rodwright/build"
	"rodwright/change"
	"rodwright/internal/store"
	"rodwright/internal/store/beside"
	"rodwright/journal"
	"rodwright/piece"
	"rodwright/shop"
)

// keeper is where a piece with its log is kept.
type keeper interface {
	// load returns the piece as it began with everything that was written of it.
	load() (change.Log, error)
	// append writes the entries that wanted returns of the log, all or none.
	append(wanted func(change.Log) ([]journal.Entry, error)) ([]journal.Entry, error)
	close() error
}

// remembered is how many layouts a run keeps: a change is derived before and after.
const remembered = 64

// keeper opens a piece file with the journal beside it or, where a shop is named, a piece of that shop.
func (m *Main) keeper(name, shopFile string) (keeper, error) {
	if shopFile != "" {
		return openShop(name, shopFile)
	}
	if name == "-" {
		return nil, badInput(errors.New("standard input has no journal: name a file NAME.piece.yaml"))
	}
	text, err := m.read(name)
	if err != nil {
		return nil, err
	}
	if _, err := piece.Read(name, text); err != nil {
		return nil, badInput(err)
	}
	return &fileKeeper{change.Log{Name: name, Start: text, Shop: shop.Sample(), Memo: build.NewMemo(remembered)}}, nil
}

// fileKeeper keeps the log in a journal file beside the piece.
type fileKeeper struct{ log change.Log }

func (k *fileKeeper) load() (change.Log, error) {
	l := k.log
	var err error
	l.Entries, err = beside.Load(beside.Name(l.Name))
	return l, err
}

func (k *fileKeeper) append(wanted func(change.Log) ([]journal.Entry, error)) ([]journal.Entry, error) {
	return beside.Append(beside.Name(k.log.Name), time.Now(), func(es []journal.Entry) ([]journal.Entry, error) {
		l := k.log
		l.Entries = es
		return wanted(l)
	})
}

func (k *fileKeeper) close() error { return nil }

// shopKeeper keeps the log in a shop's database.
type shopKeeper struct {
	store *store.Store
	id    string
	log   change.Log // without entries
}

// openShop opens a piece of a shop that is there.
func openShop(name, file string) (keeper, error) {
	if _, err := os.Stat(file); errors.Is(err, fs.ErrNotExist) {
		return nil, badInput(fmt.Errorf("%s: there is no such shop", file))
	}
	ctx := context.Background()
	s, err := store.Open(ctx, file)
	if err != nil {
		return nil, err
	}
	k := &shopKeeper{store: s}
	if err := k.find(ctx, name); err != nil {
		return nil, errors.Join(err, s.Close())
	}
	return k, nil
}

// find reads how the piece began and the shop's own settings.
func (k *shopKeeper) find(ctx context.Context, name string) error {
	p, err := k.store.Piece(ctx, name)
	if err != nil {
		return k.missing(ctx, err)
	}
	k.id = p.ID
	k.log = change.Log{Name: p.Name, Shop: shop.Sample(), Memo: build.NewMemo(remembered)}
	if k.log.Start, err = k.store.Start(ctx, p.ID); err != nil {
		return err
	}
	text, number, err := k.store.Shop(ctx)
	if err == nil && number > 0 {
		k.log.Shop, err = shop.Read("shop", text)
	}
	return err
}

// missing says which pieces there are where one is not there.
func (k *shopKeeper) missing(ctx context.Context, err error) error {
	var no *store.NotFoundError
	if !errors.As(err, &no) {
		return err
	}
	all, list := k.store.Pieces(ctx)
	if list != nil {
		return list
	}
	names := make([]string, len(all))
	for i, p := range all {
		names[i] = p.Name
	}
	return badInput(fmt.Errorf("%w; there are %s", err, oneOf(names)))
}

func (k *shopKeeper) load() (change.Log, error) {
	l := k.log
	var err error
	l.Entries, err = k.store.Log(context.Background(), k.id, 0)
	return l, err
}

func (k *shopKeeper) append(wanted func(change.Log) ([]journal.Entry, error)) ([]journal.Entry, error) {
	l, err := k.load()
	if err != nil {
		return nil, err
	}
	es, err := wanted(l)
	if err != nil {
		return nil, err
	}
	return k.store.Append(context.Background(), k.id, es...)
}

func (k *shopKeeper) close() error { return k.store.Close() }
