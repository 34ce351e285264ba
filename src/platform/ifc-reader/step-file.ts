import { Refusal } from '../refusals/refusal.js';

/** Instances of one model file; a model of a large building has some hundred thousand. */
export const MAX_INSTANCES = 1_000_000;

const END = 'END-ISO-10303-21;';
const HASH = 0x23;
const EQUALS = 0x3d;
const NINE = 0x39;
const ZERO = 0x30;
const LINE_FEED = 0x0a;
const CARRIAGE_RETURN = 0x0d;
const SEMICOLON = 0x3b;
const SPACE = 0x20;
const TAB = 0x09;

/** Refuses what is not whole and what holds too much, before any of it is parsed. */
export function checkStepFile(name: string, bytes: Uint8Array, most = MAX_INSTANCES): void {
  const tail = Buffer.from(bytes.subarray(Math.max(0, bytes.length - 4_096))).toString('latin1');
  if (!tail.trimEnd().endsWith(END))
    throw new Refusal('unreadable', 'The model breaks off.', [told(name, '', `a whole file: it ends with ${END}`)]);
  const instances = countInstances(bytes, most);
  if (instances > most)
    throw new Refusal('too-large', 'The model holds more than is read at once.', [
      told(
        name,
        `more than ${most} instances`,
        `at most ${most.toLocaleString('en-US')} instances: export the walls and storeys alone`,
      ),
    ]);
}

const told = (sheet: string, read: string, fix: string) => ({ sheet, row: null, column: null, pointer: null, read, fix });

/** Instances are counted where `#12=` follows a semicolon or begins a line, in a text too: never too few. Past `most` the count stops. */
export function countInstances(bytes: Uint8Array, most: number): number {
  let count = 0;
  let fresh = true;
  for (let index = 0; index < bytes.length && count <= most; index += 1) {
    const byte = bytes[index]!;
    if (byte === HASH && fresh && isDefinition(bytes, index + 1)) count += 1;
    if (byte === SEMICOLON || byte === LINE_FEED || byte === CARRIAGE_RETURN) fresh = true;
    else if (byte !== SPACE && byte !== TAB) fresh = false;
  }
  return count;
}

function isDefinition(bytes: Uint8Array, start: number): boolean {
  let index = start;
  while (bytes[index]! >= ZERO && bytes[index]! <= NINE) index += 1;
  if (index === start) return false;
  while (bytes[index] === SPACE || bytes[index] === TAB) index += 1;
  return bytes[index] === EQUALS;
}
