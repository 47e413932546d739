package main

import (
	"errors"
	"os/user"
	"strings"

	"rodwright/change"
	"rodwright/internal/store"
	"rodwright/journal"
	"rodwright/piece"
)

type journalVerb struct {
	List    journalListVerb    `cmd:"" help:"What was written, and what there is of the piece."`
	Add     journalAddVerb     `cmd:"" help:"Write down what was bought, made, measured, changed, asked for or answered."`
	Weigh   journalWeighVerb   `cmd:"" help:"What a change does to what is made already, before it is taken; the ways out when something went wrong; what a board still gives."`
	Compare journalCompareVerb `cmd:"" help:"Two moments of a piece, side by side."`
	Undo    journalUndoVerb    `cmd:"" help:"Take back your last edit, or withdraw an entry."`
}

// Help shows an example.
func (journalVerb) Help() string {
	return `Example: rodwright journal add table.piece.yaml made C2.1 cut-pipe 26 1/2 in from S1 in 25 min

The file NAME.piece.yaml is the beginning of a piece, the journal NAME.journal.jsonl beside it what came after: ` +
		`edits of the design, what was bought, made and measured, what the client asked for. The journal is made with the first entry.`
}

// journalOf is what every verb of a journal is asked with.
type journalOf struct {
	Piece string `arg:"" help:"The piece document, NAME.piece.yaml, with its journal beside it; with --shop the name of a piece of the shop."`
	Shop  string `placeholder:"FILE" help:"The shop's database that the piece is in."`
	Actor string `placeholder:"NAME" help:"Who writes; without it the name of this account."`
	JSON  bool   `name:"json" help:"One JSON object for programs."`
}

// with opens the piece, and closes it when what was done with it is done.
func (j *journalOf) with(m *Main, do func(keeper) error) error {
	k, err := m.keeper(j.Piece, j.Shop)
	if err == nil {
		err = errors.Join(do(k), k.close())
	}
	return refused(err)
}

// actor is who writes.
func (j *journalOf) actor() string {
	if j.Actor != "" {
		return j.Actor
	}
	if u, err := user.Current(); err == nil && journal.CheckActor(u.Username) == nil {
		return u.Username
	}
	return "maker"
}

// refused marks as the fault of what was read what a log or a document refuses.
func refused(err error) error {
	var (
		asked    *exit
		said     *journal.SayError
		entry    *journal.EntryError
		line     *journal.LineError
		fact     *change.FactError
		document *piece.Error
		input    *store.InputError
		missing  *store.NotFoundError
		conflict *store.ConflictError
		foreign  *store.ForeignError
		newer    *store.NewerError
	)
	if err == nil || errors.As(err, &asked) {
		return err
	}
	for _, target := range []any{&said, &entry, &line, &fact, &document, &input, &missing, &conflict, &foreign, &newer} {
		if errors.As(err, target) {
			return badInput(err)
		}
	}
	return err
}

// oneOf lists what there is to choose from.
func oneOf(names []string) string {
	if len(names) == 0 {
		return "none"
	}
	return strings.Join(names, ", ")
}
