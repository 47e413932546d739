package wire_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rodwright/cut"
	"rodwright/cut/wire"
	"rodwright/length"
)

const inch = length.Inch

const stickText = `{"unit": "mm", "kerf": 2, "trim": 5, "useful": 300,
 "stock": [{"tag": "S1", "length": 6400, "count": null, "price": 40}],
 "parts": [{"tag": "C1", "length": 317.6, "count": 4}]}`

const panelText = `{"unit": "in", "kerf": 0.125, "jointing": 0.0625, "end_trim": 1, "panel_edge_trim": 0.25, "board_edge_trim": 0.25, "salvage": 0.5, "min_tail": 24, "strip": {"least": 2, "most": 6},
 "boards": [{"tag": "B1", "length": 103, "width": 7.25, "thickness": 1.0625, "rough_edges": 1, "price": 38, "mate": "log-a", "ring": "up",
             "defects": [{"kind": "knot", "face": "both", "x": 31, "y": 3.5, "length": 1.5, "width": 1.25}]}],
 "panels": [{"tag": "A1", "length": 40, "width": "4 3/4", "count": 1, "show": "clear",
             "keep_out": [{"x": 2, "y": 2, "length": 3, "width": 3}], "mates": true}]}`

const sheetText = `{"unit": "mm", "kerf": 3, "trim": 10, "stages": 3, "useful": [300, 150],
 "sheets": [{"tag": "P1", "length": 2440, "width": 1220, "count": 2, "price": 60, "grain": true, "defects": [{"x": 0, "y": 0, "length": 50, "width": 40}]}],
 "parts": [{"tag": "D1", "length": 600, "width": 400, "count": 3, "turn": false, "value": null}]}`

func TestProblemsAreReadAsTheyAreWritten(t *testing.T) {
	sticks, err := wire.ReadStick("f", []byte(stickText))
	if err != nil {
		t.Fatal(err)
	}
	mm := length.Millimetre
	if diff := cmp.Diff(&cut.StickProblem{
		Unit: length.MM, Kerf: 2 * mm, Trim: 5 * mm, Useful: 300 * mm,
		Stock: []cut.StickStock{{Tag: "S1", Length: 6400 * mm, Count: cut.Any, Price: cut.Priced(40)}},
		Parts: []cut.StickPart{{Tag: "C1", Length: 317_600_000, Count: 4}},
	}, sticks); diff != "" {
		t.Error(diff)
	}
	panels, err := wire.ReadPanel("f", []byte(panelText))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(&cut.PanelProblem{
		Unit: length.In, Kerf: inch / 8, Jointing: inch / 16, EndTrim: inch, PanelEdgeTrim: inch / 4, BoardEdgeTrim: inch / 4,
		Salvage: 0.5, MinTail: 24 * inch, Strip: cut.Span{Least: 2 * inch, Most: 6 * inch},
		Boards: []cut.Board{{
			Tag: "B1", Length: 103 * inch, Width: 29 * inch / 4, Thickness: 17 * inch / 16, RoughEdges: 1, Price: cut.Priced(38),
			Mate: "log-a", Ring: cut.RingUp,
			Defects: []cut.Defect{{Kind: cut.Knot, Face: cut.BothFaces, Rect: cut.Rect{X: 31 * inch, Y: 7 * inch / 2, Length: 3 * inch / 2, Width: 5 * inch / 4}}},
		}},
		Panels: []cut.Panel{{
			Tag: "A1", Length: 40 * inch, Width: 19 * inch / 4, Count: 1, Show: cut.Clear,
			KeepOut: []cut.Rect{{X: 2 * inch, Y: 2 * inch, Length: 3 * inch, Width: 3 * inch}}, Mates: true,
		}},
	}, panels); diff != "" {
		t.Error(diff)
	}
	sheets, err := wire.ReadSheet("f", []byte(sheetText))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(&cut.SheetProblem{
		Unit: length.MM, Kerf: 3 * mm, Trim: 10 * mm, Stages: 3, Useful: [2]length.Length{300 * mm, 150 * mm},
		Sheets: []cut.Sheet{{
			Tag: "P1", Length: 2440 * mm, Width: 1220 * mm, Count: 2, Price: cut.Priced(60), Grain: true,
			Defects: []cut.Rect{{Length: 50 * mm, Width: 40 * mm}},
		}},
		Parts: []cut.SheetPart{{Tag: "D1", Length: 600 * mm, Width: 400 * mm, Count: 3}},
	}, sheets); diff != "" {
		t.Error(diff)
	}
}

func TestLengthsAreExact(t *testing.T) {
	for _, c := range []struct {
		written, unit string
		want          length.Length
	}{
		{"317.6", "mm", 317_600_000},
		{"0.000001", "mm", 1},
		{"3.2e2", "mm", 320_000_000},
		{"317.600000000000023", "mm", 317_600_000},
		{`"14 3/8"`, "in", 14*inch + 3*inch/8},
		{`"14-3/8\""`, "mm", 14*inch + 3*inch/8},
		{`"365 mm"`, "in", 365 * length.Millimetre},
		{"14.375", "in", 14*inch + 3*inch/8},
		{"0.3333333333333333", "in", 8_466_667},
	} {
		text := `{"unit": "` + c.unit + `", "stock": [{"tag": "S1", "length": 900}], "parts": [{"tag": "C1", "length": ` + c.written + `}]}`
		p, err := wire.ReadStick("f", []byte(text))
		if err != nil {
			t.Errorf("%s: %v", c.written, err)
			continue
		}
		if got := p.Parts[0].Length; got != c.want {
			t.Errorf("%s %s is read as %d nm, want %d", c.written, c.unit, got, c.want)
		}
	}
}

// readers read a file of each kind.
func read(kind, name string, text []byte) error {
	switch kind {
	case "stick":
		_, err := wire.ReadStick(name, text)
		return err
	case "panel":
		_, err := wire.ReadPanel(name, text)
		return err
	}
	_, err := wire.ReadSheet(name, text)
	return err
}

// placed returns file, line and column of the last place where at stands in the text; of nothing, its end.
func placed(t *testing.T, text, at string) string {
	t.Helper()
	i := strings.LastIndex(text, at)
	if i < 0 {
		t.Fatalf("%q is not in the text", at)
	}
	lines := strings.Split(text[:i], "\n")
	return fmt.Sprintf("f:%d:%d: ", len(lines), 1+len([]rune(lines[len(lines)-1])))
}

func TestEveryWrongFileIsOneErrorWithItsPlace(t *testing.T) {
	for _, c := range []struct{ name, kind, from, to, at, want string }{
		{"no object", "stick", stickText, `[]`, `[]`, "the file is a list, not an object; write {…}"},
		{"nothing", "stick", stickText, ``, ``, "the text ends where a value is missing"},
		{"cut off", "stick", `"count": 4}]}`, `"count": 4}]`, ``, "a comma or } is missing"},
		{"text behind", "stick", `"count": 4}]}`, `"count": 4}]} x`, `x`, "more text behind the end of the object"},
		{"a comma too many", "stick", `"count": 4}]}`, `"count": 4,}]}`, `}]}`, "a key in quotes is missing"},
		{"no colon", "stick", `"kerf": 2`, `"kerf" 2`, `2, "trim"`, `a colon is missing behind the key "kerf"`},
		{"an open text", "stick", `"S1"`, `"S1`, `length": 6400`, "a comma or } is missing"},
		{"a bad number", "stick", `317.6`, `317.6.1`, `317.6.1`, "317.6.1 is not a number"},
		{"a bad word", "stick", `null`, `nil`, `nil`, "unexpected 'n' where a value is missing"},
		{"a bad escape", "stick", `"C1"`, `"\q"`, `"\q"`, "a text with an escape that can't be read"},
		{"a unit missing", "stick", `"unit": "mm", `, ``, `{"kerf"`, `the key "unit" is missing; write "unit": "mm" or "unit": "in"`},
		{"an unknown unit", "stick", `"mm"`, `"furlong"`, `"furlong"`, `unit is no unit of lengths; write "mm" or "in"`},
		{"a unit that is no text", "stick", `"mm"`, `3`, `3, "kerf"`, "unit is no unit of lengths"},
		{"an unknown key", "stick", `"kerf"`, `"kref"`, `"kref"`, `unknown key "kref"; write "kerf"`},
		{"an unknown key within", "stick", `"price"`, `"prize"`, `"prize"`, `unknown key "prize"; write "price"`},
		{"a key twice", "stick", `"kerf": 2`, `"kerf": 2, "kerf": 3`, `"kerf": 3`, `the key "kerf" stands twice`},
		{"a negative saw cut", "stick", `"kerf": 2`, `"kerf": -2`, `-2`, "kerf must be at least 0 mm, is -2 mm"},
		{"a part without length", "stick", `"length": 317.6, `, ``, `{"tag": "C1"`, "parts[0].length must be more than 0, is 0 mm"},
		{"a negative part", "stick", `317.6`, `-317.6`, `-317.6`, "parts[0].length must be more than 0, is -317.6 mm"},
		{"a length that is none", "stick", `317.6`, `"much"`, `"much"`, `parts[0].length: "much" is not a length`},
		{"a length that is a list", "stick", `317.6`, `[1]`, `[1]`, "parts[0].length is a list; write a length"},
		{"a length beyond reason", "stick", `317.6`, `1e300`, `1e300`, "parts[0].length is more than 1 km"},
		{"half a part", "stick", `"count": 4`, `"count": 1.5`, `1.5`, "parts[0].count is 1.5; write a whole number"},
		{"a negative count", "stick", `"count": 4`, `"count": -1`, `-1`, "parts[0].count can't be negative, is -1"},
		{"a count beyond reason", "stick", `"count": 4`, `"count": 1e99`, `1e99`, "parts[0].count is far too large"},
		{"a count too great", "stick", `"count": 4`, `"count": 10000000`, `10000000`, "parts[0].count must be from 0 to 20000, is 10000000"},
		{"a count that is a text", "stick", `"count": 4`, `"count": "4"`, `"4"`, "parts[0].count is a text; write a whole number"},
		{"a price that is a text", "stick", `"price": 40`, `"price": "40"`, `"40"`, "stock[0].price is a text; write a number"},
		{"a negative price", "stick", `"price": 40`, `"price": -40`, `-40`, "stock[0].price must be from 0 to 1e+09, is -40"},
		{"a part without a tag", "stick", `"tag": "C1", `, ``, `{"length": 317.6`, "parts[0].tag is missing; every piece needs a tag of its own"},
		{"a tag that is a number", "stick", `"C1"`, `1`, `1, "length": 317.6`, "parts[0].tag is a number; write a text in quotes"},
		{"a tag twice", "stick", `"count": 4}]`, `"count": 4}, {"tag": "C1", "length": 3}]`, `"C1", "length": 3}`, `parts[1].tag "C1" stands twice`},
		{"no stock", "stick", `[{"tag": "S1", "length": 6400, "count": null, "price": 40}]`, `[]`, `[],`, "stock must hold at least one piece of stock"},
		{"stock that is no list", "stick", `[{"tag": "S1", "length": 6400, "count": null, "price": 40}]`, `{}`, `{},`, "stock is an object; write a list"},
		{"a board that is no object", "panel", `"mates": true}]`, `"mates": true}, 7]`, `7]}`, "panels[1] is a number, not an object; write {…}"},
		{"a face nobody knows", "panel", `"face": "both"`, `"face": "top"`, `"top"`, `boards[0].defects[0].face "top" is not one of both, good, back`},
		{"a kind nobody knows", "panel", `"kind": "knot"`, `"kind": "branch"`, `"branch"`, `boards[0].defects[0].kind "branch" is not one of knot, split, wane, sap, void`},
		{"a grade nobody knows", "panel", `"clear"`, `"nice"`, `"nice"`, `panels[0].show "nice" is not one of clear, small-knots, character`},
		{"a yes that is no boolean", "panel", `"mates": true`, `"mates": "yes"`, `"yes"`, "panels[0].mates is a text; write true or false"},
		{"three rough edges", "panel", `"rough_edges": 1`, `"rough_edges": 3`, `3, "price"`, "boards[0].rough_edges must be 0, 1 or 2"},
		{"more salvage than worth", "panel", `"salvage": 0.5`, `"salvage": 5`, `5, "min_tail"`, "salvage must be from 0 to 1, is 5"},
		{"strips the wrong way round", "panel", `"least": 2, "most": 6`, `"least": 6, "most": 2`, `2},`, "strip.most must be at least strip.least, 6 in"},
		{"one number for two", "sheet", `[300, 150]`, `300`, `300,`, "useful is a number; write two lengths, such as [300, 150]"},
		{"three numbers for two", "sheet", `[300, 150]`, `[1, 2, 3]`, `[1, 2, 3]`, "useful is a list; write two lengths"},
		{"any number without a value", "sheet", `"count": 3`, `"count": null`, `null, "turn"`, "parts[0].count is null, any number, and the part has no value; write a whole number"},
		{"endless sheets filled for value", "sheet", `"count": 2`, `"count": null`, ``, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := map[string]string{"stick": stickText, "panel": panelText, "sheet": sheetText}[c.kind]
			if !strings.Contains(text, c.from) {
				t.Fatalf("the text to replace is not in the file: %s", c.from)
			}
			text = strings.Replace(text, c.from, c.to, 1)
			err := read(c.kind, "f", []byte(text))
			if c.want == "" {
				if err != nil {
					t.Errorf("refused: %v", err)
				}
				return
			}
			var we *wire.Error
			if want := placed(t, text, c.at) + c.want; !errors.As(err, &we) || !strings.HasPrefix(we.Error(), want) {
				t.Errorf("\n got %v\nwant %s", err, want)
			}
		})
	}
}

func TestAFileThatIsNoTextIsRefused(t *testing.T) {
	for _, text := range []string{"\xff\xfe{}", "{\"unit\": \"m\xffm\"}"} {
		if err := read("stick", "f", []byte(text)); err == nil || !strings.Contains(err.Error(), "no UTF-8") {
			t.Errorf("%q: %v", text, err)
		}
	}
	if err := read("stick", "f", []byte("\ufeff"+stickText)); err != nil {
		t.Errorf("a byte order mark is refused: %v", err)
	}
	if err := read("stick", "f", []byte(strings.Repeat("[", 100_000))); err == nil || !strings.Contains(err.Error(), "nested deeper") {
		t.Errorf("endless brackets: %v", err)
	}
}

// fuzzRead checks that reading and solving never panics, and that what is read can be written down.
func fuzzRead(f *testing.F, kind wire.Kind, seeds ...string) {
	for _, s := range append(seeds, wire.RandomTexts(kind)...) {
		f.Add(s)
	}
	files, err := filepath.Glob("testdata/*.json")
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 4000 {
			return
		}
		err := read(string(kind), "f", []byte(text))
		var we *wire.Error
		if err != nil && (!errors.As(err, &we) || we.Line < 1 || we.Col < 1) {
			t.Errorf("an error without a place: %v", err)
		}
		if err != nil || tooMuch(kind, []byte(text)) {
			return
		}
		solveAndVerify(t, kind, []byte(text))
	})
}

func FuzzReadStick(f *testing.F) { fuzzRead(f, wire.Stick, stickText) }
func FuzzReadPanel(f *testing.F) { fuzzRead(f, wire.Panel, panelText) }
func FuzzReadSheet(f *testing.F) { fuzzRead(f, wire.Sheet, sheetText) }

func FuzzReadAnswer(f *testing.F) {
	for _, s := range []string{stickAnswer(f), `{"cost": 1, "used": [{"stock": "S1", "parts": [], "left": null}]}`} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		a, err := wire.ReadAnswer("f", []byte(text), length.MM)
		var we *wire.Error
		if err != nil && !errors.As(err, &we) {
			t.Errorf("an error without a place: %v", err)
		}
		if err != nil {
			return
		}
		out, err := wire.JSON(a, length.MM, false)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := wire.ReadAnswer("f", out, length.MM); err != nil {
			t.Errorf("what is written can't be read: %v\n%s", err, out)
		}
	})
}
