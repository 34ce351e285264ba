/** Least temperature of concrete as placed in sections under 12 in [°F]. aci-306r, from memory. */
export const COLDEST_PLACED_F = 55;

/** Sections thinner than this are thin ones [in]. aci-306r, from memory. */
export const THIN_SECTION_IN = 12;
