// At the saw: the list with its ticks, and what one more board would change.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { begin, open, settled, visit } from "./session.mjs";

let session, at;
before(async () => {
  session = await begin();
  at = `/pieces/${(await session.pieces()).find((p) => p.name === "packing table").id}/material`;
});
after(() => session.end());

test("WhatIsTickedAtTheSawStaysTicked", async () => {
  const { page, wrong, close } = await open(session, { viewport: { width: 360, height: 740 } });
  const list = () => page.locator("details.at-saw").first();
  await visit(session, page, at);
  await list().locator("summary").click();
  const box = list().locator(".run:not(.is-every) label").first();
  assert.ok((await box.boundingBox()).height >= 48, "a gloved finger finds it");
  await box.click();
  assert.match(await list().locator("summary").innerText(), /1 of \d+ ticked/);
  await page.reload();
  await settled(page);
  assert.match(await list().locator("summary").innerText(), /1 of \d+ ticked/);
  await list().locator("summary").click();
  assert.ok(await list().locator(".run:not(.is-every) input").first().isChecked());
  assert.deepEqual(wrong, []);
  await close();
});

test("TheBarIsAsLongAsItsShares", async () => {
  const { page, close } = await open(session);
  await visit(session, page, at);
  const [whole, parts] = await page.evaluate(() => {
    const bar = document.querySelector(".went-bar");
    return [bar.clientWidth, [...bar.children].reduce((sum, c) => sum + c.getBoundingClientRect().width, 0)];
  });
  assert.ok(Math.abs(whole - parts) < 1, `${parts} of ${whole} px`);
  await close();
});

test("OneMoreStickIsWeighedWhenItIsAskedFor", async () => {
  const { page, wrong, close } = await open(session);
  await visit(session, page, at);
  await page.getByRole("button", { name: "What would one more stick change?" }).click();
  await page.waitForSelector(".what-if ul");
  assert.deepEqual(await page.locator(".what-if li").allInnerTexts(), [
    "Nothing is gained by buying one more stick of 252 in or 120 in; one that lies there already saves €78.00 or €42.00.",
  ]);
  assert.deepEqual(wrong, []);
  await close();
});

test("TheListToBuyIsReadOnATelephone", async () => {
  const { page, wrong, close } = await open(session, { viewport: { width: 360, height: 740 } });
  await visit(session, page, at);
  const list = page.getByRole("region", { name: "The list" });
  assert.ok(await list.evaluate((e) => e.scrollWidth <= e.clientWidth), "nothing is cut off");
  const said = await list.innerText();
  for (const words of ["Hard maple 8/4", "48 board feet", "PVA wood glue", "1 × 500 g", "82 g needed", "1 pack of 100", "21 ft stick of pipe 1"]) {
    assert.ok(said.replace("⁄", "/").includes(words), `${words} in ${said}`);
  }
  assert.doesNotMatch(await page.locator("main").innerText(), /\bEUR\b/, "money is written one way");
  assert.deepEqual(wrong, []);
  await close();
});

test("WordsInLayoutsAreReadAtEveryWidth", async () => {
  for (const width of [360, 1024, 2560]) {
    const { page, close } = await open(session, { viewport: { width, height: 900 } });
    await visit(session, page, at);
    const least = await page.evaluate(() => Math.min(...[...document.querySelectorAll(".sheets svg text")].map((t) => {
      const svg = t.ownerSVGElement;
      return parseFloat(getComputedStyle(t).fontSize) * svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
    })));
    assert.ok(least >= 11, `${least} px at ${width}`);
    await close();
  }
});

test("EveryStickIsDrawnHoweverNarrowTheSheets", async () => {
  const rack = (await session.pieces()).find((p) => p.name === "propagation rack").id;
  const used = Object.values((await session.json(`/api/pieces/${rack}/build`)).cut.stick)[0].used.length;
  const { page, wrong, close } = await open(session, { viewport: { width: 360, height: 740 } });
  await visit(session, page, `/pieces/${rack}/material`);
  const drawn = () => page.waitForFunction((n) => [...document.querySelectorAll(".sheets svg text")].filter((t) => /^Stick \d+:/.test(t.textContent)).length === n, used);
  await drawn();
  for (const link of await page.locator(".sheets a[download]").all()) {
    assert.equal((await fetch(session.base + await link.getAttribute("href"))).status, 200, "what is seen can be taken along");
  }
  await page.setViewportSize({ width: 1600, height: 900 });
  await settled(page);
  await drawn();
  assert.deepEqual(wrong, []);
  await close();
});
