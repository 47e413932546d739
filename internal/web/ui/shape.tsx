// Shape: the piece as drawn, turned in the round, and the sizes that can be typed.

import type { VNode } from "preact";
import { query } from "./asking";
import { unitsWord } from "./choices";
import { Inline, Sheet } from "./drawing";
import { Fields } from "./fields";
import { Here } from "./parts";
import { PartList } from "./partlist";
import type { PieceProps } from "./piece";
import { useJSON, useLasting } from "./reading";
import { Round } from "./round";
import { trialOf } from "./trial";
import type { Drawings, Preview } from "./types";

const triedViews: readonly (readonly [keyof Preview["views"], string])[] = [
  ["front", "Front, as tried"], ["side", "From the right, as tried"], ["top", "From above, as tried"],
];

function Views({ id }: { id: string }): VNode {
  const drawings = useLasting(useJSON<Drawings>(`/api/pieces/${encodeURIComponent(id)}/drawings${query({ units: unitsWord() })}`));
  return (
    <Here from={drawings} what="the drawings">
      {(all) => <>{all.drawings.filter((d) => d.kind === "view").map((d) => <Sheet key={d.id} piece={id} drawing={d} />)}</>}
    </Here>
  );
}

function TriedViews({ views }: { views: Preview["views"] }): VNode {
  return (
    <>
      {triedViews.map(([side, title]) => (
        <figure key={side} class="sheet is-tried">
          <Inline svg={views[side]} />
          <figcaption><span class="sheet-title">{title}</span></figcaption>
        </figure>
      ))}
    </>
  );
}

/** The stage Shape. */
export function ShapePage({ id, build, base }: PieceProps): VNode {
  const tried = trialOf(id);
  return (
    <>
      <p class="jumps"><a href="#sizes">Sizes</a><a href="#round">In the round</a><a href="#parts">Parts</a></p>
      <div class="shape">
        <section class="shape-sizes" aria-labelledby="sizes">
          <h2 id="sizes">Sizes</h2>
          <Fields id={id} build={build} base={base} />
        </section>
        <section class="shape-views" aria-label="Views">
          {tried ? <TriedViews views={tried.answer.views} /> : <Views id={id} />}
        </section>
        <Round id={id} />
        <section class="shape-parts" aria-labelledby="parts">
          <h2 id="parts">Parts</h2>
          <PartList build={build} />
        </section>
      </div>
    </>
  );
}
