// Many sentences at once: what is told of several parts in the same words is told once, and the weightiest are seen first.

import type { VNode } from "preact";
import { Frac } from "./frac";
import { counted, sentence } from "./words";

const mostShown = 6; // the rest is folded

/** A sentence about one part: its tag, its place where that is told, and what is told of it. */
const ofPart = /^([A-Z]\d+\.\d+[a-z]?)(, [^:]*)?(:.*| goes to the rack\.)$/;

interface Told { labels: string[]; place: string; rest: string }

/** C5.2: fitted. C5.3: fitted. becomes C5.2, C5.3: fitted. */
function together(words: readonly string[]): string[] {
  const all = new Map<string, Told>();
  for (const w of words) {
    const [, label, place = "", rest = w] = ofPart.exec(w) ?? [];
    const told = all.get(rest) ?? { labels: [], place, rest };
    if (label) told.labels.push(label);
    all.set(rest, told);
  }
  return [...all.values()].map(({ labels, place, rest }) => (labels.length > 1 ? labels.join(", ") + rest.replace(/^ goes /, " go ") : (labels[0] ?? "") + place + rest));
}

/** The sentences as a list. */
export function Sentences({ all }: { all: readonly string[] }): VNode {
  const rows = together(all).map((x, i) => <li key={i}><Frac text={sentence(x)} /></li>);
  return (
    <>
      <ul class="sentences">{rows.slice(0, mostShown)}</ul>
      {rows.length > mostShown && <details class="fold"><summary>{counted(rows.length - mostShown, "more sentence")}</summary><ul class="sentences">{rows.slice(mostShown)}</ul></details>}
    </>
  );
}
