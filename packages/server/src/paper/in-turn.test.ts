import { describe, expect, it } from 'vitest';
import { ProblemError } from '../problem.ts';
import { inTurn } from './in-turn.ts';

/** A piece of work that ends when it is told to. */
function held() {
  let end = (_failed?: Error) => {};
  const done = new Promise<void>((resolve, reject) => {
    end = (failed) => (failed ? reject(failed) : resolve());
  });
  return { done, end };
}

describe('work in turn', () => {
  it('begins when what came before has ended, well or not', async () => {
    const turns = inTurn(3);
    const [first, second] = [held(), held()];
    const begun: string[] = [];
    const work = (name: string, until: Promise<void>) => () => {
      begun.push(name);
      return until;
    };
    const one = turns(work('one', first.done));
    const two = turns(work('two', second.done));
    const three = turns(async () => 'three');
    await new Promise((resolve) => setImmediate(resolve));
    expect(begun).toEqual(['one']);
    first.end(new Error('no paper'));
    await expect(one).rejects.toThrow('no paper');
    second.end();
    await two;
    expect(begun).toEqual(['one', 'two']);
    expect(await three).toBe('three');
  });

  it('refuses more than may wait, and takes in again after that', async () => {
    const turns = inTurn(2);
    const first = held();
    const all = [turns(() => first.done), turns(async () => {})];
    await expect(turns(async () => {})).rejects.toThrow(ProblemError);
    first.end();
    await Promise.all(all);
    expect(await turns(async () => 'in')).toBe('in');
  });
});
