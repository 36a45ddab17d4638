/**
 * Has `begin` begun while an element lies in the window, and what it returns called when it does not any more. Call while a component
 * starts.
 */
export function whileSeen(element: () => HTMLElement | undefined, begin: () => () => void): void {
  $effect(() => {
    const seen = element();
    if (!seen) return;
    let end: (() => void) | null = null;
    const observer = new IntersectionObserver((looks) => {
      // A busy browser tells of several looks at once, the latest last.
      const { isIntersecting } = looks.at(-1)!;
      if (isIntersecting === (end !== null)) return;
      end?.();
      end = isIntersecting ? begin() : null;
    });
    observer.observe(seen);
    return () => {
      observer.disconnect();
      end?.();
    };
  });
}
