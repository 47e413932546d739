// Two who changed the same value: both are shown, and one is chosen.

import type { VNode } from "preact";
import type { Trouble } from "./asking";
import { Frac } from "./frac";
import { pathWords, sentence } from "./words";

interface ClashProps { trouble: Trouble; mine?: (number: number) => void; theirs?: (path: string) => void }

/** What could not be stored, and why; where somebody else changed the value meanwhile, both values. */
export function NotStored({ trouble, mine, theirs }: ClashProps): VNode {
  const c = trouble.clash;
  if (!c) {
    return (
      <div class="note is-wrong" role="alert">
        <p><strong>Not stored.</strong> {sentence(trouble.message)} {trouble.right && <>Right would be: <Frac text={trouble.right} /></>}</p>
      </div>
    );
  }
  return (
    <div class="note is-wrong clash" role="alert">
      <p><strong>Not stored: {c.actor} changed {pathWords(c.path)} meanwhile</strong>, in entry {c.number}.</p>
      <dl>
        <div><dt>Yours</dt><dd><Frac text={c.yours || "taken back"} /></dd></div>
        <div><dt>By {c.actor}</dt><dd><Frac text={c.theirs || "taken back"} /></dd></div>
      </dl>
      {(mine || theirs) && (
        <p class="ways">
          {mine && <button type="button" onClick={() => mine(c.number)}>Take yours all the same</button>}
          {theirs && <button type="button" onClick={() => theirs(c.path)}>Leave it as {c.actor} has it</button>}
        </p>
      )}
    </div>
  );
}
