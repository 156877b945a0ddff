// How likely chance alone is to put so many troubles on one side: an exact test, day by day.
//
// On a day with N fences met, of which n on the side asked about, and K troubles, chance puts X of the K on
// that side with P(X = x) = C(n, x) C(N − n, K − x) / C(N, K), the hypergeometric distribution. Days are
// compared only with themselves, so that a bad day counts as a bad day and not as a bad rein; the sum over the
// days is the convolution of theirs. One day alone is Fisher's exact test, one-sided; several are the exact
// form of the Mantel-Haenszel test (Birch 1964). tests/trade/make_pattern_vectors.py checks it against scipy.

/** One day: fences met, those on the side, troubles, those on the side. Whole numbers, `on_side` <= `met`. */
export interface Day {
  met: number;
  on_side: number;
  troubles: number;
  troubles_on_side: number;
}

const logFactorials: number[] = [0];

function logFactorial(n: number): number {
  for (let next = logFactorials.length; next <= n; next++) logFactorials.push(logFactorials[next - 1]! + Math.log(next));
  return logFactorials[n]!;
}

function logChoose(n: number, k: number): number {
  return logFactorial(n) - logFactorial(k) - logFactorial(n - k);
}

/** The chances of 0, 1, 2 … troubles on the side on one day. */
export function chances({ met, on_side, troubles }: Day): number[] {
  const least = Math.max(0, troubles - (met - on_side));
  const most = Math.min(on_side, troubles);
  const all = logChoose(met, troubles);
  const chance = (x: number): number => Math.exp(logChoose(on_side, x) + logChoose(met - on_side, troubles - x) - all);
  return Array.from({ length: most + 1 }, (_, x) => (x < least ? 0 : chance(x)));
}

function convolve(one: number[], other: number[]): number[] {
  const sum = new Array<number>(one.length + other.length - 1).fill(0);
  one.forEach((p, i) => other.forEach((q, j) => void (sum[i + j]! += p * q)));
  return sum;
}

/** What chance alone can do: `p`, how likely it puts at least as many troubles on the side as there were;
 * `least_p`, the smallest p these days could have given; `expected`, how many troubles it puts there on average. */
export interface Chance {
  p: number;
  least_p: number;
  expected: number;
}

export function byChance(days: readonly Day[]): Chance {
  const telling = days.filter((day) => day.troubles > 0);
  const sum = telling.map(chances).reduce(convolve, [1]);
  const found = telling.reduce((total, day) => total + day.troubles_on_side, 0);
  const tail = sum.slice(found).reduce((total, p) => total + p, 0);
  const expected = telling.reduce((total, day) => total + (day.troubles * day.on_side) / day.met, 0);
  return { p: Math.min(1, tail), least_p: sum.at(-1)!, expected };
}

/** The p at or below which a finding counts when many sides are looked at: `alpha` shared out over those that
 * could have counted at all (Tarone 1990). */
export function sharedLevel(least_ps: readonly number[], alpha: number): number {
  const could = (k: number): number => least_ps.filter((p) => p <= alpha / k).length;
  let k = 1;
  while (could(k) > k) k++;
  return alpha / k;
}
