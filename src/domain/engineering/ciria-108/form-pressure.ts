/** C1 by section: walls and bases over 2 m in plan one way or the other, columns under 2 m both ways. ciria-forum-sheet, ciria-sheet. */
export const C1 = { wall: 1, column: 1.5 } as const;
export type Section = keyof typeof C1;

/** C2: plain, retarded, heavily retarded. ciria-forum-sheet, ciria-sheet; which cements fall under which: from memory. */
export const C2 = [0.3, 0.45, 0.6] as const;

/**
 * Greatest pressure of fresh concrete on a form, before the liquid head of what is poured caps it.
 *
 * @equation  P = D · ( C1 · √R + C2 · K · √( H − C1 · √R ) )
 * @param D   weight of the concrete                            [kN/m3]
 * @param c1  C1, by section                                    [1]
 * @param c2  C2, by cement and admixture                       [1]
 * @param K   temperature coefficient                           [1]
 * @param R   rate of rise                                      [m/h]
 * @param H   height of the form                                [m]
 * @returns   P; null where C1 · √R is over H, and the liquid head counts [kPa]
 * @valid     C1 · √R ≤ H
 * @source    ciria-108, as printed in ciria-forum-sheet and ciria-sheet
 * @example   D = 25, c1 = 1.5, c2 = 0.45, K = 1.5956, R = 1, H = 9.05 → 86.82
 */
export function formPressure108(D: number, c1: number, c2: number, K: number, R: number, H: number): number | null {
  const risen = c1 * Math.sqrt(R);
  return risen > H ? null : D * (risen + c2 * K * Math.sqrt(H - risen));
}
