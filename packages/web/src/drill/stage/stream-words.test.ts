import { describe, expect, it } from 'vitest';
import { isStreamShort, lineWords, streamWords } from './stream-words.ts';

describe('a stream in words', () => {
  it('has no figure in it', () => {
    for (const words of [...Object.values(streamWords), ...Object.values(lineWords)])
      expect(words).not.toMatch(/\d|psi|bar/);
  });

  it('falls short where water should be there, not where the line still waits for it', () => {
    expect(isStreamShort('none', 'flat')).toBe(false);
    expect(isStreamShort('none', 'filling')).toBe(false);
    expect(isStreamShort('none', 'soft')).toBe(true);
    expect(isStreamShort('weak', 'hard')).toBe(true);
    expect(isStreamShort('full', 'hard')).toBe(false);
    expect(isStreamShort('shut', 'hard')).toBe(false);
  });
});
