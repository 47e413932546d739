// Material: what to take and what to buy, and how every board and stick is cut.

import type { VNode } from "preact";
import { query } from "./asking";
import { unitsWord } from "./choices";
import { Sheet } from "./drawing";
import { Frac } from "./frac";
import { bare, type Fineness, fineness, text } from "./length";
import { MadeParts } from "./made";
import { Here } from "./parts";
import type { PieceProps } from "./piece";
import { useJSON, useLasting } from "./reading";
import type { Build, Buy, Drawings, Layout, Supply } from "./types";
import { counted, money, percent, rounded, sentence } from "./words";

function BuyTable({ build }: { build: Build }): VNode {
  const racked = build.buy.some((b) => b.from_rack > 0);
  const row = (b: Buy): VNode => {
    const measured = b.unit !== "each"; // a count needs no unit
    return (
      <tr key={b.item}>
        <th scope="row"><Frac text={sentence(b.item)} /></th>
        <td class="num"><b>{rounded(b.count, 2)}</b></td>
        <td>{b.pack > 1 ? `pack of ${rounded(b.pack, 2)}${measured ? ` ${b.unit}` : ""}` : b.unit}</td>
        <td class="num">{money(b.price, build.currency)}</td>
        <td class="num">{rounded(b.needed, 2)}{measured && ` ${b.unit}`}</td>
        {racked && <td class="num">{b.from_rack > 0 ? rounded(b.from_rack, 2) : "–"}</td>}
      </tr>
    );
  };
  return (
    <div class="table-wrap" role="region" aria-label="The list" tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">What</th><th scope="col" class="num">To buy</th><th scope="col">By the</th><th scope="col" class="num">Price</th>
            <th scope="col" class="num">Needed</th>{racked && <th scope="col" class="num">From the rack</th>}
          </tr>
        </thead>
        <tbody>{build.buy.map(row)}</tbody>
      </table>
    </div>
  );
}

function SupplyOne({ s }: { s: Supply }): VNode {
  return (
    <li>
      <h3><Frac text={sentence(s.name)} /> <span class="soft">{rounded(s.quantity, s.quantity < 1 ? 3 : 0)} {s.unit}, for {s.for.join(", ")}</span></h3>
      {s.cautions.length > 0 && <ul class="cautions">{s.cautions.map((c) => <li key={c}>{sentence(c)}</li>)}</ul>}
    </li>
  );
}

function proof(l: Layout): string {
  if (l.not_placed.length > 0) return `${counted(l.not_placed.length, "part")} found no place.`;
  if (l.proven) return "Proven: no layout of this stock costs less.";
  return `Within ${percent(l.gap)} of the least that could be proven possible.`;
}

/** Lengths for sticks, areas for boards and sheets. */
function wasted(v: number, kind: string, f: Fineness): string {
  if (kind === "stick") return text(v, f);
  return f.unit === "in" ? `${rounded(v / 645.16, 0)} sq in` : `${rounded(v / 1e6, 3)} m²`;
}

function Waste({ l, kind, f }: { l: Layout; kind: string; f: Fineness }): VNode {
  const all: [string, number][] = [
    ["Saw", l.waste.kerf], ["Trim", l.waste.trim], ["Defects", l.waste.defect], ["Left, of use", l.waste.leftover_useful], ["Left, lost", l.waste.leftover_lost],
  ];
  return (
    <dl class="waste">
      {all.filter(([, v]) => v > 0).map(([name, v]) => <div key={name}><dt>{name}</dt><dd><Frac text={wasted(v, kind, f)} /></dd></div>)}
    </dl>
  );
}

function Cuts({ l, f }: { l: Layout; f: Fineness }): VNode {
  return (
    <details class="fold">
      <summary>Cuts in order ({l.cuts.length})</summary>
      <ol class="cuts">
        {l.cuts.map((c) => (
          <li key={c.n} value={c.n}>
            <span>{sentence(c.machine)} <Frac text={c.on} />: set <b><Frac text={`${bare(c.setting, f)} ${f.unit}`} /></b></span>{" "}
            <span class="soft">{c.makes.length > 0 ? `makes ${c.makes.join(", ")}` : "nothing to keep"}</span>
          </li>
        ))}
      </ol>
    </details>
  );
}

function LayoutOf({ name, kind, l, f, currency }: { name: string; kind: string; l: Layout; f: Fineness; currency: string }): VNode {
  return (
    <li class="layout">
      <h3><Frac text={kind === "stick" ? `Pipe ${name}` : sentence(name)} /> <span class="soft">{counted(l.used.length, kind === "stick" ? "stick" : kind === "sheet" ? "sheet" : "board")}, {money(l.cost, currency)}</span></h3>
      <p class={l.proven ? "proof" : "proof is-open"}>{proof(l)}</p>
      <Waste l={l} kind={kind} f={f} />
      <Cuts l={l} f={f} />
    </li>
  );
}

/** The stage Material. */
export function MaterialPage({ id, build }: PieceProps): VNode {
  const drawings = useLasting(useJSON<Drawings>(`/api/pieces/${encodeURIComponent(id)}/drawings${query({ units: unitsWord() })}`));
  const f = fineness(build.fineness);
  const drawn = drawings.value?.drawings.some((d) => d.kind === "cut" || d.kind === "glue");
  const layouts = (["panel", "sheet", "stick"] as const).flatMap((kind) => Object.entries(build.cut[kind] ?? {}).map(([name, l]) => ({ kind, name, l })));
  return (
    <div class="material">
      <MadeParts id={id} build={build} />
      <section aria-labelledby="buy"><h2 id="buy">To take and to buy</h2><BuyTable build={build} /></section>
      {build.supplies.length > 0 && (
        <section aria-labelledby="supplies"><h2 id="supplies">Glue and finish</h2><ul class="supplies">{build.supplies.map((s) => <SupplyOne key={s.name} s={s} />)}</ul></section>
      )}
      <section aria-labelledby="layouts">
        <h2 id="layouts">How it is cut</h2>
        {layouts.length === 0 && <p>{build.parts.some((p) => p.states) ? "Nothing is left to cut." : "Nothing is cut for this piece."}</p>}
        <ul class="layouts">{layouts.map((x) => <LayoutOf key={x.kind + x.name} {...x} f={f} currency={build.currency} />)}</ul>
      </section>
      {(layouts.length > 0 || drawn) && <section aria-labelledby="layout-drawings" class="layout-drawings">
        <h2 id="layout-drawings">Boards, sticks and strips</h2>
        <Here from={drawings} what="the drawings">
          {(all) => {
            const shown = all.drawings.filter((d) => d.kind === "cut" || d.kind === "glue");
            return shown.length === 0 ? <p>There is no layout to draw.</p> : <div class="sheets">{shown.map((d) => <Sheet key={d.id} piece={id} drawing={d} />)}</div>;
          }}
        </Here>
      </section>}
    </div>
  );
}
