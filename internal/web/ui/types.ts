// What the server sends. Lengths are millimetres, masses kilograms, unless a name says otherwise. The forms of the
// interface come from its own description (api.d.ts); that of a build, which is what `rodwright derive --json`
// prints, stands here.

import type { components } from "./api";

type Forms = components["schemas"];

/** A form whose lists are there: the description allows null, the server sends an empty list. */
type Listed<T> = T extends readonly (infer U)[] ? Listed<U>[] : T extends object ? { [K in keyof T]: ListedIn<T[K]> } : T;
type ListedIn<V> = Exclude<V, null> extends readonly unknown[] ? Listed<Exclude<V, null>> : Listed<V>;

export type Verdict = "stands" | "tight" | "fails" | "unknown";

export type PieceLine = Forms["Line"];
export interface Pieces { pieces: PieceLine[] }

export interface Figure { name: string; value: number; unit: string; shown: string }
export interface Because { name: string; shown: string; formula?: string; inputs?: Record<string, string>; source?: string }
export interface Finding {
  check: string; place?: string; parts: string[]; verdict: Verdict; figure?: Figure; limit?: Figure;
  because: Because[]; assumed: string[]; missing?: string; mend?: string; caution?: string;
  sense?: "at most" | "at least"; picture?: { kind: "tilt" | "year" | "bent" | "sway"; name: string };
}

export interface Size { name: string; formula: string; origin: string; value_mm: number; formula_mm: number; measured_mm?: number; note?: string }
export interface Part {
  tag: string; name: string; kind: "panel" | "pipe" | "fitting" | "hardware"; material: string; count: number; tags: string[];
  finished_mm?: number[]; blank_mm?: number[]; rough?: string; mass_kg: number; sits?: string; datum?: string;
  cut_mm?: number; between_mm?: number; ends?: string[]; from?: string; from_why?: string; state?: string; states?: string[]; assumed?: string[];
  features?: unknown[];
}
export interface Totals {
  mass_kg: number; held_kg: number; board_feet: number; pipe_mm: number; fittings: number; unions: number; screws: number; finish_m2: number;
}
export interface Waste { kerf: number; trim: number; defect: number; leftover_useful: number; leftover_lost: number }
export interface Used { stock: string; parts: { tag: string }[] }
export interface Cut { n: number; on: string; machine: string; setting: number; makes: string[] }
export interface Layout {
  unit: string; cost: number; bound: number; gap: number; proven: boolean; waste: Waste; used: Used[]; cuts: Cut[]; not_placed: unknown[];
  panels?: { tag: string }[]; bound_of?: string;
}
export interface Buy { item: string; name: string; count: number; unit: string; pack: number; needed: number; price: number | null; from_rack: number; assumed?: string[] }
export interface Supply { name: string; for: string[]; quantity: number; unit: string; cautions: string[] }
export interface Step {
  n: number; title: string; work?: string; parts: string[]; tool: string; substitutes: string[]; measures?: string[];
  hands_h: number; wait_h: number; cautions: string[]; after: number[];
}
export interface Price {
  material: number | null; consumables: number | null; hours: number | null; overhead: number | null; cost: number | null;
  margin: number | null; price: number | null; tax: number | null; total: number | null; deposit: number | null;
  warnings: string[]; assumed: string[];
}
export interface Build {
  piece: string; shop: string; currency: string; unit: "in" | "mm"; fineness: string; sizes: Size[]; parts: Part[]; totals: Totals;
  findings: Finding[]; cut: Record<"stick" | "panel" | "sheet", Record<string, Layout>>; buy: Buy[]; supplies: Supply[];
  steps: Step[]; time: { hands_h: number; calendar_days: number; assumed: string[] }; price: Price; unknown: string[];
  accepted?: Accepted[];
}
/** A layout that was accepted, and what has become of it. */
export interface Accepted {
  kind: string; material: string; entry: number; id: string; actor: string; state: "taken" | "outdated" | "refused"; why?: string; cost: number; bound: number;
}

export type SizeField = Listed<Forms["SizeBody"]>;
export type Field = Listed<Forms["FieldBody"]>;
export type Sizes = Listed<Forms["SizesBody"]>;

export type CuttingLine = Listed<Forms["CuttingLine"]>;
export type Cutting = Listed<Forms["CuttingBody"]>;
export type OneMore = Listed<Forms["OneMoreBody"]>;

export type Good = Forms["GoodBody"];
export type Search = Omit<Forms["SearchBody"], "layout">;
export interface Searches { searches: Search[] }
export type SearchPictures = Listed<Forms["ComparedOutBody"]>;

export type DrawingLine = Forms["DrawingLine"];
export type Drawings = Listed<Forms["DrawingsBody"]>;

export type Point = [number, number, number];
export type Opening = Omit<Forms["OpeningBody"], "min" | "max"> & { min: [number, number]; max: [number, number] };
export type Solid = Pick<Forms["SolidBody"], "tag" | "name" | "kind"> & {
  box?: { min: Point; max: Point };
  cylinder?: { a: Point; b: Point; radius: number };
  slab?: { min: Point; max: Point; openings: Opening[] };
};
export interface Solids { solids: Solid[]; min: Point; max: Point }

export type Edit = Forms["EditBody"];
export type Ripple = Omit<Listed<Forms["Ripple"]>, "findings"> & {
  findings: { check: string; place: string; from: Verdict | ""; to: Verdict | "" }[];
};
export interface Preview { number: number; build: Build; ripple: Ripple; views: Forms["ViewsBody"]; solids: Solids }

export type Problem = Forms["Problem"];
export type TopicInput = Listed<Forms["InputBody"]>;
export type Topic = Listed<Forms["TopicBody"]> & { example?: Record<string, string> }; // inputs that go together
export interface Topics { topics: Topic[] }
export interface Answer {
  topic: string; answers: Figure[]; because: { formula: string; inputs?: Record<string, string>; source?: string; range?: string }[];
  cautions: string[] | null; assumed: string[] | null;
}

export type OrderLine = Listed<Forms["OrderBody"]>;
export type LogEntry = Listed<Forms["EntryBody"]>;
export type EntryKind = LogEntry["kind"];
export type Log = Listed<Forms["LogBody"]>;
/** An entry as it is sent. */
export type Telling = Readonly<Omit<Forms["WantedEntry"], "edits">> & { readonly edits?: readonly Edit[] };
export type Written = Listed<Forms["WrittenBody"]>;
export type Thing = Listed<Forms["ThingBody"]>;
export type Goods = Listed<Forms["GoodsBody"]>;
export type Things = Listed<Forms["ThingsBody"]>;
export type Fate = Listed<Forms["Fate"]>;
export type Weighed = Omit<Listed<Forms["Weighed"]>, "ripple" | "figures"> & { ripple: Ripple; figures: (Omit<Forms["Moved"], "verdict"> & { verdict: Verdict })[] };
export type WayOut = Omit<Listed<Forms["WayOut"]>, "weighed"> & { weighed: Weighed };
export interface WaysOut { number: number; fact: string; ways: WayOut[] }
/** A piece as it stood after an entry. */
export type Moment = Omit<Forms["MomentBody"], "build"> & { build: Build };
export type Compared = Omit<Listed<Forms["CompareBody"]>, "ripple"> & { ripple: Ripple };
