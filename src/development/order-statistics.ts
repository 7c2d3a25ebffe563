// When the k-th of a lot's animals is out: a sum of unlike yes/no chances.
import {LEVELS} from './levels.ts';
import {normalDensity, normalShare} from './normal.ts';
import {remembered} from './remembered.ts';

/** Up to this many animals are counted exactly from the nearer end; a normal curve with its skewness serves beyond. */
const EXACT_UP_TO = 12;

const tail = new Float64Array(EXACT_UP_TO + 1);

/**
 * The chance that at least `k` animals are out.
 * @param counts animals by class
 * @param out the chance of each class's animals to be out
 */
export function chanceOfAtLeast(k: number, counts: ArrayLike<number>, out: ArrayLike<number>): number {
  let all = 0;
  for (let c = 0; c < counts.length; c++) all += counts[c]!;
  if (k <= 0) return 1;
  if (k > all) return 0;
  if (Math.min(all - k, k - 1) > EXACT_UP_TO) return skewNormal(k, counts, out);
  return all - k < k - 1
    ? chanceOfAtMost(all - k, counts, out, true)
    : 1 - chanceOfAtMost(k - 1, counts, out, false);
}

const HALVINGS = 45;
const AT_RANK = remembered(
  2000,
  ({k, n}: {readonly k: number; readonly n: number}) =>
    LEVELS.map(level => {
      let [low, high] = [0, 1];
      for (let i = 0; i < HALVINGS; i++) {
        const middle = (low + high) / 2;
        if (chanceOfAtLeast(k, [n], [middle]) < level) low = middle;
        else high = middle;
      }
      return (low + high) / 2;
    }),
  ({k, n}) => `${k} ${n}`,
);

/** The chances of one animal to be out at which, of n alike, at least k are out with the chances of the levels. */
export function sharesForAtLeast(k: number, n: number): Float64Array {
  return AT_RANK({k, n});
}

/** The chance that at most `most` animals are inside (or out): the classes' binomials, convolved and cut there. */
function chanceOfAtMost(
  most: number,
  counts: ArrayLike<number>,
  out: ArrayLike<number>,
  inside: boolean,
): number {
  tail.fill(0, 0, most + 1);
  tail[0] = 1;
  // Classes taken so far hold so many; of more the chance is 0 as it stands.
  let so = 0;
  for (let c = 0; c < counts.length; c++) {
    const yes = inside ? 1 - out[c]! : out[c]!;
    if (yes <= 0) continue;
    so += counts[c]!;
    addBinomial(Math.min(most, so), counts[c]!, Math.min(1, yes));
  }
  let sum = 0;
  for (let i = 0; i <= most; i++) sum += tail[i]!;
  return sum;
}

/** Up to this many alike are added one by one: a power and as many divisions take longer. */
const ONE_BY_ONE = 12;

const binomial = new Float64Array(EXACT_UP_TO + 1);

function addBinomial(most: number, n: number, yes: number) {
  if (n <= ONE_BY_ONE) {
    for (let animal = 0; animal < n; animal++) addAnimal(most, yes);
    return;
  }
  const reach = Math.min(most, n);
  if (yes === 1) {
    for (let i = most; i >= 0; i--) tail[i] = i >= n ? tail[i - n]! : 0;
    return;
  }
  // From the zero term upwards; where even that underflows, so many inside have no chance worth counting.
  binomial[0] = (1 - yes) ** n;
  for (let j = 1; j <= reach; j++) binomial[j] = (binomial[j - 1]! * (n - j + 1) * yes) / (j * (1 - yes));
  for (let i = most; i >= 0; i--) {
    let sum = 0;
    for (let j = Math.min(i, reach); j >= 0; j--) sum += binomial[j]! * tail[i - j]!;
    tail[i] = sum;
  }
}

function addAnimal(most: number, yes: number) {
  const no = 1 - yes;
  for (let i = most; i > 0; i--) tail[i] = no * tail[i]! + yes * tail[i - 1]!;
  tail[0] = no * tail[0]!;
}

/** P(out ≥ k) by the first Edgeworth term, with the half-step from whole numbers to a curve. */
function skewNormal(k: number, counts: ArrayLike<number>, out: ArrayLike<number>): number {
  let mean = 0;
  let variance = 0;
  let third = 0;
  for (let c = 0; c < counts.length; c++) {
    const f = Math.min(1, out[c]!);
    const spread = counts[c]! * f * (1 - f);
    mean += counts[c]! * f;
    variance += spread;
    third += spread * (1 - 2 * f);
  }
  if (variance < 1e-9) return mean >= k - 0.5 ? 1 : 0;
  const sd = Math.sqrt(variance);
  const z = (k - 0.5 - mean) / sd;
  const share = 1 - normalShare(z) + (third / (6 * variance * sd)) * (z * z - 1) * normalDensity(z);
  return Math.min(1, Math.max(0, share));
}
