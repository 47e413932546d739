// The piece in the round. This is the only file that draws with three; it is fetched when it is asked for.

import {
  AmbientLight, Box3, BoxGeometry, BufferGeometry, Color, CylinderGeometry, DirectionalLight, EdgesGeometry, ExtrudeGeometry, LineBasicMaterial, LineSegments,
  Mesh, MeshLambertMaterial, OrthographicCamera, Path, Raycaster, Scene, Shape, Vector2, Vector3, WebGLRenderer,
} from "three";
import { isNotch, outline } from "./outline";
import type { Opening, Point, Solid, Solids } from "./types";

const straightUp = new Vector3(0, 0, 1);
const start = { around: -0.62, above: 0.42 }; // radians: from the front, a little right and above

/** A piece on a canvas, to be turned. */
export class Turned {
  private readonly renderer: WebGLRenderer;
  private readonly scene = new Scene();
  private readonly camera = new OrthographicCamera();
  private meshes: { mesh: Mesh<BufferGeometry, MeshLambertMaterial>; edges: LineSegments<EdgesGeometry, LineBasicMaterial>; solid: Solid }[] = [];
  private readonly middle = new Vector3();
  private span = 1;
  private around = start.around;
  private above = start.above;
  private near = 1;
  private chosen = "";
  private waiting = 0;

  /** Throws where the browser can't draw in the round. */
  constructor(private readonly canvas: HTMLCanvasElement) {
    this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, preserveDrawingBuffer: true });
    this.camera.up.copy(straightUp);
    this.scene.add(new AmbientLight(0xffffff, 1.9));
    const lamp = new DirectionalLight(0xffffff, 1.7);
    lamp.position.set(0.4, -0.9, 1.3);
    this.scene.add(lamp);
  }

  /** Shows these solids instead of those before. */
  show(all: Solids): void {
    for (const { mesh, edges } of this.meshes) {
      this.scene.remove(mesh, edges);
      mesh.geometry.dispose();
      edges.geometry.dispose();
      mesh.material.dispose();
      edges.material.dispose();
    }
    this.meshes = all.solids.map((solid) => this.add(solid));
    const room = new Box3(new Vector3(...all.min), new Vector3(...all.max));
    for (const { mesh } of this.meshes) room.expandByObject(mesh); // what it holds stands out of the piece
    room.getCenter(this.middle);
    this.span = Math.max(room.min.distanceTo(room.max), 1);
    this.ink();
  }

  private add(solid: Solid): (typeof this.meshes)[number] {
    const geometry = geometryOf(solid);
    const mesh = new Mesh(geometry, new MeshLambertMaterial({ polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 }));
    const edges = new LineSegments(new EdgesGeometry(geometry, 28), new LineBasicMaterial());
    mesh.userData["tag"] = solid.tag;
    this.scene.add(mesh, edges);
    return { mesh, edges, solid };
  }

  /** Takes the inks from the page's style: on a change of theme, or of the chosen part. */
  ink(): void {
    const style = getComputedStyle(this.canvas);
    const colour = (name: string): Color => new Color(style.getPropertyValue(name).trim() || "#888888");
    const faces = { panel: colour("--round-wood"), stick: colour("--round-steel"), fitting: colour("--round-steel"), foot: colour("--round-foot"), held: colour("--round-held") };
    const line = colour("--graphite");
    const strong = colour("--round-chosen");
    for (const { mesh, edges, solid } of this.meshes) {
      const chosen = this.chosen !== "" && solid.tag === this.chosen;
      const faint = solid.kind === "held" ? 0.16 : this.chosen !== "" && !chosen ? 0.22 : 1;
      mesh.material.color.copy(chosen ? strong : faces[solid.kind]);
      mesh.material.opacity = faint;
      mesh.material.transparent = faint < 1;
      mesh.material.depthWrite = faint === 1;
      edges.material.color.copy(line);
      edges.material.opacity = faint < 1 ? 0.35 : 0.9;
      edges.material.transparent = true;
    }
    this.draw();
  }

  /** Marks the part of a tag; empty marks none. */
  choose(tag: string): void {
    this.chosen = tag;
    this.ink();
  }

  /** The tag under a point of the canvas, in CSS pixels from its corner; empty where there is none. */
  at(x: number, y: number): string {
    const ray = new Raycaster();
    ray.setFromCamera(new Vector2((x / this.canvas.clientWidth) * 2 - 1, 1 - (y / this.canvas.clientHeight) * 2), this.camera);
    const solid = this.meshes.filter((m) => m.solid.kind !== "held").map((m) => m.mesh);
    return String(ray.intersectObjects(solid)[0]?.object.userData["tag"] ?? "");
  }

  /** Turns by angles in radians: around the upright, and up or down. */
  turn(around: number, above: number): void {
    this.around += around;
    this.above = Math.min(Math.PI / 2, Math.max(-0.5, this.above + above));
    this.draw();
  }

  /** Comes nearer by a factor. */
  nearer(factor: number): void {
    this.near = Math.min(8, Math.max(0.5, this.near * factor));
    this.draw();
  }

  /** Back to how it stood at first. */
  restore(): void {
    this.around = start.around;
    this.above = start.above;
    this.near = 1;
    this.draw();
  }

  /** Fits the canvas to its room. */
  fit(): void {
    this.renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
    this.renderer.setSize(this.canvas.clientWidth, this.canvas.clientHeight, false);
    this.draw();
  }

  /** Frees what the graphics hold. */
  end(): void {
    cancelAnimationFrame(this.waiting);
    this.renderer.dispose();
  }

  private draw(): void {
    cancelAnimationFrame(this.waiting);
    this.waiting = requestAnimationFrame(() => {
      const { clientWidth: w, clientHeight: h } = this.canvas;
      if (w === 0 || h === 0) return;
      const half = (this.span * 0.56) / this.near;
      const [rx, ry] = w > h ? [(half * w) / h, half] : [half, (half * h) / w];
      Object.assign(this.camera, { left: -rx, right: rx, top: ry, bottom: -ry, near: 0.01, far: this.span * 10 });
      // Straight from above, the upright is no longer up: the back is.
      this.camera.up.set(0, this.above > 1.57 ? 1 : 0, this.above > 1.57 ? 0 : 1);
      const away = new Vector3(
        Math.cos(this.above) * Math.sin(-this.around), -Math.cos(this.above) * Math.cos(this.around), Math.sin(this.above),
      ).multiplyScalar(this.span * 3);
      this.camera.position.copy(this.middle).add(away);
      this.camera.lookAt(this.middle);
      this.camera.updateProjectionMatrix();
      this.renderer.render(this.scene, this.camera);
    });
  }
}

function geometryOf(s: Solid): BufferGeometry {
  if (s.cylinder) return between(s.cylinder.a, s.cylinder.b, s.cylinder.radius);
  if (s.slab) return slab(s.slab.min, s.slab.max, s.slab.openings);
  const { min, max } = s.box ?? { min: [0, 0, 0] as Point, max: [1, 1, 1] as Point };
  const box = new BoxGeometry(max[0] - min[0], max[1] - min[1], max[2] - min[2]);
  return box.translate((min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2);
}

function between(a: Point, b: Point, radius: number): BufferGeometry {
  const from = new Vector3(...a);
  const axis = new Vector3(...b).sub(from);
  const g = new CylinderGeometry(radius, radius, axis.length(), 28);
  const turn = new Mesh();
  turn.quaternion.setFromUnitVectors(new Vector3(0, 1, 0), axis.clone().normalize());
  turn.position.copy(from).addScaledVector(axis, 0.5);
  turn.updateMatrix();
  return g.applyMatrix4(turn.matrix);
}

function slab(min: Point, max: Point, openings: readonly Opening[]): BufferGeometry {
  const panel = { min: [min[0], min[1]] as const, max: [max[0], max[1]] as const };
  const through = openings.filter((o) => o.depth === 0);
  const notches = through.filter((o) => isNotch(panel, o));
  const shape = new Shape(outline(panel, notches).map(([x, y]) => new Vector2(x, y)));
  for (const o of through) if (!isNotch(panel, o)) shape.holes.push(hole(o));
  return new ExtrudeGeometry(shape, { depth: max[2] - min[2], bevelEnabled: false }).translate(0, 0, min[2]);
}

function hole(o: Opening): Path {
  const [w, d] = [o.max[0] - o.min[0], o.max[1] - o.min[1]];
  const r = Math.min(o.radius, w / 2, d / 2);
  const p = new Path();
  if (r >= w / 2 - 1e-3 && r >= d / 2 - 1e-3) return p.absarc(o.min[0] + w / 2, o.min[1] + d / 2, r, 0, 2 * Math.PI, true);
  p.moveTo(o.min[0], o.min[1]);
  p.lineTo(o.min[0], o.max[1]).lineTo(o.max[0], o.max[1]).lineTo(o.max[0], o.min[1]).closePath();
  return p;
}
