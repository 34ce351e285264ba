import { readPriceList } from '../../src/domain/quote/read-price-list.js';
import { price } from '../../src/domain/quote/pricing.js';
import { pricedByOracle } from '../oracles/price-oracle.js';
import { agrees } from '../support/priced-twice.js';
import { randomQuote } from '../support/random-quotes.js';
import { seededRandom } from '../support/seeded-random.js';

/**
 * npm run bench -- prices [--quotes 1000000] [--seed 1]
 *
 * Random quotes priced by the program and by the slow pricing in fractions of big integers, compared to the minor unit, line by line and
 * tax by tax. Ends with 1 at the first quote on which they differ, and prints its seed and number.
 */
const option = (name: string, usual: string): number => {
  const at = process.argv.indexOf(`--${name}`);
  return Number(at < 0 ? usual : process.argv[at + 1]);
};

const [quotes, seed] = [option('quotes', '1000000'), option('seed', '1')];
const random = seededRandom(seed);
const ms = { price: 0, oracle: 0 };
let lines = 0;
const begun = performance.now();
for (let n = 0; n < quotes; n++) {
  const given = randomQuote(random);
  const list = readPriceList(given.document);
  if (!list.ok) throw new Error(`quote ${n} of seed ${seed}: ${JSON.stringify(list.error)}`);
  const start = performance.now();
  const quote = price(given.job, list.value, { organisation: given.organisation, place: given.place }, '2026-02-01');
  const middle = performance.now();
  const expected = pricedByOracle(given.plain, given.document, given.digits, given.organisation, given.place);
  ms.price += middle - start;
  ms.oracle += performance.now() - middle;
  const wrong = quote.ok ? agrees(quote.value, expected).wrong : JSON.stringify(quote.error);
  if (wrong !== null || !quote.ok) {
    console.log(`quote ${n} of seed ${seed}: ${wrong}`);
    process.exit(1);
  }
  lines += quote.value.lines.length;
}
const seconds = (time: number): string => `${(time / 1_000).toFixed(1)} s`;
console.log(`${quotes} quotes of seed ${seed}, ${lines} lines: all agree to the minor unit; ${seconds(performance.now() - begun)}, of which pricing ${seconds(ms.price)}, the oracle ${seconds(ms.oracle)}`);
