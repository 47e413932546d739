package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"log/slog"
	"net"
	"os"
	"os/signal"
	"strconv"
	"syscall"

	"rodwright/internal/server"
	"rodwright/internal/store"
	"rodwright/internal/store/beside"
	"rodwright/internal/web"
	"rodwright/journal"
	"rodwright/piece"
)

// ownPort is where a shop is served when no port is asked for. IANA lists it for nothing (from memory).
const ownPort = 18730

type serveVerb struct {
	Shop   string   `required:"" placeholder:"FILE" help:"The shop's database; it is made when there is none."`
	Port   int      `default:"${port}" help:"Port of this machine to listen on, 127.0.0.1 only; 0 takes any that is free."`
	Pieces []string `arg:"" optional:"" help:"Piece documents, NAME.piece.yaml, to put into the shop with the journals beside them; a piece that it has already is left as it is."`
}

// Help shows an example.
func (serveVerb) Help() string {
	return "Example: rodwright serve --shop shop.db examples/low-bench.piece.yaml"
}

// Run serves a shop until it is told to stop.
func (v *serveVerb) Run(m *Main) error {
	s := &session{Main: m, file: v.Shop, port: v.Port}
	for _, name := range v.Pieces {
		d, err := m.document(name)
		if err != nil {
			return err
		}
		s.pieces = append(s.pieces, d)
	}
	return s.run()
}

// session is one run of the server on one shop.
type session struct {
	*Main
	file   string
	port   int
	pieces []document // put into the shop where it lacks them
	ready  func(address string)
}

// document is a piece's text, the name of its file and what was written of it.
type document struct {
	file    string
	text    []byte
	name    string          // that the piece has in the shop; empty: its own
	entries []journal.Entry // of the journal beside it
}

// document reads a piece with the journal beside it.
func (m *Main) document(name string) (document, error) {
	text, err := m.read(name)
	if err != nil || name == "-" {
		return document{file: shownName(name), text: text}, err
	}
	es, err := beside.Load(beside.Name(name))
	return document{file: name, text: text, entries: es}, refused(err)
}

// run opens the shop and serves it until a signal ends it: Ctrl+C, or a request to terminate.
func (s *session) run() error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // a second Ctrl+C ends it at once
	l, err := s.listen()
	if err != nil {
		return err
	}
	shop, err := s.open(ctx)
	if err != nil {
		return errors.Join(err, l.Close())
	}
	if err := s.serve(ctx, shop, l); err != nil {
		return errors.Join(err, shop.Close())
	}
	if err := shop.Close(); err != nil {
		return err
	}
	_, err = fmt.Fprintln(s.Stdout, "stopped")
	return err
}

// listen takes the port before anything is made.
func (s *session) listen() (net.Listener, error) {
	if s.port < 0 || s.port > 65535 {
		return nil, badInput(fmt.Errorf("--port %d: a port is 1 to 65535, or 0 for any that is free", s.port))
	}
	l, err := server.Listen(s.port)
	if err != nil {
		return nil, fmt.Errorf("port %d can't be had: %w; where another program has it, end that one, or choose another with --port N: --port 0 takes any that is free", s.port, err)
	}
	return l, nil
}

// open opens the shop and puts the pieces into it that it lacks.
func (s *session) open(ctx context.Context) (*store.Store, error) {
	_, missing := os.Stat(s.file)
	shop, err := store.Open(ctx, s.file)
	var foreign *store.ForeignError
	var newer *store.NewerError
	if errors.As(err, &foreign) || errors.As(err, &newer) {
		return nil, badInput(err)
	}
	if err != nil {
		return nil, err
	}
	if errors.Is(missing, fs.ErrNotExist) {
		fmt.Fprintln(s.Stderr, "made a new shop in", s.file)
	}
	for _, d := range s.pieces {
		if err := put(ctx, shop, d); err != nil {
			return nil, errors.Join(err, shop.Close())
		}
	}
	return shop, nil
}

// put puts a piece into the shop with what was written of it, unless one of its name is there that something was written
// of or that began as another.
func put(ctx context.Context, shop *store.Store, d document) error {
	read, err := piece.Read(d.file, d.text)
	if err != nil {
		return badInput(err)
	}
	if d.name == "" {
		d.name = read.Name
	}
	var missing *store.NotFoundError
	p, err := shop.Piece(ctx, d.name)
	if errors.As(err, &missing) {
		p, err = shop.Create(ctx, store.Write{Actor: "maker"}, d.name, d.text)
	}
	if err != nil || p.Number > 0 || len(d.entries) == 0 {
		return err
	}
	start, err := shop.Start(ctx, p.ID)
	if err != nil || !bytes.Equal(start, d.text) {
		return err
	}
	_, err = shop.Append(ctx, p.ID, d.entries...)
	return refused(err)
}

func (s *session) serve(ctx context.Context, shop *store.Store, l net.Listener) error {
	log := slog.New(slog.NewTextHandler(s.Stderr, &slog.HandlerOptions{Level: slog.LevelWarn}))
	h, err := server.New(server.Options{Store: shop, Files: web.Files(), Version: version, Edition: edition(), Logger: log})
	if err != nil {
		return errors.Join(err, l.Close())
	}
	address := "http://" + l.Addr().String() + "/"
	fmt.Fprintf(s.Stdout, "open %s in a browser; Ctrl+C ends\n", address)
	if s.ready != nil {
		s.ready(address)
	}
	return h.Serve(ctx, l)
}

// edition tells this program from others that may answer otherwise: by its version, or where it has none by when
// it was built.
func edition() string {
	if version != "unreleased" {
		return version
	}
	name, err := os.Executable()
	if err != nil {
		return version
	}
	info, err := os.Stat(name)
	if err != nil {
		return version
	}
	return version + "-" + strconv.FormatInt(info.ModTime().UnixNano(), 36)
}
