// Book: the plan for a reader, in the units and on the paper that are chosen.

import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { query } from "./asking";
import { unitsWord } from "./choices";
import { Choice } from "./parts";
import type { PieceProps } from "./piece";
import { trialOf } from "./trial";
import { sentence } from "./words";

type Paper = "a4" | "letter";
type BookUnits = "" | "inch" | "metric";

/** The stage Book. */
export function BookPage({ id, build }: PieceProps): VNode {
  const [paper, setPaper] = useState<Paper>(build.unit === "in" ? "letter" : "a4");
  const [units, setUnits] = useState<BookUnits>(unitsWord() as BookUnits);
  const book = (form: string): string => `/api/pieces/${encodeURIComponent(id)}/book.${form}${query({ units, paper })}`;
  const name = `${id}-plan`;
  return (
    <div class="book-page">
      {trialOf(id) && <p class="note">The plan is of the piece as it is stored, not of what is being tried.</p>}
      <div class="book-ways">
        <Choice name="Lengths in" value={units} all={[["", "the piece’s own"], ["inch", "inches"], ["metric", "millimetres"]]} set={setUnits} />
        <Choice name="Paper" value={paper} all={[["letter", "Letter"], ["a4", "A4"]]} set={setPaper} />
        <p class="book-take">
          <a class="main-way" href={book("pdf")} download={`${name}.pdf`}>Take the PDF</a>
          <a class="way" href={book("html")} download={`${name}.html`}>Take the page (HTML)</a>
        </p>
      </div>
      <iframe class="book-frame" title={`The plan of ${sentence(build.piece)}`} src={book("html")} />
    </div>
  );
}
