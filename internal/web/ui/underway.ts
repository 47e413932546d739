// A piece under way: its log is read and written here.

import { query, send } from "./asking";
import { unitsWord } from "./choices";
import { wrote } from "./live";
import type { Edit, Telling, WaysOut, Weighed, WayOut, Written } from "./types";

const millisecondBits = 48n;

/** A new id for an entry: a UUID of version 7 (RFC 9562), so that an entry sent twice is known as one. */
export function newID(): string {
  const random = crypto.getRandomValues(new Uint8Array(10));
  const head = (BigInt(Date.now()) & ((1n << millisecondBits) - 1n)).toString(16).padStart(12, "0");
  random[0] = ((random[0] ?? 0) & 0x0f) | 0x70; // version 7
  random[2] = ((random[2] ?? 0) & 0x3f) | 0x80; // variant of the RFC
  const tail = [...random].map((b) => b.toString(16).padStart(2, "0")).join("");
  return [head.slice(0, 8), head.slice(8), tail.slice(0, 4), tail.slice(4, 8), tail.slice(8)].join("-");
}

/** The address of a piece's own part of the interface. */
export function addressOf(piece: string, what: string, values: Record<string, string> = {}): string {
  return `/api/pieces/${encodeURIComponent(piece)}/${what}${query(values)}`;
}

async function store(piece: string, what: "entries" | "take", body: unknown): Promise<Written> {
  const kept = await send<Written>(addressOf(piece, what, { units: unitsWord() }), body);
  wrote(piece, kept.number);
  return kept;
}

/** Writes entries to the log, all or none. */
export function tell(piece: string, base: number, entries: readonly Telling[]): Promise<Written> {
  return store(piece, "entries", { base, entries: entries.map((e) => ({ id: newID(), ...e })) });
}

/** Writes edits, and what becomes of the parts already made by them. */
export function take(piece: string, base: number, edits: readonly Edit[]): Promise<Written> {
  return store(piece, "take", { base, edits, ids: [newID()] });
}

/** Writes what went wrong and the way out that is chosen; the id is that of the first entry. */
export function takeWay(piece: string, base: number, say: string, way: WayOut, id: string): Promise<Written> {
  return store(piece, "take", { base, say, way: way.kind, edits: way.edits.map((e) => ({ path: e.path, value: e.new })), ids: [id] });
}

/** What edits would do; nothing is stored. */
export function weigh(piece: string, base: number, edits: readonly Edit[]): Promise<Weighed> {
  return send<Weighed>(addressOf(piece, "weigh", { units: unitsWord() }), { base, edits });
}

/** The ways out when something went wrong; nothing is stored. */
export function waysOut(piece: string, base: number, say: string): Promise<WaysOut> {
  return send<WaysOut>(addressOf(piece, "wrong", { units: unitsWord() }), { base, say });
}
