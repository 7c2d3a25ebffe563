// A distribution function gathered from even pieces: each costs two turns of its slope, however wide it is.

/** Changes of slope at even nodes, later the heights. */
export interface Ramps {
  readonly from: number;
  readonly step: number;
  readonly nodes: Float64Array;
}

/** Room for everything between two places, with a node to spare at either end. */
export function rampsBetween(from: number, to: number, nodes: number): Ramps {
  const step = Math.max(1e-9, (to - from) / (nodes - 4));
  return {from: from - step, step, nodes: new Float64Array(nodes)};
}

/** Lay a mass evenly between two places; narrower than a step it is laid one step wide. */
export function layEvenly({from, step, nodes}: Ramps, begin: number, end: number, mass: number) {
  const widen = Math.max(0, step - (end - begin)) / 2;
  const rise = mass / (end - begin + 2 * widen);
  turn(nodes, (begin - widen - from) / step, rise);
  turn(nodes, (end + widen - from) / step, -rise);
}

/** A change of slope between two nodes, shared so that the height is exact at every node. */
function turn(nodes: Float64Array, position: number, by: number) {
  const node = Math.min(nodes.length - 2, Math.max(0, Math.floor(position)));
  const upper = by * Math.min(1, Math.max(0, position - node));
  nodes[node] = nodes[node]! + by - upper;
  nodes[node + 1] = nodes[node + 1]! + upper;
}

/** From changes of slope to heights, in place: once, when all is laid. */
export function raise({nodes, step}: Ramps) {
  let slope = 0;
  let height = 0;
  for (let i = 0; i < nodes.length; i++) {
    slope += nodes[i]!;
    nodes[i] = height;
    height += slope * step;
  }
}

/** The height at a place; level before the first node and after the last. */
export function heightAt({from, step, nodes}: Ramps, place: number): number {
  const position = (place - from) / step;
  if (position <= 0) return nodes[0]!;
  const node = Math.floor(position);
  if (node >= nodes.length - 1) return nodes[nodes.length - 1]!;
  return nodes[node]! + (position - node) * (nodes[node + 1]! - nodes[node]!);
}

/** Adds the heights of several curves over the same nodes, each so many times, at every place; places count from an origin. */
export function addHeightsAt(
  sums: Float64Array,
  curves: readonly Ramps[],
  places: Float64Array,
  origin: number,
  times: number,
) {
  const {from, step, nodes} = curves[0]!;
  const last = nodes.length - 1;
  for (let curve = 0; curve < curves.length; curve++) {
    const {nodes} = curves[curve]!;
    let sum = 0;
    for (let i = 0; i < places.length; i++) {
      const position = Math.min(last, Math.max(0, (places[i]! - origin - from) / step));
      const node = Math.min(last - 1, Math.floor(position));
      const height = nodes[node]!;
      sum += height + (position - node) * (nodes[node + 1]! - height);
    }
    sums[curve] = sums[curve]! + times * sum;
  }
}
