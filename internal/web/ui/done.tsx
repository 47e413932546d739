// Saying of a step of the work that it is done.

import type { VNode } from "preact";
import { useRef, useState } from "preact/hooks";
import { type Trouble, troubleFrom } from "./asking";
import { NotStored } from "./clash";
import { pathOf } from "./route";
import type { Build, Step, Telling } from "./types";
import { newID, tell } from "./underway";
import { counted } from "./words";
import { type PutRight, tellsAll, toTell } from "./works";

interface DoneProps { id: string; base: number; build: Build; step: Step; again: PutRight; told: (words: string) => void }

/** Stores for each part of a step that its work is done; nothing where the work is not done to parts, or is told of at a later step. */
export function DoneWay({ id, base, build, step, again, told }: DoneProps): VNode | null {
  const [trouble, setTrouble] = useState<Trouble | undefined>(undefined);
  const [busy, setBusy] = useState(false);
  const ids = useRef(new Map<string, string>()); // of each part's entry, so that a repeat is known
  const parts = toTell(build, step, again);
  if (parts.length === 0) return null;
  const say = async (): Promise<void> => {
    setBusy(true);
    try {
      await tell(id, base, parts.map((tag): Telling => {
        const own = ids.current.get(tag) ?? newID();
        ids.current.set(tag, own);
        return { id: own, kind: "fact", say: `made ${tag} ${step.work}` };
      }));
      ids.current.clear();
      setTrouble(undefined);
      told(`${step.title}: done on ${counted(parts.length, "part")}.`);
    } catch (e) {
      setTrouble(troubleFrom(e));
    } finally {
      setBusy(false);
    }
  };
  return (
    <div class="step-done">
      <button type="button" disabled={busy} onClick={() => void say()} aria-label={`Done: ${step.title}`}>Done{tellsAll(build, step, again) && ", with the steps that lead to it"}{parts.length > 1 && ` (${parts.length} parts)`}</button>
      {trouble && <><NotStored trouble={trouble} /><p>Say it part by part under <a href={pathOf(id, "changes")}>Changes</a>.</p></>}
    </div>
  );
}
