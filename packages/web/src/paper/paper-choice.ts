/** How this person prints; remembered on this device. */
import { create } from 'zustand';
import { keep, kept } from '../plan-store/device-memory.ts';
import { useView } from '../plan-store/view.ts';

export type PaperSize = 'letter' | 'a4';

interface PaperChoice {
  /** Null: by the units. */
  paper: PaperSize | null;
  setPaper(paper: PaperSize): void;
}

const MEMORY = 'plugside.paper';

function remembered(): PaperSize | null {
  const paper = kept(MEMORY);
  return paper === 'letter' || paper === 'a4' ? paper : null;
}

const usePaperChoice = create<PaperChoice>()((set) => ({
  paper: remembered(),
  setPaper: (paper) => {
    keep(MEMORY, paper);
    set({ paper });
  },
}));

/** As a document's address asks for it: letter with US units, A4 with SI, unless somebody chose. */
export function usePaper(): {
  paper: PaperSize;
  units: 'us' | 'si';
  setPaper(paper: PaperSize): void;
} {
  const units = useView((view) => view.units);
  const { paper, setPaper } = usePaperChoice();
  return { paper: paper ?? (units === 'si' ? 'a4' : 'letter'), units, setPaper };
}
