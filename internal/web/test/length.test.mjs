// Lengths as the page prints them.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import ts from "typescript";

const source = readFileSync(new URL("../ui/length.ts", import.meta.url), "utf8");
const { outputText } = ts.transpileModule(source, { compilerOptions: { target: "ES2022", module: "ESNext" } });
const { across, bare, fineness, text } = await import(`data:text/javascript,${encodeURIComponent(outputText)}`);

test("AnInchIsExactly25Point4Millimetres", () => {
  // International yard and pound agreement, 1959: 1 in = 25.4 mm exactly.
  assert.equal(text(25.4, fineness("1/16")), "1 in");
  assert.equal(text(25.4 * 14 + 25.4 * 0.375, fineness("1/16")), "14 3/8 in");
});

test("FractionsStandInLowestTerms", () => {
  for (const [mm, want] of [[1.5875, "1/16"], [3.175, "1/8"], [6.35, "1/4"], [12.7, "1/2"], [19.05, "3/4"], [0, "0"], [304.8, "12"], [-9.525, "-3/8"]]) {
    assert.equal(bare(mm, fineness("1/16")), want);
  }
});

test("HalvesGoToTheEvenStep", () => {
  assert.equal(bare(0.5, fineness("1 mm")), "0");
  assert.equal(bare(1.5, fineness("1 mm")), "2");
  assert.equal(bare(25.4 / 32, fineness("1/16")), "0");
  assert.equal(bare((25.4 * 3) / 32, fineness("1/16")), "1/8");
});

test("ASizeNamesItsUnitOnce", () => {
  assert.equal(across([1066.8, 482.6, 26.9875], fineness("1/16")), "42 × 19 × 1 1/16 in");
  assert.equal(across([900, 220.5], fineness("0.5 mm")), "900 × 220.5 mm");
});

test("AnUnknownFinenessIsRefused", () => {
  assert.throws(() => fineness("fine"), /one of 1\/16/);
});
