// A layout at the saw: where the stock goes, why fewer pieces are not enough, the cuts by setting with a box to tick, and
// what one more piece of stock would change.

import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { query, read, Trouble } from "./asking";
import { unitsWord } from "./choices";
import { Frac } from "./frac";
import type { CuttingLine, OneMore } from "./types";
import { counted, priced, rounded, sentence } from "./words";

/** A share in whole percent, small ones to one digit. */
function share(of: number): string {
  return `${of < 0.01 ? Number((of * 100).toPrecision(1)) : rounded(of * 100, 0)} %`;
}

/** Where the stock goes: a bar whose parts add up to it, and the same in words. */
export function Went({ line }: { line: CuttingLine }): VNode | null {
  if (line.shares.length === 0) return null;
  const said = line.shares.map((s) => `${s.name} ${s.text}, ${share(s.share)}`).join("; ");
  return (
    <div class="went">
      <div class="went-bar" role="img" aria-label={`Of ${line.opened} opened: ${said}.`}>
        {line.shares.map((s) => <span key={s.use} class={`use-${s.use.replace(" ", "-")}`} style={{ flexGrow: s.share }} />)}
      </div>
      <dl class="went-words">
        {line.shares.map((s) => (
          <div key={s.use}>
            <dt><span class={`swatch use-${s.use.replace(" ", "-")}`} aria-hidden="true" />{sentence(s.name)}</dt>
            <dd><Frac text={s.text} /> <span class="soft">{share(s.share)}</span></dd>
          </div>
        ))}
        <div class="is-sum"><dt>Opened</dt><dd><Frac text={line.opened} /></dd></div>
      </dl>
    </div>
  );
}

/** What was ticked of a list on this device, as long as the list stays the same. */
function useTicks(name: string, list: string): [ReadonlySet<string>, (key: string) => void] {
  const [ticks, set] = useState<ReadonlySet<string>>(new Set());
  useEffect(() => {
    try {
      const old = JSON.parse(localStorage.getItem(name) ?? "{}") as { list?: string; ticks?: string[] };
      set(new Set(old.list === list ? old.ticks : []));
    } catch {
      // Storage can be forbidden; then ticks last as long as the page.
    }
  }, [name, list]);
  const turn = (key: string): void => {
    const next = new Set(ticks);
    if (!next.delete(key)) next.add(key);
    set(next);
    try {
      localStorage.setItem(name, JSON.stringify({ list, ticks: [...next] }));
    } catch {
      // As above.
    }
  };
  return [ticks, turn];
}

/** The list that a person follows at the saw. */
export function AtTheSaw({ id, line }: { id: string; line: CuttingLine }): VNode | null {
  const [ticks, turn] = useTicks(`ticks ${id} ${line.kind} ${line.material}`, JSON.stringify(line.runs.map((r) => r.steps.map((s) => [s.on, s.does]))));
  if (line.runs.length === 0) return null;
  const all = line.runs.reduce((n, r) => n + r.steps.length, 0);
  return (
    <details class="fold at-saw">
      <summary><b>At the saw</b> <span class="soft">{ticks.size > 0 ? `${ticks.size} of ${all} ticked` : line.changes}</span></summary>
      <p class="soft">{ticks.size > 0 && `${sentence(line.changes)}. `}<Frac text={line.note} /></p>
      <ul class="cautions">{line.cautions.map((c) => <li key={c}>{c}</li>)}</ul>
      {line.runs.map((r, k) => (
        <section key={k} class={r.every ? "run is-every" : "run"} aria-label={r.head}>
          <h4><Frac text={sentence(r.head)} /></h4>
          <ul>
            {r.steps.map((s, i) => (
              <li key={i}>
                <label>
                  <input type="checkbox" checked={ticks.has(`${k} ${i}`)} onChange={() => turn(`${k} ${i}`)} />
                  {s.n > 0 && <span class="run-n">{s.n}</span>}
                  <span class="run-does"><Frac text={r.every ? s.on : `${s.on}: ${s.does}`} /></span>
                  {!r.every && s.left && <span class="run-left"><Frac text={s.left} /></span>}
                </label>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </details>
  );
}

const nouns: Record<string, string> = { stick: "stick", panel: "board", sheet: "sheet" };

/** What the stock of a kind of layout is called, so many of it. */
export function stockOf(kind: string, n: number): string {
  return counted(n, nouns[kind] ?? kind);
}

/** What one more piece of stock would change, asked of the server when a person wants to know. */
export function WhatIf({ id, line }: { id: string; line: CuttingLine }): VNode {
  const units = unitsWord();
  const [asked, ask] = useState(false);
  const [told, tell] = useState<{ more?: OneMore; trouble?: Trouble }>({});
  const { kind, material } = line;
  useEffect(() => {
    if (!asked) return;
    const leave = new AbortController();
    read<OneMore>(`/api/pieces/${encodeURIComponent(id)}/cutting/more${query({ kind, material, units })}`, leave.signal).then(
      (more) => tell({ more }),
      (e: unknown) => { if (!leave.signal.aborted) tell({ trouble: e instanceof Trouble ? e : new Trouble(0, String(e)) }); },
    );
    return () => leave.abort();
  }, [asked, id, kind, material, units, line]);
  const noun = nouns[kind] ?? kind;
  if (!asked) return <p class="what-if"><button type="button" onClick={() => ask(true)}>What would one more {noun} change?</button></p>;
  const stop = (): void => { ask(false); tell({}); };
  return (
    <div class="what-if" role="status">
      {told.trouble && <p class="note is-wrong">{told.trouble.message}</p>}
      {!told.more && !told.trouble && <p class="waiting">Weighing one more {noun} of each size … <button type="button" onClick={stop}>Stop</button></p>}
      {told.more && (told.more.changes.length === 0 ? <p>There is no other {noun} to weigh.</p> : <ul class="plain">{told.more.words.map((w) => <li key={w}><Frac text={priced(w)} /></li>)}</ul>)}
    </div>
  );
}
