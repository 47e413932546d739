// Runs every file of tests: the program is built once, one browser serves all, and the file that takes longest, which
// keeps a processor busy, runs beside the others, which mostly wait. Files that are named are run alone:
//   node test/all.mjs findings.test.mjs

import { spawn } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { browserOptions, program } from "./session.mjs";

const here = path.dirname(fileURLToPath(import.meta.url));
const longest = "pages.test.mjs";

const named = process.argv.slice(2);
const files = (named.length > 0 ? named : readdirSync(here).filter((f) => f.endsWith(".test.mjs"))).sort((a, b) => Number(b === longest) - Number(a === longest) || a.localeCompare(b));
const folder = mkdtempSync(path.join(tmpdir(), "rodwright-tests-"));
const rodwright = program(folder);
const browser = await chromium.launchServer(browserOptions);
const tests = spawn(process.execPath, ["--test", "--test-concurrency=2", ...files.map((f) => path.join(here, f))], {
  stdio: "inherit", env: { ...process.env, RODWRIGHT: rodwright, RODWRIGHT_BROWSER: browser.wsEndpoint() },
});
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => tests.kill(signal));
process.exitCode = await new Promise((done) => tests.on("exit", (code) => done(code ?? 1)));
await browser.close();
rmSync(folder, { recursive: true, force: true });
