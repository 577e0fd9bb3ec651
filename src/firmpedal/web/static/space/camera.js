// How the picture is looked at: without perspective, so that lengths can be compared; one px is 1 / zoom metres.
import { OrbitControls, THREE } from "nicegui-scene";

const FAR = 60; // m from what is looked at; all of an aircraft is nearer
const MARGIN = 0.86;
const LOOKS = {
  corner: [-0.75, -1, 0.6],
  left: [0, -1, 0],
  front: [-1, 0, 0],
  above: [0, -1e-4, 1],
};
const LONG = 260; // ms
const STEEPEST = Math.PI - 1e-3;

export class Looking {
  constructor(canvas, changed) {
    this.camera = new THREE.OrthographicCamera(-1, 1, 1, -1, 0.1, 2 * FAR);
    this.camera.up.set(0, 0, 1);
    this.controls = new OrbitControls(this.camera, canvas);
    this.controls.enableDamping = false;
    this.controls.minZoom = 20;
    this.controls.maxZoom = 30000;
    this.controls.maxPolarAngle = STEEPEST;
    this.controls.addEventListener("change", changed);
    this.changed = changed;
    this.way = new THREE.Vector3(...LOOKS.corner).normalize();
  }

  resize(width, height) {
    Object.assign(this.camera, { left: -width / 2, right: width / 2, top: height / 2, bottom: -height / 2 });
    this.size = { width, height };
    this.camera.updateProjectionMatrix();
  }

  // Bring a box into sight, from a side that has a name, or else from where it is looked at now.
  look(box, name, quick) {
    const way = name ? new THREE.Vector3(...LOOKS[name]).normalize() : this.back();
    this.go(box.getCenter(new THREE.Vector3()), way, this.fitting(box, way), quick);
  }

  back() {
    return this.camera.position.clone().sub(this.controls.target).normalize();
  }

  fitting(box, way) {
    const right = new THREE.Vector3(0, 0, 1).cross(way).normalize();
    const up = way.clone().cross(right);
    const half = box.getSize(new THREE.Vector3()).multiplyScalar(0.5);
    const reach = (axis) => Math.abs(axis.x) * half.x + Math.abs(axis.y) * half.y + Math.abs(axis.z) * half.z;
    const { width, height } = this.size;
    return MARGIN * Math.min(width / (2 * reach(right) || 1), height / (2 * reach(up) || 1));
  }

  nearer(times) {
    this.go(this.controls.target.clone(), this.back(), this.camera.zoom * times);
  }

  turn(sideways, upwards) {
    const ball = new THREE.Spherical().setFromVector3(this.back().applyAxisAngle(new THREE.Vector3(1, 0, 0), -Math.PI / 2));
    ball.theta += sideways;
    ball.phi = Math.min(Math.max(ball.phi - upwards, 1e-3), STEEPEST);
    const way = new THREE.Vector3().setFromSpherical(ball).applyAxisAngle(new THREE.Vector3(1, 0, 0), Math.PI / 2);
    this.go(this.controls.target.clone(), way, this.camera.zoom, true);
  }

  go(target, way, zoom, quick) {
    cancelAnimationFrame(this.moving);
    const from = { target: this.controls.target.clone(), way: this.back(), zoom: this.camera.zoom };
    const began = performance.now();
    const wide = Math.min(Math.max(zoom, this.controls.minZoom), this.controls.maxZoom);
    const still = quick || matchMedia("(prefers-reduced-motion: reduce)").matches;
    const step = () => {
      const share = still ? 1 : Math.min((performance.now() - began) / LONG, 1);
      const eased = share * share * (3 - 2 * share);
      const here = from.way.clone().lerp(way, eased);
      if (share === 1 || here.lengthSq() < 1e-3) here.copy(way);
      this.controls.target.copy(from.target).lerp(target, eased);
      this.camera.position.copy(this.controls.target).addScaledVector(here.normalize(), FAR);
      this.camera.zoom = from.zoom * (wide / from.zoom) ** eased;
      this.camera.updateProjectionMatrix();
      this.controls.update();
      this.changed();
      if (share < 1) this.moving = requestAnimationFrame(step);
    };
    step();
  }
}
