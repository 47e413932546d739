// Where in the page the reader is; real paths through the browser's history.

import { signal } from "@preact/signals";

export const stages = ["shape", "findings", "material", "work", "changes", "price", "book"] as const;
export type Stage = (typeof stages)[number];

export type Place =
  | { at: "pieces" }
  | { at: "piece"; id: string; stage: Stage }
  | { at: "answers"; topic: string }
  | { at: "nowhere"; path: string };

/** The place a path names. */
export function placeOf(path: string): Place {
  const words = path.split("/").filter((w) => w !== "").map(decodeURIComponent);
  const [first, second = "", third = "shape"] = words;
  if (first === undefined || (first === "pieces" && words.length === 1)) return { at: "pieces" };
  if (first === "answers" && words.length <= 2) return { at: "answers", topic: second };
  const stage = stages.find((s) => s === third);
  if (first === "pieces" && words.length <= 3 && stage) return { at: "piece", id: second, stage };
  return { at: "nowhere", path };
}

/** The path of a piece's stage. */
export function pathOf(id: string, stage: Stage): string {
  return `/pieces/${encodeURIComponent(id)}/${stage}`;
}

/** The place the page shows. */
export const place = signal<Place>(placeOf(location.pathname));

/** Whether the reader asked to look for a question; the field takes the focus as soon as it stands. */
export const seeking = signal(false);

/** Goes to a path of the page. */
export function go(path: string): void {
  if (path === location.pathname) return;
  history.pushState(null, "", path);
  place.value = placeOf(path);
  scrollTo(0, 0);
}

addEventListener("popstate", () => {
  place.value = placeOf(location.pathname);
});

/** Follows links inside the page without loading it anew. */
export function follow(e: MouseEvent): void {
  if (e.defaultPrevented || e.button !== 0 || e.metaKey || e.ctrlKey || e.shiftKey || e.altKey) return;
  const link = e.target instanceof Element ? e.target.closest("a") : null;
  if (!link || link.origin !== location.origin || link.hasAttribute("download") || link.target !== "") return;
  if (link.pathname.startsWith("/api/") || link.hash !== "") return;
  e.preventDefault();
  go(link.pathname);
}
