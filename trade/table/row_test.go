package table_test

import (
	"math"
	"math/big"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/trade/table"
)

const sample = `id,width_in,width_mm,threads,tags,read_columns,memory_columns,source,how
# a remark of the table's keeper
one,1.050,26.7,11.5,a; b,,threads,B36.10+B1.20.1,read
"two, with comma",,,x,,width_in,,B16.3,memory
`

func TestReadKeepsRowsInOrderWithTheirLines(t *testing.T) {
	rows := table.Read(sample)
	if len(rows) != 2 {
		t.Fatalf("%d rows, want 2", len(rows))
	}
	for i, want := range []struct {
		id   string
		line int
	}{{"one", 3}, {"two, with comma", 4}} {
		if rows[i].Text("id") != want.id || rows[i].Line != want.line {
			t.Errorf("row %d is %q on line %d, want %q on line %d", i, rows[i].Text("id"), rows[i].Line, want.id, want.line)
		}
	}
	if got := rows[0].Columns(); strings.Join(got, " ") != "id width_in width_mm threads tags read_columns memory_columns source how" {
		t.Errorf("columns %v", got)
	}
}

func TestCellsReadAsWhatTheyAre(t *testing.T) {
	r := table.Read(sample)[0]
	if got := r.Inches("width_in"); got != 26_670_000 {
		t.Errorf("1.050 in is %d nm, want 26670000", got)
	}
	if got := r.MM("width_mm"); got != 26_700_000 {
		t.Errorf("26.7 mm is %d nm, want 26700000", got)
	}
	if got := r.Float("threads"); got != 11.5 {
		t.Errorf("threads %v", got)
	}
	if got, ok := r.Rat("threads"); !ok || got.Cmp(big.NewRat(23, 2)) != 0 {
		t.Errorf("threads as a rational %v %v", got, ok)
	}
	if got := r.List("tags"); !slices.Equal(got, []string{"a", "b"}) {
		t.Errorf("tags %q", got)
	}
}

func TestAMissingCellIsNeverZeroByItself(t *testing.T) {
	r := table.Read(sample)[1]
	for _, column := range []string{"width_in", "threads", "no such column"} {
		if got := r.Float(column); !math.IsNaN(got) {
			t.Errorf("%s reads %v, want NaN", column, got)
		}
		if _, ok := r.Rat(column); ok {
			t.Errorf("%s reads as a rational", column)
		}
		if _, ok := r.Int(column); ok {
			t.Errorf("%s reads as a whole number", column)
		}
	}
	if r.Has("width_in") || r.Has("no such column") || !r.Has("threads") {
		t.Error("Has does not tell empty cells from filled ones")
	}
	if r.Inches("width_in") != 0 || r.MM("threads") != 0 {
		t.Error("a cell that is no length must read as zero")
	}
	if (table.Row{}).Text("id") != "" {
		t.Error("the zero row has no cells")
	}
}

func TestBadTablesSayWhere(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "no line with the names"},
		{"only a remark", "# nothing\n", "no line with the names"},
		{"short row", "a,b\n1\n", "line 2"},
		{"open quote", "a,b\n\"1,2\n", "line 2"},
		{"bare quote in the head", "a\"b,c\n", "line 1"},
		{"nameless column", "a,,b\n", "column 2 has no name"},
		{"column twice", "a,b,a\n", `"a" is there twice`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := table.Parse(c.text)
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want %q in it", err, c.want)
			}
		})
	}
}

func TestReadPanicsOnWhatIsNoTable(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("no panic")
		}
	}()
	table.Read("a,b\n1\n")
}

func TestEveryLengthThatIsWrittenIsReadExactly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := length.Length(rapid.Int64Range(0, 1_000_000_000).Draw(t, "nm"))
		text := "l\n" + strings.TrimSuffix(length.Fineness{Step: 1, Unit: length.MM}.Number(l), " mm") + "\n"
		if got := table.Read(text)[0].MM("l"); got != l {
			t.Fatalf("%q reads %d, want %d", text, got, l)
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{sample, "", "a\n", "a,b\n1\n", "a,b\n\"1,2\n", "a\r\n1\r\n", "\ufeffa\n1\n", "a,a\n", "# x\na\n#\n1\n"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		rows, err := table.Parse(text)
		if err != nil && rows != nil {
			t.Fatal("rows beside an error")
		}
		for _, r := range rows {
			for _, c := range r.Columns() {
				r.Float(c)
				r.Rat(c)
				r.Inches(c)
				if r.Has(c) != (r.Text(c) != "") {
					t.Fatalf("column %q: Has and Text differ", c)
				}
			}
			_ = r.Sourced()
			_ = r.Source().String()
		}
	})
}
