// Word from the server that a piece changed.

import { signal } from "@preact/signals";
import { renew, silent } from "./reading";

/** What is said aloud when numbers change by themselves. */
export const news = signal("");

interface Word { piece: string; number: number }

const last = new Map<string, number>(); // the number of each piece that was last told

/** Reads a piece anew after this page wrote to it; the server's own word of it is no news then. */
export function wrote(piece: string, number: number): void {
  last.set(piece, number);
  renewPiece(piece);
}

function renewPiece(piece: string): void {
  const own = `/api/pieces/${encodeURIComponent(piece)}/`;
  renew((url) => url === "/api/pieces" || url.startsWith(own));
}

/** Listens as long as the page is open; the browser asks again by itself after a cut. */
export function listen(): void {
  const source = new EventSource("/api/events");
  source.addEventListener("piece", (e) => {
    const word = JSON.parse((e as MessageEvent<string>).data) as Word;
    // At first, and after each cut, the number of every piece is told: only another one than before is news.
    const before = last.get(word.piece);
    last.set(word.piece, word.number);
    if (before === undefined || before >= word.number) return;
    renewPiece(word.piece);
    news.value = "A piece was changed; its numbers are new.";
  });
  source.addEventListener("open", () => {
    if (silent.value) renew(() => true);
    silent.value = false;
  });
  source.addEventListener("error", () => {
    silent.value = true;
  });
}
