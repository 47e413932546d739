package dxf_test

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"rodwright/draw"
	"rodwright/draw/dxf"
	"rodwright/length"
)

// group is a code and its value, as the format's lines come in pairs.
type group struct {
	code  int
	value string
}

// record is an entity, or an entry of a table: all groups from one code 0 to the next.
type record struct {
	kind   string
	groups []group
}

// fatal is what a test and a property check share.
type fatal interface {
	Helper()
	Fatalf(format string, args ...any)
}

// written writes a drawing and reads it back as sections of records.
func written(t fatal, d *draw.Drawing) map[string][]record {
	t.Helper()
	var b bytes.Buffer
	if err := dxf.Write(&b, d); err != nil {
		t.Fatalf("%v", err)
	}
	lines := strings.Split(strings.TrimSuffix(b.String(), "\n"), "\n")
	if len(lines)%2 != 0 {
		t.Fatalf("%d lines make no pairs", len(lines))
	}
	sections, section := map[string][]record{}, ""
	for i := 0; i < len(lines); i += 2 {
		code, err := strconv.Atoi(lines[i])
		if err != nil || !ascii(lines[i+1]) {
			t.Fatalf("lines %d and %d are no group: %q, %q", i+1, i+2, lines[i], lines[i+1])
		}
		g := group{code, lines[i+1]}
		switch rs := sections[section]; {
		case g.code == 0:
			sections[section] = append(rs, record{kind: g.value})
		case g.code == 2 && len(rs) > 0 && rs[len(rs)-1].kind == "SECTION":
			section = g.value
		case len(rs) > 0:
			rs[len(rs)-1].groups = append(rs[len(rs)-1].groups, g)
		}
	}
	return sections
}

func ascii(s string) bool {
	for _, r := range s {
		if r < ' ' || r > '~' {
			return false
		}
	}
	return true
}

// text returns the value of the first group with a code, or "".
func (r record) text(code int) string {
	for _, g := range r.groups {
		if g.code == code {
			return g.value
		}
	}
	return ""
}

func (r record) real(t fatal, code int) float64 {
	t.Helper()
	if r.text(code) == "" {
		return 0
	}
	v, err := strconv.ParseFloat(r.text(code), 64)
	if err != nil {
		t.Fatalf("group %d of %v: %v", code, r, err)
	}
	return v
}

// size reads a length to the nanometre.
func (r record) size(t fatal, code int) length.Length {
	t.Helper()
	l, err := length.Parse(r.text(code), length.MM)
	if err != nil {
		t.Fatalf("group %d of %v: %v", code, r, err)
	}
	return l
}

func (r record) point(t fatal, code int) draw.Point {
	t.Helper()
	return draw.Point{X: r.size(t, code), Y: r.size(t, code+10)}
}

// outlines returns the closed polylines of a file with their layers.
func outlines(t fatal, entities []record) (out []draw.Path, layers []string) {
	t.Helper()
	open := false
	for _, r := range entities {
		switch r.kind {
		case "POLYLINE":
			if r.text(70) != "1" || r.text(66) != "1" {
				t.Fatalf("%v is not closed or has no vertices", r)
			}
			out, layers, open = append(out, nil), append(layers, r.text(8)), true
		case "VERTEX":
			if !open {
				t.Fatalf("%v belongs to no outline", r)
			}
			last := len(out) - 1
			out[last] = append(out[last], draw.Vertex{Point: r.point(t, 10), Bulge: r.real(t, 42)})
		case "SEQEND":
			open = false
		}
	}
	return out, layers
}

// entries returns the names of a table's entries.
func entries(tables []record, kind string) (out []string) {
	for _, r := range tables {
		if r.kind == kind && r.text(2) != "" {
			out = append(out, r.text(2))
		}
	}
	return out
}

func TestTheReaderOfTheTestsReadsASmallFile(t *testing.T) {
	s := written(t, &draw.Drawing{ID: "a", Per: 1, Marks: []draw.Mark{draw.Line{Pen: draw.Saw, B: draw.Point{X: 1, Y: -1}}}})
	got := fmt.Sprint(s["ENTITIES"])
	want := "[{LINE [{8 saw} {10 0.000000} {20 0.000000} {11 0.000001} {21 -0.000001}]} {ENDSEC []} {EOF []}]"
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}
