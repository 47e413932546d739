// Asking the server. Every failure becomes a Trouble with words for the person.

import type { Answer, Edit, Preview, Problem } from "./types";

/** A value that somebody else changed meanwhile. */
export interface Clash { readonly path: string; readonly yours: string; readonly theirs: string; readonly actor: string; readonly number: number }

/** What went wrong and what would be right, in words. */
export class Trouble extends Error {
  constructor(readonly status: number, message: string, readonly right = "", readonly path = "", readonly clash?: Clash) {
    super(message);
  }
  /** No answer at all: the network or the server is gone. */
  get silent(): boolean {
    return this.status === 0;
  }
}

async function ask(url: string, init?: RequestInit): Promise<Response> {
  let answer: Response;
  try {
    answer = await fetch(url, init);
  } catch {
    throw new Trouble(0, "The server does not answer.");
  }
  if (!answer.ok) throw await troubleOf(answer);
  return answer;
}

async function troubleOf(answer: Response): Promise<Trouble> {
  const plain = `The server answered ${answer.status}.`;
  if (!(answer.headers.get("content-type") ?? "").includes("json")) return new Trouble(answer.status, plain);
  const body = (await answer.json()) as Partial<Problem>;
  return new Trouble(answer.status, body.detail ?? body.title ?? plain, body.right ?? "", body.path ?? "", answer.status === 409 ? clashOf(body) : undefined);
}

/** Both values and who wrote the other; none where the server names no other writer. */
function clashOf(body: Partial<Problem>): Clash | undefined {
  if (!body.actor || !body.number) return undefined;
  return { path: body.path ?? "", yours: body.yours ?? "", theirs: body.theirs ?? "", actor: body.actor, number: body.number };
}

/** What failed, as a Trouble. */
export function troubleFrom(e: unknown): Trouble {
  return e instanceof Trouble ? e : new Trouble(0, String(e));
}

/** Reads JSON of the stated shape; a signal ends the asking. */
export async function read<T>(url: string, signal?: AbortSignal): Promise<T> {
  return (await (await ask(url, signal && { signal })).json()) as T;
}

/** Reads text, such as a drawing. */
export async function readText(url: string): Promise<string> {
  return (await ask(url)).text();
}

/** Sends JSON and reads the answer of the stated shape. */
export async function send<T>(url: string, body: unknown): Promise<T> {
  const answer = await ask(url, { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(body) });
  return (await answer.json()) as T;
}

/** Ends something, and reads what became of it. */
export async function end<T>(url: string): Promise<T> {
  return (await (await ask(url, { method: "DELETE" })).json()) as T;
}

/** Tries edits without storing them. */
export function preview(piece: string, base: number, edits: Edit[], units: string): Promise<Preview> {
  return send<Preview>(`/api/pieces/${encodeURIComponent(piece)}/preview${query({ units })}`, { base, edits });
}

/** Asks one quick question. */
export function answer(topic: string, words: Record<string, string>): Promise<Answer> {
  return send<Answer>(`/api/answers/${encodeURIComponent(topic)}`, words);
}

/** A query string of what is not empty, with its question mark. */
export function query(values: Record<string, string>): string {
  const set = Object.entries(values).filter(([, v]) => v !== "");
  return set.length === 0 ? "" : `?${new URLSearchParams(set).toString()}`;
}
