// The parts that are made, each as it is now: its state, its size and what is still to be done to it.

import type { VNode } from "preact";
import { unitsWord } from "./choices";
import { Frac } from "./frac";
import { across, type Fineness, fineness, text } from "./length";
import { useJSON, useLasting } from "./reading";
import type { Build, Goods, Thing, Things } from "./types";
import { addressOf } from "./underway";
import { counted, rounded, sentence } from "./words";

const mostShown = 12; // parts; the rest is folded

function sizeOf(t: Thing, f: Fineness): string {
  const set = t.size.filter((mm) => mm > 0);
  return set.length === 0 ? "" : set.length === 1 ? text(set[0] ?? 0, f) : across(set, f);
}

function ThingRow({ t, f }: { t: Thing; f: Fineness }): VNode {
  return (
    <tr class={t.spoiled ? "is-gone" : ""} data-thing={t.label}>
      <th scope="row"><span class="tag">{t.label}</span></th>
      <td>{t.place ? <Frac text={sentence(t.place)} /> : "On the rack"} <span class="soft">{t.kind === "pipe" ? `pipe ${t.material}` : t.material}</span></td>
      <td>{t.spoiled ? <>spoiled <span class="soft"><Frac text={t.spoiled} /></span></> : t.state}</td>
      <td><Frac text={sizeOf(t, f)} /> <span class="soft">{t.measured ? "measured" : "as drawn"}</span></td>
      <td class={t.todo || t.why ? "" : "is-none"}>{t.todo ? <b><Frac text={sentence(t.todo)} /></b> : t.spoiled || t.tag === "" ? "–" : "nothing"}{t.why && <span class="soft"> <Frac text={t.why} /></span>}</td>
    </tr>
  );
}

function goodsWords(g: Goods, f: Fineness): string {
  if (g.kind === "item") return `${rounded(g.count, 2)} × ${g.item}`;
  const set = g.size.filter((mm) => mm > 0);
  const what = g.kind === "stick" ? `stick of pipe ${g.material}` : [g.kind, g.material, g.quarters].filter((w) => w !== "").join(" ");
  return `${what}, ${set.length === 1 ? text(set[0] ?? 0, f) : across(set, f)}`;
}

function GoodsRow({ g, f }: { g: Goods; f: Fineness }): VNode {
  return (
    <li>{g.tag && <><b class="tag">{g.tag}</b> </>}<Frac text={goodsWords(g, f)} />{g.kind !== "item" && <span class="soft">, left of it <Frac text={text(g.left, f)} /></span>}</li>
  );
}

/** Parts of which nothing is made yet, by how far they are: bought or planned. */
function Rest({ build, things }: { build: Build; things: readonly Thing[] }): VNode {
  const rest = build.parts.filter((p) => p.kind === "panel" || p.kind === "pipe")
    .flatMap((p) => p.tags.map((tag, i) => ({ tag, state: p.states?.[i] ?? p.state ?? "planned" })))
    .filter((p) => !things.some((t) => t.tag === p.tag));
  const states = [...new Set(rest.map((p) => p.state))];
  return (
    <>
      {states.map((s) => <p key={s}><b>{s === "bought" ? "Not begun, stock bought" : s === "planned" ? "Not begun" : sentence(s)}:</b> {rest.filter((p) => p.state === s).map((p) => p.tag).join(", ")}</p>)}
    </>
  );
}

/** A table of parts; what is still to be done to one stands out. */
function Table({ things, f }: { things: readonly Thing[]; f: Fineness }): VNode {
  return (
    <table>
      <thead><tr><th scope="col">Tag</th><th scope="col">For</th><th scope="col">State</th><th scope="col">Size</th><th scope="col">Still to be done</th></tr></thead>
      <tbody>{things.map((t) => <ThingRow key={t.id} t={t} f={f} />)}</tbody>
    </table>
  );
}

/** The parts that are made: first those that are still to be put right, and of many the rest folded. */
function MadeTable({ things, f }: { things: readonly Thing[]; f: Fineness }): VNode {
  const sorted = [...things.filter((t) => t.todo), ...things.filter((t) => !t.todo)];
  const shown = sorted.length > mostShown ? Math.max(mostShown, things.filter((t) => t.todo).length) : sorted.length;
  return (
    <div class="table-wrap" role="region" aria-label="Parts that are made" tabIndex={0}>
      <h3>{sentence(counted(things.filter((t) => !t.spoiled).length, "part"))} made</h3>
      <Table things={sorted.slice(0, shown)} f={f} />
      {sorted.length > shown && <details class="fold"><summary>{sorted.length - shown} more</summary><Table things={sorted.slice(shown)} f={f} /></details>}
    </div>
  );
}

/** What is made and what is bought; nothing is shown where there is neither. */
export function MadeParts({ id, build }: { id: string; build: Build }): VNode | null {
  const read = useLasting(useJSON<Things>(addressOf(id, "things", { units: unitsWord() })));
  const f = fineness(build.fineness);
  const { things = [], goods = [] } = read.value ?? {};
  if (things.length + goods.length === 0) return null;
  return (
    <section class="made" aria-labelledby="made">
      <h2 id="made">What there is already</h2>
      {things.length > 0 && <MadeTable things={things} f={f} />}
      <Rest build={build} things={things} />
      {goods.length > 0 && <><h3>Bought for it</h3><ul class="plain bought">{goods.map((g) => <GoodsRow key={g.id} g={g} f={f} />)}</ul></>}
    </section>
  );
}
