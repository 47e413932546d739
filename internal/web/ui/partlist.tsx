// The parts of a piece with their tags and the length each is cut to.

import type { VNode } from "preact";
import { Frac } from "./frac";
import { across, type Fineness, fineness, text } from "./length";
import type { Build, Part } from "./types";
import { kilograms, sentence } from "./words";

const kinds: readonly (readonly [Part["kind"], string])[] = [
  ["panel", "Panels"], ["pipe", "Pipe"], ["fitting", "Fittings"], ["hardware", "Screws and what else is bought"],
];

function measure(p: Part, f: Fineness): string {
  if (p.cut_mm !== undefined) return text(p.cut_mm, f);
  if (p.finished_mm) return across(p.finished_mm, f);
  return "";
}

function note(p: Part): string {
  if (p.kind === "pipe") {
    const from = `pipe ${p.material}, ${(p.ends ?? []).join(" to ")}, from ${p.from ?? "stick"}`;
    return p.from_why ? `${from}, ${p.from_why}` : from;
  }
  if (p.kind === "panel") return `${p.material} ${p.rough ?? ""}, ${p.sits ?? ""}`;
  return p.kind === "fitting" ? `for pipe ${p.material}` : p.material;
}

function Row({ p, f, sized }: { p: Part; f: Fineness; sized: boolean }): VNode {
  return (
    <tr data-tag={p.tag}>
      <th scope="row"><span class="tag">{p.tag}</span></th>
      <td><Frac text={sentence(p.name)} /> <span class="soft"><Frac text={note(p)} /></span></td>
      <td class="num">{p.count}</td>
      {sized && <td class="num measure"><Frac text={measure(p, f)} /></td>}
      <td class="num">{kilograms(p.mass_kg * p.count)}</td>
    </tr>
  );
}

/** The list, a table a kind. */
export function PartList({ build }: { build: Build }): VNode {
  const f = fineness(build.fineness);
  return (
    <div class="tables">
      {kinds.map(([kind, title]) => {
        const all = build.parts.filter((p) => p.kind === kind);
        if (all.length === 0) return null;
        const sized = all.some((p) => measure(p, f) !== "");
        return (
          <div key={kind} class="table-wrap" role="region" aria-label={title} tabIndex={0}>
            <table>
              <caption>{title}</caption>
              <thead>
                <tr>
                  <th scope="col">Tag</th><th scope="col">Part</th><th scope="col" class="num">Count</th>
                  {sized && <th scope="col" class="num">{kind === "pipe" ? "Cut to" : kind === "panel" ? "Finished" : "Size"}</th>}<th scope="col" class="num">Weight</th>
                </tr>
              </thead>
              <tbody>{all.map((p) => <Row key={p.tag} p={p} f={f} sized={sized} />)}</tbody>
            </table>
          </div>
        );
      })}
    </div>
  );
}
