// Lengths as a maker sets a tape: exact whole nanometres, printed in the fineness of the piece. The same rounding
// as the server's, halves to even, so that the page never shows another number than the plan.

const NM_PER_MM = 1_000_000;
const NM_PER_INCH = 25_400_000;

/** The step lengths are printed to, and their unit. */
export interface Fineness {
  readonly step: number; // nanometres
  readonly unit: "in" | "mm";
}

/** Reads a fineness as a build states it: 1/16, 1/32, 1/64, 0.5 mm or 1 mm. */
export function fineness(text: string): Fineness {
  const inch = /^1\/(\d+)$/.exec(text);
  if (inch) return { step: NM_PER_INCH / Number(inch[1]), unit: "in" };
  const mm = /^([\d.]+) mm$/.exec(text);
  if (mm) return { step: Number(mm[1]) * NM_PER_MM, unit: "mm" };
  throw new Error(`fineness ${text}: it is one of 1/16, 1/32, 1/64, 0.5 mm, 1 mm`);
}

/** Prints millimetres as a number in the fineness, without its unit: 14 3/8, 365.5. */
export function bare(mm: number, f: Fineness): string {
  const steps = halfToEven(Math.round(mm * NM_PER_MM) / f.step);
  const nm = Math.abs(steps * f.step);
  const sign = steps < 0 ? "-" : "";
  return sign + (f.unit === "mm" ? String(nm / NM_PER_MM) : mixed(nm));
}

/** Prints millimetres with the unit: 14 3/8 in, 365.5 mm. */
export function text(mm: number, f: Fineness): string {
  return `${bare(mm, f)} ${f.unit}`;
}

/** Prints several lengths with one unit: 42 × 19 × 1 1/16 in. */
export function across(mms: readonly number[], f: Fineness): string {
  return `${mms.map((mm) => bare(mm, f)).join(" × ")} ${f.unit}`;
}

function halfToEven(v: number): number {
  const low = Math.floor(v);
  const rest = v - low;
  if (rest !== 0.5) return Math.round(v);
  return low % 2 === 0 ? low : low + 1;
}

function mixed(nm: number): string {
  const whole = Math.floor(nm / NM_PER_INCH);
  const rest = nm % NM_PER_INCH;
  if (rest === 0) return String(whole);
  const common = divisor(rest, NM_PER_INCH);
  const part = `${rest / common}/${NM_PER_INCH / common}`;
  return whole === 0 ? part : `${whole} ${part}`;
}

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b);
}
