import { type RefObject, useEffect, useLayoutEffect, useState } from 'react';
import { forgetTextWidths } from './scene/text-width.ts';

/** Width of an element's content box [px], followed as it changes; 0 before it is known. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const node = element.current;
    if (!node) return;
    const take = () => setWidth(Math.floor(node.clientWidth));
    take();
    const observer = new ResizeObserver(take);
    observer.observe(node);
    return () => observer.disconnect();
  }, [element]);
  return width;
}

/** True once the drawing's fonts are here: until then labels are placed with room to spare. */
export function useFontsReady(): boolean {
  const [ready, setReady] = useState(false);
  useEffect(() => {
    let wanted = true;
    document.fonts.ready.then(() => {
      if (!wanted) return;
      forgetTextWidths();
      setReady(true);
    });
    return () => {
      wanted = false;
    };
  }, []);
  return ready;
}
