// Which figures are set as true fractions.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import ts from "typescript";

const source = readFileSync(new URL("../ui/fractions.ts", import.meta.url), "utf8");
const { outputText } = ts.transpileModule(source, { compilerOptions: { target: "ES2022", module: "ESNext" } });
const { stretches } = await import(`data:text/javascript,${encodeURIComponent(outputText)}`);

const fractions = (text) => stretches(text).filter((s) => "part" in s).map((s) => `${s.whole} ${s.part}`.trim());

test("PartsOfAnInchAreFractions", () => {
  assert.deepEqual(fractions("14 3/8 in"), ["14 3/8"]);
  assert.deepEqual(fractions("wood screw 12 × 1 1/4 in"), ["1 1/4"]);
  assert.deepEqual(fractions("42 × 19 × 1 1/16 in, 3/4 round, 63/64"), ["1 1/16", "3/4", "63/64"]);
});

test("QuartersOfRoughBoardsStayAsTheYardWritesThem", () => {
  for (const rough of ["Hard maple 4/4", "Hard maple 5/4", "6/4 white oak", "8/4", "10/4 x 6 in", "12/4", "16/4"]) {
    assert.deepEqual(fractions(rough), [], rough);
  }
  assert.deepEqual(fractions("5/4 x 6 3/4 x 118"), ["6 3/4"]);
});

test("DatesAndRatiosAreNoFractions", () => {
  for (const words of ["1/4/2026", "3/5", "1/2.5", "L/600", "0.5/8"]) assert.deepEqual(fractions(words), [], words);
});

test("NoSignOfTheTextIsLost", () => {
  for (const words of ["", "none", "1/2", "a 1/2 b 3 5/8", "8/4 at 1 3/8 in", "12 5/4", "3/8-16"]) {
    const again = stretches(words).map((s) => ("words" in s ? s.words : s.whole === "" ? s.part : `${s.whole} ${s.part}`)).join("");
    assert.equal(again, words);
  }
});
