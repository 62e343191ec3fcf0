/**
 * Minutes as crews read them: 6½ min is `6:30`.
 * @param minutes 0 or more; rounded to the second
 */
export function clock(minutes: number): string {
  const seconds = Math.round(minutes * 60);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}
