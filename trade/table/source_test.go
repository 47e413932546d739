package table_test

import (
	"strings"
	"testing"

	"rodwright/trade/table"
)

func TestASourceSaysThePublicationAndWhetherItWasRead(t *testing.T) {
	rows := table.Read(sample)
	for _, c := range []struct {
		name string
		got  table.Source
		want string
	}{
		{"a row that was read", rows[0].SourceIn("B36.10"), "ASME B36.10M Welded and Seamless Wrought Steel Pipe"},
		{"a cell of it from memory", rows[0].SourceIn("B36.10", "threads"), "ASME B36.10M Welded and Seamless Wrought Steel Pipe, from memory"},
		{"a cell of it that was read", rows[0].SourceIn("B36.10", "width_in"), "ASME B36.10M Welded and Seamless Wrought Steel Pipe"},
		{"several publications", rows[0].Source(), "ASME B36.10M Welded and Seamless Wrought Steel Pipe; ASME B1.20.1 Pipe Threads, General Purpose (Inch), Table 2"},
		{"a row from memory", rows[1].Source(), "ASME B16.3 Malleable Iron Threaded Fittings, Class 150, from memory"},
		{"a cell of it that was read", rows[1].Source("width_in"), "ASME B16.3 Malleable Iron Threaded Fittings, Class 150"},
		{"cells of both kinds", rows[1].Source("width_in", "threads"), "ASME B16.3 Malleable Iron Threaded Fittings, Class 150, from memory"},
		{"no publication", table.Cite("", true), "no source, from memory"},
		{"a key without a title", table.Cite("X-9", false), "X-9"},
		{"common practice", table.Cite("TRADE", false), "common practice, no source"},
		{"the zero source", table.Source{}, "no source"},
		{"one publication named twice", table.Cite("B16.3+B16.3", false), "ASME B16.3 Malleable Iron Threaded Fittings, Class 150"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.got.String() != c.want {
				t.Errorf("%q, want %q", c.got, c.want)
			}
		})
	}
}

func TestARowMustSayWhereItComesFrom(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"good", "v,source,how\n1,B16.3,read\n", ""},
		{"no how", "v,source,how\n1,B16.3,\n", "line 2: how"},
		{"no source", "v,source,how\n1,,read\n", `source ""`},
		{"unknown source", "v,source,how\n1,B16.3+HEARSAY,read\n", `source "HEARSAY"`},
		{"excepts a column that is not there", "v,read_columns,source,how\n1,w,B16.3,memory\n", `column "w"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			err := table.Read(c.text)[0].Sourced()
			if c.want == "" {
				if err != nil {
					t.Error(err)
				}
				return
			}
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want %q in it", err, c.want)
			}
		})
	}
}

func TestEveryKeyHasATitle(t *testing.T) {
	keys := table.Keys()
	if len(keys) < 80 {
		t.Errorf("%d keys", len(keys))
	}
	for _, k := range keys {
		if !table.Known(k) || strings.Contains(k, "+") || table.Cite(k, false).Title == k {
			t.Errorf("key %q has no title of its own", k)
		}
	}
	if table.Known("HEARSAY") {
		t.Error("HEARSAY is no publication")
	}
}
