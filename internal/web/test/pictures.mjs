// Takes the pictures of the README from the demonstration and from a book:
//   node internal/web/test/pictures.mjs FOLDER

import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { begin, open, settled, visit } from "./session.mjs";

const folder = process.argv[2];
if (!folder) {
  console.error("usage: node internal/web/test/pictures.mjs FOLDER");
  process.exit(2);
}
mkdirSync(folder, { recursive: true });

const session = await begin();
try {
  const pieces = await session.pieces();
  const of = (name) => `/pieces/${pieces.find((p) => p.name === name).id}`;
  const { page, wrong, close } = await open(session, { viewport: { width: 1280, height: 800 }, colorScheme: "light" });
  const take = (name) => page.screenshot({ path: path.join(folder, `${name}.png`) });

  await visit(session, page, "/");
  await take("pieces");
  await visit(session, page, `${of("packing table")}/shape`);
  await trySize(page);
  await take("shape");
  await visit(session, page, `${of("stepped seedling stand")}/findings`);
  await take("findings");
  await visit(session, page, `${of("packing table")}/material`);
  await page.locator("figure svg").first().scrollIntoViewIfNeeded();
  await take("material");
  await visit(session, page, `${of("packing table under way")}/changes`);
  await weighDepth(page);
  await take("changes");
  await close();
  if (wrong.length > 0) throw new Error(wrong.join("\n"));
  await bookPages(session);
} finally {
  await session.end();
}

/** Types another length over the first size, so that the strip of what moves is seen. */
async function trySize(page) {
  const field = page.getByLabel("depth", { exact: false }).first();
  await field.fill("32 in");
  await field.press("Enter");
  await page.waitForFunction(() => document.body.innerText.includes("Only tried"));
  await settled(page);
}

/** Weighs a table less deep than it was made, and brings what becomes of its parts into sight. */
async function weighDepth(page) {
  await page.selectOption("#weigh-path-0", "sizes/depth");
  await page.fill("#weigh-value-0", "28 in");
  await page.press("#weigh-value-0", "Enter");
  await page.waitForSelector(".fates");
  await page.setViewportSize({ width: 1280, height: 1240 });
  await page.evaluate(() => {
    document.activeElement.blur();
    document.querySelector("#weigh-title").scrollIntoView();
  });
  await settled(page);
}

/** Sets some pages of a book side by side. */
async function bookPages(session) {
  const dir = mkdtempSync(path.join(tmpdir(), "rodwright-book-"));
  try {
    const pdf = path.join(dir, "book.pdf");
    const example = readFileSync(new URL("../../../examples/packing-table.piece.yaml", import.meta.url));
    session.run(["book", "-", "-o", pdf], example);
    execFileSync("pdftoppm", ["-r", "60", "-png", pdf, path.join(dir, "page")]);
    const sheets = readdirSync(dir).filter((f) => f.endsWith(".png")).sort();
    const chosen = [0, 7, 9, 11].map((i) => sheets[i]).filter(Boolean);
    const images = chosen.map((f) => `<img src="data:image/png;base64,${readFileSync(path.join(dir, f)).toString("base64")}">`);
    const page = await session.browser.newPage({ viewport: { width: 1280, height: 470 } });
    await page.setContent(`<style>body{margin:0;background:#d9d5cb;display:flex;gap:16px;padding:16px}img{width:300px;box-shadow:0 1px 4px #0005}</style>${images.join("")}`);
    await page.screenshot({ path: path.join(folder, "book.png") });
  } finally {
    rmSync(dir, { recursive: true, force: true });
  }
}
