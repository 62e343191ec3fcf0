import { useEffect } from 'react';
import { usePlan } from '../plan-store/plan-store.ts';

/** Ctrl+Z and Ctrl+Shift+Z (or Ctrl+Y), also with the command key. */
export function useShortcuts(): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      // A number half typed is not a change yet: leaving the field settles it first.
      if (document.activeElement instanceof HTMLInputElement) document.activeElement.blur();
      const plan = usePlan.getState();
      if (key === 'y' || event.shiftKey) plan.redo();
      else plan.undo();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
