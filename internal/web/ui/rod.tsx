// The rod: the strip of wood along every piece's pages, with a mark for each stage of the job.

import type { VNode } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { pathOf, type Stage, stages } from "./route";
import type { Build } from "./types";
import { count, Shape, verdictCount } from "./verdict";
import { counted, money, sentence } from "./words";

function State({ stage, build, number }: { stage: Stage; build: Build; number: number }): VNode | null {
  switch (stage) {
    case "shape":
      return <>{counted(build.parts.reduce((n, p) => n + (p.kind === "hardware" ? 0 : p.count), 0), "part")}</>;
    case "findings": {
      const n = count(build.findings);
      const worst = (["fails", "unknown", "tight"] as const).find((v) => n[v] > 0);
      if (!worst) return <><Shape of="stands" /> all stand</>;
      return <><Shape of={worst} /> {verdictCount(n[worst], worst)}</>;
    }
    case "material":
      return <>{counted(build.buy.filter((b) => b.count > 0).length, "line")} to buy</>;
    case "work":
      return <>{counted(build.steps.length, "step")}</>;
    case "changes":
      return <>{number === 0 ? "none yet" : counted(number, "entry", "entries")}</>;
    case "price":
      if (build.unknown.length > 0) return <><Shape of="unknown" /> {build.unknown.length} not known</>;
      return <>{money(build.price.total, build.currency)}</>;
    case "book":
      return <>plan to read</>;
  }
}

/** The rod with its marks; build is missing until it is read, number is that of the last entry of the log. */
export function Rod({ id, at, build, number }: { id: string; at: Stage; build: Build | undefined; number: number }): VNode {
  const here = useRef<HTMLAnchorElement>(null);
  useEffect(() => {
    // Only the rod itself is scrolled, never the page.
    const mark = here.current;
    const strip = mark?.closest("nav");
    if (mark && strip) strip.scrollLeft = mark.offsetLeft - strip.clientWidth / 2 + mark.clientWidth / 2;
  }, [at, build === undefined]); // what is written on the marks makes them wider
  return (
    <nav class="rod" aria-label="Stages of this piece">
      <ol>
        {stages.map((s) => (
          <li key={s}>
            <a href={pathOf(id, s)} ref={s === at ? here : null} {...(s === at ? { "aria-current": "page" as const } : {})}>
              <span class="rod-stage">{sentence(s)}</span>
              <span class="rod-state">{build ? <State stage={s} build={build} number={number} /> : " "}</span>
            </a>
          </li>
        ))}
      </ol>
    </nav>
  );
}
