package table

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"rodwright/length"
)

// Row is one line of a table. A column that the table lacks reads as an empty cell.
type Row struct {
	columns map[string]int // shared by all rows of the table
	cells   []string
	Line    int // in the text, counted from 1
}

// Parse reads comma-separated text whose first line names the columns. Lines that begin with # are left
// out. An error names the line: columns without a name or named twice, a row of the wrong length, quotes
// that do not close.
func Parse(text string) ([]Row, error) {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	head, err := r.Read()
	if errors.Is(err, io.EOF) {
		return nil, errors.New("the table has no line with the names of its columns")
	}
	if err != nil {
		return nil, fmt.Errorf("the table can't be read: %w", err)
	}
	columns, err := index(head)
	if err != nil {
		return nil, err
	}
	var rows []Row
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			return rows, nil
		}
		if err != nil {
			return nil, fmt.Errorf("the table can't be read: %w", err)
		}
		line, _ := r.FieldPos(0)
		rows = append(rows, Row{columns: columns, cells: cells, Line: line})
	}
}

func index(head []string) (map[string]int, error) {
	columns := make(map[string]int, len(head))
	for i, name := range head {
		name = strings.TrimSpace(name)
		if name == "" {
			return nil, fmt.Errorf("line 1: column %d has no name", i+1)
		}
		if _, twice := columns[name]; twice {
			return nil, fmt.Errorf("line 1: column %q is there twice", name)
		}
		columns[name] = i
	}
	return columns, nil
}

// Read is [Parse] for a table that is embedded in the program and read by its tests. It panics if the text
// is no table; text from outside goes to Parse.
func Read(text string) []Row {
	rows, err := Parse(text)
	if err != nil {
		panic(err)
	}
	return rows
}

// Text returns the cell without spaces around it.
func (r Row) Text(column string) string {
	i, ok := r.columns[column]
	if !ok || i >= len(r.cells) {
		return ""
	}
	return strings.TrimSpace(r.cells[i])
}

// Has reports whether the cell is filled.
func (r Row) Has(column string) bool { return r.Text(column) != "" }

// Float returns the cell as a number. A cell that is empty or no number is not zero but NaN.
func (r Row) Float(column string) float64 {
	v, err := strconv.ParseFloat(r.Text(column), 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

// Int returns the cell as a whole number, and whether it is one.
func (r Row) Int(column string) (int, bool) {
	v, err := strconv.Atoi(r.Text(column))
	return v, err == nil
}

// Rat returns the cell as an exact rational, and whether it is a number: 25.4 stays 127/5. For what is
// to be computed without rounding, such as threads per inch.
func (r Row) Rat(column string) (*big.Rat, bool) {
	v, rest, why := length.ScanNumber(r.Text(column))
	if why != "" || rest != "" {
		return nil, false
	}
	return v, true
}

// Inches returns a cell of decimal or fractional inches as an exact length, halves of a nanometre to even.
// A cell that is empty or no length gives zero: ask [Row.Has] where a cell may be missing.
func (r Row) Inches(column string) length.Length { return r.lengthIn(column, length.In) }

// MM returns a cell of millimetres as an exact length, as [Row.Inches] does for inches.
func (r Row) MM(column string) length.Length { return r.lengthIn(column, length.MM) }

func (r Row) lengthIn(column string, unit length.Unit) length.Length {
	l, err := length.Parse(r.Text(column), unit)
	if err != nil {
		return 0
	}
	return l
}

// List returns a cell whose entries are parted by semicolons.
func (r Row) List(column string) []string {
	var out []string
	for entry := range strings.SplitSeq(r.Text(column), ";") {
		if entry = strings.TrimSpace(entry); entry != "" {
			out = append(out, entry)
		}
	}
	return out
}

// Columns returns the names of the columns in the order of the text.
func (r Row) Columns() []string {
	names := make([]string, len(r.columns))
	for name, i := range r.columns {
		names[i] = name
	}
	return names
}

// FromMemory reports whether the cell was written from memory: the row's how says so, unless
// read_columns or memory_columns says otherwise for this column.
func (r Row) FromMemory(column string) bool {
	if slices.Contains(r.List("memory_columns"), column) {
		return true
	}
	if slices.Contains(r.List("read_columns"), column) {
		return false
	}
	return r.Text("how") != "read"
}
