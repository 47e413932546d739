package store_test

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"rodwright/internal/store"
	"rodwright/journal"
	"rodwright/piece"
)

// Two people write to one piece. Neither has seen what the other wrote.
func Example() {
	if err := twoWriters(context.Background()); err != nil {
		fmt.Println(err)
	}
	// Output:
	// entry 1 makes it 40 in, before it was 42 in
	// sizes/length was changed by anna in entry 1: it is "40 in" now, and yours is "41 in"
	// entry 2 makes it 20 in, before it was 19 in
}

func twoWriters(ctx context.Context) (err error) {
	folder, err := os.MkdirTemp("", "shop")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(folder)) }()
	s, err := store.Open(ctx, filepath.Join(folder, "shop.db"))
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, s.Close()) }()
	text, err := piece.Starter("stepped-stand")
	if err != nil {
		return err
	}
	stand, err := s.Create(ctx, store.Write{Actor: "anna"}, "stepped stand", text)
	if err != nil {
		return err
	}
	for _, e := range []journal.Entry{
		{Actor: "anna", Kind: journal.Edit, Path: "sizes/length", New: "40 in"},
		{Actor: "ben", Kind: journal.Edit, Path: "sizes/length", New: "41 in"},
		{Actor: "ben", Kind: journal.Edit, Path: "sizes/depth", New: "20 in"},
	} {
		kept, err := s.Append(ctx, stand.ID, e)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("entry %d makes it %s, before it was %s\n", kept[0].Number, kept[0].New, kept[0].Old)
	}
	return nil
}
