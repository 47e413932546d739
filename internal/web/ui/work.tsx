// Work: the steps in order; one at a time where the screen is small or the reader wants it so.

import type { VNode } from "preact";
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { pace, unitsWord } from "./choices";
import { DoneWay } from "./done";
import { Frac } from "./frac";
import { Assumed, Choice } from "./parts";
import type { PieceProps } from "./piece";
import { pathOf } from "./route";
import { trialOf } from "./trial";
import type { Build, Step } from "./types";
import { weigh } from "./underway";
import { hours } from "./words";
import type { PutRight } from "./works";

/** What stands under a step: the way to say that it is done; nothing while something is tried. */
type Foot = (s: Step) => VNode | null;

const narrow = matchMedia("(max-width: 40rem)");

function Times({ s }: { s: Step }): VNode {
  return (
    <p class="step-times">
      <span><b>{hours(s.hands_h)}</b> of hands</span>
      {s.wait_h > 0 && <span><b>{hours(s.wait_h)}</b> of waiting</span>}
      {s.after.length > 0 && <span>after {s.after.length === 1 ? "step" : "steps"} {s.after.join(", ")}</span>}
    </p>
  );
}

function StepBody({ s }: { s: Step }): VNode {
  return (
    <>
      {s.parts.length > 0 && <p class="step-parts">{s.parts.map((t) => <span key={t} class="tag">{t}</span>)}</p>}
      {s.measures && s.measures.length > 0 && <ul class="step-measures">{s.measures.map((m, i) => <li key={i}><Frac text={m} /></li>)}</ul>}
      {s.tool && <p class="step-tool"><b>Tool:</b> <Frac text={s.tool} />{s.substitutes.length > 0 && <span class="soft">; instead: <Frac text={s.substitutes.join(", or ")} /></span>}</p>}
      {s.cautions.length > 0 && <ul class="cautions">{s.cautions.map((c) => <li key={c}>{c}</li>)}</ul>}
      <Times s={s} />
    </>
  );
}

function All({ steps, foot }: { steps: readonly Step[]; foot: Foot }): VNode {
  return (
    <ol class="steps">
      {steps.map((s) => (
        <li key={s.n} class="step" id={`step-${s.n}`}>
          <span class="step-number" aria-hidden="true">{s.n}</span>
          <div>
            <h2><span class="for-ears">Step {s.n}: </span><Frac text={s.title} /></h2>
            <StepBody s={s} />
            {foot(s)}
          </div>
        </li>
      ))}
    </ol>
  );
}

function OneByOne({ steps, foot }: { steps: readonly Step[]; foot: Foot }): VNode {
  const [at, setAt] = useState(0);
  const last = steps.length - 1;
  const here = Math.min(at, last);
  const card = useRef<HTMLDivElement>(null);
  const to = (i: number): void => {
    setAt(Math.max(0, Math.min(last, i)));
    card.current?.scrollIntoView({ block: "nearest" });
  };
  // Before the page is shown anew, so that no key falls between two listeners.
  useLayoutEffect(() => {
    const onKey = (e: KeyboardEvent): void => {
      const busy = e.target instanceof Element && e.target.closest("input, select, textarea, [role=region], summary");
      if (busy || e.ctrlKey || e.metaKey || e.altKey || document.querySelector("dialog[open]")) return;
      if (e.key === "ArrowRight") to(here + 1);
      if (e.key === "ArrowLeft") to(here - 1);
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, [here, last]);
  const s = steps[here];
  if (!s) return <p>There is no work to do on this piece.</p>;
  return (
    <div class="one-step" ref={card}>
      <div class="step-card" aria-live="polite">
        <p class="step-count">Step <b>{s.n}</b> of {steps.length}</p>
        <h2><Frac text={s.title} /></h2>
        <StepBody s={s} />
        {foot(s)}
      </div>
      <div class="step-ways">
        <button type="button" onClick={() => to(here - 1)} disabled={here === 0}>← Previous</button>
        <button type="button" onClick={() => to(here + 1)} disabled={here === last}>Next →</button>
      </div>
    </div>
  );
}

/** The steps that put made parts right: those of weighing no edit at all. Nothing is asked where nothing is made. */
function usePutRight(id: string, base: number, build: Build): PutRight {
  const [titles, setTitles] = useState<PutRight>([]);
  const made = build.parts.some((p) => p.states?.some((s) => s !== "planned" && s !== "bought"));
  useEffect(() => {
    if (!made) return;
    let gone = false;
    weigh(id, base, []).then((w) => !gone && setTitles(w.redo.map((r) => r.title)), () => !gone && setTitles([]));
    return () => { gone = true; };
  }, [id, base, made, unitsWord()]);
  return titles;
}

/** The stage Work. */
export function WorkPage({ id, build, base }: PieceProps): VNode {
  const [told, setTold] = useState("");
  const again = usePutRight(id, base, build);
  const foot: Foot = (s) => (trialOf(id) ? null : <DoneWay key={`${s.work} ${s.title}`} id={id} base={base} build={build} step={s} again={again} told={setTold} />);
  const [small, setSmall] = useState(narrow.matches);
  useEffect(() => {
    const onChange = (): void => setSmall(narrow.matches);
    narrow.addEventListener("change", onChange);
    return () => narrow.removeEventListener("change", onChange);
  }, []);
  const one = pace.value === "one" || (pace.value === "fitting" && small);
  return (
    <section class="work" aria-label="Work">
      <div class="work-head">
        <p class="lead">{hours(build.time.hands_h)} of hands over {build.time.calendar_days} days.</p>
        <Choice name="Show" value={one ? "one" : "all"} all={[["one", "one by one"], ["all", "all steps"]]} set={(v) => { pace.value = v; }} />
      </div>
      <p class={told ? "work-told" : "for-ears"} role="status">{told && <><Frac text={told} /> <a href={pathOf(id, "changes")}>See it under Changes</a></>}</p>
      {one ? <OneByOne steps={build.steps} foot={foot} /> : <All steps={build.steps} foot={foot} />}
      <p class="caution">These are the usual cautions, not all there are. The instructions of each machine and product, and local rules, come first.</p>
      <Assumed all={build.time.assumed} title="Taken for granted in the times" />
    </section>
  );
}
