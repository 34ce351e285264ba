/** The demo range in inches, typed in from its sheet for the slow take-off alone: nothing here is read by the code under test. */
export const HERON = {
  courseHeight: 16,
  formLength: 48,
  cutModule: 1,
  panel: 2.5,
  closure: 2.5,
  buck: 1.5,
  strip: 3,
  stackTolerance: 0.25,
  minRip: 8,
  stackPrefers: 'rip' as 'rip' | 'strips',
  turnTolerance: 0.5,
  coreWidth: { '4': 4, '6': 6, '8': 8, '10': 10 } as Readonly<Record<string, number>>,
  square: { '4': [36.5, 20.5], '6': [37.5, 21.5], '8': [38.5, 22.5], '10': [39.5, 23.5] } as Readonly<Record<string, readonly [number, number]>>,
  pair: { '4': [24, 16], '6': [24, 16], '8': [24, 16], '10': [24, 16] } as Readonly<Record<string, readonly [number, number]>>,
  hinged: { '4': [26, 18], '6': [26, 18], '8': [28, 20], '10': [28, 20] } as Readonly<Record<string, readonly [number, number]>>,
  overage: 0.05,
  pumpLossYd3: 0.5,
  orderStepYd3: 0.25,
  hingedTurns: [10, 100] as readonly [number, number],
};

export type Figures = typeof HERON;
