/** How many of something one address has. */
export interface FromAddress {
  has(address: string): number;
  /** One more; given back by what it returns, once. */
  take(address: string): () => void;
}

/** Counts by address: see `addressKey`. */
export function fromAddress(): FromAddress {
  const counts = new Map<string, number>();
  return {
    has: (address) => counts.get(addressKey(address)) ?? 0,
    take: (address) => {
      const key = addressKey(address);
      counts.set(key, (counts.get(key) ?? 0) + 1);
      let taken = true;
      return () => {
        if (!taken) return;
        taken = false;
        const left = (counts.get(key) ?? 0) - 1;
        if (left > 0) counts.set(key, left);
        else counts.delete(key);
      };
    },
  };
}

/**
 * What counts as one address: an IPv4 address, also as IPv6 writes it; of IPv6 the first 64 bits, since one
 * machine has all the rest of them (RFC 4291, section 2.5.1). `''` where it is not known.
 */
export function addressKey(address: string): string {
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(address)?.[1];
  if (mapped !== undefined) return mapped;
  if (!address.includes(':')) return address;
  const [head = '', tail] = address.toLowerCase().split('%')[0]!.split('::');
  const groups = head === '' ? [] : head.split(':');
  if (tail !== undefined) {
    const after = tail === '' ? 0 : tail.split(':').length;
    while (groups.length + after < 8) groups.push('0');
    groups.push(...(tail === '' ? [] : tail.split(':')));
  }
  // The loopback is no network of 64 bits.
  if (groups.length === 8 && groups.slice(0, 4).every((one) => /^0*$/.test(one))) return address;
  return groups
    .slice(0, 4)
    .map((one) => one.replace(/^0+(?=.)/, ''))
    .join(':');
}
