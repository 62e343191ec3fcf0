import { type RefObject, useLayoutEffect, useState } from 'react';
import { LEAST_WALL_PX, nextFit, type WallFit, wallFits } from './wall-fit.ts';

/** Kept free at the screen's foot [px]. */
const FOOT_PX = 8;

/**
 * Fits a sheet into the rest of the screen under where it begins. It gets smaller as it must; it is tried at
 * its largest again where the window changes, not while the drill runs: nothing goes to and fro.
 */
export function useWallFit(
  place: RefObject<HTMLElement | null>,
  sheet: RefObject<HTMLElement | null>,
): WallFit {
  const [at, setAt] = useState(0);
  useLayoutEffect(() => {
    const again = () => setAt(0);
    window.addEventListener('resize', again);
    return () => window.removeEventListener('resize', again);
  }, []);
  useLayoutEffect(() => {
    const [outer, inner] = [place.current, sheet.current];
    if (!outer || !inner) return;
    const fit = () => {
      const isWall = window.innerWidth >= LEAST_WALL_PX;
      const top = outer.getBoundingClientRect().top + window.scrollY;
      const room = window.innerHeight - top - FOOT_PX;
      outer.style.height = isWall
        ? `${Math.ceil(inner.offsetHeight * wallFits[at]!.shrink)}px`
        : '';
      if (isWall) setAt(nextFit(at, inner.offsetHeight, room));
    };
    fit();
    const observer = new ResizeObserver(fit);
    observer.observe(inner);
    return () => observer.disconnect();
  }, [place, sheet, at]);
  return wallFits[at]!;
}
