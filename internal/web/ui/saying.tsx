// Saying what was done, on one line; and the ways out when something went wrong.

import type { VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { type Trouble, troubleFrom } from "./asking";
import { Frac } from "./frac";
import { useJSON } from "./reading";
import type { Build, Solids, Thing, WayOut, WaysOut, Written } from "./types";
import { addressOf, newID, takeWay, tell, waysOut } from "./underway";
import { Ways } from "./ways";
import { sentence } from "./words";
import { firstWork } from "./works";

const examples: readonly (readonly [string, string, readonly string[]])[] = [
  ["bought", "stock with the tag that is written on it, or things by the piece", [
    "bought board white-oak 5/4 118 × 6 3/4 × 1 1/8 in as P1 1 rough edge for 38.50", "bought stick 3/4 21 ft as S1 for 41", "bought 8 × tee 1 for 31.20"]],
  ["made", "the part, the work, and as much of size, stock and time as you like", [
    "made C2.1 cut-pipe 26 1/2 in from S1 taking 26 5/8 in in 25 min", "made A1.1 sized 42 × 18 1/4 in"]],
  ["measured", "a distance of the standing frame, from centre to centre, outside or inside", ["measured front left post to back left post 24 3/32 in"]],
  ["wrong", "a part that is still there, what it measures now, and why", ["wrong C2.1 25 3/4 in: cut too short"]],
  ["spoiled", "a part that is of no more use", ["spoiled A1.1 hole on the wrong side"]],
  ["finished, delivered", "the whole piece", ["finished", "delivered"]],
];

function Examples(): VNode {
  return (
    <details class="fold say-help">
      <summary>How to say it</summary>
      <dl>
        {examples.map(([word, about, lines]) => (
          <div key={word}>
            <dt><b>{word}</b> <span class="soft">{about}</span></dt>
            {lines.map((l) => <dd key={l}><Frac text={l} /></dd>)}
          </div>
        ))}
      </dl>
    </details>
  );
}

/** A part of the plan that can be spoken of: its tag and its name. */
interface Named { tag: string; name: string }

function namesOf(build: Build, things: readonly Thing[], solids: Solids | undefined): Named[] {
  const placed = new Map(solids?.solids.map((s) => [s.tag, s.name]));
  const planned = build.parts.filter((p) => p.kind === "panel" || p.kind === "pipe")
    .flatMap((p) => p.tags.map((tag) => ({ tag, name: placed.get(tag) ?? p.name })));
  const others = things.filter((t) => t.spoiled === "" && t.tag === "").map((t) => ({ tag: t.label, name: t.place || "on the rack" }));
  return [...planned, ...others];
}

/** The name a distance is measured from: a post's pieces, numbered from the floor up, stand on one line. */
function lineOf(name: string): string {
  return name.replace(/ \d+$/, "");
}

/** Buttons that begin the line for a part. */
function Begin({ id, build, things, begin }: { id: string; build: Build; things: readonly Thing[]; begin: (line: string) => void }): VNode | null {
  const solids = useJSON<Solids>(addressOf(id, "solids"));
  const all = namesOf(build, things, solids.value);
  const [tag, setTag] = useState("");
  const part = all.find((p) => p.tag === tag) ?? all[0];
  if (!part) return null;
  return (
    <div class="say-begin">
      <label class="pick">
        <span>Part</span>
        <select value={part.tag} onChange={(e) => setTag(e.currentTarget.value)}>
          {all.map((p) => <option key={p.tag} value={p.tag}>{p.tag} {p.name}</option>)}
        </select>
      </label>
      <div class="ways">
        <button type="button" onClick={() => begin(`made ${part.tag} ${firstWork(build, part.tag)}`)}>Done …</button>
        <button type="button" onClick={() => begin(`measured ${lineOf(part.name)} to `)}>Measured …</button>
        <button type="button" onClick={() => begin(`wrong ${part.tag}: `)}>Went wrong …</button>
      </div>
    </div>
  );
}

interface Wrong { line: string; found: WaysOut; base: number }

/** The state of the line: what stands in it, what is asked, and what came of it. */
function useLine(id: string, base: number) {
  const [line, setLine] = useState("");
  const [trouble, setTrouble] = useState<Trouble | undefined>(undefined);
  const [wrong, setWrong] = useState<Wrong | undefined>(undefined);
  const [done, setDone] = useState("");
  const [busy, setBusy] = useState(false);
  const entry = useRef(newID()); // the same until the line is stored, so that a repeat is known
  const guarded = async (does: () => Promise<void>): Promise<void> => {
    if (busy) return;
    setBusy(true);
    try {
      await does();
      setTrouble(undefined);
    } catch (e) {
      setTrouble(troubleFrom(e));
    } finally {
      setBusy(false);
    }
  };
  const store = (does: (first: string) => Promise<Written>): Promise<void> => guarded(async () => {
    const kept = await does(entry.current);
    entry.current = newID();
    setDone(`Stored: ${kept.entries.map((e) => e.words).join("; ")}.`);
    setLine("");
    setWrong(undefined);
  });
  const offer = (): Promise<void> => {
    const said = line.trim();
    if (!/^(wrong|spoiled)\b/.test(said)) return store((first) => tell(id, base, [{ id: first, kind: "fact", say: said }]));
    return guarded(async () => setWrong({ line: said, found: await waysOut(id, base, said), base }));
  };
  const write = (l: string): void => {
    setLine(l);
    entry.current = newID();
    setWrong(undefined);
    setTrouble(undefined);
    setDone("");
  };
  return {
    line, write, trouble, wrong, drop: () => setWrong(undefined), done, busy, offer,
    note: (w: Wrong) => store((first) => tell(id, w.base, [{ id: first, kind: "fact", say: w.line }])),
    take: (w: Wrong, way: WayOut) => store((first) => takeWay(id, w.base, w.line, way, first)),
  };
}

/** The part of the page where a fact is said. */
export function SayPart({ id, build, base, things }: { id: string; build: Build; base: number; things: readonly Thing[] }): VNode {
  const l = useLine(id, base);
  const { wrong } = l;
  const field = useRef<HTMLInputElement>(null);
  const begin = (line: string): void => {
    l.write(line);
    field.current?.focus();
  };
  useEffect(() => field.current?.setSelectionRange(field.current.value.length, field.current.value.length), [l.line === ""]);
  return (
    <section class="say" aria-labelledby="say-title">
      <h2 id="say-title">Say what was done</h2>
      <form class={l.trouble ? "ask is-refused" : "ask"} onSubmit={(e) => { e.preventDefault(); void l.offer(); }}>
        <label for="say-line">On one line</label>
        <div class="say-line">
          <input id="say-line" ref={field} type="text" autocomplete="off" spellcheck={false} autocapitalize="none" enterkeyhint="done" value={l.line} placeholder="made A1.1 sized"
            aria-invalid={l.trouble !== undefined} aria-describedby={l.trouble ? "say-wrong" : "say-about"} onInput={(e) => l.write(e.currentTarget.value)}
            onKeyDown={(e) => { if (e.key === "Escape" && l.wrong) { e.preventDefault(); l.drop(); } }} />
          <button type="submit" class="main-way" disabled={l.busy || l.line.trim() === ""}>Store</button>
        </div>
        <p class="ask-help" id="say-about">Enter stores it. What went wrong is not stored before you have seen the ways out.</p>
        {l.trouble && (
          <p class="entry-wrong" id="say-wrong" role="alert">
            {sentence(l.trouble.message)} {l.trouble.right && <span>Right would be: <Frac text={l.trouble.right} /></span>}
          </p>
        )}
      </form>
      <p class="say-done" role="status">{l.done && <Frac text={l.done} />}</p>
      {wrong && <Ways found={wrong.found} build={build} busy={l.busy} drop={l.drop} note={() => void l.note(wrong)} take={(way) => void l.take(wrong, way)} />}
      <Begin id={id} build={build} things={things} begin={begin} />
      <Examples />
    </section>
  );
}
