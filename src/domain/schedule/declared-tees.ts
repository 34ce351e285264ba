import type { End } from './join-walls.js';
import { listedNear } from './near-marks.js';
import { inwardHeading } from './plan-position.js';
import type { Walls } from './read-walls.js';
import type { ScheduleContext } from './schedule-context.js';
import { MEETING_DISTANCE } from './schedule-limits.js';
import { measuredTee, type StandingWall, type TeeJoint } from './tee-place.js';
import { wallBody } from './wall-bodies.js';
import type { WallDraft } from './wall-draft.js';

/** A tee that one end of a wall declares on another wall of its storey. */
export interface DeclaredTee {
  readonly branch: WallDraft;
  readonly end: End;
  readonly through: WallDraft;
  readonly joint: TeeJoint;
}

/**
 * The declared tees whose own words are right: on a known straight wall of the storey, another than the branch, at a station of it.
 *
 * Every other one is told. A wall that only its tee could place needs the widths of both walls' cores.
 */
export function declaredTees({ marks, drafts }: Walls, context: ScheduleContext): readonly DeclaredTee[] {
  const tees: DeclaredTee[] = [];
  for (const branch of drafts.values()) {
    for (const end of ['start', 'end'] as const) {
      const joint = branch[end];
      if (joint?.joint !== 'tee') continue;
      const through = drafts.get(joint.on);
      if (!marks.has(joint.on))
        branch.reader.fail(`${end}/on`, `a tee on a wall of this schedule; ${joint.on} is none: ${listedNear(marks, joint.on)}`, joint.on);
      else if (through && fits(branch, end, through, joint, context)) tees.push({ branch, end, through, joint });
    }
  }
  return tees;
}

function fits(branch: WallDraft, end: End, through: WallDraft, { at, on }: TeeJoint, context: ScheduleContext): boolean {
  const { reader, mark } = branch;
  const told = (key: keyof TeeJoint, fix: string): false => {
    reader.fail(`${end}/${key}`, fix, writtenIn(reader, end, key));
    return false;
  };
  if (on === mark) return told('on', 'another wall: a wall does not stop on its own side');
  if (through.storey !== branch.storey)
    return told('on', `a wall of the same storey: ${mark} is in ${branch.storey}, ${on} in ${through.storey}`);
  if (through.arc) return told('on', `a straight wall: ${on} is an arc wall, and a branch is placed on straight ones`);
  if (at > through.length)
    return told('at', `a station on wall ${on}, ${reader.print(through.length)} long, from its start to the centre line of ${mark}`);
  if (!branch.ends && !(wallBody(branch, context) && wallBody(through, context))) {
    reader.fail(end, 'from and to coordinates for this wall: without the widths of its range no wall is placed by its tee', `tee on ${on}`);
    return false;
  }
  return true;
}

/**
 * Tells a tee that is not where it is declared to be: station and side as declared, within 1 mm.
 *
 * A wall placed by lengths ends on the near foam face, within 1 mm. One that has coordinates ends anywhere in the form footprint,
 * which is what makes a tee (decision 8).
 */
export function checkStandingTee(tee: DeclaredTee, through: StandingWall, branch: StandingWall): void {
  const { reader, mark } = tee.branch;
  const { on, at, side } = tee.joint;
  const tell = (key: keyof TeeJoint, fix: string): void =>
    void reader.fail(`${tee.end}/${key}`, fix, writtenIn(reader, tee.end, key));
  const found = measuredTee(through, branch, tee.end, inwardHeading(tee.branch, branch.position, tee.end));
  if (!found) return tell('on', `a wall that ${mark} stands across: it runs along ${on}`);
  if (found.side !== side)
    return tell('side', `the side on which ${mark} lies, ${found.side} of ${on} from its start to its end`);
  const within = through.body.thickness + MEETING_DISTANCE;
  const [short, past] = [reader.print(Math.round(found.gap)), reader.print(Math.round(-found.gap))];
  if (found.gap >= MEETING_DISTANCE)
    return tell('on', `an end that reaches wall ${on}: the ${tee.end} of ${mark} lies ${short} short of its near foam face`);
  if (tee.branch.ends ? found.gap < -within : found.gap <= -MEETING_DISTANCE)
    return tell('on', `an end on wall ${on}: the ${tee.end} of ${mark} runs ${past} past its near foam face`);
  if (Math.abs(found.station - at) >= MEETING_DISTANCE)
    tell('at', `the station at which the centre line of ${mark} crosses ${on}, ${stationText(reader, found.station)}`);
}

/** What was written for one part of a joint, as it was sent. */
const writtenIn = (reader: WallDraft['reader'], end: End, key: keyof TeeJoint): unknown =>
  (reader.value(end) as Readonly<Record<string, unknown>>)[key];

const stationText = (reader: WallDraft['reader'], station: number): string =>
  station < 0 ? `${reader.print(Math.round(-station))} before its start` : reader.print(Math.round(station));
