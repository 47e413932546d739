// The numbers on the page are those of the command line: `rodwright derive --json`.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { begin, open, visit } from "./session.mjs";

let session;
before(async () => { session = await begin(); });
after(() => session.end());

/** Lengths as the trade prints them, reckoned in whole nanometres apart from the page's own code. */
function printed(mm, fineness) {
  const nm = BigInt(Math.round(mm * 1e6));
  const inch = fineness.startsWith("1/");
  const step = inch ? 25_400_000n / BigInt(fineness.slice(2)) : BigInt(Math.round(parseFloat(fineness) * 1e6));
  let n = nm / step;
  const twice = (nm % step) * 2n;
  if (twice > step || (twice === step && n % 2n === 1n)) n += 1n;
  if (!inch) return `${Number(n * step) / 1e6} mm`;
  let [whole, part, parts] = [n / BigInt(fineness.slice(2)), n % BigInt(fineness.slice(2)), BigInt(fineness.slice(2))];
  while (part > 0n && part % 2n === 0n) [part, parts] = [part / 2n, parts / 2n];
  return `${[whole > 0n || part === 0n ? String(whole) : "", part > 0n ? `${part}/${parts}` : ""].filter(Boolean).join(" ")} in`;
}

const plain = (s) => s.replace(/\s+/g, " ").trim();

const underWay = / under way$/;

/** What the command line derives: of a piece under way from its file with the journal beside it, else from its text. */
async function derived({ id, name }) {
  if (underWay.test(name)) {
    return JSON.parse(session.run(["derive", "--json", `examples/under-way/${name.replace(underWay, "").replaceAll(" ", "-")}.piece.yaml`]));
  }
  const text = await (await fetch(`${session.base}/api/pieces/${id}/text`)).text();
  return JSON.parse(session.run(["derive", "--json", "-"], text));
}

async function each(look) {
  const { page, close } = await open(session);
  for (const piece of await session.pieces()) await look(page, piece.id, await derived(piece));
  await close();
}

test("EveryPipesTagAndCutStandOnThePageAsDerived", () => each(async (page, id, build) => {
  await visit(session, page, `/pieces/${id}/shape`);
  const shown = await page.$$eval("tr[data-tag]", (rows) => rows.map((r) => [r.dataset.tag, r.querySelector(".measure")?.textContent ?? "", r.cells[2].textContent]));
  const want = ["panel", "pipe", "fitting", "hardware"].flatMap((kind) => build.parts.filter((p) => p.kind === kind)).map((p) => [
    p.tag,
    p.cut_mm !== undefined ? printed(p.cut_mm, build.fineness)
      : p.finished_mm ? p.finished_mm.map((v) => printed(v, build.fineness)).join(" × ").replaceAll(/ (in|mm)(?= ×)/g, "") : "",
    String(p.count),
  ]);
  assert.deepEqual(shown.map((r) => r.map(plain)), want, id);
}));

test("EveryFindingStandsOnThePageWorstFirst", () => each(async (page, id, build) => {
  await visit(session, page, `/pieces/${id}/findings`);
  const shown = await page.$$eval(".finding", (all) => all.map((f) => [
    f.dataset.verdict, f.querySelector("h2").textContent.toLowerCase(), f.querySelector(".figure-value")?.textContent ?? "",
  ]));
  const order = ["fails", "unknown", "tight", "stands"];
  const want = order.flatMap((v) => build.findings.filter((f) => f.verdict === v))
    .map((f) => [f.verdict, `${f.check} ${f.place ?? ""}`.trim().toLowerCase(), f.figure?.shown ?? ""]);
  assert.deepEqual(shown.map((r) => r.map(plain)), want.map((r) => r.map(plain)), id);
}));

test("TheTotalIsTheQuoteOfTheDerivedPiece", () => each(async (page, id, build) => {
  await visit(session, page, `/pieces/${id}/price`);
  const shown = await page.textContent("[data-total]");
  const want = build.price.total === null ? "not known" : new Intl.NumberFormat("en-GB", { style: "currency", currency: build.currency }).format(build.price.total);
  assert.equal(shown, want, id);
}));

test("EveryStepOfTheWorkStandsInOrder", () => each(async (page, id, build) => {
  await visit(session, page, `/pieces/${id}/work`);
  const shown = await page.$$eval(".step h2", (all) => all.map((h) => h.textContent));
  assert.deepEqual(shown.map(plain), build.steps.map((s) => plain(`Step ${s.n}: ${s.title}`)), id);
}));

test("TheUnitsChosenAreTheUnitsShown", async () => {
  const { page, close } = await open(session);
  const [{ id }] = await session.pieces();
  await visit(session, page, `/pieces/${id}/shape`);
  for (const [word, unit] of [["metric", "mm"], ["inch", "in"]]) {
    await page.selectOption(".pick select", word);
    await page.waitForFunction((u) => [...document.querySelectorAll("tr[data-tag] .measure")].filter((m) => m.textContent).every((m) => m.textContent.endsWith(` ${u}`)), unit);
    const build = await session.json(`/api/pieces/${id}/build?units=${word}`);
    const pipe = build.parts.find((p) => p.cut_mm !== undefined);
    assert.equal(plain(await page.textContent(`tr[data-tag="${pipe.tag}"] .measure`)), printed(pipe.cut_mm, build.fineness));
  }
  await close();
});

/** The example that the command line gives for a question, as inputs by name. */
function example(topic) {
  const words = /^example: rodwright answer \S+ (.*)$/m.exec(session.run(["answer", topic, "--help"]))[1];
  return Object.fromEntries([...words.matchAll(/([a-z_]+)=(?:"([^"]*)"|(\S+))/g)].map(([, name, quoted, bare]) => [name, quoted ?? bare]));
}

test("EveryQuestionAnswersItsExampleAsTheCommandLineDoes", async () => {
  const { topics } = await session.json("/api/answers");
  assert.ok(topics.length >= 30, `${topics.length} questions`);
  const { page, wrong, close } = await open(session);
  await visit(session, page, "/answers");
  for (const { topic, question } of topics) {
    await page.click(`.topics a[href="/answers/${topic}"]`);
    await page.waitForFunction((q) => document.querySelector(".question h2")?.textContent.toLowerCase() === q.toLowerCase(), question);
    const inputs = example(topic);
    for (const [name, value] of Object.entries(inputs)) {
      const field = page.locator(`.question [name="${name}"]`);
      if (await field.evaluate((f) => f.tagName === "SELECT")) await field.selectOption(value);
      else await field.fill(value);
    }
    await page.locator(".question button[type=submit]").focus();
    await page.keyboard.press("Enter");
    const got = await page.textContent(".answer-first b, .question [role=alert]");
    const want = JSON.parse(session.run(["answer", topic, ...Object.entries(inputs).map(([n, v]) => `${n}=${v}`), "--json"]));
    assert.equal(plain(got), plain(want.answers[0].shown), topic);
  }
  assert.deepEqual(wrong, []);
  await close();
});
