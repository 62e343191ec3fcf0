/** True for a name under which no other machine finds this one. */
export function isThisMachine(hostname: string): boolean {
  return hostname === 'localhost' || hostname === '[::1]' || /^127(\.\d{1,3}){3}$/.test(hostname);
}
