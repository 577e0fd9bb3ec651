// What is no part of the aircraft: the level ground, three ways with their words, a scale, words at things.
import { THREE } from "nicegui-scene";

const BEFORE = 6; // px between the tip of an arrow and its word
const WAYS = [["aft", [1, 0, 0]], ["right", [0, 1, 0]], ["up", [0, 0, 1]]];

function segments(pairs, colour) {
  const shape = new THREE.BufferGeometry().setFromPoints(pairs.flat());
  return new THREE.LineSegments(shape, new THREE.LineBasicMaterial({ color: colour }));
}

// A level grid under everything; its lines are `step` apart.
export function ground(box, step, colours) {
  const [low, high] = [box.min, box.max].map((each) => each.clone().divideScalar(step));
  const pairs = [];
  const add = (...ends) => pairs.push(ends.map(([x, y]) => new THREE.Vector3(x * step, y * step, box.min.z)));
  const [x0, x1, y0, y1] = [Math.floor(low.x), Math.ceil(high.x), Math.floor(low.y), Math.ceil(high.y)];
  for (let x = x0; x <= x1; x += 1) add([x, y0], [x, y1]);
  for (let y = y0; y <= y1; y += 1) add([x0, y], [x1, y]);
  return segments(pairs, colours.line.lit);
}

// The three ways, from the forward lower left corner of everything; they stand as the aircraft does.
export function ways(corner, size, colours) {
  const group = new THREE.Group(), words = [];
  group.position.copy(corner);
  for (const [word, way] of WAYS) {
    const end = new THREE.Vector3(...way).multiplyScalar(size);
    group.add(segments([[new THREE.Vector3(), end]], colours.ink.lit));
    const tip = new THREE.Mesh(new THREE.ConeGeometry(size / 14, size / 5, 12), new THREE.MeshBasicMaterial({ color: colours.ink.lit }));
    tip.position.copy(end);
    tip.quaternion.setFromUnitVectors(new THREE.Vector3(0, 1, 0), end.clone().normalize());
    group.add(tip);
    words.push({ words: word, at: end.clone().add(corner), from: corner.clone() });
  }
  return { group, words };
}

// A round length that is between 60 and 150 px long at this many px to the metre.
export function scale(zoom, unit) {
  const least = (60 / zoom) * unit.perMetre;
  const ten = 10 ** Math.floor(Math.log10(least));
  const length = [1, 2, 5, 10].map((each) => each * ten).find((each) => each >= least);
  return { pixels: (length / unit.perMetre) * zoom, words: `${Number(length.toPrecision(3))} ${unit.name}` };
}

// Puts words over the picture where points of it are seen.
export class Words {
  constructor(holder) { this.holder = holder; this.all = []; }

  set(all) {
    this.holder.replaceChildren();
    this.all = all.map(({ words, at, from, kind }) => {
      const element = document.createElement("span");
      element.textContent = words;
      element.className = kind ? `fp-space-word fp-space-${kind}` : "fp-space-word";
      this.holder.append(element);
      return { element, at, from };
    });
  }

  // Words at an arrow stand before its tip, not on it; words that would lie on others go below them.
  place(project, width, height) {
    const taken = [];
    for (const { element, at, from } of this.all) {
      const { offsetWidth: wide, offsetHeight: high } = element;
      let { x, y } = project(at);
      if (from) {
        const tail = project(from), long = Math.hypot(x - tail.x, y - tail.y) || 1;
        const [across, down] = [(x - tail.x) / long, (y - tail.y) / long];
        const away = BEFORE + (Math.abs(across) * wide + Math.abs(down) * high) / 2;
        x += across * away - wide / 2;
        y += down * away;
      }
      for (const other of taken) {
        if (Math.abs(other.y - y) < high && x < other.x + other.wide && other.x < x + wide) y = other.y + high;
      }
      taken.push({ x, y, wide });
      const left = Math.min(Math.max(x, 4), Math.max(width - element.offsetWidth - 4, 4));
      element.style.transform = `translate(${left}px, ${y}px)`;
      element.hidden = y < 0 || y > height - 14 || x < -40 || x > width;
    }
  }
}
