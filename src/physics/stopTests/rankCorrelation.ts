import { mean } from "../uncertainty/readingMean.ts";
import { sampledPlaces, valuesAt } from "./sampled.ts";

const mostSampled = 4000;

/**
 * Spearman's rank correlation of two columns of one length, −1 … 1: 1 where one always rises with the
 * other, whatever the curve between them. Ties share their mean rank. 0 where a column does not change.
 * Taken over an even sample of at most 4000 rows. Source: Spearman, Am. J. Psychol. 15 (1904) 72.
 */
export function rankCorrelation(first: Float64Array, second: Float64Array): number {
  const places = sampledPlaces(first.length, mostSampled);
  return correlation(ranks(valuesAt(first, places)), ranks(valuesAt(second, places)));
}

function ranks(values: Float64Array): Float64Array {
  const order = Uint32Array.from(values, (_, place) => place).sort((a, b) => values[a] - values[b]);
  const ranked = new Float64Array(values.length);
  for (let from = 0; from < order.length; ) {
    let to = from;
    const value = values[order[from]];
    while (values[order[to + 1]] === value) to++;
    for (let place = from; place <= to; place++) ranked[order[place]] = (from + to) / 2;
    from = to + 1;
  }
  return ranked;
}

/** Pearson's correlation; 0 where either does not change. */
function correlation(first: Float64Array, second: Float64Array): number {
  const meanFirst = mean(first);
  const meanSecond = mean(second);
  let both = 0;
  let squaresFirst = 0;
  let squaresSecond = 0;
  for (let place = 0; place < first.length; place++) {
    const a = first[place] - meanFirst;
    const b = second[place] - meanSecond;
    both += a * b;
    squaresFirst += a * a;
    squaresSecond += b * b;
  }
  const scale = Math.sqrt(squaresFirst * squaresSecond);
  return scale > 0 ? both / scale : 0;
}
