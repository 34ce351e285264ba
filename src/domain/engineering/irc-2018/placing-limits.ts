/** Slump that concrete in stay-in-place forms has to exceed [in]. irc-2018 §R608.5.1.4. */
export const STAY_IN_PLACE_SLUMP_IN = 6;
