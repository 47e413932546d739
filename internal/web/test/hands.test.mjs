// Without a mouse, on paper, in the round, and when the server is gone.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { begin, open, settled, stages, visit } from "./session.mjs";

let session, id;
before(async () => {
  session = await begin();
  id = (await session.pieces()).find((p) => p.name.includes("stand")).id;
});
after(() => session.end());

const focused = (page) => page.evaluate(() => document.activeElement?.textContent?.trim() ?? "");

async function tabTo(page, fits, most = 60) {
  for (let n = 0; n < most; n++) {
    await page.keyboard.press("Tab");
    if (await page.evaluate(fits)) return;
  }
  assert.fail(`not reached by ${most} presses of Tab`);
}

test("AWholeWalkNeedsNoMouse", async () => {
  const { page, wrong, close } = await open(session);
  await visit(session, page, "/");
  await page.keyboard.press("Tab");
  assert.match(await focused(page), /content/, "the first stop leads past the head");
  assert.ok(await page.evaluate(() => document.activeElement.getBoundingClientRect().top >= 0), "and can be seen");
  await page.keyboard.press("Enter");
  assert.equal(await page.evaluate(() => document.activeElement.id), "main");
  await page.keyboard.press("Tab");
  assert.ok(await page.evaluate(() => {
    const style = getComputedStyle(document.activeElement);
    return style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2;
  }), "the focus can be seen");
  await page.keyboard.press("Enter");
  await settled(page);
  assert.match(new URL(page.url()).pathname, /^\/pieces\/[^/]+\/shape$/);
  for (const stage of stages.slice(1)) {
    await page.keyboard.press("]");
    await settled(page);
    assert.ok(page.url().endsWith(`/${stage}`), page.url());
  }
  await page.keyboard.press("1");
  await settled(page);
  await tabTo(page, () => document.activeElement?.matches(".entry input"));
  await page.keyboard.press("?");
  assert.equal(await page.$("dialog[open]"), null, "a field takes every key");
  await page.keyboard.press("Escape");
  await page.locator("h1").focus();
  await page.keyboard.press("?");
  await page.waitForSelector("dialog[open]");
  await page.keyboard.press("Escape");
  await page.waitForSelector("dialog[open]", { state: "detached" });
  await page.keyboard.press("/");
  await page.waitForFunction(() => document.activeElement?.id === "search");
  await page.keyboard.type("sag");
  await tabTo(page, () => document.activeElement?.matches(".topics a"));
  await page.keyboard.press("Enter");
  await page.waitForSelector(".question");
  assert.deepEqual(wrong, []);
  await close();
});

test("TheWorkIsDoneOneStepAtATimeByKeysAndWithGloves", async () => {
  const { page, close } = await open(session, { viewport: { width: 360, height: 780 } });
  await visit(session, page, `/pieces/${id}/work`);
  assert.match(await page.textContent(".step-count"), /^Step 1 of/);
  const step = (n) => page.getByText(`Step ${n} of`).waitFor();
  await page.keyboard.press("ArrowRight");
  await step(2);
  await page.click("text=Next");
  await step(3);
  await page.keyboard.press("ArrowLeft");
  await step(2);
  const small = await page.$$eval(".work button, .work .choice label", (all) => all.filter((b) => b.getBoundingClientRect().height < 48).length);
  assert.equal(small, 0, "targets of at least 48 px");
  await close();
});

test("OnPaperThereIsNothingToClick", async () => {
  const { page, close } = await open(session);
  for (const where of ["/", "/answers/sag", ...stages.map((s) => `/pieces/${id}/${s}`)]) {
    await visit(session, page, where);
    await page.emulateMedia({ media: "print" });
    const left = await page.$$eval("nav, header.head, button, .ripple, iframe", (all) => all.filter((e) => e.getClientRects().length > 0).map((e) => e.outerHTML.slice(0, 80)));
    assert.deepEqual(left, [], where);
    await page.emulateMedia({ media: "screen" });
  }
  await close();
});

test("ThePieceStandsInTheRoundAndTurns", async () => {
  const { page, wrong, close } = await open(session);
  await visit(session, page, `/pieces/${id}/shape`);
  await page.click("text=Turn it in the round");
  await page.waitForSelector('canvas[data-ready="yes"]');
  const inks = () => page.$eval(".round canvas", (c) => new Promise((done) => {
    // Two frames on, what was asked for is drawn.
    requestAnimationFrame(() => requestAnimationFrame(() => {
      const copy = document.createElement("canvas");
      copy.width = copy.height = 96;
      const pen = copy.getContext("2d");
      pen.drawImage(c, 0, 0, 96, 96);
      const data = pen.getImageData(0, 0, 96, 96).data;
      const seen = new Set();
      let sum = 0;
      for (let i = 0; i < data.length; i += 4) {
        if (data[i + 3] === 0) continue;
        seen.add(`${data[i] >> 4},${data[i + 1] >> 4},${data[i + 2] >> 4}`);
        sum = (sum * 31 + data[i] + i) % 1_000_000_007;
      }
      done({ count: seen.size, sum });
    }));
  }));
  // A browser with much else to do may need more frames.
  const until = async (fits) => {
    let seen = await inks();
    for (let n = 0; n < 40 && !fits(seen); n++) seen = await inks();
    return seen;
  };
  const first = await until((s) => s.count > 3);
  assert.ok(first.count > 3, `${first.count} inks on the canvas`);
  await page.focus(".round canvas");
  await page.keyboard.press("ArrowRight");
  const turned = await until((s) => s.count > 3 && s.sum !== first.sum);
  assert.notEqual(turned.sum, first.sum, "the arrow key turned it");
  await page.keyboard.press("Home");
  await page.click(".round-tags button >> nth=0");
  assert.equal(await page.getAttribute(".round-tags button >> nth=0", "aria-pressed"), "true");
  assert.match(await page.textContent(".round-chosen"), /[A-Z]\d/);
  assert.deepEqual(wrong.filter((w) => !/GPU stall|ReadPixels/.test(w)), []);
  await close();
});

test("WithoutGraphicsTheRoundSaysSo", async () => {
  const { page, close } = await open(session);
  await page.addInitScript(() => { HTMLCanvasElement.prototype.getContext = () => null; });
  await visit(session, page, `/pieces/${id}/shape`);
  await page.click("text=Turn it in the round");
  await page.waitForSelector(".round .note");
  assert.match(await page.textContent(".round .note"), /can’t draw in the round/);
  await close();
});

test("WhenTheServerIsGoneThePageSaysSoAndKeepsWhatItHas", async () => {
  const { page, close } = await open(session);
  await visit(session, page, `/pieces/${id}/price`);
  const total = await page.textContent("[data-total]");
  await page.route("**/api/**", (r) => r.abort());
  await page.selectOption(".pick select", "metric");
  await page.waitForSelector(".banner");
  assert.match(await page.textContent(".banner"), /does not answer/);
  await page.unroute("**/api/**");
  await page.selectOption(".pick select", "inch");
  await page.waitForSelector("[data-total]");
  assert.equal(await page.textContent("[data-total]"), total);
  await close();
});

test("APieceThatIsNotThereIsToldInWords", async () => {
  const { page, close } = await open(session);
  await page.goto(`${session.base}/pieces/no-such-piece/shape`);
  await page.waitForSelector(".note.is-wrong");
  assert.match(await page.textContent("main"), /no piece “no-such-piece”/);
  await close();
});

test("AChangeElsewhereComesIntoTheOpenPage", async () => {
  const { page, close } = await open(session);
  let told = false;
  await page.route("**/api/events", async (r) => {
    if (told) return r.abort();
    told = true;
    return r.fulfill({ contentType: "text/event-stream", body: [1, 2].map((number) => `event: piece\ndata: ${JSON.stringify({ piece: id, number })}\n\n`).join("") });
  });
  let builds = 0;
  page.on("request", (r) => { if (r.url().includes(`/api/pieces/${id}/build`)) builds++; });
  await page.goto(`${session.base}/pieces/${id}/price`);
  await page.waitForFunction(() => /numbers are new/.test(document.body.textContent));
  await settled(page);
  assert.ok(builds >= 1);
  await close();
});

test("TheFirstPageIsUsableOnASlowDevice", async (t) => {
  const { page, close } = await open(session, { viewport: { width: 360, height: 780 } });
  const slow = await page.context().newCDPSession(page);
  await slow.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  for (const [name, where, sign] of [["Pieces", "/", ".piece-link"], ["Shape", `/pieces/${id}/shape`, ".entry input"]]) {
    await page.goto(session.base + where, { waitUntil: "commit" });
    await page.waitForSelector(sign);
    const ms = await page.evaluate(() => performance.now());
    t.diagnostic(`${name}: usable after ${Math.round(ms)} ms at a quarter of the speed`);
  }
  await close();
});
