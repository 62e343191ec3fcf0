/** The plan on the page outlives a reload: kept on this device, or brought by the link. */
import { readPlan, writePlan } from '@plugside/fireground';
import { openText } from '../share/files.ts';
import { planTextIn } from '../share/link.ts';
import { keep, kept } from './device-memory.ts';
import { usePlan } from './plan-store.ts';

const MEMORY = 'plugside.plan';
const SETTLED_MS = 400;

/** Opens what the link carries, else what was kept; then keeps every settled change. */
export function startAutosave(): void {
  const text = kept(MEMORY);
  const read = text === null ? null : readPlan(text);
  if (read?.ok)
    usePlan.setState((state) => ({ history: { ...state.history, present: read.plan } }));
  openLink();
  window.addEventListener('hashchange', openLink);

  let timer: ReturnType<typeof setTimeout> | undefined;
  const save = () => keep(MEMORY, writePlan(usePlan.getState().history.present));
  usePlan.subscribe((state, before) => {
    if (state.history.present === before.history.present) return;
    clearTimeout(timer);
    timer = setTimeout(save, SETTLED_MS);
  });
  window.addEventListener('pagehide', save);
}

function openLink(): void {
  try {
    const text = planTextIn(window.location.hash);
    if (text === null) return;
    const opened = openText(text, 'The plan in this link');
    if (opened.ok) usePlan.getState().open(opened.plan, 'Open the link');
    else usePlan.getState().tell(opened.message);
  } catch (error) {
    usePlan.getState().tell({
      kind: 'problem',
      text: error instanceof Error ? error.message : String(error),
    });
  }
  // The plan goes on from here; a reload must not bring the link's older one back.
  window.history.replaceState(null, '', window.location.pathname + window.location.search);
}
