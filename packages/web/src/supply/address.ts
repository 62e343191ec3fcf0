/** Where the ways to supply a building are shown. */
export const supplyAddress = (buildingId: string): string => `/supply/${buildingId}`;

/** The building of an address; null where none is named. */
export function buildingIn(pathname: string): string | null {
  return pathname.split('/')[2] || null;
}
