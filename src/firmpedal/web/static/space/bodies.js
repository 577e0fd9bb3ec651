// Bodies: solid what is a part, see-through what is to be stayed clear of, faint and dashed what is a zone.
import { THREE } from "nicegui-scene";
import { along, lineMesh } from "/static/space/lines.js";

const UP = new THREE.Vector3(0, 1, 0);
const LOOKS = {
  component: { opacity: 1, tone: "soft" },
  bulkhead: { opacity: 1, tone: "edge" },
  panel: { opacity: 0.16, tone: "edge" },
  "keep clear": { opacity: 0.3, tone: "caution" },
  zone: { opacity: 0.07, tone: "warning", dashed: true },
};

const vector = (point) => new THREE.Vector3(...point);

function turnedTo(mesh, way) {
  mesh.quaternion.setFromUnitVectors(UP, way.clone().normalize());
  return mesh;
}

function shapeOf(solid) {
  const one = vector(solid.one), other = vector(solid.other);
  if (solid.shape === "box") {
    const size = other.clone().sub(one);
    const mesh = new THREE.Mesh(new THREE.BoxGeometry(...size.toArray().map(Math.abs)));
    mesh.position.copy(one).lerp(other, 0.5);
    return mesh;
  }
  if (solid.shape === "disc") {
    const mesh = new THREE.Mesh(new THREE.CylinderGeometry(solid.radius, solid.radius, solid.thickness, 64));
    mesh.position.copy(one);
    return turnedTo(mesh, other);
  }
  const way = other.clone().sub(one);
  if (way.length() < 1e-9) {
    const ball = new THREE.Mesh(new THREE.SphereGeometry(solid.radius, 48, 32));
    ball.position.copy(one);
    return ball;
  }
  const bar = new THREE.Mesh(new THREE.CapsuleGeometry(solid.radius, way.length(), 6, 16));
  bar.position.copy(one).lerp(other, 0.5);
  return turnedTo(bar, way);
}

// A stretch of a line with a wider body round it.
function sleeve(solid, lines, colours) {
  const line = lines.get(solid.line);
  if (!line) return null;
  const [from, to] = solid.stretch.map((each) => Math.min(Math.max(each, 0), line.stations.at(-1)));
  const inner = line.points.filter((_, n) => line.stations[n] > from && line.stations[n] < to);
  const ends = [from, to].map((station) => along(line.points, line.stations, station).at.toArray());
  const points = [ends[0], ...inner, ends[1]];
  const stations = points.map((_, n) => n * line.radius * 4);
  return lineMesh(points, stations, "hose", line.radius * 2.2, { ink: colours.warning, sheet: colours.sheet }, 5);
}

export function bodyOf(thing, lines, colours, chosen) {
  const look = LOOKS[thing.sort], group = new THREE.Group();
  group.matrixAutoUpdate = false;
  const tone = chosen ? colours.accent : colours[look.tone];
  const opacity = chosen ? Math.max(look.opacity, 0.3) : look.opacity;
  for (const solid of thing.solids) {
    if (solid.shape === "sleeve") {
      const mesh = sleeve(solid, lines, colours);
      if (mesh) group.add(mesh);
      continue;
    }
    const mesh = shapeOf(solid);
    const faint = opacity < 1;
    mesh.material = new THREE.MeshLambertMaterial({ color: tone.lit, transparent: faint, opacity, depthWrite: !faint, side: THREE.DoubleSide });
    mesh.renderOrder = faint ? 1 : 0;
    const edges = new THREE.LineSegments(
      new THREE.EdgesGeometry(mesh.geometry, 40),
      look.dashed && !chosen
        ? new THREE.LineDashedMaterial({ color: tone.lit, dashSize: 0.02, gapSize: 0.015 })
        : new THREE.LineBasicMaterial({ color: tone.lit }),
    );
    if (look.dashed) edges.computeLineDistances();
    mesh.add(edges);
    group.add(mesh);
  }
  group.userData = { key: thing.key, faint: look.opacity < 1 };
  return group;
}
