// The sizes and words of a piece that can be typed. Enter tries what was typed; nothing is stored.

import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { Frac } from "./frac";
import { type Fineness, fineness, text } from "./length";
import { Here } from "./parts";
import { useJSON } from "./reading";
import { attempt, refusal, trialOf, trying } from "./trial";
import type { Build, Field, SizeField, Sizes } from "./types";
import { sentence } from "./words";

interface EntryProps { id: string; base: number; path: string; label: string; stored: string; comes?: string; note?: string }

function Entry({ id, base, path, label, stored, comes, note }: EntryProps): VNode {
  const edit = trialOf(id)?.edits.find((e) => e.path === path);
  const refused = refusal.value?.path === path ? refusal.value : undefined;
  const shown = refused?.value ?? edit?.value ?? stored;
  const [typed, setTyped] = useState<string | undefined>(undefined);
  const key = `f-${path.replace(/[^a-z0-9]+/gi, "-")}`;
  const offer = (): void => {
    if (typed === undefined || typed.trim() === shown) return;
    void attempt(id, base, { path, value: typed.trim() });
    setTyped(undefined);
  };
  const about = [note ? `${key}-note` : "", refused ? `${key}-wrong` : ""].filter((s) => s !== "").join(" ");
  return (
    <form class={`entry${edit ? " is-tried" : ""}${refused ? " is-refused" : ""}`} onSubmit={(e) => { e.preventDefault(); offer(); }}>
      <label for={key}>{sentence(label)}</label>
      <input id={key} type="text" autocomplete="off" spellcheck={false} enterkeyhint="done" data-path={path} value={typed ?? shown} aria-invalid={refused !== undefined}
        {...(about ? { "aria-describedby": about } : {})}
        onInput={(e) => setTyped(e.currentTarget.value)}
        onKeyDown={(e) => { if (e.key === "Escape" && typed !== undefined) { e.preventDefault(); setTyped(undefined); } }} />
      {comes && <output class="entry-comes" for={key}><Frac text={comes} /></output>}
      {note && <p class="entry-note" id={`${key}-note`}><Frac text={note} /></p>}
      {refused && (
        <p class="entry-wrong" id={`${key}-wrong`} role="alert">
          {sentence(refused.trouble.message)} {refused.trouble.right && <span>Right would be: {refused.trouble.right}</span>}
        </p>
      )}
    </form>
  );
}

/** Where a size comes from, in words. */
const origins: Readonly<Record<SizeField["origin"], string>> = {
  measured: "measured on site", client: "the client’s wish", assumed: "assumed", rule: "by a rule of the trade", standard: "from a standard",
};

function noteOf(s: SizeField): string {
  const parts = [origins[s.origin], s.note];
  return parts.filter((p) => p !== "").join("; ");
}

function Named({ id, build, base, sizes, f }: { id: string; build: Build; base: number; sizes: SizeField[]; f: Fineness }): VNode {
  return (
    <div class="entries">
      {sizes.map((s) => {
        const now = build.sizes.find((b) => b.name === s.name);
        const comes = text(now?.value_mm ?? s.value, f);
        return <Entry key={s.path} id={id} base={base} path={s.path} label={s.name} stored={s.formula} comes={comes} note={noteOf(s)} />;
      })}
    </div>
  );
}

function Group({ id, base, title, fields }: { id: string; base: number; title: string; fields: Field[] }): VNode {
  return (
    <details class="fold">
      <summary>{sentence(title)}</summary>
      <div class="entries">
        {fields.map((x) => <Entry key={x.path} id={id} base={base} path={x.path} label={x.label} stored={x.value} />)}
      </div>
    </details>
  );
}

/** The list of everything that can be typed. */
export function Fields({ id, build, base }: { id: string; build: Build; base: number }): VNode {
  const read = useJSON<Sizes>(`/api/pieces/${encodeURIComponent(id)}/sizes`);
  const f = fineness(build.fineness);
  return (
    <Here from={read} what="the sizes">
      {({ sizes, fields }) => {
        const groups = [...new Set(fields.map((x) => x.group))];
        return (
          <div class={trying.value ? "fields is-busy" : "fields"}>
            <p class="hint">Type a size such as <b class="pencil"><Frac text="14 3/8" /></b> and press Enter: the strip below tells what moves. Nothing is stored until it is taken<span class="by-key">; <kbd>Esc</kbd> puts it back</span>.</p>
            <Named id={id} build={build} base={base} sizes={sizes} f={f} />
            {groups.map((g) => <Group key={g} id={id} base={base} title={g} fields={fields.filter((x) => x.group === g)} />)}
          </div>
        );
      }}
    </Here>
  );
}
