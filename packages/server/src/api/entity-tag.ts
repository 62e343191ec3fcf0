/** Whether a tag is among those of an If-None-Match, by weak comparison (RFC 9110, section 8.8.3.2). */
export function etagMatches(ifNoneMatch: string | undefined, tag: string): boolean {
  if (ifNoneMatch === undefined) return false;
  if (ifNoneMatch.trim() === '*') return true;
  const wanted = tag.replace(/^W\//, '');
  return ifNoneMatch.match(/"[^"]*"/g)?.includes(wanted) ?? false;
}
