import { useEffect } from 'react';
import { useView } from '../plan-store/view.ts';

const PAPER = { day: '#f7f5f0', night: '#0d0b09' } as const;

/** Puts the chosen theme on the page; "system" follows the device. */
export function useTheme(): void {
  const choice = useView((view) => view.theme);
  useEffect(() => {
    const dark = window.matchMedia('(prefers-color-scheme: dark)');
    const apply = () => {
      const theme = choice === 'system' ? (dark.matches ? 'night' : 'day') : choice;
      document.documentElement.dataset.theme = theme;
      document.querySelector('meta[name="theme-color"]')?.setAttribute('content', PAPER[theme]);
    };
    apply();
    dark.addEventListener('change', apply);
    return () => dark.removeEventListener('change', apply);
  }, [choice]);
}
