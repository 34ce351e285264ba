import { describe, expect, it } from '@jest/globals';
import { inches, millimetres } from '../../../src/domain/quantity/length.js';
import { counted, forceText, lengthText, lineForceText, pressureText, stationText } from '../../../src/domain/reinforcement/crew-text.js';

describe('what the crew reads', () => {
  it.each([
    { text: lengthText(inches(24)), reads: '24 in (610 mm)' },
    { text: lengthText(inches(8.4852813)), reads: '8.485 in (216 mm)' },
    { text: lengthText(millimetres(100)), reads: '3.937 in (100 mm)' },
    { text: stationText(inches(60)), reads: 'station 60 in (1524 mm)' },
    { text: forceText(400), reads: '400 lb (1.78 kN)' },
    { text: forceText(1000), reads: '1000 lb (4.45 kN)' },
    { text: lineForceText(1000), reads: '1000 lb/ft (14.59 kN/m)' },
    { text: pressureText({ psf: 600.4, basis: 'pour' }), reads: '600 psf (from the pour as planned)' },
    { text: pressureText({ psf: 750, basis: 'rated' }), reads: "750 psf (the form's rated pressure)" },
    { text: counted(1, 'course'), reads: '1 course' },
    { text: counted(2, 'notch', 'notches'), reads: '2 notches' },
  ])('$reads', ({ text, reads }) => expect(text).toBe(reads));
});
