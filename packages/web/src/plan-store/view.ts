/** How this person likes to look at any plan; remembered on this device. */
import type { UnitSystem } from '@plugside/fireground';
import { create } from 'zustand';
import { keep, kept } from './device-memory.ts';

export type ThemeChoice = 'system' | 'day' | 'night';
export type Question = 'most' | 'set' | 'now';

interface ViewState {
  units: UnitSystem;
  theme: ThemeChoice;
  question: Question;
  setUnits(units: UnitSystem): void;
  setTheme(theme: ThemeChoice): void;
  setQuestion(question: Question): void;
}

const MEMORY = 'plugside.view';

function rememberedView(): Pick<ViewState, 'units' | 'theme' | 'question'> {
  const fallback = { units: 'us', theme: 'system', question: 'most' } as const;
  try {
    const read: unknown = JSON.parse(kept(MEMORY) ?? '{}');
    if (typeof read !== 'object' || read === null) return fallback;
    const { units, theme, question } = read as Record<string, unknown>;
    return {
      units: units === 'si' ? 'si' : 'us',
      theme: theme === 'day' || theme === 'night' ? theme : 'system',
      question: question === 'set' || question === 'now' ? question : 'most',
    };
  } catch {
    return fallback;
  }
}

export const useView = create<ViewState>()((set) => ({
  ...rememberedView(),
  setUnits: (units) => set({ units }),
  setTheme: (theme) => set({ theme }),
  setQuestion: (question) => set({ question }),
}));

useView.subscribe(({ units, theme, question }) => {
  keep(MEMORY, JSON.stringify({ units, theme, question }));
});
