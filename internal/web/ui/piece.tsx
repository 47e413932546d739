// One piece: the rod down the left, its name and figures above, and the stage that is open.

import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { units, unitsWord } from "./choices";
import { query, Trouble } from "./asking";
import { BookPage } from "./book";
import { ChangesPage, LogAlone } from "./changes";
import { FindingsPage } from "./findings";
import { Frac } from "./frac";
import { across, fineness } from "./length";
import { MaterialPage } from "./material";
import { Big, Here, Title } from "./parts";
import { PricePage } from "./price";
import { type Reading, useJSON, useLasting } from "./reading";
import { Rod } from "./rod";
import type { Stage } from "./route";
import { ShapePage } from "./shape";
import { Strip } from "./strip";
import { again, putBack, trial, trialOf } from "./trial";
import type { Build, PieceLine, Pieces, Solids } from "./types";
import { mass, money, sentence } from "./words";
import { WorkPage } from "./work";

/** What a stage's page is given. */
export interface PieceProps {
  readonly id: string;
  readonly build: Build; // as stored, or as being tried
  readonly base: number; // the number of the state it stands on
}

function sizeOf(line: PieceLine | undefined, tried: Solids | undefined): number[] | undefined {
  if (!tried) return line?.size ?? undefined;
  return [0, 1, 2].map((i) => (tried.max[i] ?? 0) - (tried.min[i] ?? 0));
}

function Figures({ build, size }: { build: Build; size: number[] | undefined }): VNode {
  return (
    <dl class="figures">
      {size && <Big name="Size"><Frac text={across(size, fineness(build.fineness))} /></Big>}
      <Big name="Weight">{mass(build.totals.mass_kg, build.unit)}</Big>
      <Big name="Days">{build.time.calendar_days}</Big>
      <Big name="Price">{money(build.price.total, build.currency)}</Big>
    </dl>
  );
}

function StagePage(p: PieceProps & { stage: Stage }): VNode {
  switch (p.stage) {
    case "shape": return <ShapePage {...p} />;
    case "findings": return <FindingsPage {...p} />;
    case "material": return <MaterialPage {...p} />;
    case "work": return <WorkPage {...p} />;
    case "changes": return <ChangesPage {...p} />;
    case "price": return <PricePage {...p} />;
    case "book": return <BookPage {...p} />;
  }
}

/** A piece's page at a stage. */
export function PiecePage({ id, stage }: { id: string; stage: Stage }): VNode {
  const list = useJSON<Pieces>("/api/pieces");
  const stored = useLasting(useJSON<Build>(`/api/pieces/${encodeURIComponent(id)}/build${query({ units: unitsWord() })}`));
  const line = list.value?.pieces.find((p) => p.id === id);
  const tried = stage === "changes" ? undefined : trialOf(id); // changes are weighed on the piece as it stands
  const base = line?.number ?? 0;
  const unitsNow = units.value;
  useEffect(() => {
    if (trial.value && trial.value.id !== id) putBack();
  }, [id]);
  useEffect(() => {
    void again(base);
  }, [unitsNow, base]);
  const from: Reading<Build> = tried ? { ...stored, value: tried.answer.build } : stored;
  return (
    <div class="bench">
      <Rod id={id} at={stage} build={from.value} number={base} />
      <main id="main" class="page">
        <Here from={unknownPiece(from, list, id)} what="this piece">
          {(build) => (
            <>
              <header class="piece-head">
                <Title page={sentence(stage)} of={sentence(build.piece)}>
                  <span class="of-piece">{sentence(build.piece)}</span> <span class="of-stage">{sentence(stage)}</span>
                </Title>
                <Figures build={build} size={sizeOf(line, tried?.answer.solids)} />
              </header>
              <StagePage id={id} build={build} base={base} stage={stage} />
            </>
          )}
        </Here>
        {stage === "changes" && from.value === undefined && from.trouble?.status === 422 && <LogAlone id={id} />}
        <Strip id={id} base={base} quiet={stage === "changes"} />
      </main>
    </div>
  );
}

/** A piece the shop has not got is told by its name, not by what the server answered. */
function unknownPiece(from: Reading<Build>, list: Reading<Pieces>, id: string): Reading<Build> {
  if (!list.value || list.value.pieces.some((p) => p.id === id)) return from;
  const trouble = new Trouble(404, `This shop has no piece “${id}”.`, "Choose one under Pieces.");
  return { value: undefined, trouble, at: 0 };
}
