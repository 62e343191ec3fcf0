import { type ReactNode, useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { type ProblemDocument, problemFrom, UnreachableError } from '../api/problem.ts';
import { apiUrl } from '../api/request.ts';
import { usePaper } from './paper-choice.ts';

interface MadePaperProps {
  /** Under `/paper/`: `building-plan`. */
  document: string;
  /** What it is made from; another value makes it anew. */
  from: Readonly<Record<string, unknown>>;
  /** What leads to it once it is made: "Open the water plan". */
  ready: string;
  children: ReactNode;
}

type Making =
  | { state: 'no' }
  | { state: 'making'; stop: AbortController }
  | { state: 'ready'; address: string; of: string }
  | { state: 'failed'; reason: string };

/** Has the server make a document, then leads to it. */
export function MadePaper({ document, from, ready, children }: MadePaperProps) {
  const { paper, units } = usePaper();
  const [making, setMaking] = useState<Making>({ state: 'no' });
  const asked = JSON.stringify({ ...from, paper, units });
  useEffect(
    () => () => {
      if (making.state === 'making') making.stop.abort();
      if (making.state === 'ready') URL.revokeObjectURL(making.address);
    },
    [making],
  );
  const make = async () => {
    const stop = new AbortController();
    setMaking({ state: 'making', stop });
    try {
      const pdf = await fetchPdf(document, asked, stop.signal);
      if (!stop.signal.aborted) {
        setMaking({ state: 'ready', address: URL.createObjectURL(pdf), of: asked });
      }
    } catch (error) {
      if (stop.signal.aborted) return;
      const reason = error instanceof Error ? error.message : String(error);
      setMaking({ state: 'failed', reason });
    }
  };
  // Told only of what it was made from: after a change it is another document.
  if (making.state === 'ready' && making.of === asked) {
    return (
      <a className="plain-button link-button" href={making.address} target="_blank" rel="noopener">
        {ready}
        <span className="hidden-text"> (PDF, opens in a window of its own)</span>
      </a>
    );
  }
  if (making.state === 'making') {
    return (
      <Button className="plain-button" onPress={() => setMaking({ state: 'no' })}>
        Cancel: being made…
      </Button>
    );
  }
  return (
    <>
      <Button className="plain-button" onPress={() => void make()}>
        {children}
      </Button>
      {making.state === 'failed' && (
        <span className="tone-warning" role="alert">
          It could not be made. {making.reason}
        </span>
      )}
    </>
  );
}

async function fetchPdf(document: string, asked: string, signal: AbortSignal): Promise<Blob> {
  let response: Response;
  try {
    response = await fetch(apiUrl(`/paper/${document}`), {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: asked,
      signal,
    });
  } catch (error) {
    if (signal.aborted) throw error;
    throw new UnreachableError();
  }
  if (response.ok) return response.blob();
  const told = (await response.json().catch(() => null)) as Partial<ProblemDocument> | null;
  throw problemFrom(response.status, told);
}
