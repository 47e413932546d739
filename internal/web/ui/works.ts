// The kinds of work that are done to parts, as the line that tells of it names them.

import type { Build, Step } from "./types";

const onParts: readonly string[] = [
  "crosscut", "flatten", "rip", "joint", "cut-pipe", "glue", "flatten-panel", "size", "size-sheet", "thread", "deburr", "mark", "notch", "bore", "hole-saw",
  "cut-out", "slot", "relief", "profile", "pour", "sand", "clean-pipe", "descale", "coat", "cure", "coat-pipe", "wrench", "dry-fit", "frame", "lay", "flange",
  "strap", "foot",
];

/** The panels and pipes that a step is done to; none where its work is not done to parts. */
export function partsDone(build: Build, s: Step): string[] {
  if (!s.work || !onParts.includes(s.work)) return [];
  const made = build.parts.filter((p) => p.kind === "panel" || p.kind === "pipe").flatMap((p) => p.tags);
  return s.parts.filter((t) => made.includes(t));
}

/** Work that puts parts right which were made for another plan: the title of each step of it, as weighing nothing tells it. */
export type PutRight = readonly string[];

/** Whether telling of a step would tell of a later one too: the same work on a part in hand, such as the next coat, or what is left of putting it right. */
function tellsMore(build: Build, s: Step, again: PutRight): boolean {
  const mine = partsDone(build, s);
  const right = again.includes(s.title);
  return build.steps.some((l) => l.n > s.n && (l.work === s.work || (right && again.includes(l.title))) && partsDone(build, l).some((t) => mine.includes(t)));
}

/** Whether a step is the last of several that put its parts right: telling it tells them all. */
export function tellsAll(build: Build, s: Step, again: PutRight): boolean {
  const mine = partsDone(build, s);
  return again.includes(s.title) && build.steps.some((e) => e.n < s.n && again.includes(e.title) && partsDone(build, e).some((t) => mine.includes(t)));
}

/** The parts of a step that can be told done; none where a later step is the one to tell it at. */
export function toTell(build: Build, s: Step, again: PutRight): string[] {
  return tellsMore(build, s, again) ? [] : partsDone(build, s);
}

/** The next work on a part, with a space behind it; empty where the plan has none. */
export function firstWork(build: Build, tag: string): string {
  const next = build.steps.find((s) => partsDone(build, s).includes(tag));
  return next?.work ? `${next.work} ` : "";
}
