import { describe, expect, it } from '@jest/globals';
import { drawingsPdf, quotePdf, storeyPlan, wallElevation } from '../../../src/domain/drawing/index.js';
import type { QuotePdfInput } from '../../../src/domain/drawing/index.js';
import { percent, taxWords } from '../../../src/domain/drawing/quote-pdf-lines.js';
import { CAUTIONS } from '../../../src/domain/evidence/cautions.js';
import type { Quote } from '../../../src/domain/quote/quote.js';
import { BAY_HOUSE, demoRange, drawnStorey } from '../../support/drawn-job.js';
import { textsOf } from '../../support/drawn-text.js';
import { SHEET_HEADER } from '../../support/drawn-wall.js';
import { pdfInfo, pdfPageSizes, pdfPages, pdfText } from '../../support/pdf-text.js';
import { printed, quoteOfLines } from '../../support/printed-quote.js';
import { SHIPPED_FONTS } from '../../support/shipped-fonts.js';

const print = (input: QuotePdfInput): Promise<Uint8Array> => quotePdf(input, SHIPPED_FONTS);
const flat = (pages: readonly string[]): string =>
  pages.map((page) => page.replace(/ Q-000045, revision 2, job .*$/, '')).join(' ');
/** `1,234.50` of minor units, by string only. */
const money = (minor: number): string =>
  `${String(Math.floor(minor / 100)).replace(/\B(?=(\d{3})+$)/g, ',')}.${String(minor % 100).padStart(2, '0')}`;
const thousands = (quantity: number): string => String(quantity).replace(/\B(?=(\d{3})+$)/g, ',');

describe('a quote without drawings', () => {
  const words = 'This job has more than 300 walls: no drawings follow in this document.';

  it('says why, and only where none follow for a reason', async () => {
    const plain = printed(quoteOfLines(8));
    const told = flat(await print({ ...plain, plans: [], elevations: [], notDrawn: words }).then(pdfPages));
    expect(told).toContain(`Drawings ${words}`);
    expect(flat(await print(plain).then(pdfPages))).not.toContain(words);
  });
});

describe.each([8, 40, 300])('a quote of %d lines', (count) => {
  const quote = quoteOfLines(count);
  const pages = print(printed(quote)).then(pdfPages);

  it('prints every line whole: number, item, words, quantity, unit, price, amount', async () => {
    const text = flat(await pages);
    for (const line of quote.lines) {
      expect(text).toContain(
        `${line.n} ${line.sku} ${line.text} ${thousands(line.quantity)} ${line.unit} ${line.unitPrice} ${money(line.amountMinor)}`,
      );
    }
  });

  it('prints subtotal, tax and total', async () => {
    const text = flat(await pages);
    expect(text).toContain(`Subtotal USD ${money(quote.subtotalMinor)}`);
    expect(text).toContain(`Tax 8.25 %, Alder County USD ${money(quote.taxMinor)}`);
    expect(text).toContain(`Total USD ${money(quote.totalMinor)}`);
  });

  it('prints every finding, every part of the scope and every caution whole', async () => {
    const text = flat(await pages);
    expect(quote.conditions).toHaveLength(4);
    for (const { text: words } of quote.conditions) expect(text).toContain(words);
    for (const { item, status, note } of quote.scope) expect(text).toContain(`${item} ${status} ${note}`);
    for (const caution of CAUTIONS) expect(text).toContain(caution);
  });

  it('repeats the head of the table on every page that has lines, and says on every page which it is', async () => {
    const all = await pages;
    const firstOf = (page: string): boolean => quote.lines.some((line) => page.includes(`${line.n} ${line.sku} ${line.text}`));
    const head = 'No. Item Description Quantity Unit Unit price Amount USD';
    expect(all.filter((page) => page.includes(head))).toHaveLength(all.filter(firstOf).length);
    all.forEach((page, i) => {
      expect(page).toContain(`Page ${i + 1} of ${all.length}`);
      expect(page).toContain('Q-000045, revision 2, job J-000123, Heron Form Supply (demo)');
    });
    if (count === 40) expect(all.filter(firstOf).length).toBeGreaterThan(1);
  });

  it('names supplier, customer, job, date, validity, range and price list', async () => {
    const [first] = await pages;
    for (const words of [
      'Heron Form Supply (demo)',
      'Quotation',
      'Q-000045, revision 2',
      'Northgate Builders',
      'Alder County',
      'J-000123',
      'Harbour clinic, block B',
      '2026-03-10',
      'Valid until 2026-04-09',
    ]) {
      expect(first).toContain(words);
    }
    const text = flat(await pages);
    expect(text).toContain('Counted on range RULES version 1, engine 0.1.0; prices of list TEST-1 in force from 2026-01-01.');
  });
});

describe('the taxes of a quote', () => {
  const quote = quoteOfLines(8);
  const taxes = [
    { name: 'sales tax', place: 'Alder County', rate: '0.0825', baseMinor: 100_000, amountMinor: 8_250 },
    { name: 'county tax', place: 'Alder County', rate: '0.01', baseMinor: 100_000, amountMinor: 1_000 },
  ];

  it('stand each on a row of its own', async () => {
    const words = flat(await print(printed({ ...quote, taxes, taxMinor: 9_250 })).then(pdfPages));
    expect(words).toContain('Sales tax 8.25 %, Alder County USD 82.50 County tax 1 %, Alder County USD 10.00 Total');
  });

  it('are none for an exempt customer, whose certificate is named', async () => {
    const tax = { place: 'Alder County', rate: null, reason: 'exempt', certificate: 'EX-1234' } as const;
    const words = flat(await print(printed({ ...quote, tax, taxes: [], taxMinor: 0 })).then(pdfPages));
    expect(words).toContain('No tax charged: exempt, certificate EX-1234 USD 0.00');
  });
});

describe('acceptance', () => {
  const quote = quoteOfLines(8);
  const text = async (changes: Partial<QuotePdfInput>): Promise<string> => flat(pdfPages(await print(printed(quote, changes))));

  it('has a place for both parties to sign', async () => {
    const words = await text({});
    expect(words).toContain(`Ordered: the lines above for USD ${money(quote.totalMinor)}`);
    expect(words).toContain('For Northgate Builders For Heron Form Supply (demo) Name Name Signature Signature Date Date');
  });

  it('has none while a question holds the quote, and names the tickets', async () => {
    const words = await text({ openHolds: [{ number: 'T-000007', question: 'No corner unit of the range makes this turn' }] });
    expect(words).toContain('This quote cannot be accepted yet.');
    expect(words).toContain('T-000007 No corner unit of the range makes this turn');
    expect(words).not.toContain('Signature');
  });

  it('says of holds whether they are still to be answered', async () => {
    const condition = { ...quote.conditions[0]!, severity: 'hold' as const, text: 'The corner is sharper than any unit' };
    const held = { ...quote, conditions: [condition] };
    const open = await text({ quote: held, openHolds: [{ number: 'T-000007', question: 'The corner' }] });
    expect(open).toContain('To be answered before this quote can be accepted');
    const settled = await text({ quote: held });
    expect(settled).toContain('Questions that support has answered; the work is done as answered');
    expect(settled).not.toContain('To be answered');
  });

  it.each([
    ['declined', 'was declined'],
    ['withdrawn', 'was withdrawn'],
    ['expired', 'has expired'],
    ['superseded', 'was superseded by a later revision'],
  ] as const)('has none on a quote that is %s', async (state, told) => {
    const words = await text({ state });
    expect(words).toContain(`Quotation, ${state}`);
    expect(words).toContain(`This quote ${told} and cannot be accepted.`);
    expect(words).not.toContain('Signature');
  });

  it('says of a draft that it binds nobody', async () => {
    const words = await text({ state: 'draft' });
    expect(words).toContain('Draft quotation');
    expect(words).toContain('it binds nobody until it is issued');
  });
});

describe('the document', () => {
  const storey = drawnStorey(BAY_HOUSE, demoRange());
  const quote = quoteOfLines(8);
  const plans = [storeyPlan(storey, demoRange(), 'in', SHEET_HEADER)];
  const elevations = storey.walls.map((wall) => wallElevation(wall, storey, demoRange(), 'in', SHEET_HEADER));

  it('ends with every drawing once, one or two to a page, with its texts and its scale', async () => {
    const bytes = await print(printed(quote, { plans, elevations }));
    const pages = pdfPages(bytes);
    const textPages = pages.findIndex((page) => page.includes('Drawings of quotation'));
    const drawn = pages.slice(textPages);
    const titles = drawn.flatMap((page) =>
      [...page.matchAll(/Wall [A-Z]\b(?= J-000123)|Plan of storey S1/g)].map(([title]) => title),
    );
    expect(titles).toEqual(['Plan of storey S1', ...storey.walls.map(({ mark }) => `Wall ${mark}`)]);
    for (const page of drawn) expect((page.match(/Scale \d/g) ?? []).length).toBeLessThanOrEqual(2);
    const words = drawn.join(' ');
    for (const drawing of [...plans, ...elevations]) {
      expect(words).toContain(`Scale ${drawing.scaleText}`);
      for (const { text, angle } of textsOf(drawing)) if (angle === 0) expect(words).toContain(text.replace(/\s+/g, ' ').trim());
    }
  });

  it('keeps its drawings inside their pages', async () => {
    const bytes = await print(printed(quote, { plans, elevations, paper: 'a4' }));
    const sizes = pdfPageSizes(bytes);
    const boxes = pdfText(bytes, ['-bbox']).split('<page ').slice(1);
    expect(boxes).toHaveLength(sizes.length);
    boxes.forEach((page, i) => {
      const [width, height] = sizes[i] as [number, number];
      for (const [, xMin, yMin, xMax, yMax] of page.matchAll(
        /xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)"/g,
      )) {
        expect(Number(xMin) > 15 && Number(yMin) > 15 && Number(xMax) < width - 15 && Number(yMax) < height - 10).toBe(true);
      }
    });
  });

  it('draws true to scale: two letters 10 ft apart at 1:48 stand 2 1/2 in, 180 points, apart', async () => {
    const text = (x: number, words: string): object => ({
      kind: 'text',
      layer: 'text',
      at: { x, y: 10 ** 9 },
      text: words,
      size: 120_000_000,
      bold: false,
      anchor: 'start',
      angle: 0,
      backdrop: null,
    });
    const base = elevations[0];
    if (base === undefined) throw new Error('no elevation');
    const ruler = {
      ...base,
      scale: 48,
      width: 6_000_000_000,
      height: 2_000_000_000,
      shapes: [text(10 ** 9, 'HERE'), text(10 ** 9 + 3_048_000_000, 'HALT')] as never,
    };
    const boxes = pdfText(await print(printed(quote, { elevations: [ruler] })), ['-bbox']);
    const left = (word: string): number => Number(new RegExp(`xMin="([\\d.]+)"[^>]*>${word}<`).exec(boxes)?.[1]);
    expect(left('HALT') - left('HERE')).toBeCloseTo(180, 2);
  });

  it('is the same bytes twice and carries no time but the given one', async () => {
    const input = printed(quote, { plans, elevations });
    const [first, second] = [await print(input), await print(input)];
    expect(Buffer.compare(Buffer.from(first), Buffer.from(second))).toBe(0);
    const info = pdfInfo(first);
    expect(info).toMatch(/CreationDate:\s+Tue Mar 10 15:00:00 2026/);
    expect(info).toMatch(/ModDate:\s+Tue Mar 10 15:00:00 2026/);
  });

  it('embeds its fonts and takes names as they are', async () => {
    const name = `Ängström & Søn <script>alert("1")</script> ½″ × 3′`;
    const bytes = await print(
      printed(
        { ...quote, customer: { organisation: name, place: null } },
        { job: { number: 'J-000001', name: `${name} ${'long '.repeat(39)}`.slice(0, 200) } },
      ),
    );
    expect(flat(pdfPages(bytes)).split(name.split(' ')[0] as string).length).toBeGreaterThan(2);
    expect(pdfText(bytes).replace(/\s+/g, ' ')).toContain(`For ${name.slice(0, 20)}`);
  });
});

describe('drawings alone', () => {
  const storey = drawnStorey(BAY_HOUSE, demoRange());
  const drawings = storey.walls.slice(0, 5).map((wall) => wallElevation(wall, storey, demoRange(), 'in', SHEET_HEADER));
  const input = {
    drawings,
    title: 'Elevations of J-000123',
    author: 'Heron Form Supply (demo)',
    createdAt: printed(quoteOfLines(8)).createdAt,
    paper: 'letter',
  } as const;

  it('are a document of drawing pages only, two elevations to a page, the same bytes twice', async () => {
    const bytes = await drawingsPdf(input, SHIPPED_FONTS);
    const pages = pdfPages(bytes);
    expect(pages).toHaveLength(3);
    expect(pages.map((page) => [...page.matchAll(/Wall [A-E] J-/g)].length)).toEqual([2, 2, 1]);
    pages.forEach((page, i) => expect(page).toContain(`Page ${i + 1} of 3`));
    expect(Buffer.compare(Buffer.from(bytes), Buffer.from(await drawingsPdf(input, SHIPPED_FONTS)))).toBe(0);
  });

  it('take fonts as plain bytes', async () => {
    const plain = { regular: Uint8Array.from(SHIPPED_FONTS.regular), bold: Uint8Array.from(SHIPPED_FONTS.bold) };
    expect(
      Buffer.compare(Buffer.from(await drawingsPdf(input, plain)), Buffer.from(await drawingsPdf(input, SHIPPED_FONTS))),
    ).toBe(0);
  });
});

describe('taxWords and percent', () => {
  it.each([
    { rate: '0.0825', words: '8.25' },
    { rate: '0.07', words: '7' },
    { rate: '0.2', words: '20' },
    { rate: '0', words: '0' },
    { rate: '0.00125', words: '0.125' },
    { rate: '1', words: '100' },
  ])('$rate is $words per cent', ({ rate, words }) => expect(percent(rate)).toBe(words));

  it('says why no tax is charged', () => {
    const tax = (reason: 'place-not-stated' | 'place-not-listed', place: string | null): Quote['tax'] => ({
      rate: null,
      place,
      reason,
    });
    expect(taxWords(tax('place-not-stated', null))).toBe('No tax charged: place not stated');
    expect(taxWords(tax('place-not-listed', 'Birch County'))).toBe('No tax charged: Birch County is not on the list');
  });
});
