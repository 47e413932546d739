// What stands round every page: the shop's pages, the choices, and what is said when the server is gone.

import type { VNode } from "preact";
import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import { keys, type Theme, theme, type Units, units } from "./choices";
import { news } from "./live";
import { Pick } from "./parts";
import { silent } from "./reading";
import { go, pathOf, place, seeking, stages } from "./route";

const shopPages = [["/", "Pieces", "pieces"], ["/answers", "Answers", "answers"]] as const;
const themes: readonly (readonly [Theme, string])[] = [["device", "as device"], ["light", "light"], ["dark", "dark"]];
const systems: readonly (readonly [Units, string])[] = [["own", "as drawn"], ["inch", "inch"], ["metric", "metric"]];

/** The strip above every page. */
export function Head({ help }: { help: () => void }): VNode {
  const at = place.value.at === "piece" ? "pieces" : place.value.at;
  return (
    <header class="head">
      <a class="skip" href="#main" onClick={(e) => { e.preventDefault(); toMain(); }}>To the page’s content</a>
      <a class="mark" href="/"><span aria-hidden="true" class="mark-rod" />Rodwright</a>
      <nav aria-label="The shop’s pages" class="shop">
        {shopPages.map(([path, word, name]) => (
          <a key={path} href={path} {...(at === name ? { "aria-current": place.value.at === name ? ("page" as const) : ("true" as const) } : {})}>{word}</a>
        ))}
      </nav>
      <div class="choices">
        <Pick name="Units" value={units.value} all={systems} set={(v) => { units.value = v; }} />
        <Pick name="Light" value={theme.value} all={themes} set={(v) => { theme.value = v; }} />
        <button type="button" class="help-way" onClick={help}>Help</button>
      </div>
    </header>
  );
}

function toMain(): void {
  const main = document.getElementById("main");
  main?.setAttribute("tabindex", "-1");
  main?.focus();
}

/** What is said about the server. */
export function Word(): VNode {
  return (
    <>
      {silent.value && (
        <p class="banner" role="status">
          The server does not answer. What is shown stays as it came last; it is asked again by itself. If it was stopped, start it again with <code>rodwright serve</code>.
        </p>
      )}
      <p class="for-ears" role="status">{news.value}</p>
    </>
  );
}

const listed: readonly (readonly [string, string])[] = [
  ["?", "this help"], ["[ ]", "the stage before, the stage after"], ["1 – 7", "a stage of the piece"], ["/", "look for a question, under Answers"],
  ["Enter", "try what was typed; answer a question; store what was said"], ["Esc", "put back what is being tried or weighed"],
  ["Ctrl Z", "take back the last edit: of those being tried, else of those taken"], ["Ctrl Shift Z", "make it again"],
  ["← →", "the step before, the step after, where one is shown at a time; turn the piece in the round"],
];

/** The help, opened by its button or by ?. */
export function Help({ open, close }: { open: boolean; close: () => void }): VNode {
  const box = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (open && !box.current?.open) box.current?.showModal();
    if (!open) box.current?.close();
  }, [open]);
  return (
    <dialog ref={box} class="help" aria-labelledby="help-title" onClose={close}>
      <div class="help-head">
        <h2 id="help-title">Help</h2>
        <button type="button" class="main-way" onClick={close}>Close</button>
      </div>
      <p>A piece is held once; everything on these pages follows from it. The rod at the edge leads through its stages.
        What is blue and underlined can be typed over. Trying a size stores nothing until it is taken.</p>
      <table>
        <caption>Keys</caption>
        <tbody>{listed.map(([key, does]) => <tr key={key}><th scope="row"><kbd>{key}</kbd></th><td>{does}</td></tr>)}</tbody>
      </table>
      <p class="help-keys">
        <label><input type="checkbox" checked={keys.value === "on"} onChange={(e) => { keys.value = e.currentTarget.checked ? "on" : "off"; }} /> Single keys are shortcuts</label>
      </p>
      <p>Where work can hurt someone, the cautions are the usual ones and not all there are. Local codes and licensed practice come first.
        Licences of what this page contains: <a href="/LICENSES.txt" target="_blank" rel="noopener">texts</a>.</p>
    </dialog>
  );
}

/** Listens for the single keys that are shortcuts. */
export function useShortcuts(help: () => void): void {
  useLayoutEffect(() => {
    const onKey = (e: KeyboardEvent): void => {
      const typing = e.target instanceof Element && e.target.closest("input:not([type=radio], [type=checkbox]), textarea, select");
      if (keys.value === "off" || typing || e.defaultPrevented || e.ctrlKey || e.metaKey || e.altKey || document.querySelector("dialog[open]")) return;
      if (e.key === "?") {
        e.preventDefault();
        help();
      } else if (e.key === "/") {
        e.preventDefault();
        if (place.value.at !== "answers") go("/answers");
        seeking.value = true;
      } else byStage(e.key);
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, []);
}

function byStage(key: string): void {
  const p = place.value;
  if (p.at !== "piece") return;
  const now = stages.indexOf(p.stage);
  const to = key === "]" ? now + 1 : key === "[" ? now - 1 : /^[1-7]$/.test(key) ? Number(key) - 1 : -1;
  const stage = stages[to];
  if (stage) go(pathOf(p.id, stage));
}
