// The types of the server's interface, from its own description. With --write they are put into ui/api.d.ts.

import { writeFileSync } from "node:fs";
import openapiTS, { astToString } from "openapi-typescript";
import { begin } from "./session.mjs";

export const place = new URL("../ui/api.d.ts", import.meta.url);

const head = "// The server's interface, from its own description at /openapi.json. Made anew with: npm run api\n\n";

/** The text of ui/api.d.ts for a running server. */
export async function types(base) {
  return head + astToString(await openapiTS(new URL("/openapi.json", base)));
}

if (process.argv.includes("--write")) {
  const session = await begin();
  writeFileSync(place, await types(session.base));
  await session.end();
}
