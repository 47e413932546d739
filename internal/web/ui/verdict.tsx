// Verdicts, told by a shape and a word, never by colour alone.

import type { VNode } from "preact";
import type { Finding, Verdict } from "./types";

export const verdicts: readonly Verdict[] = ["fails", "unknown", "tight", "stands"]; // worst first

/** The word of a verdict. */
export function verdictWord(v: Verdict): string {
  return v === "unknown" ? "not known" : v;
}

/** So many findings of a verdict, in words: 1 fails, 3 stand. */
export function verdictCount(n: number, v: Verdict): string {
  const several = v === "fails" ? "fail" : v === "stands" ? "stand" : verdictWord(v);
  return `${n} ${n === 1 ? verdictWord(v) : several}`;
}

const shapes: Record<Verdict, VNode> = {
  stands: <path d="M3 8.5 6.5 12.5 13 4" fill="none" stroke="currentColor" stroke-width="2.2" stroke-linecap="round" stroke-linejoin="round" />,
  tight: <path d="M1 3v10l6-5zM15 3v10l-6-5z" fill="currentColor" />,
  fails: <path d="M8 1 15.5 14.5H.5z" fill="currentColor" />,
  unknown: (
    <>
      <circle cx="8" cy="8" r="6.6" fill="none" stroke="currentColor" stroke-width="1.5" stroke-dasharray="2.6 2" />
      <path d="M6 6.2c.2-2.6 4-2.4 4-.1C10 7.6 8 7.700 8 9.200M8 11.200v.6" fill="none" stroke="currentColor" stroke-width="1.5" stroke-linecap="round" />
    </>
  ),
};

/** The shape alone; the word stands beside it. */
export function Shape({ of }: { of: Verdict }): VNode {
  return (
    <svg class={`verdict-shape is-${of}`} viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
      {shapes[of]}
    </svg>
  );
}

/** A verdict: shape and word. */
export function Told({ of }: { of: Verdict }): VNode {
  return (
    <span class={`told is-${of}`}>
      <Shape of={of} />
      <span>{verdictWord(of)}</span>
    </span>
  );
}

/** How many findings have each verdict; what there is none of is left out. */
export function Counts({ of, all = false }: { of: Readonly<Record<Verdict, number>>; all?: boolean }): VNode {
  const shown = verdicts.filter((v) => of[v] > 0 && (all || v !== "stands"));
  if (shown.length === 0) return <span class="counts"><Told of="stands" /></span>;
  return (
    <span class="counts">
      {shown.map((v) => (
        <span key={v} class={`told is-${v}`}>
          <Shape of={v} />
          <span>{verdictCount(of[v], v)}</span>
        </span>
      ))}
    </span>
  );
}

/** Counts findings by verdict. */
export function count(findings: readonly Finding[]): Record<Verdict, number> {
  const n: Record<Verdict, number> = { stands: 0, tight: 0, fails: 0, unknown: 0 };
  for (const f of findings) n[f.verdict]++;
  return n;
}
