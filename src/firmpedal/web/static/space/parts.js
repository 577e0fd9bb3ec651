// A line in the picture with what is on it: clamps as bars across, ends as small bodies, corners as handles.
import { THREE } from "nicegui-scene";
import { along, lineMesh } from "/static/space/lines.js";

const WIDE = { plain: 1.6, chosen: 3 }; // px; half of how wide a line is at least

export function addLine(picture, line) {
  const mine = picture.holds(line);
  const colours = mine ? { ...picture.colours, ink: picture.colours.accent } : picture.colours;
  picture.root.add(lineMesh(line.points, line.stations, line.kind, line.radius, colours, mine ? WIDE.chosen : WIDE.plain));
  for (const clamp of line.clamps) {
    const { at, way } = along(line.points, line.stations, clamp.station);
    addSpot(picture, clamp.key, at, way, new THREE.BoxGeometry(6, 1.6, 1.6), line.radius, mine);
  }
  const last = line.stations.at(-1);
  for (const [end, station] of [["from", 0], ["to", last]]) {
    const { at, way } = along(line.points, line.stations, station);
    addSpot(picture, `${line.key}.${end}`, station ? at : new THREE.Vector3(...line.points[0]), way, new THREE.CylinderGeometry(2.1, 2.1, 5, 6), line.radius, mine);
  }
  if (mine) addHandles(picture, line);
}

// The corners of the line that is chosen: round what can be dragged, square what cannot.
function addHandles(picture, line) {
  for (const { key, free } of picture.handles) {
    const corner = line.corners.find((each) => each.key === key);
    if (!corner) continue;
    const at = new THREE.Vector3(...corner.point);
    const shape = free ? new THREE.SphereGeometry(1, 20, 14) : new THREE.BoxGeometry(1.6, 1.6, 1.6);
    const tone = key === picture.chosen ? picture.colours.accent : picture.colours.sheet;
    const mesh = new THREE.Mesh(shape, new THREE.MeshBasicMaterial({ color: tone.lit, depthTest: false }));
    const edge = new THREE.Mesh(shape, new THREE.MeshBasicMaterial({ color: picture.colours.ink.lit, depthTest: false }));
    mesh.renderOrder = 3;
    edge.renderOrder = 2;
    edge.scale.setScalar(1.35);
    const handle = new THREE.Group();
    handle.add(edge, mesh);
    handle.position.copy(at);
    picture.root.add(handle);
    picture.sized.push({ mesh: handle, least: key === picture.chosen ? 8 : 6, unit: 0 });
    picture.corners.push({ ...corner, free, line, at, handle });
  }
}

// A small body on a line, never smaller than can be seen; shapes are in radii of the line.
function addSpot(picture, key, at, way, shape, radius, mine) {
  const tone = key === picture.chosen ? picture.colours.accent : mine ? picture.colours.ink : picture.colours.soft;
  const mesh = new THREE.Mesh(shape, new THREE.MeshLambertMaterial({ color: tone.lit }));
  mesh.position.copy(at);
  mesh.quaternion.setFromUnitVectors(new THREE.Vector3(0, 1, 0), way);
  picture.root.add(mesh);
  picture.sized.push({ mesh, least: key === picture.chosen ? 3 : 2, unit: radius });
  picture.spots.push({ key, at });
}
