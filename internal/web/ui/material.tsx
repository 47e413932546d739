// Material: what to take and what to buy, and how every board and stick is cut.

import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { query } from "./asking";
import { unitsWord } from "./choices";
import { AtTheSaw, stockOf, WhatIf, Went } from "./cutting";
import { couldSave, Deeper } from "./deeper";
import { Sheet } from "./drawing";
import { Frac } from "./frac";
import { MadeParts } from "./made";
import { Here } from "./parts";
import type { PieceProps } from "./piece";
import { type Reading, useJSON, useLasting } from "./reading";
import type { Build, Buy, Cutting, CuttingLine, DrawingLine, Drawings, Layout, Supply } from "./types";
import { counted, money, priced, rounded, sentence } from "./words";

/** How much of something: 8; 13.33 board feet; 285 ml. */
function measured(n: number, unit: string): string {
  if (unit === "each") return rounded(n, 2); // a count needs no unit
  if (unit === "board foot") return `${rounded(n, 2)} board ${n === 1 ? "foot" : "feet"}`;
  return `${rounded(n, n < 10 ? 2 : 0)} ${unit}`;
}

/** What is bought: 8; 48 board feet; 1 pack of 100; 2 × 750 ml. */
function bought(b: Buy): string {
  if (b.pack <= 1) return measured(b.count, b.unit);
  return b.unit === "each" ? `${counted(b.count, "pack")} of ${rounded(b.pack, 2)}` : `${rounded(b.count, 2)} × ${measured(b.pack, b.unit)}`;
}

function BuyTable({ build }: { build: Build }): VNode {
  const racked = build.buy.some((b) => b.from_rack > 0);
  const row = (b: Buy): VNode => (
    <tr key={b.item}>
      <th scope="row"><Frac text={sentence(b.name)} /></th>
      <td class="num">
        <b>{bought(b)}</b>
        {b.needed !== b.count && <div class="soft">{measured(b.needed, b.unit)} needed</div>}
      </td>
      <td class="num">{money(b.price, build.currency)}</td>
      {racked && <td class="num">{b.from_rack > 0 ? measured(b.from_rack, b.unit) : "–"}</td>}
    </tr>
  );
  return (
    <div class="table-wrap" role="region" aria-label="The list" tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">What</th><th scope="col" class="num">To buy</th><th scope="col" class="num">Price</th>
            {racked && <th scope="col" class="num">From the rack</th>}
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
      <h3><Frac text={sentence(s.name)} /> <span class="soft">{s.unit === "kg" && s.quantity < 1 ? measured(s.quantity * 1000, "g") : measured(s.quantity, s.unit)}, for {s.for.join(", ")}</span></h3>
      {s.cautions.length > 0 && <ul class="cautions">{s.cautions.map((c) => <li key={c}>{sentence(c)}</li>)}</ul>}
    </li>
  );
}

function proof(l: Layout): string {
  if (l.not_placed.length > 0) return `${counted(l.not_placed.length, "part")} found no place.`;
  return couldSave({ ...l, boundOf: l.bound_of });
}

/** An id as the drawings write it: a–z, 0–9 and -. */
function slug(words: string): string {
  return words.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "");
}

/** The drawings of a layout: how its stock is cut, and its panels as they are glued. */
function drawnOf(all: readonly DrawingLine[], name: string, l: Layout): DrawingLine[] {
  const cut = new RegExp(`^cut-${slug(name)}-\\d+$`);
  const glued = new Set((l.panels ?? []).flatMap((p) => [`glue-${slug(p.tag)}`, `glue-${slug(p.tag.replace(/\..*/, ""))}`]));
  return all.filter((d) => (d.kind === "cut" ? cut.test(d.id) : d.kind === "glue" && glued.has(d.id)));
}

/** The drawings as they are listed for sheets of a width, with that width: the last list stays until another has come. */
function useListed(id: string, wide: number): Reading<Drawings & { wide: number }> {
  const now = useJSON<Drawings>(`/api/pieces/${encodeURIComponent(id)}/drawings${query({ units: unitsWord(), width: wide > 0 ? String(wide) : "" })}`);
  return useLasting({ ...now, value: now.value && { ...now.value, wide } });
}

interface LayoutProps extends PieceProps { name: string; kind: "panel" | "sheet" | "stick"; l: Layout; line: CuttingLine | undefined }

function LayoutOf({ id, base, build, name, kind, l, line }: LayoutProps): VNode {
  const [wide, setWide] = useState(0);
  const drawings = useListed(id, wide);
  return (
    <li class="layout">
      <div class="layout-words">
        <h3><Frac text={kind === "stick" ? `Pipe ${name}` : sentence(name.replaceAll("-", " "))} /> <span class="soft">{stockOf(kind, l.used.length)}, {money(l.cost, build.currency)}</span></h3>
        <p class={l.proven ? "proof" : "proof is-open"}>{proof(l)}</p>
        <Deeper id={id} base={base} build={build} kind={kind} name={name} l={l} />
        {line && <Went line={line} />}
        {line?.cost && <p class="soft"><Frac text={priced(line.cost)} /></p>}
        {line?.why && <p><span class="soft">Why not fewer?</span> <Frac text={priced(line.why)} /></p>}
        {line && <AtTheSaw id={id} line={line} />}
        {line && <WhatIf id={id} line={line} />}
      </div>
      <Here from={drawings} what="the drawings">
        {(all) => <div class="sheets">{drawnOf(all.drawings, name, l).map((d) => <Sheet key={d.id} piece={id} drawing={d} listed={all.wide} wide={setWide} />)}</div>}
      </Here>
    </li>
  );
}

/** The stage Material. */
export function MaterialPage({ id, base, build }: PieceProps): VNode {
  const at = `/api/pieces/${encodeURIComponent(id)}`;
  const cutting = useLasting(useJSON<Cutting>(`${at}/cutting${query({ units: unitsWord() })}`));
  const layouts = (["panel", "sheet", "stick"] as const).flatMap((kind) => Object.entries(build.cut[kind] ?? {}).map(([name, l]) => ({ kind, name, l })));
  return (
    <div class="material">
      <MadeParts id={id} build={build} />
      <section aria-labelledby="buy"><h2 id="buy">To take and to buy</h2><BuyTable build={build} /></section>
      {build.supplies.length > 0 && (
        <section aria-labelledby="supplies"><h2 id="supplies">Glue and finish</h2><ul class="supplies">{build.supplies.map((s) => <SupplyOne key={s.name} s={s} />)}</ul></section>
      )}
      <section aria-labelledby="layouts" class="layouts-of">
        <h2 id="layouts">How it is cut</h2>
        {layouts.length === 0 && <p>{build.parts.some((p) => p.states) ? "Nothing is left to cut." : "Nothing is cut for this piece."}</p>}
        {cutting.trouble && <p class="note" role="status">{cutting.trouble.message}</p>}
        <ul class="layouts">
          {layouts.map((x) => (
            <LayoutOf key={x.kind + x.name} id={id} base={base} build={build} {...x} line={cutting.value?.layouts.find((c) => c.kind === x.kind && c.material === x.name)} />
          ))}
        </ul>
      </section>
    </div>
  );
}
