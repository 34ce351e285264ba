/** The one source of the time. Injected wherever a moment is written down, so that a test may say what the time is. */
export abstract class Clock {
  abstract now(): Date;

  /** Today as a plain date (`2026-11-24`) where the supplier is. */
  today(timeZone: string): string {
    return this.day(this.now(), timeZone);
  }

  /** The plain date of a moment there. */
  day(moment: Date, timeZone: string): string {
    return new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' }).format(moment);
  }
}

export class SystemClock extends Clock {
  override now(): Date {
    return new Date();
  }
}

/** Stands still until it is set; for tests. */
export class FixedClock extends Clock {
  constructor(private moment: Date) {
    super();
  }

  override now(): Date {
    return this.moment;
  }

  set(moment: Date): void {
    this.moment = moment;
  }
}
