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

/** What the search for accessibility finds: all of it, or only what another light can change. */
async function violations(page, contrastAlone) {
  // Evaluated from outside: the page's own policy lets no text become a script.
  if (await page.evaluate(() => typeof window.axe === "undefined")) await page.evaluate(axe);
  return page.evaluate(async (contrastAlone) => {
    if (document.querySelector("audio, video")) throw new Error("sound or film: let the search load it first, for its rules on them");
    const only = contrastAlone ? { runOnly: { type: "rule", values: ["color-contrast"] } } : {};
    const result = await window.axe.run(document, { iframes: false, preload: false, resultTypes: ["violations"], ...only });
    return result.violations.map((v) => `${v.id}: ${v.nodes.slice(0, 3).map((n) => n.target.join(" ")).join("; ")} (${v.nodes.length})`);
  }, contrastAlone);
}

async function holds(page, where, unfold = async () => {}) {
  await visit(session, page, where);
  await unfold();
  for (const width of widths) {
    await page.setViewportSize({ width, height: 900 });
    await settled(page);
    const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    assert.ok(over <= 0, `${where} at ${width} px is ${over} px too wide`);
    // The widest has the same parts as the middle one, side by side with more room: nothing may be cut off, and that is all.
    if (width === widths[2]) continue;
    // Another light changes colours and no sizes: it is looked at in one width.
    for (const colorScheme of width === widths[1] ? themes : themes.slice(0, 1)) {
      await page.emulateMedia({ colorScheme });
      await settled(page);
      assert.deepEqual(await violations(page, colorScheme !== themes[0]), [], `${where} at ${width} px, ${colorScheme}`);
    }
  }
}

/** Looks at every path, two at a time. */
async function allHold(paths) {
  const left = [...paths];
  await Promise.all([1, 2].map(async () => {
    const { page, wrong, close } = await open(session);
    for (let where = left.shift(); where; where = left.shift()) await holds(page, where);
    assert.deepEqual(wrong, []);
    await close();
  }));
}

test("EveryPageOfEveryPieceIsCleanAtEveryWidthAndInBothLights", async () => {
  const pieces = await session.pieces();
  assert.ok(pieces.length >= 4, `${pieces.length} pieces, want at least 4`);
  await allHold(pieces.flatMap(({ id }) => stages.map((stage) => `/pieces/${id}/${stage}`)));
});

test("TheShopsOwnPagesAreCleanAtEveryWidthAndInBothLights", async () => {
  await allHold(["/", "/answers", "/answers/sag", "/answers/pipe-cut", "/no-such-page"]);
});

test("APieceUnderWayIsCleanWithEverythingUnfolded", async () => {
  const { id } = (await session.pieces()).find((p) => p.name === "stepped seedling stand");
  const send = async (entries) => {
    const { number } = await session.json(`/api/pieces/${id}/log`);
    const answer = await fetch(`${session.base}/api/pieces/${id}/entries`, {
      method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify({ base: number, entries }),
    });
    assert.equal(answer.status, 200, await answer.clone().text());
    return answer.json();
  };
  const fact = (say) => ({ kind: "fact", say });
  const { entries: [made] } = await send([fact("made A2.1 size 41 × 8 7/8 in"), fact("made C2.1 cut-pipe"), fact("made C2.1 thread"), fact("bought stick 3/4 21 ft as S1 for 41")]);
  await send([fact("spoiled C2.1 bent"), { kind: "edit", path: "sizes/low level", new: "18 in" }]);
  await send([{ kind: "withdrawn", names: made.id }, fact("made A1.1 size"), { kind: "asked", words: "a little deeper", edits: [{ path: "sizes/depth", value: "20 in" }] }]);
  const { page, wrong, close } = await open(session);
  await holds(page, `/pieces/${id}/changes`, async () => {
    await page.fill("#say-line", "wrong A1.1 41 1/2 × 19 in: cut too short");
    await page.press("#say-line", "Enter");
    await page.waitForSelector(".way-out");
    await page.selectOption("#weigh-path-0", "sizes/depth");
    await page.fill("#weigh-value-0", "18 in");
    await page.press("#weigh-value-0", "Enter");
    await page.waitForSelector(".fates");
    for (const fold of await page.$$("details:not([open]) > summary")) if (await fold.isVisible()) await fold.click();
  });
  await holds(page, `/pieces/${id}/material`);
  await holds(page, `/pieces/${id}/shape`, async () => {
    await page.fill('input[data-path="sizes/low level"]', "19 in");
    await page.press('input[data-path="sizes/low level"]', "Enter");
    await page.waitForSelector(".ripple-made");
  });
  assert.deepEqual(wrong, []);
  await close();
});

test("TheBookReadByItselfIsCleanAtEveryWidthAndInBothLights", async () => {
  await allHold((await session.pieces()).map(({ id }) => `/api/pieces/${id}/book.html`));
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
