// Dragging a corner: in the plane across the axis that is looked along most, on the marks of the tape.
// The server decides the same again from the same figures (web/space/plane.py) and writes the file.
import { THREE } from "nicegui-scene";

export function facing(view) {
  const size = view.map(Math.abs);
  return [2, 1, 0].reduce((best, axis) => (size[axis] > size[best] ? axis : best), 2);
}

export function dragged(now, by, view, mark, single) {
  let axes = [0, 1, 2].filter((axis) => axis !== facing(view));
  if (single) axes = [Math.abs(by[axes[0]]) >= Math.abs(by[axes[1]]) ? axes[0] : axes[1]];
  return now.map((value, axis) =>
    axes.includes(axis) && Math.abs(by[axis]) >= mark / 2 ? Math.round((value + by[axis]) / mark) * mark : value);
}

// A drag that is going on: tells where the corner is, and at the end what is to be written.
export class Drag {
  constructor(picture, corner, event) {
    this.picture = picture;
    this.corner = corner;
    this.view = picture.view();
    const normal = new THREE.Vector3().setComponent(facing(this.view), 1).transformDirection(picture.root.matrixWorld);
    const at = new THREE.Vector3(...corner.point).applyMatrix4(picture.root.matrixWorld);
    this.plane = new THREE.Plane().setFromNormalAndCoplanarPoint(normal, at);
    this.began = this.hit(event);
    this.by = [0, 0, 0];
  }

  hit(event) {
    const found = this.picture.ray(event).intersectPlane(this.plane, new THREE.Vector3());
    return found && this.picture.root.worldToLocal(found);
  }

  move(event, single) {
    const now = this.hit(event);
    if (now && this.began) this.by = now.sub(this.began).toArray();
    this.single = Boolean(single);
    return this.place;
  }

  get place() {
    return dragged(this.corner.point, this.by, this.view, this.picture.mark, this.single);
  }

  get moved() {
    return this.place.some((value, axis) => value !== this.corner.point[axis]);
  }

  get told() {
    return { key: this.corner.key, by: this.by, view: this.view, single: Boolean(this.single) };
  }
}
