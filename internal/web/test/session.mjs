// One browser and one running program for a file of tests; all.mjs lends every file the same browser and program.

import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

export const repository = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../../..");

const flags = [
  "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
  "--use-angle=swiftshader", "--enable-unsafe-swiftshader",
];

/** How the browser is started, alike for one file of tests and for all of them. */
export const browserOptions = { executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: flags };

/** The program: as named by RODWRIGHT, or built for these tests. */
export function program(folder) {
  if (process.env.RODWRIGHT) return process.env.RODWRIGHT;
  const out = path.join(folder, "rodwright");
  execFileSync("go", ["build", "-o", out, "./cmd/rodwright"], { cwd: repository, stdio: "inherit" });
  return out;
}

/** Runs the program once; exit 1 says that a finding fails and still answers. */
function run(rodwright, words, input) {
  try {
    return execFileSync(rodwright, words, { cwd: repository, input, encoding: "utf8", maxBuffer: 64 << 20, stdio: ["pipe", "pipe", "pipe"] });
  } catch (e) {
    if (e.status === 1) return e.stdout;
    throw new Error(`rodwright ${words.join(" ")}: ${e.stderr}`);
  }
}

/** Starts the program with the words of a verb that serves, and waits for the address it prints. */
function serve(rodwright, words) {
  const child = spawn(rodwright, words, { cwd: repository });
  return new Promise((done, fail) => {
    let said = "";
    const hear = (chunk) => {
      said += chunk;
      const found = /https?:\/\/[\w.[\]:-]+/.exec(said);
      if (found) done({ child, base: found[0].replace(/\/$/, "") });
    };
    child.stdout.on("data", hear);
    child.stderr.on("data", hear);
    child.on("exit", (code) => fail(new Error(`demo ended with ${code}: ${said}`)));
  });
}

/** Everything a file of tests needs; end() stops it all. Words, of the program to run and a folder to write to, are those of what serves; without them it is the demonstration. */
export async function begin(words = (_, folder) => ["demo", "--port", "0", "--dir", path.join(folder, "demo"), "--no-open"]) {
  const folder = mkdtempSync(path.join(tmpdir(), "rodwright-page-"));
  const rodwright = program(folder);
  const { child, base } = await serve(rodwright, words((w, input) => run(rodwright, w, input), folder));
  // A browser that all files of tests share is only left; its contexts end with that.
  const browser = process.env.RODWRIGHT_BROWSER ? await chromium.connect(process.env.RODWRIGHT_BROWSER) : await chromium.launch(browserOptions);
  return {
    base, browser,
    run: (words, input) => run(rodwright, words, input),
    json: async (address) => (await fetch(base + address)).json(),
    pieces: async () => (await (await fetch(`${base}/api/pieces`)).json()).pieces,
    end: async () => {
      await browser.close();
      child.removeAllListeners("exit");
      child.kill();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A page that keeps what went wrong in it: messages of the console and requests that failed. */
export async function open(session, options = {}) {
  const context = await session.browser.newContext({ viewport: { width: 1024, height: 800 }, ...options });
  const page = await context.newPage();
  const wrong = [];
  page.on("console", (m) => {
    if (m.type() === "error" || m.type() === "warning") wrong.push(`console: ${m.text()}`);
  });
  page.on("pageerror", (e) => wrong.push(`error: ${e.message}`));
  page.on("requestfailed", (r) => {
    // Leaving a page breaks off what it still listens to or fetches.
    if (r.failure()?.errorText !== "net::ERR_ABORTED") wrong.push(`request: ${r.url()} ${r.failure()?.errorText}`);
  });
  page.on("response", (r) => {
    if (r.status() >= 400) wrong.push(`response: ${r.status()} ${r.url()}`);
  });
  return { page, wrong, close: () => context.close() };
}

/** Goes to a path and waits until nothing is being fetched any more. */
export async function visit(session, page, where) {
  await page.goto(session.base + where);
  await settled(page);
}

/** Waits until everything on the page has come. */
export async function settled(page) {
  await page.waitForFunction(() => document.querySelector("h1") !== null && document.querySelector(".waiting") === null);
  await page.evaluate(async () => {
    await document.fonts.ready;
    // After two frames the page also listens to the keys.
    await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  });
}

export const stages = ["shape", "findings", "material", "work", "changes", "price", "book"];
