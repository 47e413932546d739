// Comparing two moments of a piece: what differs between them, in words and in figures.

import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { unitsWord } from "./choices";
import { apart, Inline } from "./drawing";
import { fineness } from "./length";
import { Here } from "./parts";
import { useJSON, useLasting } from "./reading";
import { Groups } from "./ripple";
import type { Build, Compared, Log, Moment as MomentOf } from "./types";
import { Sentences } from "./sentences";
import { addressOf } from "./underway";
import { sentence } from "./words";

const longest = 60; // letters of an entry in the list of moments

function moment(log: Log, n: number): string {
  if (n === 0) return "0: the beginning";
  const words = sentence(log.entries.find((e) => e.number === n)?.words ?? "");
  const short = words.length > longest ? `${words.slice(0, longest)}…` : words;
  return `${n}: ${short}${n === log.number ? " (now)" : ""}`;
}

function Moment({ name, log, value, set }: { name: string; log: Log; value: number; set: (n: number) => void }): VNode {
  const key = `compare-${name}`;
  return (
    <div class="ask">
      <label for={key}>{sentence(name)}</label>
      <select id={key} value={value} onChange={(e) => set(Number(e.currentTarget.value))}>
        {Array.from({ length: log.number + 1 }, (_, n) => <option key={n} value={n} selected={n === value}>{moment(log, n)}</option>)}
      </select>
    </div>
  );
}

/** How the piece looked from the front at a moment. */
function Then({ id, n, word, title }: { id: string; n: number; word: string; title: string }): VNode {
  const read = useLasting(useJSON<MomentOf>(addressOf(id, `moments/${n}`, { units: unitsWord() })));
  return (
    <figure class="sheet" data-moment={n}>
      <Here from={read} what={`the piece ${title}`}>{(m) => <Inline svg={apart(m.views.front, word)} />}</Here>
      <figcaption><span class="sheet-title">{sentence(title)}</span></figcaption>
    </figure>
  );
}

/** The piece at both moments, side by side. */
function Both({ id, from, to, last }: { id: string; from: number; to: number; last: number }): VNode {
  const [large, setLarge] = useState(false);
  const titled = (n: number): string => (n === last ? "as it stands now" : n === 0 ? "as it began" : `as it stood after entry ${n}`);
  return (
    <div class={large ? "compare-views is-large" : "compare-views"}>
      {to !== from && <button type="button" class="compare-large" onClick={() => setLarge(!large)}>{large ? "Side by side" : "Larger, one below the other"}</button>}
      <Then key={`from ${from}`} id={id} n={from} word="from" title={titled(from)} />
      {to !== from && <Then key={`to ${to}`} id={id} n={to} word="to" title={titled(to)} />}
    </div>
  );
}

function Difference({ id, from, to, build }: { id: string; from: number; to: number; build: Build }): VNode {
  const read = useLasting(useJSON<Compared>(addressOf(id, "compare", { from: String(from), to: String(to), units: unitsWord() })));
  return (
    <Here from={read} what="the comparison">
      {(c) => (
        <div class="compared" role="group" aria-label={`From ${c.from} to ${c.to}`}>
          {c.words.length === 0 ? <p>Nothing differs.</p> : <Sentences all={c.words} />}
          <Groups ripple={c.ripple} f={fineness(build.fineness)} />
        </div>
      )}
    </Here>
  );
}

/** The two moments that are compared; to is undefined for now, whatever comes. */
export interface Span { readonly from: number; readonly to: number | undefined }

/** The part of the page where two moments are compared. */
export function ComparePart({ id, build, log, span: { from, to }, set }: { id: string; build: Build; log: Log; span: Span; set: (s: Span) => void }): VNode {
  const end = Math.min(to ?? log.number, log.number);
  return (
    <section class="compare" aria-labelledby="compare-title">
      <h2 id="compare-title">Compare two moments</h2>
      {log.number === 0 ? <p>There is one moment only, the beginning: nothing was changed yet.</p> : (
        <>
          <div class="compare-ways">
            <Moment name="from" log={log} value={from} set={(n) => set({ from: n, to })} />
            <Moment name="to" log={log} value={end} set={(n) => set({ from, to: n === log.number ? undefined : n })} />
          </div>
          <Both id={id} from={from} to={end} last={log.number} />
          {from === end ? <p>Both are the same moment.</p> : <Difference id={id} from={from} to={end} build={build} />}
        </>
      )}
    </section>
  );
}
