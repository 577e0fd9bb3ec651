// The lines in space: draws what the server says stands where, tells it what is pressed and dragged, and
// draws again only when something changed.
import { THREE } from "nicegui-scene";
import { bodyOf } from "/static/space/bodies.js";
import { Looking } from "/static/space/camera.js";
import { Drag } from "/static/space/drag.js";
import { along, lineMesh, stationsOf } from "/static/space/lines.js";
import { ground, scale, ways, Words } from "/static/space/marks.js";
import { addLine } from "/static/space/parts.js";
import { cornerAt, keyAt } from "/static/space/pick.js";

const TONES = ["page", "sheet", "ink", "soft", "line", "edge", "accent", "warning", "caution"];
const STILL = 4; // px; a pointer that moved less has pressed
const KEYS = {
  ArrowLeft: [0, -1], ArrowRight: [0, 1], ArrowUp: [2, 1], ArrowDown: [2, -1], PageUp: [1, 1], PageDown: [1, -1],
};
const TURN = Math.PI / 12;

export class Picture {
  constructor(canvas, holder, bar, tell) {
    this.renderer = new THREE.WebGLRenderer({ canvas, antialias: true, alpha: true });
    this.renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
    Object.assign(this, { canvas, holder, bar, tell });
    this.stage = new THREE.Scene();
    this.root = new THREE.Group(); // the aircraft; it is turned as the aircraft stands
    this.stage.add(this.root, new THREE.HemisphereLight(0xffffff, 0x888888, 2.4));
    const sun = new THREE.DirectionalLight(0xffffff, 1.2);
    sun.position.set(-3, -4, 6);
    this.stage.add(sun);
    this.looking = new Looking(canvas, () => this.draw());
    this.words = new Words(holder);
    this.chosen = "";
    this.corners = [];
    this.unit = { perMetre: 1, name: "m", decimals: 2 };
    this.readColours();
    this.listen();
  }

  listen() {
    const press = { pointerdown: "press", pointermove: "move", pointerup: "release", pointercancel: "cancel" };
    for (const [name, method] of Object.entries(press)) this.canvas.addEventListener(name, (event) => this[method](event), { capture: true });
    this.canvas.addEventListener("keydown", (event) => this.key(event));
    const again = () => { this.readColours(); this.build(); };
    this.watching = [new ResizeObserver(() => this.resize()), new MutationObserver(again)];
    this.watching[0].observe(this.canvas.parentElement);
    this.watching[1].observe(document.documentElement, { attributeFilter: ["class"] });
    this.scheme = matchMedia("(prefers-color-scheme: dark)");
    this.scheme.addEventListener("change", again);
    this.end = () => this.scheme.removeEventListener("change", again);
  }

  stop() {
    for (const each of this.watching) each.disconnect();
    this.end();
    cancelAnimationFrame(this.waiting);
    this.looking.controls.dispose();
    this.renderer.dispose();
  }

  readColours() {
    const style = getComputedStyle(document.documentElement);
    this.colours = Object.fromEntries(TONES.map((tone) => {
      const word = style.getPropertyValue(`--fp-${tone}`).trim();
      const colour = new THREE.Color().setStyle(word, THREE.LinearSRGBColorSpace);
      return [tone, Object.assign(colour, { lit: new THREE.Color(word) })];
    }));
  }

  resize() {
    const { clientWidth, clientHeight } = this.canvas.parentElement;
    if (!clientWidth || !clientHeight) return;
    this.looking.resize(clientWidth, clientHeight);
    this.renderer.setSize(clientWidth, clientHeight, false); // how large it is shown is the style's to say
    this.began();
    this.draw();
  }

  // What is there. `data` as measured, `pose` where it is now, `handles` the corners that can be dragged.
  show({ data, pose, chosen, handles, mark, unit }) {
    Object.assign(this, { data, pose, chosen, handles, mark, unit });
    this.build();
  }

  // The first look, once there is something to see and room to see it: at all of it, or at one thing.
  began(at) {
    this.first ??= at;
    if (this.looked || !this.room || !this.looking.size) return;
    this.looked = true;
    this.all("corner", true);
    if (this.first) this.centre(this.first);
  }

  build() {
    if (!this.data || !this.pose) return;
    this.clear();
    this.root.rotation.set(0, this.pose.noseUp, 0);
    this.lines = new Map(this.data.lines.map((each) => [each.key, { ...each, points: this.pose.lines[each.key] ?? each.points }]));
    for (const thing of this.data.things) {
      const body = bodyOf(thing, this.lines, this.colours, thing.key === this.chosen);
      const matrix = this.pose.things[thing.key];
      if (matrix) body.matrix.fromArray(matrix);
      this.root.add(body);
    }
    for (const line of this.lines.values()) addLine(this, line);
    this.root.updateMatrixWorld(true);
    this.frame();
    this.showWords();
    this.draw();
  }

  clear() {
    for (const top of [this.root, this.under, this.preview].filter(Boolean)) {
      top.traverse((each) => { each.geometry?.dispose(); each.material?.dispose(); });
    }
    this.root.clear();
    if (this.under) this.stage.remove(this.under);
    if (this.preview) this.stage.remove(this.preview);
    Object.assign(this, { under: null, preview: null, corners: [], spots: [], sized: [] });
  }

  holds(line) {
    return this.chosen === line.key || this.chosen.startsWith(`${line.key}.`);
  }

  // The ground and the three ways, round everything that has a place.
  frame() {
    const [low, high] = this.data.room.map((each) => new THREE.Vector3(...each));
    this.room = new THREE.Box3(low, high).applyMatrix4(this.root.matrixWorld);
    const step = this.unit.step;
    this.under = ground(this.room, step, this.colours);
    this.stage.add(this.under);
    const size = Math.max(...high.clone().sub(low).toArray()) / 9;
    const { group, words } = ways(low, size, this.colours);
    this.root.add(group);
    this.fixed = words.map((each) => ({ ...each, kind: "way" }));
  }

  showWords(length) {
    const high = this.pose.high.map(([key, point, words]) => ({ words: `\u25B2 ${words.slice(words.indexOf(": ") + 2)}`, at: new THREE.Vector3(...point), kind: "high" }));
    const here = this.placeOf(this.chosen);
    const named = here && !length ? [{ words: this.nameOf(this.chosen), at: here, kind: "chosen" }] : [];
    this.words.set([...this.fixed, ...high, ...named, ...(length ? [length] : [])]);
  }

  nameOf(key) {
    const thing = [...this.lines.values(), ...this.data.things].find((each) => each.key === key);
    if (thing) return thing.name;
    const line = [...this.lines.values()].find((each) => this.holds(each));
    return line ? key.slice(line.key.length + 1).replace("via.", "corner ").replace("from", "first end").replace(/^to$/, "last end") : "";
  }

  boxOf(key) {
    const line = this.lines.get(key);
    if (line) return new THREE.Box3().setFromPoints(line.points.map((each) => new THREE.Vector3(...each)));
    const spot = [...this.corners, ...this.spots].find((each) => each.key === key);
    if (spot) return new THREE.Box3().setFromCenterAndSize(spot.at, new THREE.Vector3(0.2, 0.2, 0.2));
    const body = this.root.children.find((each) => each.userData.key === key);
    return body?.children.length ? new THREE.Box3().setFromObject(body).applyMatrix4(this.root.matrixWorld.clone().invert()) : null;
  }

  placeOf(key) {
    const line = this.lines.get(key);
    if (line) return along(line.points, line.stations, line.stations.at(-1) / 2).at;
    return this.boxOf(key)?.getCenter(new THREE.Vector3()) ?? null;
  }

  all(name, quick) { this.looking.look(this.room, name, quick); }

  centre(key) {
    const box = this.boxOf(key);
    if (!box) return;
    this.looking.look(box.applyMatrix4(this.root.matrixWorld).expandByScalar(0.06), null, true);
  }

  draw() {
    this.waiting ??= requestAnimationFrame(() => { this.waiting = undefined; this.render(); });
  }

  render() {
    if (!this.looking.size || !this.room) return;
    const { camera, size } = this.looking;
    for (const { mesh, least, unit } of this.sized) mesh.scale.setScalar(Math.max(unit, least / camera.zoom));
    this.renderer.render(this.stage, camera);
    this.words.place((at) => this.project(at), size.width, size.height);
    const { pixels, words } = scale(camera.zoom, this.unit);
    this.bar.style.width = `${pixels}px`;
    this.bar.textContent = words;
    this.canvas.dataset.drawn = String(Number(this.canvas.dataset.drawn ?? 0) + 1);
  }

  // Where a point of the aircraft is seen, in px from the upper left.
  project(at) {
    const seen = at.clone().applyMatrix4(this.root.matrixWorld).project(this.looking.camera);
    const { width, height } = this.looking.size;
    return { x: ((seen.x + 1) * width) / 2, y: ((1 - seen.y) * height) / 2 };
  }

  // Which way is looked, as the aircraft has it.
  view() {
    const turned = new THREE.Matrix4().copy(this.root.matrixWorld).invert();
    return this.looking.back().negate().transformDirection(turned).toArray();
  }

  pointer(event) {
    const box = this.canvas.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  }

  ray(event) {
    const { x, y } = this.pointer(event), { width, height } = this.looking.size;
    const caster = new THREE.Raycaster();
    caster.setFromCamera(new THREE.Vector2((2 * x) / width - 1, 1 - (2 * y) / height), this.looking.camera);
    return caster.ray;
  }

  press(event) {
    if (event.button !== 0 || !event.isPrimary || !this.lines) return;
    this.pressed = this.pointer(event);
    const corner = cornerAt(this.corners, (at) => this.project(at), this.pressed);
    if (!corner?.free) return;
    event.stopImmediatePropagation(); // the view stays as it is
    this.canvas.setPointerCapture(event.pointerId);
    this.canvas.focus({ preventScroll: true });
    this.drag = new Drag(this, corner, event);
  }

  move(event) {
    if (!this.drag) {
      const over = this.corners.length && cornerAt(this.corners, (at) => this.project(at), this.pointer(event));
      this.canvas.style.cursor = over?.free ? "move" : "";
      return;
    }
    event.stopImmediatePropagation();
    this.follow(this.drag.corner, this.drag.move(event, event.shiftKey || this.single));
  }

  // A corner that was moved by a button or a key, until the answer is there.
  ahead(key, to) {
    const corner = this.corners.find((each) => each.key === key);
    if (!corner) return;
    this.follow(corner, to);
    this.put(corner, to);
  }

  // It stands there until the answer comes, and can be taken on from there.
  put(corner, to) {
    corner.point = to;
    corner.at.set(...to);
  }

  // The line as it would lie, in straight legs, with its length.
  follow(corner, to) {
    const { line } = corner;
    const ends = [line.points[0], line.points.at(-1)];
    const points = [ends[0], ...this.corners.map((each) => (each === corner ? to : each.point)), ends[1]];
    const stations = stationsOf(points);
    if (this.preview) { this.root.remove(this.preview); this.preview.geometry.dispose(); }
    this.preview = lineMesh(points, stations, "plastic", line.radius, { ...this.colours, ink: this.colours.accent }, 2);
    this.root.add(this.preview);
    corner.handle.position.set(...to);
    const length = `${(stations.at(-1) * this.unit.perMetre).toFixed(this.unit.decimals)} ${this.unit.name} in straight legs`;
    this.showWords({ words: length, at: new THREE.Vector3(...to), kind: "chosen" });
    this.canvas.dataset.length = length;
    this.draw();
  }

  release(event) {
    const drag = this.drag, began = this.pressed;
    this.drag = this.pressed = null;
    if (drag) event.stopImmediatePropagation();
    const at = this.pointer(event);
    if (!began || !this.lines) return;
    if (Math.hypot(at.x - began.x, at.y - began.y) < STILL) {
      if (drag) this.build();
      this.tell("pick", { key: this.keyAt(event) });
    } else if (drag?.moved) {
      const { told, place } = drag;
      this.put(drag.corner, place);
      this.tell("moved", told);
    } else if (drag) this.build();
  }

  cancel() {
    if (this.drag) this.build();
    this.drag = this.pressed = null;
  }

  keyAt(event) {
    const bodies = this.root.children.filter((each) => each.userData.key);
    const { corners, spots } = this, lines = [...this.lines.values()];
    return keyAt({ corners, spots, lines, bodies, project: (at) => this.project(at), at: this.pointer(event), ray: this.ray(event) });
  }

  key(event) {
    if (event.key === "Escape" && this.drag) { this.cancel(); event.preventDefault(); return; }
    const way = KEYS[event.key];
    if (way && this.corners.some((each) => each.key === this.chosen)) this.tell("step", { axis: way[0], sign: way[1] });
    else if (event.key === "+" || event.key === "=") this.looking.nearer(1.25);
    else if (event.key === "-") this.looking.nearer(0.8);
    else if (event.key === "ArrowLeft" || event.key === "ArrowRight") this.looking.turn(event.key === "ArrowLeft" ? TURN : -TURN, 0);
    else if (event.key === "ArrowUp" || event.key === "ArrowDown") this.looking.turn(0, event.key === "ArrowUp" ? TURN : -TURN);
    else return;
    event.preventDefault();
  }
}
