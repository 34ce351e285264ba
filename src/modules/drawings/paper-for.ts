import type { LengthUnit } from '../../domain/schedule/schedule.js';

/** The paper of the country in which the schedule's units are used. */
export const paperFor = (units: LengthUnit): 'letter' | 'a4' => (units === 'in' || units === 'ft' ? 'letter' : 'a4');
