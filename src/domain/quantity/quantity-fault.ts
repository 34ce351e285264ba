/** Why a text is not the quantity that was asked for: what was read, and what would do. */
export interface QuantityFault {
  readonly read: string;
  readonly fix: string;
}
