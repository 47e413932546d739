// Trying edits: what was typed, what the server made of it, and the way back. Nothing of it is stored until it is taken.

import { signal } from "@preact/signals";
import { preview, type Trouble, troubleFrom } from "./asking";
import { unitsWord } from "./choices";
import type { Edit, Preview } from "./types";

/** Edits being tried on a piece. */
export interface Trial {
  readonly id: string;
  readonly edits: readonly Edit[];
  readonly seen: number; // the number of the piece when the first of them was typed
  readonly answer: Preview;
}

/** Why the last edit could not be tried, at its field. */
export interface Refusal { readonly path: string; readonly value: string; readonly trouble: Trouble }

export const trial = signal<Trial | undefined>(undefined);
export const refusal = signal<Refusal | undefined>(undefined);
export const trying = signal(false);

let undone: (readonly Edit[])[] = [];
let before: (readonly Edit[])[] = [];
let turn = 0; // numbers the requests, so that a late answer is not taken for the newest

/** The trial of a piece, if one is on. */
export function trialOf(id: string): Trial | undefined {
  return trial.value?.id === id ? trial.value : undefined;
}

/** Tries one more edit; the last value typed at a path counts. */
export async function attempt(id: string, base: number, edit: Edit): Promise<void> {
  const edits = trialOf(id)?.edits ?? [];
  const next = [...edits.filter((e) => e.path !== edit.path), edit];
  if (await show(id, base, next, edit)) {
    before.push(edits);
    undone = [];
  }
}

/** Takes back the last edit. */
export async function undo(base: number): Promise<void> {
  await move(base, before, undone);
}

/** Does again what was taken back. */
export async function redo(base: number): Promise<void> {
  await move(base, undone, before);
}

async function move(base: number, from: (readonly Edit[])[], to: (readonly Edit[])[]): Promise<void> {
  const now = trial.value;
  const next = from.pop();
  if (!now || !next) return;
  to.push(now.edits);
  if (next.length === 0 && from === before) return putBack();
  await show(now.id, base, next, next[next.length - 1]);
}

/** Puts everything back as it is stored. */
export function putBack(): void {
  turn++;
  before = [];
  undone = [];
  trial.value = undefined;
  refusal.value = undefined;
  trying.value = false;
}

/** Leaves one value out of what is being tried. */
export async function leaveOut(base: number, path: string): Promise<void> {
  const now = trial.value;
  const next = now?.edits.filter((e) => e.path !== path) ?? [];
  if (!now || next.length === 0) return putBack();
  before.push(now.edits);
  await show(now.id, base, next, next[next.length - 1]);
}

/** Asks again for what is being tried: in other units, or on a newer state of the piece. */
export async function again(base: number): Promise<void> {
  const now = trial.value;
  if (now) await show(now.id, base, now.edits, now.edits[now.edits.length - 1]);
}

async function show(id: string, base: number, edits: readonly Edit[], last: Edit | undefined): Promise<boolean> {
  const mine = ++turn;
  trying.value = true;
  try {
    const answer = await preview(id, base, [...edits], unitsWord());
    if (mine !== turn) return false;
    trial.value = { id, edits, answer, seen: trialOf(id)?.seen ?? base };
    refusal.value = undefined;
    return true;
  } catch (e) {
    if (mine !== turn) return false;
    refusal.value = { path: last?.path ?? "", value: last?.value ?? "", trouble: troubleFrom(e) };
    return false;
  } finally {
    if (mine === turn) trying.value = false;
  }
}
