package wire_test

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"rodwright/cut"
	"rodwright/cut/wire"
)

var texts = map[wire.Kind]string{wire.Stick: stickText, wire.Panel: panelText, wire.Sheet: sheetText}

func run(t testing.TB, kind wire.Kind, text []byte, json bool) []byte {
	t.Helper()
	out, err := wire.Run(context.Background(), kind, wire.File{Name: "f", Text: text}, wire.Options{JSON: json, Limits: cut.Limits{Nodes: 2000}})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func stickAnswer(t testing.TB) string { return string(run(t, wire.Stick, []byte(stickText), true)) }

// tooMuch reports whether a problem is too large for a quick test.
func tooMuch(kind wire.Kind, text []byte) bool {
	n := 0
	switch kind {
	case wire.Stick:
		p, _ := wire.ReadStick("f", text)
		for _, q := range p.Parts {
			n += int(q.Count)
		}
	case wire.Panel:
		p, _ := wire.ReadPanel("f", text)
		for _, q := range p.Panels {
			n += int(q.Count)
		}
	case wire.Sheet:
		p, _ := wire.ReadSheet("f", text)
		for _, q := range p.Parts {
			n += max(int(q.Count), 0)
			if q.Count == cut.Any {
				n += 1000
			}
		}
	}
	return n > 200
}

// solveAndVerify runs a file from beginning to end and checks the answer as it is written.
func solveAndVerify(t *testing.T, kind wire.Kind, text []byte) {
	t.Helper()
	problem := wire.File{Name: "f", Text: text}
	faults, err := wire.Verify(kind, problem, wire.File{Name: "layout", Text: run(t, kind, text, true)})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range faults {
		t.Errorf("%v", f)
	}
}

func TestAWrittenAnswerPassesTheVerifier(t *testing.T) {
	for kind, text := range texts {
		solveAndVerify(t, kind, []byte(text))
		inches := strings.Replace(strings.Replace(text, `"mm"`, `"in"`, 1), `"kerf": 2`, `"kerf": "1 mm"`, 1)
		solveAndVerify(t, kind, []byte(inches))
	}
}

// The keys of the answer, and nothing grouped: one entry for each piece of stock and each part.
func TestTheAnswerHasItsKeys(t *testing.T) {
	var a struct {
		Cost, Bound, Gap *float64
		Proven           *bool
		TookMS           *float64 `json:"took_ms"`
		Waste            map[string]float64
		Used             []struct {
			Stock string
			Parts []struct {
				Tag      string
				At, Size [2]float64
				Turned   *bool
			}
			Left []struct{ At, Size [2]float64 }
		}
		Cuts []struct {
			N       int
			On      string
			Machine string
			Setting float64
			Makes   []string
		}
		NotPlaced []struct{ Tag, Why string } `json:"not_placed"`
	}
	if err := json.Unmarshal([]byte(stickAnswer(t)), &a); err != nil {
		t.Fatal(err)
	}
	if a.Cost == nil || *a.Cost != 40 || a.Bound == nil || a.Gap == nil || a.Proven == nil || !*a.Proven || a.TookMS == nil || a.NotPlaced == nil {
		t.Errorf("heads are missing or wrong: %s", stickAnswer(t))
	}
	for _, key := range []string{"kerf", "trim", "defect", "leftover_useful", "leftover_lost"} {
		if _, ok := a.Waste[key]; !ok {
			t.Errorf("waste without %s", key)
		}
	}
	if len(a.Used) != 1 || len(a.Used[0].Parts) != 4 || a.Used[0].Parts[1].At != [2]float64{324.6, 0} || a.Used[0].Parts[1].Size != [2]float64{317.6, 0} {
		t.Errorf("used %+v", a.Used)
	}
	if len(a.Cuts) != 1 || a.Cuts[0].Machine != "crosscut" || a.Cuts[0].Setting != 317.6 || len(a.Cuts[0].Makes) != 4 {
		t.Errorf("cuts %+v", a.Cuts)
	}
}

func TestAWrongLayoutIsRefusedAndSaysWhy(t *testing.T) {
	problem := wire.File{Name: "f", Text: []byte(stickText)}
	for _, c := range []struct{ from, to, want string }{
		{`"at":[324.6,0]`, `"at":[323.6,0]`, "less than a saw cut apart"},
		{`"cost": 40`, `"cost": 39`, "the cost is 40, said is 39"},
		{`"stock":"S1"`, `"stock":"S2"`, "no stock of the problem"},
		{`"trim":10`, `"trim":11`, "waste"},
	} {
		layout := strings.Replace(stickAnswer(t), c.from, c.to, 1)
		faults, err := wire.Verify(wire.Stick, problem, wire.File{Name: "layout", Text: []byte(layout)})
		if err != nil {
			t.Fatal(err)
		}
		if got := fmt.Sprint(faults); !strings.Contains(got, c.want) {
			t.Errorf("%s: got %s", c.to, got)
		}
	}
}

func TestALayoutThatCanNotBeReadIsAnErrorWithItsPlace(t *testing.T) {
	problem := wire.File{Name: "f", Text: []byte(stickText)}
	for _, c := range []struct{ text, want string }{
		{`{}`, `layout:1:1: the key "cost" is missing`},
		{`{"cost": 1, "used": 3}`, "layout:1:21: used is a number"},
		{`{"cost": 1, "used": [], "cuts": [{"makes": [1]}]}`, "layout:1:45: cuts[0].makes[0] is a number; write a tag in quotes"},
		{`{"cost": 1, "used": [], "boundd": 3}`, `layout:1:25: unknown key "boundd"; write "bound"`},
	} {
		_, err := wire.Verify(wire.Stick, problem, wire.File{Name: "layout", Text: []byte(c.text)})
		if err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("\n got %v\nwant %s", err, c.want)
		}
	}
}

func TestADeadlineIsKeptWithAValidLayout(t *testing.T) {
	var b strings.Builder
	b.WriteString(`{"unit": "mm", "kerf": 2, "trim": 5, "stock": [{"tag": "S1", "length": 6400}, {"tag": "S2", "length": 4000}], "parts": [`)
	for i := range 60 {
		fmt.Fprintf(&b, `{"tag": "C%d", "length": %d, "count": 5},`, i, 300+(i*157)%1700)
	}
	text := []byte(strings.TrimSuffix(b.String(), ",") + "]}")
	start := time.Now()
	out, err := wire.Run(context.Background(), wire.Stick, wire.File{Name: "f", Text: text}, wire.Options{JSON: true, Within: 30 * time.Millisecond, Now: time.Now})
	if err != nil {
		t.Fatal(err)
	}
	if took := time.Since(start); took > time.Second { // far more than the deadline: other work shares the machine
		t.Errorf("took %v", took)
	}
	faults, err := wire.Verify(wire.Stick, wire.File{Name: "f", Text: text}, wire.File{Name: "layout", Text: out})
	if err != nil || len(faults) > 0 {
		t.Errorf("%v %v", err, faults)
	}
}

func TestAListToCutFrom(t *testing.T) {
	got := string(run(t, wire.Stick, []byte(strings.Replace(stickText, `}]}`, `}, {"tag": "C2", "length": 7000}]}`, 1)), false))
	want := `stick 1 (S1): 4 × C1 317.6 mm; left 5111.6 mm
cuts, by setting: 1 setting; no order of these cuts has fewer
  every stick first: square the end: 5 mm off, saw cut and all
  stop at 317.6 mm
    [ ]   1  stick 1: cut 4 × C1; 5116.6 mm is left
  Settings run from the stop to the near side of the blade; the saw cut, 2 mm, comes off what stays. A stop beyond the blade, on the side that stays, is set 2 mm farther.
not placed: C2, longer than any stock (7000 mm; S1 gives 6390 mm)
6400 mm opened: parts 1270.4 mm (20 %), saw cuts 8 mm (0.1 %), ends and edges 10 mm (0.2 %), kept 5111.6 mm (80 %).
cost 40: nothing better is possible
`
	if got != want {
		t.Errorf("got\n%s", got)
	}
	for kind, words := range map[wire.Kind][]string{
		wire.Panel: {"panel A1:", "from board 1 rings up", "fence at", "stop at", "why not fewer boards?", "no layout is better than"},
		wire.Sheet: {"D1 600 mm × 400 mm", "fence at", "its edge", "why not fewer sheets?"},
	} {
		text := string(run(t, kind, []byte(texts[kind]), false))
		for _, w := range words {
			if !strings.Contains(text, w) && !(w == "no layout is better than" && strings.Contains(text, "nothing better")) {
				t.Errorf("%s: %q is not in\n%s", kind, w, text)
			}
		}
	}
}

func TestWhatOneMoreWouldChangeIsToldBelowTheList(t *testing.T) {
	out, err := wire.Run(context.Background(), wire.Stick, wire.File{Name: "f", Text: []byte(stickText)}, wire.Options{OneMore: true})
	if err != nil {
		t.Fatal(err)
	}
	if want := "Nothing is gained by buying one more S1; one that lies there already saves 40.\n"; !strings.HasSuffix(string(out), want) {
		t.Errorf("got\n%s", out)
	}
}

func TestAnUnknownKindIsRefused(t *testing.T) {
	if _, err := wire.Run(context.Background(), "stone", wire.File{}, wire.Options{}); err == nil {
		t.Error("stone is cut")
	}
	if _, err := wire.Verify("stone", wire.File{}, wire.File{}); err == nil {
		t.Error("stone is verified")
	}
}

func ExampleRun() {
	file := wire.File{Name: "rails.json", Text: []byte(`{"unit": "in", "kerf": "1/16", "trim": "1/4",
 "stock": [{"tag": "10 ft", "length": 120, "price": 28}],
 "parts": [{"tag": "C1", "length": "12 1/2", "count": 3}]}`)}
	out, err := wire.Run(context.Background(), wire.Stick, file, wire.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(string(out))
	// Output:
	// stick 1 (10 ft): 3 × C1 12.5 in; left 81.8125 in
	// cuts, by setting: 1 setting; no order of these cuts has fewer
	//   every stick first: square the end: 0.25 in off, saw cut and all
	//   stop at 12.5 in
	//     [ ]   1  stick 1: cut 3 × C1; 82.0625 in is left
	//   Settings run from the stop to the near side of the blade; the saw cut, 0.0625 in, comes off what stays. A stop beyond the blade, on the side that stays, is set 0.0625 in farther.
	// 120 in opened: parts 37.5 in (31 %), saw cuts 0.1875 in (0.2 %), ends and edges 0.5 in (0.4 %), kept 81.8125 in (68 %).
	// why not fewer sticks? 1 stick is the least there can be.
	// cost 28: nothing better is possible
}
