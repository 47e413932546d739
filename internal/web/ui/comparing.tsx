// Comparing two moments of a piece: what differs between them, in words and in figures.

import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { unitsWord } from "./choices";
import { Frac } from "./frac";
import { fineness } from "./length";
import { Here } from "./parts";
import { useJSON, useLasting } from "./reading";
import { Groups } from "./ripple";
import type { Build, Compared, Log } from "./types";
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

function Difference({ id, from, to, build }: { id: string; from: number; to: number; build: Build }): VNode {
  const read = useLasting(useJSON<Compared>(addressOf(id, "compare", { from: String(from), to: String(to), units: unitsWord() })));
  return (
    <Here from={read} what="the comparison">
      {(c) => (
        <div class="compared" role="group" aria-label={`From ${c.from} to ${c.to}`}>
          {c.words.length === 0 ? <p>Nothing differs.</p> : <ul class="plain">{c.words.map((w, i) => <li key={i}><Frac text={sentence(w)} /></li>)}</ul>}
          <Groups ripple={c.ripple} f={fineness(build.fineness)} />
        </div>
      )}
    </Here>
  );
}

/** The part of the page where two moments are compared. */
export function ComparePart({ id, build, log }: { id: string; build: Build; log: Log }): VNode {
  const [from, setFrom] = useState(0);
  const [to, setTo] = useState<number | undefined>(undefined); // undefined: now, whatever comes
  const end = Math.min(to ?? log.number, log.number);
  return (
    <section class="compare" aria-labelledby="compare-title">
      <h2 id="compare-title">Compare two moments</h2>
      {log.number === 0 ? <p>There is one moment only, the beginning: nothing was changed yet.</p> : (
        <>
          <div class="compare-ways">
            <Moment name="from" log={log} value={from} set={setFrom} />
            <Moment name="to" log={log} value={end} set={(n) => setTo(n === log.number ? undefined : n)} />
          </div>
          {from === end ? <p>Both are the same moment.</p> : <Difference id={id} from={from} to={end} build={build} />}
        </>
      )}
    </section>
  );
}
