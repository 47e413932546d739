// Saying of a step of the work that it is done.

import type { VNode } from "preact";
import { useRef, useState } from "preact/hooks";
import { type Trouble, troubleFrom } from "./asking";
import { NotStored } from "./clash";
import { pathOf } from "./route";
import type { Build, Step, Telling } from "./types";
import { newID, tell } from "./underway";
import { counted } from "./words";
import { partsDone } from "./works";

/** Stores for each part of a step that its work is done; nothing where the work is not done to parts. */
export function DoneWay({ id, base, build, step, told }: { id: string; base: number; build: Build; step: Step; told: (words: string) => void }): VNode | null {
  const [trouble, setTrouble] = useState<Trouble | undefined>(undefined);
  const [busy, setBusy] = useState(false);
  const ids = useRef(new Map<string, string>()); // of each part's entry, so that a repeat is known
  const parts = partsDone(build, step);
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
      <button type="button" disabled={busy} onClick={() => void say()} aria-label={`Done: ${step.title}`}>Done{parts.length > 1 && ` (${parts.length} parts)`}</button>
      {trouble && <><NotStored trouble={trouble} /><p>Say it part by part under <a href={pathOf(id, "changes")}>Changes</a>.</p></>}
    </div>
  );
}
