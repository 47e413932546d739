// The page is checked against the interface the server has today.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, test } from "node:test";
import { place, types } from "./api.mjs";
import { begin } from "./session.mjs";

let session;
before(async () => { session = await begin(); });
after(() => session.end());

test("TheTypesOfTheInterfaceAreThoseOfTheServer", async () => {
  assert.equal(readFileSync(place, "utf8"), await types(session.base), "stale: npm run api makes them anew");
});
