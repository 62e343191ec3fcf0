/** Cards of many hydrants in one file, made by the server in the background. */
import { apiRequest } from '../api/request.ts';
import type { PaperSize } from './paper-choice.ts';

export interface CardsStanding {
  id: string;
  state: 'running' | 'done' | 'cancelled' | 'failed';
  progress: { done: number; total: number };
  /** Where the PDF is; null until it is done. */
  file: string | null;
  failure: { detail: string; remedy: string } | null;
}

export const startCards = (asked: {
  paper: PaperSize;
  units: 'us' | 'si';
}): Promise<CardsStanding> => apiRequest('/paper/hydrant-cards', { method: 'POST', json: asked });

export const cardsStanding = (id: string, signal?: AbortSignal): Promise<CardsStanding> =>
  apiRequest(`/paper/hydrant-cards/${id}`, { signal });

export const cancelCards = (id: string): Promise<CardsStanding | undefined> =>
  apiRequest(`/paper/hydrant-cards/${id}`, { method: 'DELETE' });
