/** Tells what shows records that some were added, changed or removed on this page. */
import { create } from 'zustand';

interface Changed {
  /** Goes up with each change. */
  times: number;
  tell(): void;
}

export const useChanged = create<Changed>()((set) => ({
  times: 0,
  tell: () => set(({ times }) => ({ times: times + 1 })),
}));

/** Something was written: what is shown is read anew. */
export const tellChanged = (): void => useChanged.getState().tell();
