/** True where two values of a record say the same, whatever the order of their members. */
export function sameValue(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || !one || !other) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const names = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...names].every((name) =>
    sameValue((one as Record<string, unknown>)[name], (other as Record<string, unknown>)[name]),
  );
}
