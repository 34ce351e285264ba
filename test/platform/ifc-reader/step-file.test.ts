import { describe, expect, it } from '@jest/globals';
import { checkStepFile, countInstances } from '../../../src/platform/ifc-reader/step-file.js';

const step = (data: string): Buffer => Buffer.from(`ISO-10303-21;\nHEADER;\nENDSEC;\nDATA;\n${data}ENDSEC;\nEND-ISO-10303-21;\n`);

describe('a model file, before it is parsed', () => {
  it('is counted by the instances it defines, not by those it names', () => {
    expect(countInstances(step("#1=IFCA(#2,#3);\n#2 = IFCB('#9=');#3=IFCC($);\n  #4=IFCD(\n#1,\n#2);\n"), 1_000)).toBe(4);
    expect(countInstances(step('#1=IFCA();'.repeat(50)), 1_000)).toBe(50);
  });

  it('is not counted on past what is taken', () => {
    expect(countInstances(step('#1=IFCA();'.repeat(50)), 7)).toBe(8);
  });

  it('is refused with more instances than are taken, and told how many', () => {
    expect(() => checkStepFile('big.ifc', step('#1=IFCA();'.repeat(50)), 49)).toThrow(
      expect.objectContaining({ code: 'too-large', errors: [expect.objectContaining({ sheet: 'big.ifc', read: 'more than 49 instances' })] }),
    );
    expect(() => checkStepFile('big.ifc', step('#1=IFCA();'.repeat(50)), 50)).not.toThrow();
  });

  it('is refused where it breaks off', () => {
    const whole = step('#1=IFCA();\n');
    for (const cut of [1, 5, 20, whole.length - 13]) {
      expect(() => checkStepFile('cut.ifc', whole.subarray(0, whole.length - 1 - cut))).toThrow(expect.objectContaining({ code: 'unreadable' }));
    }
  });
});
