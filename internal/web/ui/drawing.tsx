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
const widths = [80, 100, 120, 140, 160, 190, 220, 260, 300, 360]; // mm; few, so that a drawing is seldom asked for twice

/** The sheet width in mm that fits what the page has room for. */
function fitting(px: number): number {
  const mm = px * MM_PER_PX;
  return widths.findLast((w) => w <= mm) ?? widths[0] ?? 80;
}

/** The width in pixels of the element that is given the ref; 0 before it stands. */
function useRoom(): [{ current: HTMLElement | null }, number] {
  const at = useRef<HTMLElement | null>(null);
  const [px, set] = useState(0);
  useEffect(() => {
    const element = at.current;
    if (!element) return;
    const watch = new ResizeObserver(() => set(element.clientWidth));
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return [at, px];
}

/** SVG of this shop's own server, set in as it came. */
export function Inline({ svg }: { svg: string }): VNode {
  return <div class="sheet-svg" dangerouslySetInnerHTML={{ __html: svg }} />;
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

/** One drawing with its title and the ways to take it along. */
export function Sheet({ piece, drawing, children }: { piece: string; drawing: DrawingLine; children?: ComponentChildren }): VNode {
  const [room, px] = useRoom();
  const file = `/api/pieces/${encodeURIComponent(piece)}/drawings/${encodeURIComponent(drawing.id)}`;
  const units = unitsWord();
  return (
    <figure class="sheet" ref={room}>
      {px > 0 && <Fetched url={`${file}.svg${query({ units, width: String(fitting(px)) })}`} title={drawing.title} />}
      <figcaption>
        <span class="sheet-title"><Frac text={sentence(drawing.title)} /></span>
        <span class="sheet-ways">
          <a href={`${file}.svg${query({ units })}`} download={`${drawing.id}.svg`} aria-label={`${drawing.title} as SVG`}>SVG</a>
          <a href={`${file}.dxf${query({ units })}`} download={`${drawing.id}.dxf`} aria-label={`${drawing.title} as DXF`}>DXF</a>
        </span>
      </figcaption>
      {children}
    </figure>
  );
}
