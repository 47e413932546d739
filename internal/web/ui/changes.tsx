// Changes: what happened, saying what was done, weighing a change, and comparing two moments.

import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { unitsWord } from "./choices";
import { ComparePart, type Span } from "./comparing";
import { Happened } from "./happened";
import { Here } from "./parts";
import type { PieceProps } from "./piece";
import { useJSON, useLasting } from "./reading";
import { SayPart } from "./saying";
import type { Log, Things } from "./types";
import { addressOf } from "./underway";
import { WeighPart } from "./weighing";

/** The log by itself, where nothing can be derived any more: what led there can be taken back. */
export function LogAlone({ id }: { id: string }): VNode {
  const log = useJSON<Log>(addressOf(id, "log", { units: unitsWord() }));
  return <Here from={log} what="the log">{(l) => <div class="changes"><div><Happened id={id} log={l} /></div></div>}</Here>;
}

/** The stage Changes. */
export function ChangesPage({ id, build, base }: PieceProps): VNode {
  const units = { units: unitsWord() };
  const log = useLasting(useJSON<Log>(addressOf(id, "log", units)));
  const things = useLasting(useJSON<Things>(addressOf(id, "things", units)));
  const [span, setSpan] = useState<Span>({ from: 0, to: undefined });
  return (
    <Here from={log} what="the log">
      {(l) => (
        <>
          <p class="jumps"><a href="#say-title">Say</a><a href="#weigh-title">Weigh</a><a href="#log-title">What happened</a><a href="#compare-title">Compare</a></p>
          <div class="changes">
            <div>
              <SayPart id={id} build={build} base={base} things={things.value?.things ?? []} />
              <WeighPart id={id} build={build} base={base} orders={l.orders} />
            </div>
            <div>
              <Happened id={id} log={l} show={(n) => setSpan({ from: n, to: undefined })} />
              <ComparePart id={id} build={build} log={l} span={span} set={setSpan} />
            </div>
          </div>
        </>
      )}
    </Here>
  );
}
