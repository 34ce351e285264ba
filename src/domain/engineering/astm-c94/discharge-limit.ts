/** Editions of the standard that differ in the time they set for discharge. */
export const DISCHARGE_EDITIONS = ['astm-c94-21', 'astm-c94-before-2021'] as const;
export type DischargeEdition = (typeof DISCHARGE_EDITIONS)[number];

/**
 * Time from the first mixing to the end of discharge that the standard sets by itself.
 *
 * Before 2021: an hour and a half or 300 turns of the drum, whichever comes first, unless the purchaser waives it. Since then none: the
 * purchaser states a limit, or the producer does, on the ticket.
 *
 * @equation  1.5 h before 2021; none since
 * @param edition of the standard                               [-]
 * @returns   the limit; null where the edition sets none      [h]
 * @valid     editions of DISCHARGE_EDITIONS; shorter in hot weather
 * @source    astm-c94-before-2021 §10.7, as printed in hold-the-deliveries; astm-c94-21 §6.1.10, §12.9, through pumping-news-2022
 * @example   edition = 'astm-c94-before-2021' → 1.5
 */
export function dischargeLimit(edition: DischargeEdition): number | null {
  return edition === 'astm-c94-before-2021' ? 1.5 : null;
}
