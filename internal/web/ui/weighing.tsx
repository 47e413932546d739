// Weighing a change: values are chosen, what they would do is shown, and they are taken, asked for, or dropped.

import type { VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { type Trouble, troubleFrom } from "./asking";
import { unitsWord } from "./choices";
import { NotStored } from "./clash";
import { Orders } from "./orders";
import { Here } from "./parts";
import { useJSON } from "./reading";
import { putBack, trialOf } from "./trial";
import type { Build, Edit, OrderLine, Sizes, Weighed } from "./types";
import { addressOf, take, tell, weigh } from "./underway";
import { WeighedShown } from "./weighed";
import { sentence } from "./words";

interface Choosable { path: string; label: string; group: string; value: string }

function choosable({ sizes, fields }: Sizes): Choosable[] {
  return [
    ...sizes.map((s) => ({ path: s.path, label: s.name, group: "sizes", value: s.formula })),
    ...fields.map((f) => ({ path: f.path, label: f.label, group: f.group, value: f.value })),
  ];
}

interface RowProps { all: readonly Choosable[]; edit: Edit; n: number; wrong: Trouble | undefined; set: (e: Edit) => void; drop: (() => void) | undefined }

function Row({ all, edit, n, wrong, set, drop }: RowProps): VNode {
  const groups = [...new Set(all.map((c) => c.group))];
  const here = wrong !== undefined && wrong.path === edit.path;
  return (
    <div class={here ? "weigh-row is-refused" : "weigh-row"}>
      <div class="ask">
        <label for={`weigh-path-${n}`}>What</label>
        <select id={`weigh-path-${n}`} value={edit.path} onChange={(e) => {
          const c = all.find((x) => x.path === e.currentTarget.value);
          if (c) set({ path: c.path, value: c.value });
        }}>
          {groups.map((g) => (
            <optgroup key={g} label={sentence(g)}>
              {all.filter((c) => c.group === g).map((c) => <option key={c.path} value={c.path} selected={c.path === edit.path}>{sentence(c.label)}</option>)}
            </optgroup>
          ))}
        </select>
      </div>
      <div class="ask">
        <label for={`weigh-value-${n}`}>Becomes</label>
        <input id={`weigh-value-${n}`} type="text" autocomplete="off" spellcheck={false} value={edit.value} aria-invalid={here}
          {...(here ? { "aria-describedby": "weigh-wrong" } : {})} onInput={(e) => set({ ...edit, value: e.currentTarget.value })} />
      </div>
      {drop && <button type="button" onClick={drop} aria-label={`Leave out ${edit.path}`}>Leave out</button>}
    </div>
  );
}

interface Answer { weighed: Weighed; edits: Edit[]; seen: number }

/** What is being weighed on a piece, and what came of it. */
function useScales(id: string, base: number) {
  const [answer, setAnswer] = useState<Answer | undefined>(undefined);
  const [trouble, setTrouble] = useState<Trouble | undefined>(undefined);
  const [said, setSaid] = useState("");
  const [busy, setBusy] = useState(false);
  const turn = useRef(0);
  const guarded = async (does: () => Promise<void>): Promise<void> => {
    const mine = ++turn.current;
    setBusy(true);
    try {
      await does();
      if (mine === turn.current) setTrouble(undefined);
    } catch (e) {
      if (mine === turn.current) setTrouble(troubleFrom(e));
    } finally {
      if (mine === turn.current) setBusy(false);
    }
  };
  const put = (edits: Edit[], seen = base): Promise<void> => guarded(async () => {
    const mine = turn.current;
    setSaid("");
    const weighed = await weigh(id, base, edits);
    if (mine === turn.current) setAnswer({ weighed, edits, seen });
  });
  const drop = (): void => {
    turn.current++;
    putBack();
    setAnswer(undefined);
    setTrouble(undefined);
    setBusy(false);
  };
  const store = (words: string, does: () => Promise<unknown>): Promise<void> => guarded(async () => {
    await does();
    drop();
    setSaid(words);
  });
  useEffect(() => {
    if (answer) void put(answer.edits, answer.seen); // what is shown is weighed on the piece as it stands
  }, [base, unitsWord()]);
  return { answer, trouble, said, busy, put, drop, store };
}

type Scales = ReturnType<typeof useScales>;

function Decide({ id, s, a }: { id: string; s: Scales; a: Answer }): VNode {
  const [words, setWords] = useState("");
  const taken = (from: number): void => void s.store("Taken. It stands in the log.", () => take(id, from, a.edits));
  const asked = (): void => void s.store("Written down. It waits for the client’s yes.", () => tell(id, a.seen, [{ kind: "asked", words: words.trim(), edits: a.edits }]));
  return (
    <div class="decide">
      {s.trouble && <NotStored trouble={s.trouble} mine={taken} theirs={s.drop} />}
      {!a.weighed.nothing && <button type="button" class="main-way" disabled={s.busy} onClick={() => taken(a.seen)}>Take it</button>}
      <button type="button" onClick={s.drop}>Drop it <kbd>Esc</kbd></button>
      {!a.weighed.nothing && (
        <form class="ask decide-asked" onSubmit={(e) => { e.preventDefault(); asked(); }}>
          <label for="asked-words">Or the client asks for it, in the client’s words</label>
          <div class="say-line">
            <input id="asked-words" type="text" autocomplete="off" value={words} onInput={(e) => setWords(e.currentTarget.value)} />
            <button type="submit" disabled={s.busy}>The client asks for it</button>
          </div>
        </form>
      )}
    </div>
  );
}

function Scale({ id, base, build, all }: { id: string; base: number; build: Build; all: readonly Choosable[] }): VNode {
  const first = all[0];
  const begin = (): Edit[] => trialOf(id)?.edits.slice() ?? (first ? [{ path: first.path, value: first.value }] : []);
  const [edits, setEdits] = useState<Edit[]>(begin);
  const s = useScales(id, base);
  useEffect(() => {
    if (trialOf(id)) void s.put(edits);
  }, []);
  useEffect(() => {
    const onKey = (e: KeyboardEvent): void => {
      if (e.key !== "Escape" || e.defaultPrevented || document.querySelector("dialog[open]")) return;
      s.drop();
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, [id]);
  if (!first) return <p>This piece has no values that can be typed.</p>;
  const free = all.find((c) => !edits.some((e) => e.path === c.path));
  const atValue = s.trouble !== undefined && !s.answer;
  return (
    <>
      <form onSubmit={(e) => { e.preventDefault(); void s.put(edits.map((x) => ({ ...x, value: x.value.trim() }))); }}>
        {edits.map((e, n) => (
          <Row key={n} n={n} all={all} edit={e} wrong={s.trouble} set={(x) => setEdits(edits.map((y, i) => (i === n ? x : y)))}
            drop={edits.length > 1 ? () => setEdits(edits.filter((_, i) => i !== n)) : undefined} />
        ))}
        {atValue && <p class="entry-wrong" id="weigh-wrong" role="alert">{sentence(s.trouble?.message ?? "")} {s.trouble?.right && <span>Right would be: {s.trouble.right}</span>}</p>}
        <p class="ways">
          <button type="submit" class="main-way" disabled={s.busy}>Weigh</button>
          {free && <button type="button" onClick={() => setEdits([...edits, { path: free.path, value: free.value }])}>Another value</button>}
        </p>
      </form>
      <p class="say-done" role="status">{s.busy ? "Weighing …" : s.said || (s.answer ? "Weighed. Nothing is stored." : "")}</p>
      {s.answer && (
        <WeighedShown w={s.answer.weighed} build={build}>
          <Decide id={id} s={s} a={s.answer} />
        </WeighedShown>
      )}
    </>
  );
}

/** The part of the page where a change is weighed, with the orders that wait for an answer. */
export function WeighPart({ id, build, base, orders }: { id: string; build: Build; base: number; orders: readonly OrderLine[] }): VNode {
  const sizes = useJSON<Sizes>(addressOf(id, "sizes"));
  return (
    <section class="weigh" aria-labelledby="weigh-title">
      <h2 id="weigh-title">Weigh a change</h2>
      <Here from={sizes} what="the sizes">{(all) => <Scale id={id} base={base} build={build} all={choosable(all)} />}</Here>
      <Orders id={id} base={base} build={build} orders={orders} />
    </section>
  );
}
