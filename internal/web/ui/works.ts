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

/** The next work on a part, with a space behind it; empty where the plan has none. */
export function firstWork(build: Build, tag: string): string {
  const next = build.steps.find((s) => partsDone(build, s).includes(tag));
  return next?.work ? `${next.work} ` : "";
}
