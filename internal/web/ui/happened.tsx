// What happened: the log of a piece, newest first, and what can be taken back of it.

import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { type Trouble, troubleFrom } from "./asking";
import { NotStored } from "./clash";
import { Frac } from "./frac";
import type { EntryKind, Log, LogEntry, Telling } from "./types";
import { tell } from "./underway";
import { clock, day, priced, sentence, written } from "./words";

const mostShown = 12;

/** What can be done about an entry: the word on the button and what is sent. */
function wayOf(e: LogEntry): [string, Telling] | undefined {
  if (e.mayUndo) return [e.kind === "undo" ? "Make again" : "Take back", { kind: "undo", names: e.id }];
  const withdrawable: readonly EntryKind[] = ["fact", "asked", "answer", "accepted"];
  if (e.stands && withdrawable.includes(e.kind)) return ["Withdraw", { kind: "withdrawn", names: e.id }];
  return undefined;
}

/** An entry in words; a comma keeps a length in inches from the hours that were told, and a day is written out. */
function told(e: LogEntry): string {
  return priced(e.words).replace(/ in in (?=[\d.]+ (h|min))/, " in, in ").replace(/\b\d{4}-\d\d-\d\d\b/g, written);
}

/** Shows the piece as it stood after an entry. */
type Show = ((number: number) => void) | undefined;

/** The word beside an entry that no longer stands. */
function gone(e: LogEntry): string {
  return e.kind === "edit" || e.kind === "undo" ? "taken back" : "withdrawn";
}

function Row({ e, act, busy, show }: { e: LogEntry; act: (t: Telling) => void; busy: boolean; show: Show }): VNode {
  const way = wayOf(e);
  const words = <Frac text={sentence(told(e))} />;
  return (
    <li class={e.stands ? "happened" : "happened is-gone"} data-number={e.number} data-kind={e.kind}>
      <span class="happened-number"><span class="for-ears">Entry </span>{e.number}</span>
      <div class="happened-what">
        <p>{e.stands ? words : <><s>{words}</s> <b class="happened-gone">{gone(e)}</b></>}</p>
        <p class="soft">{e.actor}, {day(e.at)}, {clock(e.at)}
</p>
      </div>
      <p class="happened-ways">
        {show && <a href="#compare-title" onClick={() => show(e.number)} aria-label={`Show it as it stood after entry ${e.number}`}>Show it as it stood</a>}
        {way && <button type="button" disabled={busy} onClick={() => act(way[1])} aria-label={`${way[0]}: entry ${e.number}`}>{way[0]}</button>}
      </p>
    </li>
  );
}

/** The part of the page with the log; where there is a place to show the piece as it stood, each entry leads there. */
export function Happened({ id, log, show }: { id: string; log: Log; show?: Show }): VNode {
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
  const rows = log.entries.toReversed().map((e) => <Row key={e.id} e={e} busy={busy} show={show} act={(t) => void act(t)} />);
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
