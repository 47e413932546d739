// Findings: each with its verdict, its figure against its limit, why, and the smallest change that mends it.

import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { Picture } from "./drawing";
import { Frac } from "./frac";
import { Assumed } from "./parts";
import type { PieceProps } from "./piece";
import { trialOf } from "./trial";
import type { Because, Finding, Verdict } from "./types";
import { count, Shape, Told, verdictCount, verdicts, verdictWord } from "./verdict";
import { sentence } from "./words";

/** Findings, the worst first, otherwise in the order of the checks. */
export function worstFirst(all: readonly Finding[]): Finding[] {
  return [...all].sort((a, b) => verdicts.indexOf(a.verdict) - verdicts.indexOf(b.verdict));
}

/** A rule with the figure and its limit marked on it, where both are lengths of the same kind. */
function Rule({ of: f }: { of: Finding }): VNode | null {
  if (!f.figure || !f.limit || f.figure.unit !== f.limit.unit) return null;
  const most = Math.max(Math.abs(f.figure.value), Math.abs(f.limit.value));
  if (most === 0 || f.figure.value < 0 || f.limit.value < 0) return null;
  const x = (v: number): number => 4 + (v / (most * 1.08)) * 152;
  return (
    <svg class="rule" viewBox="0 0 160 26" width="160" height="26" aria-hidden="true">
      <path class="rule-edge" d={`M4 18H156${Array.from({ length: 20 }, (_, i) => `M${4 + i * 8} 18v${i % 5 === 0 ? -7 : -4}`).join("")}`} />
      <path class="rule-limit" d={`M${x(f.limit.value)} 3V25`} />
      <path class={`rule-figure is-${f.verdict}`} d={`M${x(f.figure.value)} 16l-5 -9h10z`} />
    </svg>
  );
}

function Why({ b }: { b: Because }): VNode {
  const inputs = Object.entries(b.inputs ?? {});
  return (
    <li>
      <p><Frac text={`${sentence(b.name)}: ${b.shown}`} /></p>
      {b.formula && <p class="formula">{b.formula}</p>}
      {inputs.length > 0 && (
        <dl class="inputs">{inputs.map(([name, shown]) => <div key={name}><dt>{name}</dt><dd><Frac text={shown} /></dd></div>)}</dl>
      )}
      {b.source && <p class="source">{b.source}</p>}
    </li>
  );
}

function Measured({ f }: { f: Finding }): VNode | null {
  if (!f.figure) return f.missing ? <p class="missing">Needed: <Frac text={f.missing} /></p> : null;
  return (
    <div class="measured">
      <p>
        <span class="figure-name">{f.figure.name}</span> <b class="figure-value"><Frac text={f.figure.shown} /></b>
        {f.limit && <span class="figure-limit">{f.limit.name}, {f.sense} <Frac text={f.limit.shown} /></span>}
      </p>
      <Rule of={f} />
      {f.missing && <p class="missing">Needed: <Frac text={f.missing} /></p>}
    </div>
  );
}

const pictureWords = { tilt: "Tilt in every direction", year: "Over the year", bent: "How it sags", sway: "How it moves" };

/** What a finding shows, drawn once it is opened. */
function Shown({ piece, f }: { piece: string; f: Finding }): VNode | null {
  const [open, setOpen] = useState(false);
  if (!f.picture) return null;
  const words = pictureWords[f.picture.kind];
  return (
    <details class="fold finding-shown" onToggle={(e) => setOpen((was) => was || e.currentTarget.open)}>
      <summary>{words}<span class="for-ears"> {f.check} {f.place}</span></summary>
      {open && (trialOf(piece) ? <p class="soft">Pictures are of the piece as it is stored, not of what is being tried.</p>
        : <Picture piece={piece} name={f.picture.name} title={`${words}, ${f.check} ${f.place ?? ""}`} />)}
    </details>
  );
}

function One({ piece, f }: { piece: string; f: Finding }): VNode {
  return (
    <li class={`finding is-${f.verdict}`} data-verdict={f.verdict}>
      <p class="finding-verdict"><Told of={f.verdict} /></p>
      <div class="finding-what">
        <h2>{sentence(f.check)}{f.place && <span class="finding-place"> <Frac text={f.place} /></span>}</h2>
        {f.mend && f.verdict !== "stands" && <p class="mend"><b>Mend:</b> <Frac text={f.mend} /></p>}
        {f.caution && <p class="caution">{f.caution}</p>}
        <Shown piece={piece} f={f} />
        {(f.because.length > 0 || f.assumed.length > 0) && (
          <details class="fold">
            <summary>Why<span class="for-ears"> {f.check} {f.place} {verdictWord(f.verdict)}</span></summary>
            <ul class="why">{f.because.map((b, i) => <Why key={i} b={b} />)}</ul>
            {f.assumed.length > 0 && <p class="soft">Taken for granted: <Frac text={f.assumed.join("; ")} /></p>}
            {f.parts.length > 0 && <p class="soft">Parts: {f.parts.join(", ")}</p>}
          </details>
        )}
      </div>
      <Measured f={f} />
    </li>
  );
}

/** The stage Findings. */
export function FindingsPage({ id, build }: PieceProps): VNode {
  const [only, setOnly] = useState<Verdict | "all">("all");
  const n = count(build.findings);
  const shown = worstFirst(build.findings).filter((f) => only === "all" || f.verdict === only);
  return (
    <section aria-label="Findings">
      <div class="filter" role="group" aria-label="Show only">
        <button type="button" aria-pressed={only === "all"} onClick={() => setOnly("all")}>{build.findings.length} findings</button>
        {verdicts.map((v) => (
          <button key={v} type="button" aria-pressed={only === v} disabled={n[v] === 0} onClick={() => setOnly(v)}>
            <Shape of={v} /> {verdictCount(n[v], v)}
          </button>
        ))}
      </div>
      {build.findings.length === 0 && <p>Nothing is checked on this piece yet.</p>}
      <ul class="findings">{shown.map((f, i) => <One key={`${f.check} ${f.place ?? ""} ${i}`} piece={id} f={f} />)}</ul>
      <Assumed all={[...new Set(build.findings.flatMap((f) => f.assumed))]} title="Everything taken for granted in the findings" />
    </section>
  );
}
