import { apiRequest } from './request.ts';

/** Where other devices reach this server, the likeliest first; none: this machine alone. */
export async function serverAddresses(signal?: AbortSignal): Promise<readonly string[]> {
  const { addresses } = await apiRequest<{ addresses: string[] }>('/addresses', { signal });
  return addresses;
}
