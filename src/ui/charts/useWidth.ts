import { useEffect, useRef, useState, type RefObject } from 'react';

/** Width to draw for before the page has been laid out, and on paper: about a sheet's column. */
const usualWidthPx = 520;

/** Width of an element in px, followed as it changes, so that text in a drawing keeps its size. */
export function useWidth<Box extends HTMLElement>(): [RefObject<Box | null>, number] {
  const box = useRef<Box>(null);
  const [widthPx, setWidthPx] = useState(usualWidthPx);
  useEffect(() => {
    const element = box.current;
    if (element === null || typeof ResizeObserver === 'undefined') return undefined;
    const observer = new ResizeObserver(([entry]) => {
      const width = Math.round(entry?.contentRect.width ?? 0);
      if (width > 0) setWidthPx(width);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [box, widthPx];
}
