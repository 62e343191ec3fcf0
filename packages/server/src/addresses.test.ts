import type { NetworkInterfaceInfo } from 'node:os';
import { expect, it } from 'vitest';
import { addressesOf } from './addresses.ts';

const found = (address: string, more: Partial<NetworkInterfaceInfo> = {}) =>
  ({ address, family: 'IPv4', internal: false, ...more }) as NetworkInterfaceInfo;

const interfaces = {
  lo: [found('127.0.0.1', { internal: true })],
  wired: [found('192.168.1.20'), found('fe80::1', { family: 'IPv6' } as never)],
  unplugged: [found('169.254.7.7')],
  wireless: [found('10.0.0.4')],
};

it('are none where only this machine is listened for', () => {
  expect(addressesOf('127.0.0.1', 4600, interfaces)).toEqual([]);
  expect(addressesOf('localhost', 4600, interfaces)).toEqual([]);
});

it('are those that a network gave', () => {
  const all = ['http://192.168.1.20:4600/', 'http://10.0.0.4:4600/'];
  expect(addressesOf('0.0.0.0', 4600, interfaces)).toEqual(all);
  expect(addressesOf('::', 4600, interfaces)).toEqual(all);
});

it('are the one address that was asked for', () => {
  expect(addressesOf('10.0.0.4', 8080, interfaces)).toEqual(['http://10.0.0.4:8080/']);
  expect(addressesOf('fd00::2', 8080, interfaces)).toEqual(['http://[fd00::2]:8080/']);
});
