// The pictures of findings: drawn when they are opened, told to who can't see them, in both lights.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { begin, open, settled, visit } from "./session.mjs";

let session;
before(async () => { session = await begin(); });
after(() => session.end());

const isPicture = /\/findings\/[^/]+\.svg/;

test("APictureIsFetchedWhenItsFindingIsOpened", async () => {
  const { page, wrong, close } = await open(session, { viewport: { width: 360, height: 780 } });
  const fetched = [];
  page.on("request", (r) => { if (isPicture.test(r.url())) fetched.push(r.url()); });
  const kinds = new Set();
  for (const { id } of await session.pieces()) {
    const { findings } = await session.json(`/api/pieces/${id}/build`);
    await visit(session, page, `/pieces/${id}/findings`);
    const folds = page.locator(".finding-shown");
    assert.equal(await folds.count(), findings.filter((f) => f.picture).length, id);
    assert.deepEqual(fetched.splice(0), [], "nothing is fetched before it is asked for");
    for (const kind of new Set(findings.flatMap((f) => f.picture?.kind ?? []))) {
      if (kinds.has(kind)) continue;
      kinds.add(kind);
      const { name } = findings.find((f) => f.picture?.kind === kind).picture;
      const words = { tilt: "Tilt in", year: "Over the", bent: "How it sags", sway: "How it moves" }[kind];
      const fold = folds.filter({ hasText: words }).first();
      await fold.locator("summary").focus();
      await page.keyboard.press("Enter");
      const drawing = fold.locator("svg.drawing");
      await drawing.waitFor();
      await settled(page);
      assert.equal(fetched.length, 1, `${name}: ${fetched}`);
      assert.ok((await drawing.locator("desc").textContent()).length > 30, "told in words");
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      assert.ok(over <= 0, `${over} px too wide`);
      fetched.length = 0;
    }
  }
  assert.ok(kinds.size > 0, "no finding of any piece has a picture");
  assert.deepEqual(wrong, []);
  await close();
});
