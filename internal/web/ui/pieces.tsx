// The pieces in hand.

import type { VNode } from "preact";
import { units } from "./choices";
import { across, fineness } from "./length";
import { Big, Here, Title } from "./parts";
import { Frac } from "./frac";
import { useJSON } from "./reading";
import { pathOf } from "./route";
import { Silhouette } from "./silhouette";
import type { PieceLine, Pieces } from "./types";
import { Counts } from "./verdict";
import { counted, day, mass, money, sentence } from "./words";

/** The fineness sizes are shown in: the piece's own as drawn, else that of the units chosen. */
function listFineness(p: PieceLine): ReturnType<typeof fineness> {
  const own = { own: p.fineness ?? "1/16", inch: "1/16", metric: "1 mm" };
  return fineness(own[units.value]);
}

function Line({ p }: { p: PieceLine }): VNode {
  const f = listFineness(p);
  return (
    <li class="piece-line">
      <Silhouette id={p.id} />
      <h2 class="piece-name"><a href={pathOf(p.id, "shape")} class="piece-link">{sentence(p.name)}</a></h2>
      {p.problem ? <p class="note is-wrong piece-problem">Nothing can be worked out from its document: {p.problem}</p> : (
        <dl class="piece-figures">
          {p.size && <Big name="Size"><Frac text={across(p.size, f)} /></Big>}
          {p.massKg !== null && <Big name="Weight">{mass(p.massKg, f.unit)}</Big>}
          {p.days !== null && <Big name="Days">{p.days}</Big>}
          <Big name="Price">{money(p.total === null ? null : p.total / 100, p.currency)}</Big>
          <Big name="Findings"><Counts of={{ fails: p.failing, tight: p.tight, unknown: p.unknown, stands: 0 }} /></Big>
        </dl>
      )}
      <p class="piece-changed">Changed {day(p.changed)}</p>
    </li>
  );
}

function Empty(): VNode {
  return (
    <div class="note">
      <p><strong>No piece is in hand yet.</strong> Begin with a starter piece and give it to this shop:</p>
      <pre><code>rodwright new stepped-stand -o stand.piece.yaml{"\n"}rodwright serve stand.piece.yaml</code></pre>
    </div>
  );
}

/** The page of all pieces. */
export function PiecesPage(): VNode {
  const list = useJSON<Pieces>("/api/pieces");
  return (
    <main id="main" class="page">
      <Title page="Pieces" />
      <Here from={list} what="the pieces">
        {({ pieces }) => pieces.length === 0 ? <Empty /> : (
          <>
            <p class="lead">{counted(pieces.length, "piece")} in hand.</p>
            <ul class="piece-list">{pieces.map((p) => <Line key={p.id} p={p} />)}</ul>
          </>
        )}
      </Here>
    </main>
  );
}
