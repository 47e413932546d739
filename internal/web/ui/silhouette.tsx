// A piece as seen from the front, drawn small from its solids.

import type { VNode } from "preact";
import { useJSON } from "./reading";
import type { Point, Solid, Solids } from "./types";

interface Outline { min: Point; max: Point }

function outline(s: Solid): Outline | undefined {
  if (s.box) return s.box;
  if (s.slab) return s.slab;
  if (!s.cylinder) return undefined;
  const { a, b, radius } = s.cylinder;
  const reach = (i: 0 | 1 | 2): number => (Math.abs(a[i] - b[i]) < 1e-6 ? radius : 0);
  const low = (i: 0 | 1 | 2): number => Math.min(a[i], b[i]) - reach(i);
  const high = (i: 0 | 1 | 2): number => Math.max(a[i], b[i]) + reach(i);
  return { min: [low(0), low(1), low(2)], max: [high(0), high(1), high(2)] };
}

/** The drawing; it says nothing that the words beside it do not say. */
export function Silhouette({ id }: { id: string }): VNode {
  const { value } = useJSON<Solids>(`/api/pieces/${encodeURIComponent(id)}/solids`);
  if (!value || value.solids.length === 0) return <span class="silhouette" aria-hidden="true" />;
  const all = value.solids.filter((s) => s.kind !== "held");
  const seen = all.map((s) => ({ s, o: outline(s) })).sort((p, q) => (q.o?.max[1] ?? 0) - (p.o?.max[1] ?? 0)); // the far ones first
  const [x0, , z0] = value.min;
  const width = value.max[0] - x0;
  const height = value.max[2] - z0;
  const edge = Math.max(width, height) * 0.02;
  return (
    <svg class="silhouette" aria-hidden="true" viewBox={`${-edge} ${-edge} ${width + 2 * edge} ${height + 2 * edge}`} preserveAspectRatio="xMidYMax meet">
      {seen.map(({ s, o }, i) => o && (
        <rect key={i} class={`seen is-${s.kind}`} x={o.min[0] - x0} y={height - (o.max[2] - z0)} width={o.max[0] - o.min[0]} height={o.max[2] - o.min[2]} />
      ))}
      <path class="floor" d={`M${-edge} ${height}H${width + edge}`} />
    </svg>
  );
}
