/** A spreadsheet cell whose content cannot stand for what the schedule needs: a date, an error, a formula nobody calculated. */
export class UnusableCell {
  constructor(
    /** As the cell shows or stores it. */
    readonly text: string,
    /** What would do. */
    readonly fix: string,
  ) {}
}
