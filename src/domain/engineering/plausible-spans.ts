import { NM_PER_INCH } from '../quantity/length.js';
import { inSi } from '../quantity/quantity.js';
import type { Span } from '../quantity/span.js';

const HIGHEST_FT_PER_H = 1000;
const INCHES_OF_A_SLUMP_CONE = 12;

/**
 * What the quantities of a site and a pour may be, in SI, slump in nm: one table for schedules and calculators.
 *
 * Wide on purpose: no real job is near an end, and a value past one is a wrong unit or a slip of the pen, never a case for a method.
 * The ends are common practice, no source, but for those a physical limit sets: the slump cone is 12 in high (300 mm), water boils at
 * 212 F, a humidity is a share of saturation.
 */
export const PLAUSIBLE = {
  rise: { above: 0, to: inSi('rise', 'ft/h', HIGHEST_FT_PER_H), says: `more than 0 and at most ${HIGHEST_FT_PER_H} ft/h` },
  concrete: {
    from: inSi('temperature', '°F', -40),
    to: 100,
    says: 'a temperature of fresh concrete, between -40 F (-40 C) and 212 F (100 C)',
  },
  unitWeight: {
    from: inSi('density', 'pcf', 30),
    to: inSi('density', 'pcf', 500),
    says: 'a unit weight of concrete, between 30 and 500 pcf (480 and 8010 kg/m3)',
  },
  slump: {
    from: 0,
    to: INCHES_OF_A_SLUMP_CONE * NM_PER_INCH,
    says: `at most ${INCHES_OF_A_SLUMP_CONE} in, the height of the slump cone`,
  },
  air: {
    from: inSi('temperature', '°F', -76),
    to: 60,
    says: 'a temperature of the air, between -76 F (-60 C) and 140 F (60 C)',
  },
  humidity: { from: 0, to: 1, says: 'a relative humidity between 0 and 1, or 0 and 100 %' },
  windAtPour: { from: 0, to: inSi('speed', 'mph', 150), says: 'a wind at the pour of at most 150 mph (67 m/s)' },
  pump: {
    above: 0,
    to: inSi('volume rate', 'yd3/h', 500),
    says: 'the output of a pump, more than 0 and at most 500 yd3/h (382 m3/h)',
  },
  truck: { above: 0, to: inSi('volume', 'yd3', 30), says: 'the load of a truck, more than 0 and at most 30 yd3 (22.9 m3)' },
  designWind: { above: 0, to: inSi('speed', 'mph', 300), says: 'a design wind speed, more than 0 and at most 300 mph (134 m/s)' },
  soil: {
    above: 0,
    to: inSi('fluid weight', 'psf/ft', 200),
    says: 'an equivalent fluid weight of the soil, more than 0 and at most 200 psf/ft (31.4 kN/m3)',
  },
  duration: { above: 0, to: 100 * 8760, says: 'more than 0 and at most 100 years' },
  stone: { above: 0, to: 6 * NM_PER_INCH, says: 'a largest stone of more than 0 and at most 6 in (152 mm)' },
  discharge: { above: 0, to: 24, says: 'a time from batching to discharge of more than 0 and at most 24 h' },
  lineLoad: { from: 0, to: inSi('force per length', 'lb/ft', 1e6), says: '0 or more and at most 1000000 lb/ft' },
  snow: { from: 0, to: inSi('pressure', 'psf', 1000), says: 'a snow load of at most 1000 psf (47.9 kPa)' },
} as const satisfies Readonly<Record<string, Span>>;
