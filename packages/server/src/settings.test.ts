import { describe, expect, it } from 'vitest';
import { isLoopback, readBaseMapFile, readSettings } from './settings.ts';

describe('readSettings', () => {
  it('keeps to this machine unless told otherwise', () => {
    expect(readSettings({})).toEqual({ host: '127.0.0.1', port: 4600, portGiven: false });
    expect(readSettings({ HOST: '', PORT: ' ' })).toEqual(readSettings({}));
  });

  it('takes HOST and PORT', () => {
    expect(readSettings({ HOST: '0.0.0.0', PORT: '8080' })).toEqual({
      host: '0.0.0.0',
      port: 8080,
      portGiven: true,
    });
    expect(readSettings({ PORT: '0' }).port).toBe(0);
    expect(readSettings({ PORT: '65535' }).port).toBe(65535);
  });

  it.each(['65536', '-1', '80.5', 'http', '0x50', '1e3'])('refuses PORT=%s by name', (port) => {
    expect(() => readSettings({ PORT: port })).toThrow(`PORT is "${port}"`);
  });
});

describe('readBaseMapFile', () => {
  it('names none unless PLUGSIDE_BASE_MAP does', () => {
    expect(readBaseMapFile({})).toBeUndefined();
    expect(readBaseMapFile({ PLUGSIDE_BASE_MAP: ' ' })).toBeUndefined();
    expect(readBaseMapFile({ PLUGSIDE_BASE_MAP: ' /maps/town.pmtiles ' })).toBe(
      '/maps/town.pmtiles',
    );
  });
});

describe('isLoopback', () => {
  it.each(['127.0.0.1', '127.9.9.9', 'localhost', '::1'])('%s stays on this machine', (host) => {
    expect(isLoopback(host)).toBe(true);
  });
  it.each(['0.0.0.0', '192.168.1.20', '::', '127.example.org'])('%s can be reached', (host) => {
    expect(isLoopback(host)).toBe(false);
  });
});
