package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// recognise reports whether the file is still to be made, as a file that is not there is, and one of a start
// that was cut short. A file that is no shop is a *ForeignError; it is only read.
func recognise(ctx context.Context, file string) (fresh bool, err error) {
	at, err := os.Stat(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return true, folderOf(file)
	case err != nil:
		return false, fmt.Errorf("open %s: %w", file, err)
	case !at.Mode().IsRegular():
		return false, &ForeignError{file, errors.New("it is no file")}
	case at.Size() == 0:
		return true, nil
	}
	id, tables, err := read(ctx, file)
	switch {
	case isNoDatabase(err):
		return false, &ForeignError{file, err}
	case err != nil:
		return false, fmt.Errorf("open %s: %w", file, err)
	case id == 0 && tables == 0:
		return true, nil
	case id != mark:
		return false, &ForeignError{file, fmt.Errorf("its application id is %#x", id)}
	}
	return false, nil
}

// isNoDatabase tells a file that holds something else from one that can't be read now.
func isNoDatabase(err error) bool {
	return says(err, sqlite3.SQLITE_NOTADB) || says(err, sqlite3.SQLITE_CORRUPT)
}

// isBusy tells that another program holds the database at this moment.
func isBusy(err error) bool { return says(err, sqlite3.SQLITE_BUSY) }

// says reports whether SQLite failed with the given primary code.
func says(err error, primary int) bool {
	var said *sqlite.Error
	return errors.As(err, &said) && said.Code()&0xff == primary // the rest says more of the same: "Result and Error Codes", 2
}

// folderOf reports that the folder a file is to be made in is not there.
func folderOf(file string) error {
	folder := filepath.Dir(file)
	if _, err := os.Stat(folder); err != nil {
		return fmt.Errorf("make %s: there must be a folder %s first: %w", file, folder, err)
	}
	return nil
}

// read returns the application id of a database and how many tables, indexes and the like it has. The
// connection sets nothing: another program's file keeps its journal mode.
func read(ctx context.Context, file string) (id, tables int64, err error) {
	db, err := connect(file, 1, []string{"busy_timeout(10000)"}, "_pragma=query_only(1)")
	if err != nil {
		return 0, 0, err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	if err = db.QueryRowContext(ctx, "pragma application_id").Scan(&id); err != nil {
		return 0, 0, err
	}
	err = db.QueryRowContext(ctx, "select count(*) from sqlite_master").Scan(&tables)
	return id, tables, err
}
