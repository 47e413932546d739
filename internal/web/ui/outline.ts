// The outline of a panel seen from above, with the notches that open to its edges cut out. No drawing library here.

export type XY = readonly [number, number];
export interface Rect { min: XY; max: XY }

/** Whether an opening reaches the edge of the panel, and so is a notch. */
export function isNotch(panel: Rect, o: Rect): boolean {
  const near = 1e-6;
  return o.min[0] <= panel.min[0] + near || o.min[1] <= panel.min[1] + near || o.max[0] >= panel.max[0] - near || o.max[1] >= panel.max[1] - near;
}

/**
 * The outer outline of a rectangle without its notches, anticlockwise. The plane is parted into cells at every edge of
 * panel and notches; the border between kept and cut cells is walked once round.
 */
export function outline(panel: Rect, notches: readonly Rect[]): XY[] {
  const xs = cuts(panel, notches, 0);
  const ys = cuts(panel, notches, 1);
  const kept = (i: number, j: number): boolean => {
    if (i < 0 || j < 0 || i >= xs.length - 1 || j >= ys.length - 1) return false;
    const x = ((xs[i] ?? 0) + (xs[i + 1] ?? 0)) / 2;
    const y = ((ys[j] ?? 0) + (ys[j + 1] ?? 0)) / 2;
    return !notches.some((n) => x > n.min[0] && x < n.max[0] && y > n.min[1] && y < n.max[1]);
  };
  const next = new Map<string, [number, number]>();
  const edge = (a: [number, number], b: [number, number]): void => void next.set(a.join(), b);
  for (let i = 0; i < xs.length - 1; i++) {
    for (let j = 0; j < ys.length - 1; j++) {
      if (!kept(i, j)) continue;
      if (!kept(i, j - 1)) edge([i, j], [i + 1, j]);
      if (!kept(i + 1, j)) edge([i + 1, j], [i + 1, j + 1]);
      if (!kept(i, j + 1)) edge([i + 1, j + 1], [i, j + 1]);
      if (!kept(i - 1, j)) edge([i, j + 1], [i, j]);
    }
  }
  return walk(next).map(([i, j]) => [xs[i] ?? 0, ys[j] ?? 0] as const);
}

function cuts(panel: Rect, notches: readonly Rect[], axis: 0 | 1): number[] {
  const inside = (v: number): boolean => v > panel.min[axis] && v < panel.max[axis];
  const all = [panel.min[axis], panel.max[axis], ...notches.flatMap((n) => [n.min[axis], n.max[axis]]).filter(inside)];
  return [...new Set(all)].sort((a, b) => a - b);
}

function walk(next: Map<string, [number, number]>): [number, number][] {
  const first = [...next.keys()][0];
  if (first === undefined) return [];
  const out: [number, number][] = [];
  let at = first.split(",").map(Number) as [number, number];
  for (let n = 0; n <= next.size; n++) {
    out.push(at);
    const to = next.get(at.join());
    if (!to || to.join() === first) break;
    at = to;
  }
  return out;
}
