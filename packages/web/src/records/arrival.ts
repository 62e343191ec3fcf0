/** How a page was come to: back to it, or on to it. */
let wentBack = false;

/** Capturing, so that it is known before any page is drawn. */
window.addEventListener('popstate', () => {
  wentBack = true;
  // What is drawn after this belongs to it; a later press of a link does not.
  window.addEventListener('click', onward, { once: true, capture: true });
  window.addEventListener('keydown', onward, { once: true, capture: true });
});

function onward(): void {
  wentBack = false;
}

/** True where the last move was the browser's Back or Forward. */
export const cameBack = (): boolean => wentBack;
