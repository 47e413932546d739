// A drawing from the server, set into the page as a sheet.

import type { ComponentChildren, VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { query } from "./asking";
import { unitsWord } from "./choices";
import { Frac } from "./frac";
import { Here } from "./parts";
import { useLasting, useText } from "./reading";
import type { DrawingLine } from "./types";
import { sentence } from "./words";

const MM_PER_PX = 25.4 / 96; // as CSS has it
const enlarged = 1.2; // on the page, so that the smallest words of a drawing, 2.5 mm high, are 11 px
const widths = [50, 60, 65, 80, 100, 120, 140, 160, 190, 220, 260, 300, 360]; // mm; few, so that a drawing is seldom asked for twice

/** The sheet width in mm that fits what the page has room for. Layouts draw on narrow sheets too; what else is drawn there would be mostly dimensions, and is made smaller instead. */
function fitting(px: number, kind?: DrawingLine["kind"]): number {
  const mm = (px * MM_PER_PX) / enlarged;
  const least = kind === "cut" || kind === "glue" ? 50 : 80;
  return Math.max(least, widths.findLast((w) => w <= mm) ?? 0);
}

/** The width in pixels of the element that is given the ref; 0 before it stands. */
function useRoom(): [{ current: HTMLElement | null }, number] {
  const at = useRef<HTMLElement | null>(null);
  const [px, set] = useState(0);
  useEffect(() => {
    const element = at.current;
    if (!element) return;
    const watch = new ResizeObserver(([entry]) => set(entry?.contentRect.width ?? 0)); // without its padding
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return [at, px];
}

/** SVG of this shop's own server, set in as it came. */
export function Inline({ svg }: { svg: string }): VNode {
  const large = svg.replace(/max-width:([\d.]+)mm/, (_, mm: string) => `max-width:${Number(mm) * enlarged}mm`);
  return <div class="sheet-svg" dangerouslySetInnerHTML={{ __html: large }} />;
}

/** A drawing whose ids begin with a word of its own, so that another of the same kind can stand on the same page. */
export function apart(svg: string, word: string): string {
  return svg.replace(/\bid="/g, `id="${word}-`).replace(/(url\(|href=")#/g, `$1#${word}-`)
    .replace(/aria-labelledby="([^"]*)"/g, (_, ids: string) => `aria-labelledby="${ids.split(" ").map((i) => `${word}-${i}`).join(" ")}"`);
}

function Fetched({ url, title }: { url: string; title: string }): VNode {
  const svg = useLasting(useText(url));
  return <Here from={svg} what={`the drawing ${title}`}>{(s) => <Inline svg={s} />}</Here>;
}

/** The picture of a finding, fetched when it is shown. */
export function Picture({ piece, name, title }: { piece: string; name: string; title: string }): VNode {
  const [room, px] = useRoom();
  const file = `/api/pieces/${encodeURIComponent(piece)}/findings/${encodeURIComponent(name)}.svg`;
  return <figure class="finding-picture" ref={room}>{px > 0 && <Fetched url={`${file}${query({ units: unitsWord(), width: String(fitting(px)) })}`} title={title} />}</figure>;
}

interface SheetProps {
  piece: string;
  drawing: DrawingLine;
  listed?: number; // how wide, in mm, the list was drawn that names it: on narrower sheets it may name more; 0 while that is not known
  wide?: (mm: number) => void; // told how wide there is room for
  children?: ComponentChildren;
}

/** One drawing with its title and the ways to take it along. */
export function Sheet({ piece, drawing, listed, wide, children }: SheetProps): VNode {
  const [room, px] = useRoom();
  const fits = px > 0 ? fitting(px, drawing.kind) : 0;
  useEffect(() => { if (fits > 0) wide?.(fits); }, [fits, wide]);
  const width = listed ?? fits;
  const file = `/api/pieces/${encodeURIComponent(piece)}/drawings/${encodeURIComponent(drawing.id)}`;
  const units = unitsWord();
  const taken = query({ units, width: listed ? String(listed) : "" });
  return (
    <figure class="sheet" ref={room}>
      {width > 0 ? <Fetched url={`${file}.svg${query({ units, width: String(width) })}`} title={drawing.title} /> : <p class="waiting">Fetching the drawing …</p>}
      <figcaption>
        <span class="sheet-title"><Frac text={sentence(drawing.title)} /></span>
        <span class="sheet-ways">
          <a href={`${file}.svg${taken}`} download={`${drawing.id}.svg`} aria-label={`${drawing.title} as SVG`}>SVG</a>
          <a href={`${file}.dxf${taken}`} download={`${drawing.id}.dxf`} aria-label={`${drawing.title} as DXF`}>DXF</a>
        </span>
      </figcaption>
      {children}
    </figure>
  );
}
