// What happened: the log of a piece, newest first, and what can be taken back of it.

import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { type Trouble, troubleFrom } from "./asking";
import { NotStored } from "./clash";
import { Frac } from "./frac";
import type { EntryKind, Log, LogEntry, Telling } from "./types";
import { tell } from "./underway";
import { clock, day, sentence } from "./words";

const mostShown = 40;

/** What can be done about an entry: the word on the button and what is sent. */
function wayOf(e: LogEntry): [string, Telling] | undefined {
  if (e.mayUndo) return [e.kind === "undo" ? "Make again" : "Take back", { kind: "undo", names: e.id }];
  const withdrawable: readonly EntryKind[] = ["fact", "asked", "answer"];
  if (e.stands && withdrawable.includes(e.kind)) return ["Withdraw", { kind: "withdrawn", names: e.id }];
  return undefined;
}

/** The word beside an entry that no longer stands. */
function gone(e: LogEntry): string {
  return e.kind === "edit" || e.kind === "undo" ? "taken back" : "withdrawn";
}

function Row({ e, act, busy }: { e: LogEntry; act: (t: Telling) => void; busy: boolean }): VNode {
  const way = wayOf(e);
  const words = <Frac text={sentence(e.words)} />;
  return (
    <li class={e.stands ? "happened" : "happened is-gone"} data-number={e.number} data-kind={e.kind}>
      <span class="happened-number"><span class="for-ears">Entry </span>{e.number}</span>
      <div class="happened-what">
        <p>{e.stands ? words : <><s>{words}</s> <b class="happened-gone">{gone(e)}</b></>}</p>
        <p class="soft">{e.actor}, {day(e.at)}, {clock(e.at)}</p>
      </div>
      {way && <button type="button" disabled={busy} onClick={() => act(way[1])} aria-label={`${way[0]}: entry ${e.number}`}>{way[0]}</button>}
    </li>
  );
}

/** The part of the page with the log. */
export function Happened({ id, log }: { id: string; log: Log }): VNode {
  const [trouble, setTrouble] = useState<Trouble | undefined>(undefined);
  const [busy, setBusy] = useState(false);
  const act = async (t: Telling): Promise<void> => {
    setBusy(true);
    try {
      await tell(id, log.number, [t]);
      setTrouble(undefined);
    } catch (e) {
      setTrouble(troubleFrom(e));
    } finally {
      setBusy(false);
    }
  };
  const rows = log.entries.toReversed().map((e) => <Row key={e.id} e={e} busy={busy} act={(t) => void act(t)} />);
  return (
    <section class="happened-part" aria-labelledby="log-title">
      <h2 id="log-title">What happened</h2>
      {log.delivered ? <p class="lead">The piece is delivered.</p> : log.finished && <p class="lead">The piece is finished.</p>}
      {trouble && <NotStored trouble={trouble} />}
      {rows.length === 0 && <p>Nothing yet. Say what was bought or made, or type a size under Shape and take it; each is kept here with its number, and nothing is ever rubbed out.</p>}
      <ol class="happenings" reversed>{rows.slice(0, mostShown)}</ol>
      {rows.length > mostShown && <details class="fold"><summary>{rows.length - mostShown} earlier</summary><ol class="happenings">{rows.slice(mostShown)}</ol></details>}
    </section>
  );
}
