// Taking what was tried, and taking it back: the edits of the log that are one's own.

import { signal } from "@preact/signals";
import { read, type Trouble, troubleFrom } from "./asking";
import { unitsWord } from "./choices";
import { putBack, trialOf } from "./trial";
import type { EntryKind, Log, LogEntry } from "./types";
import { addressOf, take, tell } from "./underway";

/** What was stored last from this page, or why it was not; back and again say which way is open. */
export interface Stored { readonly id: string; readonly words: string; readonly back: boolean; readonly again: boolean; readonly trouble?: Trouble }

export const stored = signal<Stored | undefined>(undefined);
export const storing = signal(false);

let before: Promise<void> = Promise.resolve(); // one after the other, in the order of the keys

function inTurn(id: string, does: () => Promise<Omit<Stored, "id"> | undefined>): Promise<void> {
  before = before.then(async () => {
    storing.value = true;
    try {
      const said = await does();
      if (said) stored.value = { id, ...said };
    } catch (e) {
      stored.value = { id, words: "", back: false, again: false, trouble: troubleFrom(e) };
    } finally {
      storing.value = false;
    }
  });
  return before;
}

/** Takes what is being tried: the edits are stored, and what becomes of the made parts with them. A base is given where a newer state was looked at. */
export function takeTrial(id: string, base?: number): Promise<void> {
  return inTurn(id, async () => {
    const now = trialOf(id);
    if (!now) return undefined; // it was taken or put back meanwhile
    const kept = await take(id, base ?? now.seen, now.edits);
    putBack();
    return { words: `Taken: ${kept.entries.map((e) => e.words).join("; ")}.`, back: true, again: false };
  });
}

async function lastOf(id: string, kind: EntryKind): Promise<{ number: number; entry: LogEntry | undefined }> {
  const log = await read<Log>(addressOf(id, "log", { units: unitsWord() }));
  return { number: log.number, entry: log.entries.findLast((e) => e.mayUndo && e.kind === kind) };
}

/** Takes back the last edit that was taken; it stays in the log, struck through. */
export function takeBack(id: string): Promise<void> {
  return inTurn(id, async () => {
    const { number, entry } = await lastOf(id, "edit");
    if (!entry) return { words: "There is no edit of yours to take back.", back: false, again: false };
    await tell(id, number, [{ kind: "undo", names: entry.id }]);
    const more = await lastOf(id, "edit");
    return { words: `Taken back: ${entry.words}.`, back: more.entry !== undefined, again: true };
  });
}

/** Makes again what was taken back last. */
export function makeAgain(id: string): Promise<void> {
  return inTurn(id, async () => {
    const { number, entry } = await lastOf(id, "undo");
    if (!entry) return { words: "There is nothing to make again.", back: false, again: false };
    await tell(id, number, [{ kind: "undo", names: entry.id }]);
    const more = await lastOf(id, "undo");
    return { words: `Made again: ${entry.words.replace(/^undo of /, "")}.`, back: true, again: more.entry !== undefined };
  });
}
