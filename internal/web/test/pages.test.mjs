// Every page of every piece, narrow, middling and wide, light and dark.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { begin, open, settled, stages, visit } from "./session.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const widths = [360, 1024, 2560];
const themes = ["light", "dark"];

let session;
before(async () => { session = await begin(); });
after(() => session.end());

async function violations(page) {
  // Evaluated from outside: the page's own policy lets no text become a script.
  if (await page.evaluate(() => typeof window.axe === "undefined")) await page.evaluate(axe);
  return page.evaluate(async () => {
    const result = await window.axe.run(document, { iframes: false, resultTypes: ["violations"] });
    return result.violations.map((v) => `${v.id}: ${v.nodes.slice(0, 3).map((n) => n.target.join(" ")).join("; ")} (${v.nodes.length})`);
  });
}

async function holds(page, where) {
  await visit(session, page, where);
  for (const width of widths) {
    await page.setViewportSize({ width, height: 900 });
    await settled(page);
    const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    assert.ok(over <= 0, `${where} at ${width} px is ${over} px too wide`);
    for (const colorScheme of themes) {
      await page.emulateMedia({ colorScheme });
      await settled(page);
      assert.deepEqual(await violations(page), [], `${where} at ${width} px, ${colorScheme}`);
    }
  }
}

test("EveryPageOfEveryPieceIsCleanAtEveryWidthAndInBothLights", async () => {
  const pieces = await session.pieces();
  assert.ok(pieces.length >= 4, `${pieces.length} pieces, want at least 4`);
  const { page, wrong, close } = await open(session);
  for (const { id } of pieces) {
    for (const stage of stages) await holds(page, `/pieces/${id}/${stage}`);
  }
  assert.deepEqual(wrong, []);
  await close();
});

test("TheShopsOwnPagesAreCleanAtEveryWidthAndInBothLights", async () => {
  const { page, wrong, close } = await open(session);
  for (const where of ["/", "/answers", "/answers/sag", "/answers/pipe-cut", "/no-such-page"]) await holds(page, where);
  assert.deepEqual(wrong, []);
  await close();
});

test("TheBookReadByItselfIsCleanAtEveryWidthAndInBothLights", async () => {
  const { page, wrong, close } = await open(session);
  for (const { id } of await session.pieces()) await holds(page, `/api/pieces/${id}/book.html`);
  assert.deepEqual(wrong, []);
  await close();
});

test("EachPageHasItsOwnTitle", async () => {
  const [{ id }] = await session.pieces();
  const { page, close } = await open(session);
  const titles = new Set();
  for (const where of ["/", "/answers", "/answers/sag", ...stages.map((s) => `/pieces/${id}/${s}`)]) {
    await visit(session, page, where);
    titles.add(await page.title());
  }
  assert.equal(titles.size, 3 + stages.length);
  await close();
});
