import type { Rectangle } from '@underlath/contract';

/** Maps inches on a wall or floor (origin lower left, y up) to pixels on the sheet (origin upper left, y down). */
export type Frame = {
  /** Pixels per inch. */
  scale: number;
  widthPx: number;
  heightPx: number;
  x: (xIn: number) => number;
  y: (yIn: number) => number;
  /** The place under a pixel, kept on the drawn element. */
  toIn: (xPx: number, yPx: number) => { xIn: number; yIn: number };
  /** A rectangle in pixels, as an SVG <rect> wants it. */
  rect: (r: Rectangle) => { x: number; y: number; width: number; height: number };
};

export type Margins = { top: number; right: number; bottom: number; left: number };

/**
 * Fits an element of `widthIn` x `heightIn` inches into `boxPx` pixels of width, never taller than `maxHeightPx`.
 * What is left over at the sides is shared, so that the drawing stands in the middle.
 */
export function fitFrame(
  widthIn: number,
  heightIn: number,
  boxPx: number,
  maxHeightPx: number,
  margins: Margins,
): Frame {
  const roomX = Math.max(40, boxPx - margins.left - margins.right);
  const roomY = Math.max(40, maxHeightPx - margins.top - margins.bottom);
  const scale = Math.min(roomX / widthIn, roomY / heightIn);
  const left = margins.left + (roomX - widthIn * scale) / 2;
  const x = (xIn: number) => left + xIn * scale;
  const y = (yIn: number) => margins.top + (heightIn - yIn) * scale;
  return {
    scale,
    widthPx: boxPx,
    heightPx: margins.top + heightIn * scale + margins.bottom,
    x,
    y,
    toIn: (xPx, yPx) => ({
      xIn: clamp((xPx - left) / scale, 0, widthIn),
      yIn: clamp(heightIn - (yPx - margins.top) / scale, 0, heightIn),
    }),
    rect: (r) => ({ x: x(r.xIn), y: y(r.yIn + r.heightIn), width: r.widthIn * scale, height: r.heightIn * scale }),
  };
}

export const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** A rectangle from two corners, in whole inches, at least `leastIn` a side and wholly on the element. */
export function rectangleFromCorners(
  a: { xIn: number; yIn: number },
  b: { xIn: number; yIn: number },
  widthIn: number,
  heightIn: number,
  leastIn = 2,
): Rectangle {
  return keepOn(
    {
      xIn: Math.min(a.xIn, b.xIn),
      yIn: Math.min(a.yIn, b.yIn),
      widthIn: Math.max(leastIn, Math.abs(a.xIn - b.xIn)),
      heightIn: Math.max(leastIn, Math.abs(a.yIn - b.yIn)),
    },
    widthIn,
    heightIn,
  );
}

/** Rounds to whole inches and pushes a rectangle back onto the element it was drawn on. */
export function keepOn(r: Rectangle, widthIn: number, heightIn: number): Rectangle {
  const width = clamp(Math.round(r.widthIn), 1, widthIn);
  const height = clamp(Math.round(r.heightIn), 1, heightIn);
  return {
    widthIn: width,
    heightIn: height,
    xIn: clamp(Math.round(r.xIn), 0, widthIn - width),
    yIn: clamp(Math.round(r.yIn), 0, heightIn - height),
  };
}
