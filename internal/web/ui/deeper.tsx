// Looking deeper for a layout: how it goes on, what was found beside what there is, and what was accepted.

import type { RefObject, VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { end, read, send, type Trouble, troubleFrom } from "./asking";
import { unitsWord } from "./choices";
import { NotStored } from "./clash";
import { apart, Inline } from "./drawing";
import { Frac } from "./frac";
import { wrote } from "./live";
import { Here } from "./parts";
import { useJSON } from "./reading";
import { trialOf } from "./trial";
import type { Accepted, Build, Good, Layout, Search, Searches, SearchPictures, Written } from "./types";
import { addressOf, newID, tell } from "./underway";
import { counted, money, sentence } from "./words";

const askEvery = 400; // ms between two looks at a search that runs

/** What a search found that the reader does not want; as long as the page is open. */
const dropped = new Set<string>();

/** How much cheaper another layout could be, at most: rounded up, so that no more is promised than is proven. The bound may be true of some layouts only. */
export function couldSave(g: Pick<Good, "gap" | "proven"> & { boundOf?: string | undefined }): string {
  const that = g.boundOf ? " that crosscuts first and then rips" : "";
  return g.proven ? `Proven: no layout${that} costs less.` : `At most ${(Math.ceil(g.gap * 1000) / 10).toFixed(1)} % could be saved${that && ` by a layout${that}`}.`;
}

interface Of { id: string; base: number; build: Build; kind: "stick" | "panel" | "sheet"; name: string; l: Layout }

/** The last search for a layout that still fits, and what can be done about it. */
function useSearch({ id, kind, name }: Of): [Search | undefined, (s: Search | undefined) => void] {
  const listed = useJSON<Searches>(addressOf(id, "searches"));
  const [own, set] = useState<Search | undefined>(undefined);
  const last = listed.value?.searches.findLast((s) => s.kind === kind && s.material === name);
  const now = own && (!last || last.id === own.id || own.id > last.id) ? own : last; // ids go by time
  const running = now?.state === "running" ? now.id : "";
  useEffect(() => {
    if (!running) return;
    let gone = false;
    const look = (): void => {
      read<Search>(addressOf(id, `searches/${running}`)).then((s) => !gone && set(s), (e: unknown) => !gone && troubleFrom(e).status === 404 && set(undefined));
    };
    const every = setInterval(look, askEvery);
    return () => { gone = true; clearInterval(every); };
  }, [id, running]);
  return [now && now.fits && now.accepted === 0 && !dropped.has(now.id) ? now : undefined, set];
}

/** What has become of a layout that was accepted, with the way to withdraw it. */
function Mark({ told, act, busy }: { told: Accepted; act: () => void; busy: boolean }): VNode {
  const by = `by ${told.actor}, entry ${told.entry}`;
  return (
    <div class={told.state === "taken" ? "accepted" : "accepted note"} data-state={told.state}>
      {told.state === "taken" && <p><b>Accepted</b> <span class="soft">{by}</span>{told.why && <>. {sentence(told.why)}.</>}</p>}
      {told.state === "outdated" && <p><b>A layout was accepted for an earlier state</b> <span class="soft">{by}</span>. It no longer fits: <Frac text={told.why ?? ""} />. Look deeper again, or withdraw it.</p>}
      {told.state === "refused" && <p><b>The accepted layout is not used</b> <span class="soft">{by}</span>. It is no layout of these parts: <Frac text={told.why ?? ""} />.</p>}
      <p><button type="button" disabled={busy} onClick={act}>Withdraw it</button></p>
    </div>
  );
}

function Running({ s, currency, stop }: { s: Search; currency: string; stop: () => void }): VNode {
  return (
    <div class="looking">
      <p role="status">Looking: <b>{money(s.best.cost, currency)}</b> so far. {couldSave(s.best)}</p>
      <p class="looking-on">
        <progress max={s.seconds} value={Math.min(s.took, s.seconds)} aria-label="Time gone of the search" />
        <span class="soft">{Math.max(0, Math.ceil(s.seconds - s.took))} s left</span>
        <button type="button" onClick={stop}>Stop here</button>
      </p>
    </div>
  );
}

/** The way to see both layouts; they are fetched when it is opened. */
function SideBySide({ id, s }: { id: string; s: Search }): VNode {
  const [seen, see] = useState(false);
  return (
    <details class="fold" onToggle={(e) => see(e.currentTarget.open)}>
      <summary>See both, side by side</summary>
      {seen && <Pictures id={id} s={s} />}
    </details>
  );
}

/** Two layouts as they are drawn, side by side. */
function Pictures({ id, s }: { id: string; s: Search }): VNode {
  const both = useJSON<SearchPictures>(addressOf(id, `searches/${s.id}/pictures`, { units: unitsWord() }));
  const side = (title: string, word: string, all: SearchPictures["best"]): VNode => (
    <section aria-label={title}>
      <h4>{title}</h4>
      {all.map((p, i) => <figure key={i} class="sheet"><Inline svg={apart(p.svg, `${word}-${i}`)} /><figcaption><Frac text={sentence(p.title)} /></figcaption></figure>)}
    </section>
  );
  return <Here from={both} what="both layouts">{(all) => <div class="both-layouts">{side("As it is cut now", "now", all.before)}{side("As it was found", "found", all.best)}</div>}</Here>;
}

/** What a layout has over another, in words. */
function gain(s: Search, currency: string): string {
  const more = s.before.notPlaced - s.best.notPlaced;
  if (more > 0) return `${counted(more, "part")} more ${more === 1 ? "finds" : "find"} a place.`;
  const saved = s.before.cost - s.best.cost;
  if (saved > 0) return `${money(saved, currency)} less than now.`;
  return "It costs the same; more is proven of it.";
}

function Found({ id, s, currency, busy, take, keep }: { id: string; s: Search; currency: string; busy: boolean; take: () => void; keep: () => void }): VNode {
  const other = s.best.cost !== s.before.cost || s.best.notPlaced !== s.before.notPlaced;
  return (
    <div class="found">
      <p role="status"><b>Found: {money(s.best.cost, currency)}.</b> {gain(s, currency)} {couldSave(s.best)}</p>
      <p class="ways">
        <button type="button" class="main-way" disabled={busy} onClick={take}>Take this layout</button>
        <button type="button" disabled={busy} onClick={keep}>{other ? "Keep the present one" : "Leave it"}</button>
      </p>
      {other && <SideBySide id={id} s={s} />}
    </div>
  );
}

/** Whether anything better than this layout may be found. */
function open(l: Layout): boolean {
  return !l.proven || l.not_placed.length > 0;
}

/** Keeps the keys where they were: a button that was pressed may be gone; then the place has the focus, so that no key pressed twice takes what came. */
function useKeptFocus(pressed: boolean): RefObject<HTMLDivElement | null> {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (pressed && document.activeElement === document.body) box.current?.focus({ preventScroll: true });
  });
  return box;
}

/** The place below a layout where it is looked deeper for; nothing while something is tried. */
export function Deeper(of: Of): VNode | null {
  const { id, base, build, kind, name, l } = of;
  const [search, set] = useSearch(of);
  const [trouble, setTrouble] = useState<Trouble | undefined>(undefined);
  const [busy, setBusy] = useState(false);
  const [pressed, setPressed] = useState(false);
  const box = useKeptFocus(pressed);
  if (trialOf(id)) return null;
  const told = build.accepted?.find((a) => a.kind === kind && a.material === name);
  const act = async (what: () => Promise<void>): Promise<void> => {
    setPressed(true);
    setBusy(true);
    try {
      await what();
      setTrouble(undefined);
    } catch (e) {
      setTrouble(troubleFrom(e));
    } finally {
      setBusy(false);
    }
  };
  const look = (): void => void act(async () => set(await send<Search>(addressOf(id, "searches"), { kind, material: name })));
  const stop = (s: Search): void => void act(async () => set(await end<Search>(addressOf(id, `searches/${s.id}`))));
  const drop = (s: Search): void => { dropped.add(s.id); set(undefined); };
  const take = (s: Search): void => void act(async () => {
    const kept = await send<Written>(addressOf(id, `searches/${s.id}/accept`), { base, id: newID() });
    drop(s);
    wrote(id, kept.number);
  });
  const withdraw = (a: Accepted): void => void act(async () => void await tell(id, base, [{ kind: "withdrawn", names: a.id }]));
  const over = search && search.state !== "running" ? search : undefined;
  return (
    <div class="deeper" ref={box} tabIndex={-1}>
      {told && <Mark told={told} busy={busy} act={() => withdraw(told)} />}
      {trouble && <NotStored trouble={trouble} />}
      {search?.state === "running" && <Running s={search} currency={build.currency} stop={() => stop(search)} />}
      {over?.better && <Found id={id} s={over} currency={build.currency} busy={busy} take={() => take(over)} keep={() => drop(over)} />}
      {over && !over.better && <p role="status">{over.state === "failed" ? "The search broke off; the program’s own log says why." : `Nothing better was found in ${counted(Math.ceil(over.took), "second")}.`}</p>}
      {(open(l) || (told && told.state !== "taken")) && !over?.better && search?.state !== "running" && <p><button type="button" disabled={busy} onClick={look} aria-label={`Look deeper for a layout of ${name}`}>{over ? "Look again" : "Look deeper"}</button></p>}
    </div>
  );
}
