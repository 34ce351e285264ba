import { describe, expect, it } from '@jest/globals';
import { materialText, pricedText, spareText, unitText } from '../../../src/domain/quote/line-text.js';

describe('what a line is called', () => {
  it.each([
    { text: unitText({ kind: 'straight', core: '6', hand: null }), reads: 'Straight form, core 6' },
    { text: unitText({ kind: 'corner', core: '10', hand: 'right' }), reads: 'Square corner form, core 10, right hand' },
    { text: unitText({ kind: 'corner-pair', core: '8', hand: null }), reads: 'Paired corner blank, core 8' },
    { text: spareText({ kind: 'straight', core: '6', hand: null, spare: 3 }, { covered: 0 }), reads: 'Spare straight form, core 6: 3' },
    { text: spareText({ kind: 'straight', core: '6', hand: null, spare: 3 }, { covered: 1 }), reads: 'Spare straight form, core 6: 3, of which 1 comes with the bundles above' },
    { text: spareText({ kind: 'straight', core: '6', hand: null, spare: 3 }, { covered: 2 }), reads: 'Spare straight form, core 6: 3, of which 2 come with the bundles above' },
    { text: materialText({ kind: 'tape', size: '4 in' }, { pack: 150, neededUnit: 'ft' }), reads: 'Tape 4 in, pack of 150 ft' },
    { text: materialText({ kind: 'cable-tie', size: '14 in' }, { pack: 100, neededUnit: 'each' }), reads: 'Cable ties 14 in, pack of 100' },
    { text: materialText({ kind: 'bar', size: '#4' }, { pack: 20, neededUnit: 'ft', cutting: { stockMm: 6096, pieces: [{ lengthMm: 1219.2, count: 3 }, { lengthMm: 1168.4, count: 36 }], lowerBound: 8 } }), reads: 'Reinforcing bar #4, bars of 20 ft cut into 39 pieces' },
    { text: materialText({ kind: 'bar', size: '#4' }, { pack: 20, neededUnit: 'ft', cutting: { stockMm: 6096, pieces: [{ lengthMm: 1219.2, count: 1 }], lowerBound: 1 } }), reads: 'Reinforcing bar #4, bars of 20 ft cut into 1 piece' },
    { text: materialText({ kind: 'bar', size: '#4' }, { pack: null, neededUnit: 'ft' }), reads: 'Reinforcing bar #4' },
  ])('$reads', ({ text, reads }) => expect(text).toBe(reads));
});

describe('a line whose amount is not quantity times unit price says why', () => {
  it.each([
    { looseQuantity: 0, surchargeRate: null, discountRate: null, words: 'Form' },
    { looseQuantity: 7, surchargeRate: '0.10', discountRate: null, words: 'Form; 7 loose at 10 % more' },
    { looseQuantity: 0, surchargeRate: null, discountRate: '0.0825', words: 'Form; less 8.25 %' },
    { looseQuantity: 1, surchargeRate: '0.125', discountRate: '0.5', words: 'Form; 1 loose at 12.5 % more; less 50 %' },
    { looseQuantity: 3, surchargeRate: '0', discountRate: '0.00', words: 'Form' },
  ])('$words', ({ words, ...line }) => expect(pricedText('Form', line)).toBe(words));
});
