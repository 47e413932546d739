// Typing a size: what moves is told before anything is stored, and it can be put back.

import assert from "node:assert/strict";
import { after, before, beforeEach, afterEach, test } from "node:test";
import { begin, open, settled, visit } from "./session.mjs";

let session, id, page, close, wrong;
before(async () => {
  session = await begin();
  id = (await session.pieces()).find((p) => p.name.includes("stand"))?.id;
  assert.ok(id, "the stepped stand is among the pieces");
});
after(() => session.end());
beforeEach(async () => {
  ({ page, close, wrong } = await open(session));
  await visit(session, page, `/pieces/${id}/shape`);
});
afterEach(() => close());

const lowLevel = 'input[data-path="sizes/low level"]';
const price = ".figures .big:last-child dd";

async function type(value) {
  await page.fill(lowLevel, value);
  await page.press(lowLevel, "Enter");
}

test("ATypedSizeShowsWhatMovesAndEscapePutsItBack", async () => {
  const cuts = await page.$$eval("tr[data-tag] .measure", (all) => all.map((m) => m.textContent));
  const log = await session.json(`/api/pieces/${id}/log?after=0`);
  await type("18 1/2");
  await page.waitForSelector(".ripple");
  const moved = await page.$$eval("tr[data-tag] .measure", (all) => all.map((m) => m.textContent));
  assert.notDeepEqual(moved, cuts);
  assert.match(await page.textContent(".ripple"), /nothing is stored/i);
  assert.ok(await page.$$eval(".ripple .moves li", (all) => all.length) > 0);
  assert.equal(await page.$$eval(".sheet.is-tried svg", (all) => all.length >= 3), true);
  await page.keyboard.press("Escape");
  await page.waitForSelector(".ripple", { state: "detached" });
  assert.deepEqual(await page.$$eval("tr[data-tag] .measure", (all) => all.map((m) => m.textContent)), cuts);
  assert.equal(await page.inputValue(lowLevel), "17 1/2 in");
  assert.deepEqual(await session.json(`/api/pieces/${id}/log?after=0`), log, "nothing was stored");
  assert.deepEqual(wrong, []);
});

test("WhatIsTriedIsWhatTheEditedDocumentDerives", async () => {
  await type("18 1/2 in");
  await page.waitForSelector(".ripple");
  const text = await (await fetch(`${session.base}/api/pieces/${id}/text`)).text();
  const build = JSON.parse(session.run(["derive", "--json", "-"], text.replace(/(low level:\s*)17 1\/2 in/, "$118 1/2 in")));
  const money = new Intl.NumberFormat("en-GB", { style: "currency", currency: build.currency }).format(build.price.total);
  assert.equal(await page.textContent(price), money);
});

test("SeveralEditsAreTakenBackOneByOne", async () => {
  await type("18 in");
  await page.waitForFunction(() => document.querySelector(".ripple"));
  await type("19 in");
  await page.waitForFunction((s) => document.querySelector(s).value === "19 in" && !document.querySelector(".is-busy"), lowLevel);
  await page.locator("h1").focus();
  await page.keyboard.press("Control+z");
  await page.waitForFunction((s) => document.querySelector(s).value === "18 in", lowLevel);
  await page.keyboard.press("Control+Shift+z");
  await page.waitForFunction((s) => document.querySelector(s).value === "19 in", lowLevel);
  await page.keyboard.press("Control+z");
  await page.waitForFunction((s) => document.querySelector(s).value === "18 in", lowLevel);
  await page.keyboard.press("Control+z");
  await page.waitForSelector(".ripple", { state: "detached" });
});

test("ASizeThatCantBeReadIsToldAtItsFieldWithWhatWouldBeRight", async () => {
  await type("quite low");
  const told = page.locator(".entry.is-refused .entry-wrong");
  await told.waitFor();
  assert.ok((await told.textContent()).length > 10);
  assert.equal(await page.getAttribute(lowLevel, "aria-invalid"), "true");
  assert.equal(await page.inputValue(lowLevel), "quite low");
  assert.equal(await page.$(".ripple"), null);
});

test("WhatIsTriedStaysWhileTheReaderGoesThroughTheStages", async () => {
  await type("18 1/2 in");
  await page.waitForSelector(".ripple");
  const tried = await page.textContent(price);
  await page.click('nav.rod a[href$="/price"]');
  await settled(page);
  assert.equal(await page.textContent("[data-total]"), tried);
  assert.ok(await page.isVisible(".ripple"));
});
