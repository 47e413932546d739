// The strip at the foot of a piece's pages: what is being tried, to be taken or put back, and what was taken last.

import type { VNode } from "preact";
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { unitsWord } from "./choices";
import { NotStored } from "./clash";
import { type Fineness, fineness } from "./length";
import { Groups, spoken } from "./ripple";
import { useJSON } from "./reading";
import { pathOf } from "./route";
import { makeAgain, stored, storing, takeBack, takeTrial } from "./taken";
import { leaveOut, putBack, redo, type Trial, trialOf, trying, undo } from "./trial";
import type { Things } from "./types";
import { addressOf, weigh } from "./underway";
import { counted } from "./words";

/** Whether a key is meant for what has the focus, such as a field. */
function elsewhere(e: KeyboardEvent): boolean {
  return e.target instanceof Element && e.target.closest("input, textarea, select") !== null;
}

/** Ctrl Z and Ctrl Shift Z: on what is being tried, else on what is stored. */
function onUndo(e: KeyboardEvent, id: string, base: number, tried: boolean): void {
  if (!(e.ctrlKey || e.metaKey) || e.key.toLowerCase() !== "z" || (!tried && elsewhere(e))) return;
  e.preventDefault();
  if (e.repeat) return; // a key held down is one press
  if (tried) void (e.shiftKey ? redo(base) : undo(base));
  else void (e.shiftKey ? makeAgain(id) : takeBack(id));
}

/** The strip, and what is said aloud of it; quiet where the page itself shows what is weighed. */
export function Strip({ id, base, quiet }: { id: string; base: number; quiet: boolean }): VNode {
  const tried = quiet ? undefined : trialOf(id);
  const last = stored.value?.id === id ? stored.value : undefined;
  useLayoutEffect(() => {
    const onKey = (e: KeyboardEvent): void => {
      if (e.defaultPrevented || document.querySelector("dialog[open]")) return;
      if (e.key === "Escape") {
        if (tried) putBack();
        stored.value = undefined;
      } else onUndo(e, id, base, tried !== undefined);
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, [tried, id, base]);
  useEffect(() => () => { stored.value = undefined; }, [id]);
  const said = tried ? spoken(tried.answer.ripple, tried.answer.ripple.money.currency) : "";
  return (
    <>
      <p class="for-ears" role="status" aria-live="polite">{trying.value ? "Working it out." : said || (last?.words ?? "")}</p>
      {tried ? <Tried tried={tried} f={fineness(tried.answer.build.fineness)} said={said} base={base} /> : last && <Last id={id} />}
    </>
  );
}

/** How many of the parts already made an edit changes, in words; empty where none are made. */
function useMade(tried: Trial, base: number): string {
  const [words, setWords] = useState("");
  const things = useJSON<Things>(addressOf(tried.id, "things", { units: unitsWord() }));
  const any = things.value?.things.some((t) => !t.spoiled) ?? false;
  useEffect(() => {
    setWords("");
    if (!any) return;
    let gone = false;
    weigh(tried.id, base, tried.edits).then((w) => {
      if (gone) return;
      const n = w.fates.filter((f) => !f.unchanged).length;
      if (w.fates.length === 0) setWords("");
      else setWords(n === 0 ? `None of the ${counted(w.fates.length, "part")} already made changes.` : `${n} of the ${counted(w.fates.length, "part")} already made ${n === 1 ? "changes" : "change"}.`);
    }, () => !gone && setWords(""));
    return () => { gone = true; };
  }, [tried.edits, base, any]);
  return words;
}

function Tried({ tried, f, said, base }: { tried: Trial; f: Fineness; said: string; base: number }): VNode {
  const strip = useRef<HTMLElement>(null);
  const made = useMade(tried, base);
  const trouble = stored.value?.trouble;
  useEffect(() => {
    // What was just typed must not lie under the strip.
    const root = document.documentElement.style;
    root.scrollPaddingBottom = `${(strip.current?.offsetHeight ?? 0) + 24}px`;
    document.activeElement?.scrollIntoView({ block: "nearest" });
    return () => void root.removeProperty("scroll-padding-bottom");
  }, [tried.answer.ripple]);
  const onKey = (e: KeyboardEvent): void => {
    if (e.key !== "Enter" || (e.target instanceof Element && e.target.closest("button, a, summary"))) return;
    e.preventDefault();
    void takeTrial(tried.id);
  };
  return (
    <aside class="ripple" ref={strip} aria-label="What moves" onKeyDown={onKey}>
      <div class="ripple-head">
        <div>
          <p><strong>{said}</strong> Only tried: nothing is stored.</p>
          {made && <p class="ripple-made">{made} <a href={pathOf(tried.id, "changes")}>What becomes of them</a></p>}
        </div>
        <div class="ripple-ways">
          <button type="button" class="main-way" disabled={storing.value} onClick={() => void takeTrial(tried.id)}>Take it</button>
          <button type="button" onClick={() => void undo(base)}>Back one step</button>
          <button type="button" onClick={putBack}>Put back <kbd>Esc</kbd></button>
        </div>
      </div>
      {trouble && (
        <NotStored trouble={trouble} mine={(number) => void takeTrial(tried.id, number)}
          theirs={(path) => { stored.value = undefined; void leaveOut(base, path); }} />
      )}
      <details class="ripple-more" open={!matchMedia("(max-width: 40rem)").matches}>
        <summary>In detail</summary>
        <Groups ripple={tried.answer.ripple} f={f} />
      </details>
    </aside>
  );
}

/** What was stored last from this page, with the way back. */
function Last({ id }: { id: string }): VNode | null {
  const last = stored.value;
  if (!last) return null;
  return (
    <aside class="ripple is-stored" aria-label="What was stored">
      <div class="ripple-head">
        {last.trouble ? <NotStored trouble={last.trouble} /> : <p><strong>{last.words}</strong></p>}
        <div class="ripple-ways">
          {last.back && <button type="button" disabled={storing.value} onClick={() => void takeBack(id)}>Take back <kbd>Ctrl Z</kbd></button>}
          {last.again && <button type="button" disabled={storing.value} onClick={() => void makeAgain(id)}>Make it again</button>}
          <button type="button" onClick={() => { stored.value = undefined; }}>Close <kbd>Esc</kbd></button>
        </div>
      </div>
    </aside>
  );
}
