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
  assert.equal(await page.locator(".what-if li").count(), 2, "sticks of two lengths are sold");
  assert.match(await page.locator(".what-if li").first().innerText(), /^One more stick of 252 in: /);
  assert.deepEqual(wrong, []);
  await close();
});
