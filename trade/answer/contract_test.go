package answer

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rodwright/figure"
)

// promised are the topics with their keys, optional ones in brackets, and their answers with their units,
// as they are published: a name that stands here keeps its meaning. More may be added.
const promised = `
emc: temp rh → mc percent
movement: wood width [from_mc] [to_mc] [from_rh] [to_rh] [temp] [cut] → change mm, from_mc percent, to_mc percent
slot: wood spacing low_rh high_rh temp build_mc shank → hole mm, change_dry mm, change_wet mm
notch: wood distance low_rh high_rh temp build_mc band gap post → inner mm, outer mm, opening mm
cup: wood width [ring_radius] [from_mc] [to_mc] [from_rh] [to_rh] [temp] [face_difference] [thickness] → depth mm
board-feet: thickness width length [count] [tally] → boardfeet boardfeet, nhla boardfeet, volume boardfeet
waste: net [waste] [added] → buy boardfeet, share percent
pieces: stock part kerf [start] → count count, left mm, next_short mm
weight: wood length width thickness [mc] [count] → mass kg
pipe-weight: pipe length → mass kg
pipe-cut: pipe between end_a end_b → cut mm, take_out_a mm, take_out_b mm, loosest mm, tightest mm
nipple: pipe faces → stock mm, exact mm, shorter mm, longer mm, moves mm
pipe-beam: pipe span [load] [yield] [safety] [ends] → allowed N, sag mm, yields N
thread: pipe [turns] → pitch mm, engagement mm, hand_engagement mm, threads_per_inch count, band mm
loops: pipes joints groups → unions count
level: pipe a b c d → rock mm, shorten text, turns count
bore: pipe [through] [clearance] → bit mm, needs mm
sag: [wood] [modulus] span width thickness load [spread] [ends] [lasting] → sag mm, limit_ratio ratio, lasting_sag mm
plate: [wood] [modulus] [poisson] length width thickness [pressure] [load] [edges] → sag mm
portal: [pipe] [modulus] [inertia] height width push [feet] → sway mm
tip: weight centre_height base_depth [caster_offset] [push_height] [edge] → angle deg, push N, edge_load N
threshold: centre_height centre_behind [wheel] [step] → speed m/s, step_push ratio
casters: total count [ex] [ey] → each kg, rigid kg
screw: wood [gauge] [diameter] thread_in [grain] [count] → ultimate N, design N
pilot: gauge wood → pilot mm
drill: thickness saw_depth → sides count
clamps: length thickness [joints] [wood] [pressure] clamp_force [pad] [edge_strip] → count count, spacing mm, force N
adhesive: length thickness joints spread → mass kg
resin: area depth [count] [pour_depth] [shape] [ratio] [density] [spare] → volume ml, mass kg, pours count, part_a ml, part_b ml
finish: area coats coverage [spare] → volume ml
strips: blank_width board_width rough_edges kerf jointing → count count, strip_width mm
thickness: rough [surfaced] [bow] [twist] wanted → left mm, next text
fits: space size [clearance] → left mm, yes count
stand-up: length width → needed mm
cut-down: made wanted [keep] → off_left mm, off_right mm
margin: cost [margin] [markup] → price money, margin percent, markup percent
`

func TestTopicsKeepTheKeysAnswersAndUnitsThatArePromised(t *testing.T) {
	lines := strings.Split(strings.TrimSpace(promised), "\n")
	for _, line := range lines {
		name, rest, _ := strings.Cut(line, ": ")
		keys, answers, _ := strings.Cut(rest, " → ")
		t.Run(name, func(t *testing.T) {
			topic, err := Lookup(name)
			if err != nil {
				t.Fatal(err)
			}
			for _, k := range strings.Fields(keys) {
				key, ok := topic.Key(strings.Trim(k, "[]"))
				if !ok || key.Optional != strings.HasPrefix(k, "[") {
					t.Errorf("key %s: there %v, optional %v", k, ok, key.Optional)
				}
			}
			if want, got := len(strings.Fields(keys)), len(topic.Keys); got != want {
				t.Errorf("%d keys, want %d", got, want)
			}
			promiseAnswers(t, topic, strings.Split(answers, ", "))
		})
	}
	if len(lines) != len(Topics()) {
		t.Errorf("%d topics, %d are promised", len(Topics()), len(lines))
	}
}

func promiseAnswers(t *testing.T, topic Topic, want []string) {
	t.Helper()
	words, err := Pairs(topic.Call)
	if err != nil {
		t.Fatal(err)
	}
	a, err := Ask(topic.Name, words)
	if err != nil {
		t.Fatal(err)
	}
	for i, w := range want {
		name, unit, _ := strings.Cut(w, " ")
		if i >= len(a.Answers) || a.Answers[i].Name != name || a.Answers[i].Unit != figure.Unit(unit) {
			t.Errorf("answer %d is not %s: %+v", i+1, w, a.Answers)
		}
	}
}

// The defaults of listed choices are the first ones, as the topics promise.
func TestOfListedChoicesTheFirstIsTheDefault(t *testing.T) {
	want := map[string]string{
		"movement cut": "flat", "board-feet tally": "retail", "pipe-beam ends": "resting", "bore through": "pipe", "sag spread": "even",
		"sag ends": "resting", "sag lasting": "dry", "plate edges": "resting", "plate poisson": "0.3", "portal feet": "hinged", "screw grain": "side", "cut-down keep": "left",
		"cup ring_radius": "4 in", "bore clearance": "1/32 in",
	}
	for name, first := range want {
		topic, key, _ := strings.Cut(name, " ")
		tp, err := Lookup(topic)
		if err != nil {
			t.Fatal(err)
		}
		k, _ := tp.Key(key)
		if k.Default != first || len(k.Choices) > 0 && k.Choices[0] != first {
			t.Errorf("%s: default %q of %v, want %q", name, k.Default, k.Choices, first)
		}
	}
}

func TestABoundedKeyTakesItsOwnExampleAndDefault(t *testing.T) {
	for _, topic := range Topics() {
		for _, k := range topic.Keys {
			for _, text := range []string{k.Example, k.Default} {
				if text == "" { // no default
					continue
				}
				if _, err := k.read(text); err != nil {
					t.Errorf("%s: %s: %v", topic.Name, k.Name, err)
				}
			}
			if k.Means == "" || k.Takes() == "" || k.unit() == "" {
				t.Errorf("%s: %s does not say what it is", topic.Name, k.Name)
			}
		}
	}
}

func TestJSONHasTheKeysThatProgramsRead(t *testing.T) {
	code, out, errs := call("movement", "wood=white-oak", "width=508 mm", "from_mc=8%", "to_mc=10%", "--json")
	if code != Done {
		t.Fatal(errs)
	}
	var got map[string]any
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err)
	}
	want := map[string]any{
		"topic": "movement",
		"answers": []any{
			map[string]any{"name": "change", "value": 508 * 0.00365 * 2, "unit": "mm", "shown": "3.7 mm"},
			map[string]any{"name": "from_mc", "value": 8.0, "unit": "percent", "shown": "8 %"},
			map[string]any{"name": "to_mc", "value": 10.0, "unit": "percent", "shown": "10 %"},
		},
		"because": []any{map[string]any{
			"formula": "ΔD = D·C·(MC2 − MC1)", "inputs": map[string]any{"D": "508 mm", "C": "0.00365", "MC1": "8 %", "MC2": "10 %"},
			"source": got["because"].([]any)[0].(map[string]any)["source"], "range": "6 to 14 % MC",
		}},
		"cautions": got["cautions"], "assumed": []any{"flat-sawn"},
	}
	near := cmp.Comparer(func(a, b float64) bool { return a-b < 1e-12 && b-a < 1e-12 })
	if d := cmp.Diff(want, got, near); d != "" {
		t.Error(d)
	}
	if source := got["because"].([]any)[0].(map[string]any)["source"].(string); !strings.Contains(source, "eq. 13-2") {
		t.Errorf("the source is %q", source)
	}
}

func TestTheListNamesEveryTopicItsKeysAndAnExample(t *testing.T) {
	code, out, errs := call()
	if code != Done {
		t.Fatal(errs)
	}
	code, raw, errs := call("--json")
	if code != Done {
		t.Fatal(errs)
	}
	var all []listed
	if err := json.Unmarshal([]byte(raw), &all); err != nil {
		t.Fatal(err)
	}
	for i, topic := range Topics() {
		for _, want := range append(topic.keyNames(), "\n"+topic.Name+": ", topic.call()) {
			if !strings.Contains(out, want) {
				t.Errorf("the list does not hold %q", want)
			}
		}
		if all[i].Topic != topic.Name || len(all[i].Keys) != len(topic.Keys) || len(all[i].Example) == 0 {
			t.Errorf("in JSON %s is %+v", topic.Name, all[i])
		}
	}
}

func TestHelpOfATopicSaysWhatEachKeyIs(t *testing.T) {
	for _, topic := range Topics() {
		code, out, errs := call(topic.Name, "--help")
		if code != Done {
			t.Fatal(errs)
		}
		for _, k := range topic.Keys {
			if !strings.Contains(out, "  "+k.Name+": "+k.Means) {
				t.Errorf("%s --help does not explain %s", topic.Name, k.Name)
			}
		}
		for _, r := range topic.Rules {
			if !strings.Contains(out, r.String()) {
				t.Errorf("%s --help does not say %q", topic.Name, r)
			}
		}
	}
}

func TestWorkThatCanHurtCarriesACaution(t *testing.T) {
	for topic, part := range map[string]string{
		"resin": "sensitise", "finish": "rags", "pieces": "push sticks", "strips": "push sticks", "cut-down": "push sticks", "thickness": "push blocks",
		"pipe-cut": "gloves", "drill": "eye protection", "pilot": "eye protection", "bore": "no gloves at the drill", "clamps": "gloves", "adhesive": "gloves",
		"tip": "anchor", "threshold": "walk", "casters": "brakes", "pipe-beam": "nobody stands", "portal": "brace it", "plate": "it will show", "level": "two people", "stand-up": "two people",
	} {
		tp, err := Lookup(topic)
		if err != nil {
			t.Fatal(err)
		}
		if a := asked(t, topic, strings.Join(tp.Call, "|")); !slices.ContainsFunc(a.Cautions, func(c string) bool { return strings.Contains(c, part) }) {
			t.Errorf("%s: no caution of %q says %q", topic, a.Cautions, part)
		}
	}
}
