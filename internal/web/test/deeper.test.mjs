// Looking deeper for a layout: it is begun, goes on, is ended; what was found is taken or left; what was accepted says so,
// is out of date after an edit, and is withdrawn.

import assert from "node:assert/strict";
import { copyFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { after, afterEach, before, beforeEach, test } from "node:test";
import { begin, open, repository, settled, visit } from "./session.mjs";

const pipe = "3/4";
let session, id, page, close, wrong;

/** A shop with the low bench, whose pipe is cut by an accepted layout that opens a stick more than it needs, at 28 of the sample shop. */
function lavish(run, folder) {
  const piece = path.join(folder, "bench.piece.yaml");
  copyFileSync(path.join(repository, "examples/low-bench.piece.yaml"), piece);
  const { key, layout } = JSON.parse(run(["layout", piece, "--material", pipe, "--json"])).layouts[0];
  const cost = layout.cost + 28, bound = layout.cost - 1;
  const used = [...layout.used, { stock: layout.used[0].stock, parts: [], left: [] }];
  const waste = { kerf: 0, trim: 0, defect: 0, leftover_useful: 0, leftover_lost: 0 };
  writeFileSync(path.join(folder, "bench.journal.jsonl"), `${JSON.stringify({
    number: 1, id: "01890000-0000-7000-8000-000000000001", actor: "ben", base: 0, at: "2026-05-04T09:00:00Z", kind: "accepted",
    layout: { kind: "stick", material: pipe, key, cost, bound, answer: { ...layout, cost, bound, proven: false, waste, used } },
  })}\n`);
  return ["serve", "--shop", path.join(folder, "shop.db"), "--port", "0", piece];
}

before(async () => {
  session = await begin(lavish);
  [{ id }] = await session.pieces();
});
after(() => session.end());
beforeEach(async () => { ({ page, close, wrong } = await open(session)); });
afterEach(() => close());

const build = () => session.json(`/api/pieces/${id}/build`);
const log = () => session.json(`/api/pieces/${id}/log`);
const layout = () => page.locator(".layout", { hasText: "Pipe" });
const mark = () => layout().locator(".accepted");
const button = (name) => layout().getByRole("button", { name });
const material = () => visit(session, page, `/pieces/${id}/material`);

/** A search as the server tells it, for what a test makes up. */
async function search(state, more = {}) {
  const { cost, bound, gap } = (await build()).cut.stick[pipe];
  const before = { cost, bound, gap, proven: false, notPlaced: 0 };
  return { id: "01a00000-0000-7000-8000-000000000001", kind: "stick", material: pipe, number: 1, state, seconds: 20, took: 5, before, best: before, better: false, fits: true, accepted: 0, ...more };
}

const json = (body, status = 200) => ({ status, contentType: status < 400 ? "application/json" : "application/problem+json", body: JSON.stringify(body) });

test("ALayoutSaysHowMuchCouldBeSavedAndWhoAcceptedIt", async () => {
  await material();
  const { gap } = (await build()).cut.stick[pipe];
  const said = /At most ([\d.]+) % could be saved/.exec(await layout().locator(".proof").textContent());
  assert.ok(Number(said[1]) >= gap * 100 && Number(said[1]) < gap * 100 + 0.11, `${said[1]} of ${gap}`);
  assert.match(await mark().textContent(), /Accepted by ben, entry 1.*is known/);
  assert.equal(await button(/Look deeper/).count(), 1);
  const boards = page.locator(".layout", { hasText: "White ash" }); // what is proven needs no search
  assert.match(await boards.locator(".proof").textContent(), /Proven: no layout( that crosscuts first and then rips)? costs less/);
  assert.equal(await boards.getByRole("button", { name: /Look deeper/ }).count(), 0);
  assert.deepEqual(wrong, []);
});

test("ASearchGoesOnWhereverTheReaderIsAndIsEndedByHand", async () => {
  let state = "running", asked = 0;
  const running = await search("running");
  const closer = { ...running.best, cost: running.best.cost - 3, gap: 0.1234 };
  const now = () => ({ ...running, state, took: 5 + asked, best: asked > 1 ? closer : running.best, better: asked > 1 });
  await page.route("**/searches", (r) => r.fulfill(json({ searches: [now()] })));
  await page.route("**/searches/*", (r) => {
    asked++;
    if (r.request().method() === "DELETE") state = "cancelled";
    return r.fulfill(json(now()));
  });
  await page.route("**/pictures*", (r) => r.fulfill(json({ before: [], best: [] })));
  await material();
  const looking = layout().locator(".looking");
  await looking.getByText("At most 12.4 % could be saved").waitFor();
  assert.equal(await looking.locator("progress").getAttribute("max"), "20");
  assert.match(await looking.textContent(), /so far\. At most .*s left/);
  assert.equal(await button(/Look deeper/).count(), 0);
  await button("Stop here").focus();
  await page.keyboard.press("Enter");
  await layout().locator(".found").waitFor();
  assert.ok(await page.evaluate(() => document.activeElement.matches(".deeper")), "the keys go on where the button was, and take nothing");
  assert.match(await layout().locator(".found").textContent(), /Found: .*3\.00 less than now\. At most 12\.4 % could be saved/);
  assert.deepEqual(wrong, []);
});

test("ASearchThatCanNotBeBegunSaysWhy", async () => {
  await page.route("**/searches", (r) => (r.request().method() === "POST"
    ? r.fulfill(json({ type: "about:blank", title: "Too Many Requests", status: 429, detail: "2 searches run already", right: "wait until one is done" }, 429)) : r.continue()));
  await material();
  await button(/Look deeper/).click();
  await layout().locator(".note.is-wrong").waitFor();
  assert.match(await layout().locator(".note.is-wrong").textContent(), /2 searches run already.*wait until one is done/i);
});

test("WhereNothingBetterWasFoundThatIsSaid", async () => {
  const over = await search("done", { took: 20 });
  await page.route("**/searches", (r) => r.fulfill(json({ searches: [over] })));
  await material();
  await layout().getByText("Nothing better was found in 20 seconds.").waitFor();
  assert.equal(await button(/Look deeper/).textContent(), "Look again");
});

for (const [light, width] of [["light", 360], ["dark", 1024], ["light", 2560]]) {
  test(`WhatIsFoundFitsAWidthOf${width}When${light}`, async () => {
    await page.setViewportSize({ width, height: 900 });
    await page.emulateMedia({ colorScheme: light });
    const found = await search("done", { better: true });
    found.best = { ...found.before, cost: found.before.cost - 1, gap: 0.0526 };
    const svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 60"><rect width="400" height="60" fill="none" stroke="currentColor"/></svg>';
    await page.route("**/searches", (r) => r.fulfill(json({ searches: [found] })));
    await page.route("**/pictures*", (r) => r.fulfill(json({ before: [{ title: "sticks 1 and 2, 2 alike", svg }], best: [{ title: "stick 1", svg }] })));
    await material();
    await layout().getByText("See both, side by side").click();
    await layout().locator(".both-layouts svg").first().waitFor();
    if (width > 1000) { // beside each other
      const [now, best] = await layout().locator(".both-layouts section").evaluateAll((all) => all.map((e) => e.getBoundingClientRect().top));
      assert.equal(now, best);
    }
    await settled(page);
    assert.match(await layout().locator(".found").textContent(), /1\.00 less than now\. At most 5\.3 % could be saved/);
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), "it scrolls sideways");
    const low = await layout().locator(".deeper button").evaluateAll((all) => all.filter((b) => b.getBoundingClientRect().height < 44).length);
    assert.equal(low, 0, "a button is too low to be hit");
    assert.deepEqual(wrong, []);
  });
}

test("WhatIsFoundIsLeftTakenOutdatedByAnEditAndWithdrawn", async () => {
  await material();
  await button(/Look deeper/).focus();
  await page.keyboard.press("Enter");
  const found = layout().locator(".found");
  await found.waitFor();
  assert.match(await found.textContent(), /Found: .*28\.00 less than now\. Proven: no layout costs less\./);
  await found.locator("summary").focus();
  await page.keyboard.press("Enter");
  await found.locator("svg").first().waitFor(); // as it is cut now, and as it was found
  assert.equal(await found.getByRole("region").count(), 2);
  assert.equal((await log()).number, 1, "a search stores nothing");
  await button("Keep the present one").click();
  await found.waitFor({ state: "detached" });
  assert.equal((await log()).number, 1);

  await button(/Look deeper/).click();
  await button("Take this layout").click();
  await mark().getByText("entry 2").waitFor();
  assert.match(await mark().textContent(), /^Accepted by maker, entry 2/);
  assert.match(await layout().locator(".proof").textContent(), /Proven/);
  assert.equal(await found.count(), 0);
  const now = await build();
  assert.equal(now.accepted[0].state, "taken");
  assert.equal(now.cut.stick[pipe].proven, true);

  // Another length is another problem: the layout stays in the log, and is not cut by.
  const sent = await fetch(`${session.base}/api/pieces/${id}/entries`, {
    method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify({ base: 2, entries: [{ kind: "edit", path: "sizes/length", new: "50 in" }] }),
  });
  assert.equal(sent.status, 200);
  await layout().locator('.accepted[data-state="outdated"]').waitFor();
  assert.match(await mark().textContent(), /accepted for an earlier state.*It no longer fits: .*Look deeper again/);
  await button("Withdraw it").click();
  await mark().getByText("entry 1").waitFor(); // the one before it stands again
  assert.match((await log()).entries.at(-1).words, /^withdrawn: entry 2, layout of pipe 3\/4 accepted/);
  await visit(session, page, `/pieces/${id}/changes`);
  assert.equal(await page.locator('.happened[data-number="1"] button').textContent(), "Withdraw");
  assert.deepEqual(wrong, []);
});
