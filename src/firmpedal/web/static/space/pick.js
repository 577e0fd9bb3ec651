// What is under the pointer: a corner of the chosen line first, then clamps, ends, lines, and last bodies.
import { THREE } from "nicegui-scene";

const NEAR = { corner: 18, spot: 13, line: 9 };

// The nearest of some points on the screen, if it is within so many px.
export function nearest(spots, project, at, within) {
  let best = null, least = within;
  for (const spot of spots) {
    const { x, y } = project(spot.at);
    const off = Math.hypot(x - at.x, y - at.y);
    if (off <= least) [best, least] = [spot, off];
  }
  return best;
}

export const cornerAt = (corners, project, at) => nearest(corners, project, at, NEAR.corner);

function lineAt(lines, project, at) {
  let best = null, least = NEAR.line;
  for (const line of lines) {
    const seen = line.points.map((point) => project(new THREE.Vector3(...point)));
    for (let n = 1; n < seen.length; n += 1) {
      const [one, other] = [seen[n - 1], seen[n]];
      const way = { x: other.x - one.x, y: other.y - one.y };
      const size = way.x ** 2 + way.y ** 2;
      const share = size ? Math.min(Math.max(((at.x - one.x) * way.x + (at.y - one.y) * way.y) / size, 0), 1) : 0;
      const off = Math.hypot(one.x + share * way.x - at.x, one.y + share * way.y - at.y);
      if (off < least) [best, least] = [line, off];
    }
  }
  return best;
}

export function keyAt({ corners, spots, lines, bodies, project, at, ray }) {
  const corner = cornerAt(corners, project, at) ?? nearest(spots, project, at, NEAR.spot);
  if (corner) return corner.key;
  const line = lineAt(lines, project, at);
  if (line) return line.key;
  const caster = new THREE.Raycaster();
  caster.ray.copy(ray);
  const hits = caster.intersectObjects(bodies, true).filter(({ object }) => object.isMesh);
  const owner = ({ object }) => {
    let each = object;
    while (each && !each.userData.key) each = each.parent;
    return each;
  };
  const found = hits.map(owner).filter(Boolean);
  return (found.find((each) => !each.userData.faint) ?? found[0])?.userData.key ?? "";
}
