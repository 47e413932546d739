// Numbers in words: money, mass, time, counts.

const KG_PER_POUND = 0.45359237; // the international pound of 1959, exact

/** Money in the shop's currency; what is not known says so. */
export function money(value: number | null, currency: string): string {
  if (value === null) return "not known";
  return new Intl.NumberFormat("en-GB", { style: "currency", currency }).format(value);
}

const currencies = new Set(Intl.supportedValuesOf("currency"));

/** Words in which sums stand as the server writes them, 80.96 EUR, with the sums as money writes them. */
export function priced(words: string): string {
  return words.replace(/\b(\d+\.\d\d) ([A-Z]{3})\b/g, (said, sum: string, code: string) => (currencies.has(code) ? money(Number(sum), code) : said));
}

/** Kilograms to one decimal. */
export function kilograms(kg: number): string {
  return `${rounded(kg, 1)} kg`;
}

/** Kilograms as pounds to one decimal. */
export function pounds(kg: number): string {
  return `${rounded(kg / KG_PER_POUND, 1)} lb`;
}

/** A mass in kilograms, with pounds where inches are used. */
export function mass(kg: number, unit: string): string {
  return unit === "in" ? `${kilograms(kg)}, ${pounds(kg)}` : kilograms(kg);
}

/** Hours as a person says them: 32 min, 1 h 30 min, 7 days. */
export function hours(h: number): string {
  const minutes = Math.round(h * 60);
  if (minutes >= 48 * 60 && minutes % (24 * 60) === 0) return counted(minutes / (24 * 60), "day");
  const whole = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (whole === 0) return `${rest} min`;
  return rest === 0 ? `${whole} h` : `${whole} h ${rest} min`;
}

/** A count with its noun: 1 cut, 3 cuts. */
export function counted(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** A number with at most the given decimals and no trailing noughts. */
export function rounded(v: number, decimals: number): string {
  return String(Number(v.toFixed(decimals)));
}

/** A share as a percentage to one decimal. */
export function percent(share: number): string {
  return `${rounded(share * 100, 1)} %`;
}

/** The first letter large. */
export function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A time of day on this device. */
export function clock(ms: number): string {
  return new Date(ms).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
}

/** A day on this device. */
export function day(ms: number): string {
  return new Date(ms).toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
}

/** The day that is so many days from today, on this device. */
export function dayAhead(days: number): string {
  const then = new Date();
  then.setDate(then.getDate() + days);
  return then.toLocaleDateString("en-GB", { weekday: "short", day: "numeric", month: "long", year: "numeric" });
}

/** Money more or less, from hundredths. */
export function more(cents: number, currency: string): string {
  if (cents === 0) return "costs nothing more";
  return `${money(Math.abs(cents) / 100, currency)} ${cents > 0 ? "more" : "less"}`;
}

/** A day as it is written in a document, 2027-01-15, in words. */
export function written(date: string): string {
  return new Date(`${date}T12:00:00`).toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
}

/** The path of a value in words: sizes/low level is the low level, panels/deep board/thickness the thickness of the deep board. */
export function pathWords(path: string): string {
  const [, name = path, what] = path.split("/");
  return what === undefined ? name : `${what} of ${name}`;
}
