// The piece in the round: turned by mouse, touch and keys, its parts listed and marked by their tags.

import type { VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { theme } from "./choices";
import { Here } from "./parts";
import { useJSON } from "./reading";
import type { Turned } from "./scene";
import { trialOf } from "./trial";
import type { Solids } from "./types";
import { sentence } from "./words";

const step = Math.PI / 12; // a press of a key

/** Keeps the fingers or buttons that are down, and tells the canvas how far they went. */
function useHands(canvas: { current: HTMLCanvasElement | null }, turned: Turned | undefined, pick: (tag: string) => void): void {
  useEffect(() => {
    const c = canvas.current;
    if (!c || !turned) return;
    const down = new Map<number, { x: number; y: number }>();
    let moved = 0;
    const apart = (): number => {
      const [a, b] = [...down.values()];
      return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;
    };
    const onDown = (e: PointerEvent): void => {
      c.setPointerCapture(e.pointerId);
      down.set(e.pointerId, { x: e.clientX, y: e.clientY });
      moved = 0;
    };
    const onMove = (e: PointerEvent): void => {
      const last = down.get(e.pointerId);
      if (!last) return;
      const before = apart();
      const [dx, dy] = [e.clientX - last.x, e.clientY - last.y];
      down.set(e.pointerId, { x: e.clientX, y: e.clientY });
      moved += Math.abs(dx) + Math.abs(dy);
      if (before > 0) turned.nearer(apart() / before);
      else turned.turn(dx * 0.008, dy * 0.008);
    };
    const onUp = (e: PointerEvent): void => {
      if (down.delete(e.pointerId) && moved < 4) pick(turned.at(e.offsetX, e.offsetY));
    };
    const onWheel = (e: WheelEvent): void => {
      if (!e.ctrlKey && document.activeElement !== c) return; // plain scrolling passes over it
      e.preventDefault();
      turned.nearer(Math.exp(-e.deltaY * 0.002));
    };
    c.addEventListener("pointerdown", onDown);
    c.addEventListener("pointermove", onMove);
    c.addEventListener("pointerup", onUp);
    c.addEventListener("pointercancel", onUp);
    c.addEventListener("wheel", onWheel, { passive: false });
    return () => {
      c.removeEventListener("pointerdown", onDown);
      c.removeEventListener("pointermove", onMove);
      c.removeEventListener("pointerup", onUp);
      c.removeEventListener("pointercancel", onUp);
      c.removeEventListener("wheel", onWheel);
    };
  }, [turned]);
}

function turnByKey(t: Turned, e: KeyboardEvent): void {
  const ways: Record<string, () => void> = {
    ArrowLeft: () => t.turn(-step, 0), ArrowRight: () => t.turn(step, 0), ArrowUp: () => t.turn(0, step), ArrowDown: () => t.turn(0, -step),
    "+": () => t.nearer(1.2), "=": () => t.nearer(1.2), "-": () => t.nearer(1 / 1.2), Home: () => t.restore(), "0": () => t.restore(),
  };
  const way = ways[e.key];
  if (!way || e.ctrlKey || e.metaKey || e.altKey) return;
  e.preventDefault();
  e.stopPropagation();
  way();
}

function Tags({ solids, chosen, pick }: { solids: Solids; chosen: string; pick: (tag: string) => void }): VNode {
  const seen = new Map(solids.solids.filter((s) => s.kind !== "held").map((s) => [s.tag, s.name]));
  return (
    <ul class="round-tags" aria-label="Parts in the round">
      {[...seen].map(([tag, name]) => (
        <li key={tag}>
          <button type="button" aria-pressed={tag === chosen} onClick={() => pick(tag === chosen ? "" : tag)}>
            <span class="tag">{tag}</span> {name}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** The drawing in the round on a canvas, once it is there; or why it can't be. */
function useTurned(canvas: { current: HTMLCanvasElement | null }): [Turned | undefined, string] {
  const [turned, setTurned] = useState<Turned | undefined>(undefined);
  const [trouble, setTrouble] = useState("");
  useEffect(() => {
    let made: Turned | undefined;
    let gone = false;
    const begin = async (): Promise<void> => {
      try {
        const { Turned } = await import("./scene");
        if (gone || !canvas.current) return;
        made = new Turned(canvas.current);
        setTurned(made);
      } catch {
        setTrouble("This browser can’t draw in the round just now. The views above show the same piece from the front, the right and above.");
      }
    };
    void begin();
    return () => {
      gone = true;
      made?.end();
    };
  }, []);
  return [turned, trouble];
}

/** Keeps the drawing to the size of its room and to the inks of the page. */
function useRoomAndInk(canvas: { current: HTMLCanvasElement | null }, turned: Turned | undefined): void {
  useEffect(() => {
    const c = canvas.current;
    if (!c || !turned) return;
    const room = new ResizeObserver(() => turned.fit());
    room.observe(c);
    const dark = matchMedia("(prefers-color-scheme: dark)");
    const ink = (): void => turned.ink();
    dark.addEventListener("change", ink);
    return () => {
      room.disconnect();
      dark.removeEventListener("change", ink);
    };
  }, [turned]);
  const now = theme.value;
  useEffect(() => turned?.ink(), [turned, now]);
}

function Ways({ turned }: { turned: Turned | undefined }): VNode {
  const all: readonly (readonly [string, string, () => void])[] = [
    ["Turn left", "↶", () => turned?.turn(-step, 0)], ["Turn right", "↷", () => turned?.turn(step, 0)],
    ["From higher", "↑", () => turned?.turn(0, step)], ["From lower", "↓", () => turned?.turn(0, -step)],
    ["Nearer", "+", () => turned?.nearer(1.2)], ["Farther", "−", () => turned?.nearer(1 / 1.2)],
  ];
  return (
    <div class="round-ways">
      {all.map(([name, sign, does]) => <button key={name} type="button" aria-label={name} title={name} onClick={does}>{sign}</button>)}
      <button type="button" onClick={() => turned?.restore()}>Set back</button>
    </div>
  );
}

function Stage({ solids }: { solids: Solids }): VNode {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [turned, trouble] = useTurned(canvas);
  const [chosen, setChosen] = useState("");
  useEffect(() => turned?.show(solids), [turned, solids]);
  useEffect(() => turned?.choose(chosen), [turned, chosen]);
  useRoomAndInk(canvas, turned);
  useHands(canvas, turned, setChosen);
  if (trouble) return <p class="note" role="status">{trouble}</p>;
  const name = solids.solids.find((s) => s.tag === chosen)?.name;
  return (
    <div class="round-stage">
      <div class="round-view">
        <canvas ref={canvas} tabIndex={0} role="img" data-ready={turned ? "yes" : "no"}
          aria-label="The piece in the round. Arrow keys turn it, plus and minus bring it nearer or farther, Home sets it back."
          onKeyDown={(e) => { if (turned) turnByKey(turned, e); }} />
        <p class="round-chosen" role="status">{chosen ? <><span class="tag">{chosen}</span> {name && sentence(name)}</> : "No part is marked."}</p>
        <Ways turned={turned} />
      </div>
      <Tags solids={solids} chosen={chosen} pick={setChosen} />
    </div>
  );
}

/** The section; what it needs is fetched only when the reader asks for it. */
export function Round({ id }: { id: string }): VNode {
  const [open, setOpen] = useState(false);
  return (
    <section class="round" aria-labelledby="round">
      <h2 id="round">In the round</h2>
      {open ? <Opened id={id} /> : (
        <p><button type="button" class="main-way" onClick={() => setOpen(true)}>Turn it in the round</button></p>
      )}
    </section>
  );
}

function Opened({ id }: { id: string }): VNode {
  const stored = useJSON<Solids>(`/api/pieces/${encodeURIComponent(id)}/solids`);
  const tried = trialOf(id);
  return <Here from={tried ? { ...stored, value: tried.answer.solids } : stored} what="the solids">{(s) => <Stage solids={s} />}</Here>;
}
