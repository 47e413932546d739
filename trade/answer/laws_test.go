package answer

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/figure"
	"rodwright/trade/answer/quantity"
)

// call runs the verb and returns what it wrote.
func call(args ...string) (code int, out, errs string) {
	var o, e bytes.Buffer
	code = Run(args, &o, &e)
	return code, o.String(), e.String()
}

func TestEveryTopicAnswersItsOwnExampleInTextAndJSON(t *testing.T) {
	for _, topic := range Topics() {
		t.Run(topic.Name, func(t *testing.T) {
			args := append([]string{topic.Name}, topic.Call...)
			code, text, errs := call(args...)
			if code != Done || errs != "" {
				t.Fatalf("exit %d: %s", code, errs)
			}
			code, raw, errs := call(append(args, "--json")...)
			if code != Done || errs != "" {
				t.Fatalf("exit %d: %s", code, errs)
			}
			var a Answer
			if err := json.Unmarshal([]byte(raw), &a); err != nil {
				t.Fatal(err)
			}
			if err := whole(topic, &a, text); err != nil {
				t.Error(err)
			}
			names := make([]string, len(a.Answers))
			for i, r := range a.Answers {
				names[i] = r.Name
			}
			if topic.Name != "bore" && !slices.Equal(names, topic.Answers) {
				t.Errorf("the example answers %v, the topic promises %v", names, topic.Answers)
			}
			if len(a.Because) == 0 {
				t.Error("no formula stands behind the answer")
			}
		})
	}
}

// whole checks that an answer is complete, finite and the same in both forms.
func whole(topic Topic, a *Answer, text string) error {
	if a.Topic != topic.Name || len(a.Answers) == 0 || a.Answers[0].Name != topic.Answers[0] {
		return fmt.Errorf("%s: the main answer is not %s: %+v", topic.Name, topic.Answers[0], a.Answers)
	}
	for _, r := range a.Answers {
		if !slices.Contains(topic.Answers, r.Name) {
			return fmt.Errorf("%s answers %s, which it does not promise", topic.Name, r.Name)
		}
		if math.IsNaN(r.Value.Number) || math.IsInf(r.Value.Number, 0) {
			return fmt.Errorf("%s is %v", r.Name, r.Value.Number)
		}
		if r.Shown == "" || !strings.Contains(text, r.Shown) {
			return fmt.Errorf("%s is shown as %q, which the text does not hold:\n%s", r.Name, r.Shown, text)
		}
		if exact := precise(r.Value.Number, r.Unit); r.Unit != figure.Text && !strings.Contains(text, exact) {
			return fmt.Errorf("%s is %s in JSON, which the text does not hold:\n%s", r.Name, exact, text)
		}
	}
	for _, b := range a.Because {
		if b.Formula == "" || b.Source == "" {
			return fmt.Errorf("a formula without text or source: %+v", b)
		}
	}
	for _, bad := range []string{"NaN", "Inf", "%!", "<nil>"} {
		if strings.Contains(text, bad) {
			return fmt.Errorf("the text holds %s:\n%s", bad, text)
		}
	}
	return nil
}

// samples are values of each kind that a maker might type, fair and foul.
var samples = [...][]string{
	quantity.Length:      {"20 1/4 in", "3 in", "1/16 in", "900 mm", "2 m", "0 in", "40 ft", "1/1000 in"},
	quantity.Rough:       {"4/4", "8/4", "5/4", "1 in", "30 mm", "12/4"},
	quantity.Mass:        {"80 lb", "36 kg", "1 g"},
	quantity.Force:       {"80 lb", "350 N", "0 N", "2 kN"},
	quantity.Pressure:    {"200 psi", "1.58e6 psi", "12 GPa", "1 MPa"},
	quantity.Temperature: {"70 F", "21 C", "30 F", "-40 C"},
	quantity.Volume:      {"1 qt"},
	quantity.Area:        {"17 sqft", "1.6 m2", "4 in x 2 in", "1 mm2"},
	quantity.Density:     {"1100 kg/m3", "1.1 g/ml"},
	quantity.Speed:       {"1 m/s"},
	quantity.Coverage:    {"12 m2/L", "125 sqft/qt"},
	quantity.Spread:      {"200 g/m2"},
	quantity.Percent:     {"0 %", "8 %", "30%", "60%", "100 %", "12.5%"},
	quantity.Money:       {"420.50", "0"},
	quantity.Count:       {"1", "2", "3", "4", "12"},
	quantity.Ratio:       {"0", "0.1", "1", "10 %", "2"},
	quantity.Mix:         {"2:1", "1:1", "100:45"},
	quantity.Time:        {"24 h"},
	quantity.Gauge:       {"10", "#8", "4", "24", "0"},
	quantity.Amount:      {"20 bf", "12", "14 ft", "3 m2"},
	quantity.Inertia:     {"0.037 in4", "15400 mm4", "1.5 cm4", "1 mm4"},
}

// drawn draws a call of a topic: mostly sound, with keys left out and odd values now and then.
func drawn(r *rapid.T, topic Topic) map[string]string {
	given := map[string]string{}
	for _, k := range topic.Keys {
		if k.Optional && rapid.Bool().Draw(r, "without "+k.Name) {
			continue
		}
		switch {
		case len(k.Choices) > 0:
			given[k.Name] = rapid.SampledFrom(k.Choices).Draw(r, k.Name)
		case k.Name == "wood":
			given[k.Name] = rapid.SampledFrom([]string{"white-oak", "balsa", "redwood", "teak", "black-walnut", "aspen"}).Draw(r, k.Name)
		case k.Name == "pipe":
			given[k.Name] = rapid.SampledFrom([]string{"3/4", "1/8", "1", "2", "DN20", "DN50", "DN6"}).Draw(r, k.Name)
		default:
			given[k.Name] = rapid.SampledFrom(samples[k.Kind]).Draw(r, k.Name)
		}
	}
	return given
}

func TestAnyCallIsAnsweredWholeOrRefusedByKey(t *testing.T) {
	answered := map[string]int{}
	rapid.Check(t, func(r *rapid.T) {
		topic := Topics()[rapid.IntRange(0, len(Topics())-1).Draw(r, "topic")]
		words := drawn(r, topic)
		a, err := Ask(topic.Name, words)
		if err != nil {
			var e *Error
			if !errors.As(err, &e) || e.Topic != topic.Name || e.Key == "" {
				r.Fatalf("the error names no key: %#v", err)
			}
			if _, ok := topic.Key(e.Key); !ok {
				r.Fatalf("the error names %q, which is no key of %s", e.Key, topic.Name)
			}
			return
		}
		answered[topic.Name]++
		var text bytes.Buffer
		if err := a.WriteText(&text); err != nil {
			r.Fatal(err)
		}
		if err := whole(topic, a, text.String()); err != nil {
			r.Fatal(err)
		}
		raw, err := json.Marshal(a)
		if err != nil {
			r.Fatal(err)
		}
		var back Answer
		if err := json.Unmarshal(raw, &back); err != nil {
			r.Fatal(err)
		}
		for i, was := range a.Answers {
			if now := back.Answers[i]; now.Name != was.Name || now.Value != was.Value || now.Unit != was.Unit || now.Shown != was.Shown {
				r.Fatalf("%+v became %+v", was, now)
			}
		}
		again, err := json.Marshal(&back)
		if err != nil || !bytes.Equal(again, raw) {
			r.Fatalf("%s became %s, %v", raw, again, err)
		}
	})
	t.Log(answered)
}

func TestTheSameQuestionHasTheSameAnswerInEitherSystemOfUnits(t *testing.T) {
	for _, c := range []struct{ topic, inch, metric string }{
		{"movement", "wood=red-oak|width=20 in|from_mc=8%|to_mc=10%", "wood=red-oak|width=508 mm|from_mc=8%|to_mc=10%"},
		{"emc", "temp=70F|rh=45%", "temp=21.1111111111111 C|rh=45%"},
		{"tip", "weight=100 lb|centre_height=20 in|base_depth=12 in|push_height=40 in", "weight=444.82216152605 N|centre_height=508 mm|base_depth=30.48 cm|push_height=1.016 m"},
		{"resin", "area=10 sqft|depth=1/4 in", "area=0.9290304 m2|depth=6.35 mm"},
		{"plate", "modulus=1.5e6 psi|length=24 in|width=20 in|thickness=3/4 in|load=80 lb", "modulus=10.342135939752541 GPa|length=609.6 mm|width=508 mm|thickness=19.05 mm|load=355.85772922084004 N"},
		{"portal", "modulus=29e6 psi|inertia=0.1 in4|height=30 in|width=20 in|push=20 lbf", "modulus=199.94796150188247 GPa|inertia=41623.14256 mm4|height=762 mm|width=508 mm|push=88.96443230521 N"},
		{"finish", "area=10 sqft|coats=2|coverage=500 sqft/gal", "area=0.9290304 m2|coats=2|coverage=12.271193373555583 m2/L"},
	} {
		a, b := asked(t, c.topic, c.inch), asked(t, c.topic, c.metric)
		for i := range a.Answers {
			if x, y := a.Answers[i].Value.Number, b.Answers[i].Value.Number; math.Abs(x-y) > 1e-9*math.Abs(x) {
				t.Errorf("%s: %s is %v in inches, %v in millimetres", c.topic, a.Answers[i].Name, x, y)
			}
			if strings.HasSuffix(b.Answers[i].Shown, " in") || strings.HasSuffix(a.Answers[i].Shown, " mm") {
				t.Errorf("%s: shown as %s and %s", c.topic, a.Answers[i].Shown, b.Answers[i].Shown)
			}
		}
	}
}

func FuzzRun(f *testing.F) {
	for _, topic := range Topics() {
		f.Add(topic.Name + "|" + strings.Join(topic.Call, "|"))
		f.Add(topic.Name + "|--json|" + strings.Join(topic.Call, "|"))
		f.Add(topic.Name + "|--help")
	}
	for _, s := range []string{"", "--json", "-h", "emc|temp=1e99F|rh=45%", "=|=", "emc|=", "loops|pipes=99999|joints=1|groups=1", "board-feet|thickness=1/4|width=1e-9 in|length=1 in|count=1000"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, line string) {
		code, out, errs := call(strings.Split(line, "|")...)
		switch code {
		case Done:
			if out == "" || errs != "" {
				t.Fatalf("done, but wrote %q and %q", out, errs)
			}
			if strings.Contains(out, "NaN") || strings.Contains(out, "Inf") {
				t.Fatalf("%s", out)
			}
			if strings.Contains("|"+line+"|", "|--json|") && !json.Valid([]byte(out)) {
				t.Fatalf("no JSON: %s", out)
			}
		case BadInput:
			if out != "" || !strings.HasPrefix(errs, "error: ") {
				t.Fatalf("refused, but wrote %q and %q", out, errs)
			}
		default:
			t.Fatalf("exit %d: %s", code, errs)
		}
	})
}
