import type { PumpSetting } from '@plugside/fireground';
import { useCallback } from 'react';
import type { Answered } from '../plan-store/ask.ts';
import { setPump, takeSettings } from '../plan-store/edits/settings.ts';
import { usePlan } from '../plan-store/plan-store.ts';
import { useView } from '../plan-store/view.ts';

/**
 * Sets a pump by hand. The other settings stay as the answer shows them, and the page turns to
 * "as set now": from then on the question is what these settings do.
 */
export function useSetPump(answered: Answered | null) {
  const change = usePlan((state) => state.change);
  const setQuestion = useView((state) => state.setQuestion);
  return useCallback(
    (rigId: string, setting: PumpSetting, key?: string) => {
      change(
        'Pump setting',
        (plan) => {
          const found =
            answered && answered.question !== 'now' ? takeSettings(plan, answered.plan) : plan;
          return setPump(found, rigId, setting);
        },
        key,
      );
      setQuestion('now');
    },
    [answered, change, setQuestion],
  );
}

/** The same for a governed discharge pressure [psi]. */
export function useSetPdp(answered: Answered | null) {
  const set = useSetPump(answered);
  return useCallback(
    (rigId: string, pdpPsi: number, key?: string) => set(rigId, { mode: 'governed', pdpPsi }, key),
    [set],
  );
}
