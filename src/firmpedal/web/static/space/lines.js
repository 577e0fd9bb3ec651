// Lines as round bodies that never get thinner on the screen than can be seen, told apart by how they are
// drawn: tube plain, hose in rings, plastic in dashes.
import { THREE } from "nicegui-scene";

const SIDES = 12;
const STEEPEST = 2.5; // a sharp corner is not drawn out into a spike
const PATTERNS = { tube: 0, hose: 1, plastic: 2 };

const VERTEX = `
  attribute vec3 side;
  attribute float station;
  uniform float radius, least, perPixel;
  varying vec3 facing;
  varying float along;
  void main() {
    facing = normalize(normalMatrix * side);
    along = station;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(position + side * max(radius, least * perPixel), 1.0);
  }`;
const FRAGMENT = `
  uniform vec3 ink, paper;
  uniform int pattern;
  uniform float radius, least, perPixel;
  varying vec3 facing;
  varying float along;
  void main() {
    float period = 6.0 * max(radius, least * perPixel);
    // A leg that leads away from the viewer has longer rings, or they would run together.
    float perSeen = length(vec2(dFdx(along), dFdy(along)));
    period *= exp2(max(0.0, ceil(log2(9.0 * perSeen / period))));
    float ring = fract(along / period);
    if (pattern == 2 && ring > 0.62) discard;
    vec3 colour = pattern == 1 && ring > 0.5 ? mix(ink, paper, 0.62) : ink;
    float light = 0.62 + 0.38 * abs(facing.z);
    gl_FragColor = vec4(mix(paper * 0.5, colour, light), 1.0);
  }`;

// Rings of points round a path, each turned as little as can be against the one before.
function sweep(points, stations) {
  const at = points.map((each) => new THREE.Vector3(...each));
  const legs = at.slice(1).map((each, n) => each.clone().sub(at[n]).normalize());
  const square = new THREE.Vector3();
  const place = [], sides = [], along = [], faces = [];
  let across = null;
  at.forEach((point, n) => {
    const before = legs[Math.max(n - 1, 0)], after = legs[Math.min(n, legs.length - 1)];
    const way = before.clone().add(after);
    if (way.lengthSq() < 1e-12) way.copy(before);
    way.normalize();
    across ??= new THREE.Vector3(Math.abs(way.z) < 0.9 ? 0 : 1, 0, Math.abs(way.z) < 0.9 ? 1 : 0);
    across.addScaledVector(way, -across.dot(way)).normalize();
    square.crossVectors(way, across);
    const wider = Math.min(1 / Math.max(way.dot(before), 1e-3), STEEPEST) - 1;
    const turn = after.clone().sub(before);
    if (turn.lengthSq() > 1e-12) turn.normalize();
    for (let k = 0; k <= SIDES; k += 1) {
      const angle = (2 * Math.PI * k) / SIDES;
      const side = across.clone().multiplyScalar(Math.cos(angle)).addScaledVector(square, Math.sin(angle));
      side.addScaledVector(turn, wider * side.dot(turn));
      place.push(point.x, point.y, point.z);
      sides.push(side.x, side.y, side.z);
      along.push(stations[n]);
      if (n + 1 < at.length && k < SIDES) {
        const one = n * (SIDES + 1) + k, other = one + SIDES + 1;
        faces.push(one, other, one + 1, one + 1, other, other + 1);
      }
    }
  });
  const shape = new THREE.BufferGeometry();
  shape.setAttribute("position", new THREE.Float32BufferAttribute(place, 3));
  shape.setAttribute("side", new THREE.Float32BufferAttribute(sides, 3));
  shape.setAttribute("station", new THREE.Float32BufferAttribute(along, 1));
  shape.setIndex(faces);
  return shape;
}

export function stationsOf(points) {
  const found = [0];
  for (let n = 1; n < points.length; n += 1) {
    found.push(found[n - 1] + Math.hypot(...points[n].map((value, axis) => value - points[n - 1][axis])));
  }
  return found;
}

export function lineMesh(points, stations, kind, radius, colours, wide) {
  const material = new THREE.ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    side: THREE.DoubleSide,
    uniforms: {
      ink: { value: colours.ink },
      paper: { value: colours.sheet },
      pattern: { value: PATTERNS[kind] ?? 0 },
      radius: { value: radius },
      least: { value: wide },
      perPixel: { value: 1 },
    },
  });
  const mesh = new THREE.Mesh(sweep(points, stations), material);
  mesh.frustumCulled = false;
  mesh.onBeforeRender = (_, __, camera) => { material.uniforms.perPixel.value = 1 / camera.zoom; };
  return mesh;
}

// The point at a station, and the way the line goes there.
export function along(points, stations, station) {
  let n = stations.findIndex((each) => each >= station);
  n = Math.max(n < 0 ? points.length - 1 : n, 1);
  const one = new THREE.Vector3(...points[n - 1]), other = new THREE.Vector3(...points[n]);
  const span = stations[n] - stations[n - 1];
  const share = span > 0 ? (station - stations[n - 1]) / span : 0;
  return { at: one.clone().lerp(other, share), way: other.sub(one).normalize() };
}
