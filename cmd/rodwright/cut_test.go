package main

import (
	"strings"
	"testing"
)

// Small problems of each kind, to be made wrong.
var rightProblems = map[string]string{
	"stick": `{"unit": "mm", "kerf": 2, "stock": [{"tag": "S1", "length": 6400}], "parts": [{"tag": "C1", "length": 300, "count": 4}]}`,
	"panel": `{"unit": "in", "kerf": 0.125, "strip": {"least": 2, "most": 6}, "boards": [{"tag": "B1", "length": 100, "width": 7, "defects": [{"kind": "knot", "face": "both", "x": 3, "y": 2, "length": 1, "width": 1}]}], "panels": [{"tag": "A1", "length": 40, "width": 10, "show": "clear", "keep_out": [{"x": 2, "y": 2, "length": 3, "width": 3}]}]}`,
	"sheet": `{"unit": "mm", "stages": 3, "useful": [300, 150], "sheets": [{"tag": "P1", "length": 2440, "width": 1220, "count": 2, "defects": [{"x": 0, "y": 0, "length": 50, "width": 40}]}], "parts": [{"tag": "D1", "length": 600, "width": 400, "count": 3}]}`,
}

func TestARightProblemIsLaidOut(t *testing.T) {
	for kind, text := range rightProblems {
		if code, _, errs := run(text, "cut", kind, "-"); code != 0 || errs != "" {
			t.Errorf("%s: exit %d, %s", kind, code, errs)
		}
	}
}

// Each wrong document is the right one with a place written otherwise, or where from is empty all of it. The error is
// one line: where it is and what would be right.
func TestEveryWrongProblemIsOneLineWithItsPlace(t *testing.T) {
	for _, c := range []struct{ kind, from, to, want string }{
		{"stick", ``, ``, `1:1: the text ends where a value is missing`},
		{"stick", ``, `[]`, `1:1: the file is a list, not an object; write {…}`},
		{"stick", ``, `"sticks"`, `1:1: the file is a text, not an object; write {…}`},
		{"stick", ``, `{}`, `1:1: the key "unit" is missing; write "unit": "mm" or "unit": "in"`},
		{"stick", ``, `null`, `1:1: the file is null, not an object; write {…}`},
		{"stick", `"unit": "mm"`, `"unit": "cm"`, `1:10: unit is no unit of lengths; write "mm" or "in"`},
		{"stick", `"unit": "mm"`, `"unit": null`, `1:10: unit is no unit of lengths; write "mm" or "in"`},
		{"stick", `"unit": "mm"`, `"unti": "mm"`, `1:2: unknown key "unti"; write "unit"`},
		{"stick", `"kerf": 2`, `"kerf": -1`, `1:24: kerf must be at least 0 mm, is -1 mm`},
		{"stick", `"kerf": 2`, `"kerf": "two"`, `1:24: kerf: "two" is not a length: a number is missing at character 1; write for example 14 3/8 in, 1' 2 3/8" or 365 mm`},
		{"stick", `"kerf": 2`, `"kerf": true`, `1:24: kerf is true or false; write a length, such as 317.6 or "14 3/8"`},
		{"stick", `"kerf": 2`, `"kerf": 1001e3`, `1:24: kerf is more than 1 km`},
		{"stick", `"kerf": 2`, `"trim": -5`, `1:24: trim must be at least 0 mm, is -5 mm`},
		{"stick", `"kerf": 2`, `"useful": {}`, `1:26: useful is an object; write a length, such as 317.6 or "14 3/8"`},
		{"stick", `"kerf": 2`, `"kerf": 2 "trim": 3`, `1:26: a comma or } is missing`},
		{"stick", `"kerf": 2`, `'kerf': 2`, `1:16: a key in quotes is missing`},
		{"stick", `"kerf": 2`, `"kerf": .5`, `1:24: unexpected '.' where a value is missing`},
		{"stick", `"kerf": 2`, `"kerf": 2, "kerf": 2`, `1:27: the key "kerf" stands twice`},
		{"stick", `[{"tag": "S1", "length": 6400}]`, `[]`, `1:36: stock must hold at least one piece of stock`},
		{"stick", `[{"tag": "S1", "length": 6400}]`, `[6400]`, `1:37: stock[0] is a number, not an object; write {…}`},
		{"stick", `[{"tag": "S1", "length": 6400}]`, `6400`, `1:36: stock is a number; write a list [ … ]`},
		{"stick", `"tag": "S1", `, ``, `1:37: stock[0].tag is missing; every piece needs a tag of its own`},
		{"stick", `"tag": "S1"`, `"tag": ""`, `1:45: stock[0].tag is missing; every piece needs a tag of its own`},
		{"stick", `"tag": "S1"`, `"tag": 1`, `1:45: stock[0].tag is a number; write a text in quotes`},
		{"stick", `6400}`, `0}`, `1:61: stock[0].length must be more than 0, is 0 mm`},
		{"stick", `6400}`, `-6400}`, `1:61: stock[0].length must be more than 0, is -6400 mm`},
		{"stick", `6400}`, `"6400 ells"}`, `1:61: stock[0].length: "6400 ells" is not a length: unexpected "e" at character 6; write for example 14 3/8 in, 1' 2 3/8" or 365 mm`},
		{"stick", `6400}`, `6400, "count": -2}`, `1:76: stock[0].count can't be negative, is -2`},
		{"stick", `6400}`, `6400, "count": 2.5}`, `1:76: stock[0].count is 2.5; write a whole number`},
		{"stick", `6400}`, `6400, "count": "many"}`, `1:76: stock[0].count is a text; write a whole number`},
		{"stick", `6400}`, `6400, "price": -4}`, `1:76: stock[0].price must be from 0 to 1e+09, is -4`},
		{"stick", `6400}`, `6400, "price": "4 euro"}`, `1:76: stock[0].price is a text; write a number`},
		{"stick", `6400}`, `6400, "price": 1e12}`, `1:76: stock[0].price must be from 0 to 1e+09, is 1e+12`},
		{"stick", `6400}`, `6400, "prise": 4}`, `1:67: unknown key "prise"; write "price"`},
		{"stick", `6400}`, `6400}, {"tag": "S1", "length": 3000}`, `1:76: stock[1].tag "S1" stands twice; every piece needs a tag of its own`},
		{"stick", `"length": 300, `, ``, `1:79: parts[0].length must be more than 0, is 0 mm`},
		{"stick", `300`, `"12 1/0"`, `1:103: parts[0].length: "12 1/0" is not a length: a fraction needs whole numbers above and below, the lower not zero, at character 5; write for example 14 3/8 in, 1' 2 3/8" or 365 mm`},
		{"stick", `"count": 4`, `"count": 30000`, `1:117: parts[0].count must be from 0 to 20000, is 30000`},
		{"stick", `"count": 4`, `"count": 1e30`, `1:117: parts[0].count is far too large; write a whole number up to 20000`},
		{"stick", `"count": 4`, `"number": 4`, `1:108: unknown key "number"; write one of tag, length, count, bought, making`},
		{"stick", `4}]}`, `4}`, `1:119: a comma or ] is missing`},
		{"stick", `4}]}`, `4}]}}`, `1:121: more text behind the end of the object`},
		{"stick", `"C1"`, `"C1`, `1:93: a comma or } is missing`},
		{"panel", `"least": 2, "most": 6`, `"least": 6, "most": 2`, `1:61: strip.most must be at least strip.least, 6 in`},
		{"panel", `"least": 2, "most": 6`, `"least": -1`, `1:50: strip.least must be at least 0 in, is -1 in`},
		{"panel", `{"least": 2, "most": 6}`, `[2, 6]`, `1:40: strip is a list, not an object; write {…}`},
		{"panel", `"kerf": 0.125`, `"salvage": 1.5`, `1:27: salvage must be from 0 to 1, is 1.5`},
		{"panel", `"kerf": 0.125`, `"salvage": "half"`, `1:27: salvage is a text; write a number`},
		{"panel", `"kerf": 0.125`, `"jointing": -0.1`, `1:28: jointing must be at least 0 in, is -0.1 in`},
		{"panel", `"kerf": 0.125`, `"joint": 0.1`, `1:16: unknown key "joint"; write "jointing"`},
		{"panel", `"knot"`, `"burl"`, `1:138: boards[0].defects[0].kind "burl" is not one of knot, split, wane, sap, void`},
		{"panel", `"both"`, `"front"`, `1:154: boards[0].defects[0].face "front" is not one of both, good, back`},
		{"panel", `"clear"`, `"fair"`, `1:267: panels[0].show "fair" is not one of clear, small-knots, character`},
		{"panel", `"x": 3`, `"x": -3`, `1:167: boards[0].defects[0].x must be at least 0 in, is -3 in`},
		{"panel", `"y": 2, "length": 1`, `"y": 2, "length": 0`, `1:188: boards[0].defects[0].length must be more than 0, is 0 in`},
		{"panel", `"width": 7`, `"width": 7, "rough_edges": 4`, `1:132: boards[0].rough_edges must be 0, 1 or 2`},
		{"panel", `"width": 7`, `"width": 7, "ring": "left"`, `1:125: boards[0].ring "left" is not one of up, down`},
		{"panel", `"width": 7`, `"width": 0`, `1:114: boards[0].width must be more than 0, is 0 in`},
		{"panel", `"width": 7`, `"width": 7, "thickness": -1`, `1:130: boards[0].thickness must be at least 0 in, is -1 in`},
		{"panel", `"x": 2, `, `"x": "a", `, `1:295: panels[0].keep_out[0].x: "a" is not a length: a number is missing at character 1; write for example 14 3/8 in, 1' 2 3/8" or 365 mm`},
		{"panel", `"show": "clear", `, `"show": "clear", "mates": 1, `, `1:285: panels[0].mates is a number; write true or false`},
		{"panel", `"show": "clear", `, `"show": "clear", "count": 0.5, `, `1:285: panels[0].count is 0.5; write a whole number`},
		{"sheet", `"stages": 3`, `"stages": -1`, `1:26: stages can't be negative, is -1`},
		{"sheet", `"stages": 3`, `"stages": "three"`, `1:26: stages is a text; write a whole number`},
		{"sheet", `[300, 150]`, `[300]`, `1:39: useful is a list; write two lengths, such as [300, 150]`},
		{"sheet", `[300, 150]`, `[300, -150]`, `1:45: useful[1] must be at least 0 mm, is -150 mm`},
		{"sheet", `[300, 150]`, `["a", "b"]`, `1:40: useful[0]: "a" is not a length: a number is missing at character 1; write for example 14 3/8 in, 1' 2 3/8" or 365 mm`},
		{"sheet", `"width": 1220`, `"width": 0`, `1:101: sheets[0].width must be more than 0, is 0 mm`},
		{"sheet", `"width": 1220`, `"width": 1220, "grain": "long"`, `1:116: sheets[0].grain is a text; write true or false`},
		{"sheet", `"x": 0, `, `"x": -1, `, `1:137: sheets[0].defects[0].x must be at least 0 mm, is -1 mm`},
		{"sheet", `"count": 3`, `"count": null`, `1:241: parts[0].count is null, any number, and the part has no value; write a whole number`},
		{"sheet", `"count": 3`, `"count": 3, "value": "dear"`, `1:253: parts[0].value is a text; write a number`},
		{"sheet", `"count": 3`, `"count": 3, "value": -1`, `1:253: parts[0].value must be from 0 to 1e+09, is -1`},
		{"sheet", `"count": 3`, `"count": 3, "turn": "yes"`, `1:252: parts[0].turn is a text; write true or false`},
		{"sheet", `"count": 2`, `"count": null, "price": [1]`, `1:131: sheets[0].price is a list; write a number`},
		{"sheet", `"P1"`, `null`, `1:70: sheets[0].tag is missing; every piece needs a tag of its own`},
		{"sheet", `"parts"`, `"part"`, `1:179: unknown key "part"; write "parts"`},
	} {
		text := c.to
		if c.from != "" {
			if text = strings.Replace(rightProblems[c.kind], c.from, c.to, 1); text == rightProblems[c.kind] {
				t.Errorf("%s: %q is not in the document", c.kind, c.from)
			}
		}
		code, out, errs := run(text, "cut", c.kind, "-")
		if want := "error: standard input:" + c.want + "\n"; code != 2 || out != "" || errs != want {
			t.Errorf("%s, %s\n got %d %s %s\nwant %s", c.kind, c.to, code, out, errs, want)
		}
	}
}
