// The ways out when something went wrong with a part, the cheapest first.

import type { VNode } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { Frac } from "./frac";
import type { Build, WayOut, WaysOut } from "./types";
import { counted, hours, more, pathWords, sentence } from "./words";

function Way({ w, currency, take, busy }: { w: WayOut; currency: string; take: () => void; busy: boolean }): VNode {
  const moves = [...w.edits.map((e) => `${pathWords(e.path)} becomes ${e.new}`), ...w.weighed.words];
  return (
    <li class="way-out" data-kind={w.kind}>
      <div>
        <h3><Frac text={sentence(w.words)} /></h3>
        <p>
          <b>{w.cents === null ? "cost not known" : more(w.cents, currency)}</b>
          <span class="soft">{w.handsH > 0 ? `, ${hours(w.handsH)} of hands more` : ""}{w.days > 0 ? `, ${counted(w.days, "day")} more` : ""}</span>
        </p>
        {w.shows.length > 0 && <p>Shows: {w.shows.join("; ")}.</p>}
        {moves.length > 0 && (
          <details class="fold">
            <summary>What it changes ({moves.length})</summary>
            <ul class="plain">{moves.map((m) => <li key={m}><Frac text={sentence(m)} /></li>)}</ul>
          </details>
        )}
      </div>
      <button type="button" disabled={busy} onClick={take} aria-label={`Take this: ${w.words}`}>Take this</button>
    </li>
  );
}

/** The list of ways; nothing is stored before one is taken or the fault is only noted. */
export function Ways({ found, build, take, note, drop, busy }: {
  found: WaysOut; build: Build; take: (w: WayOut) => void; note: () => void; drop: () => void; busy: boolean;
}): VNode {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus({ preventScroll: true }), [found]);
  return (
    <div class="ways-out" role="group" aria-labelledby="ways-title" onKeyDown={(e) => { if (e.key === "Escape") { e.preventDefault(); drop(); } }}>
      <h3 id="ways-title" ref={head} tabIndex={-1}>{found.ways.length === 0 ? "No way out was found" : counted(found.ways.length, "way out", "ways out")}</h3>
      <p class="soft"><Frac text={sentence(found.fact)} />. Nothing is stored yet.</p>
      <ol>{found.ways.map((w, i) => <Way key={i} w={w} currency={build.currency} busy={busy} take={() => take(w)} />)}</ol>
      <p class="ways">
        <button type="button" disabled={busy} onClick={note}>Only note it</button>
        <button type="button" onClick={drop}>Drop it <kbd>Esc</kbd></button>
      </p>
    </div>
  );
}
