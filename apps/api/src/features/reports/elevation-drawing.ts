import type { DocumentItem, Severity } from '@underlath/contract';
import { formatLength } from '@underlath/rules';
import { ink } from './sheet.ts';

/** The safety colors of ANSI Z535.1 (from memory: red, orange, yellow, blue), darkened where lines must show on paper. */
export const severityColor: Record<Severity, string> = {
  'make-safe': '#b3131b',
  engineer: '#c45a00',
  repair: '#8a6d00',
  record: '#1f5fa8',
};

type Place = DocumentItem['place'];
interface Frame {
  readonly leftPt: number;
  readonly topPt: number;
  readonly pointsPerIn: number;
  readonly heightIn: number;
}

const drawingHeightPt = 170;
const dimensionPt = 30;
const hatchGapPt = 5;

/** Points the drawing takes on paper, dimensions included; null when the place has no size. */
export function elevationHeight(place: Place, widthPt: number): number | null {
  const scale = scaleOf(place, widthPt);
  return scale === null || place.heightIn === null ? null : place.heightIn * scale + 2 * dimensionPt;
}

function scaleOf(place: Place, widthPt: number): number | null {
  if (!place.widthIn || !place.heightIn) return null;
  return Math.min((widthPt - 2 * dimensionPt) / place.widthIn, drawingHeightPt / place.heightIn);
}

/** Inches of the house that one inch of paper stands for. */
export const paperScale = (place: Place, widthPt: number): number | null => {
  const scale = scaleOf(place, widthPt);
  return scale === null ? null : Math.round(72 / scale);
};

/** Draws a wall (or a floor in plan) to scale with its framing, openings and hatched findings. */
export function drawElevation(
  doc: PDFKit.PDFDocument,
  at: { leftPt: number; topPt: number; widthPt: number },
  place: Place,
  items: readonly Pick<DocumentItem, 'number' | 'extent' | 'severity'>[],
): void {
  const pointsPerIn = scaleOf(place, at.widthPt);
  if (pointsPerIn === null || !place.widthIn || !place.heightIn) return;
  const frame = { leftPt: at.leftPt, topPt: at.topPt + 6, pointsPerIn, heightIn: place.heightIn };
  doc.save();
  drawFraming(doc, frame, place, place.widthIn);
  for (const opening of place.openings) drawOpening(doc, frame, opening);
  for (const item of items) if (item.extent) drawFinding(doc, frame, item.extent, item);
  box(doc, frame, { xIn: 0, yIn: 0, widthIn: place.widthIn, heightIn: place.heightIn }).lineWidth(1.4).stroke(ink);
  drawDimensions(doc, frame, place.widthIn, place.heightIn);
  doc.restore();
}

interface Rect {
  readonly xIn: number;
  readonly yIn: number;
  readonly widthIn: number;
  readonly heightIn: number;
}

/** Paper runs down, the wall is measured up from its lower left corner. */
function box(doc: PDFKit.PDFDocument, frame: Frame, rect: Rect) {
  const { leftPt, topPt, pointsPerIn, heightIn } = frame;
  return doc.rect(
    leftPt + rect.xIn * pointsPerIn,
    topPt + (heightIn - rect.yIn - rect.heightIn) * pointsPerIn,
    rect.widthIn * pointsPerIn,
    rect.heightIn * pointsPerIn,
  );
}

/** Actual thickness of nominal 2x lumber, in (American Softwood Lumber Standard PS 20, from memory). */
const lumberIn = 1.5;

function drawFraming(doc: PDFKit.PDFDocument, frame: Frame, place: Place, widthIn: number): void {
  const spacingIn = place.framingSpacingIn;
  const isWall = place.kind === 'wall';
  doc.lineWidth(0.35).strokeColor('#6b7278');
  if (spacingIn) {
    for (let xIn = 0; xIn <= widthIn - lumberIn; xIn += spacingIn) {
      box(doc, frame, { xIn, yIn: 0, widthIn: lumberIn, heightIn: frame.heightIn }).stroke();
    }
    box(doc, frame, { xIn: widthIn - lumberIn, yIn: 0, widthIn: lumberIn, heightIn: frame.heightIn }).stroke();
  }
  if (!isWall) return;
  const platesIn = [0, frame.heightIn - lumberIn, frame.heightIn - 2 * lumberIn];
  for (const yIn of platesIn) box(doc, frame, { xIn: 0, yIn, widthIn, heightIn: lumberIn }).fillAndStroke('#ffffff');
}

function drawOpening(doc: PDFKit.PDFDocument, frame: Frame, opening: Readonly<Record<string, unknown>>): void {
  const [xIn, yIn, widthIn, heightIn] = ['xIn', 'yIn', 'widthIn', 'heightIn'].map((name) => Number(opening[name]));
  if (![xIn, yIn, widthIn, heightIn].every(Number.isFinite)) return;
  const rect = { xIn, yIn, widthIn, heightIn } as Rect;
  box(doc, frame, rect).lineWidth(0.8).fillAndStroke('#ffffff', ink);
}

function drawFinding(
  doc: PDFKit.PDFDocument,
  frame: Frame,
  extent: Rect,
  { number, severity }: Pick<DocumentItem, 'number' | 'severity'>,
): void {
  const color = severityColor[severity];
  const leftPt = frame.leftPt + extent.xIn * frame.pointsPerIn;
  const topPt = frame.topPt + (frame.heightIn - extent.yIn - extent.heightIn) * frame.pointsPerIn;
  const [widthPt, heightPt] = [extent.widthIn * frame.pointsPerIn, extent.heightIn * frame.pointsPerIn];
  doc.save();
  box(doc, frame, extent).clip();
  doc.lineWidth(0.7).strokeColor(color);
  for (let stepPt = -heightPt; stepPt < widthPt; stepPt += hatchGapPt) {
    doc.moveTo(leftPt + stepPt, topPt + heightPt).lineTo(leftPt + stepPt + heightPt, topPt);
  }
  doc.stroke();
  doc.restore();
  box(doc, frame, extent).lineWidth(1.4).stroke(color);
  const [centerX, centerY] = [leftPt + widthPt / 2, topPt + heightPt / 2];
  doc.circle(centerX, centerY, 8).fillAndStroke('#ffffff', color);
  doc.font('bold').fontSize(8).fillColor(ink);
  doc.text(String(number), centerX - 12, centerY - 4.5, { width: 24, align: 'center', lineBreak: false });
}

function drawDimensions(doc: PDFKit.PDFDocument, frame: Frame, widthIn: number, heightIn: number): void {
  const { leftPt, topPt, pointsPerIn } = frame;
  const [rightPt, bottomPt] = [leftPt + widthIn * pointsPerIn, topPt + heightIn * pointsPerIn];
  const [rowPt, columnPt] = [bottomPt + 14, rightPt + 14];
  doc.lineWidth(0.4).strokeColor(ink);
  for (const xPt of [leftPt, rightPt]) {
    doc.moveTo(xPt, bottomPt + 3).lineTo(xPt, rowPt + 4);
    doc.moveTo(xPt - 3, rowPt + 3).lineTo(xPt + 3, rowPt - 3);
  }
  for (const yPt of [topPt, bottomPt]) {
    doc.moveTo(rightPt + 3, yPt).lineTo(columnPt + 4, yPt);
    doc.moveTo(columnPt - 3, yPt + 3).lineTo(columnPt + 3, yPt - 3);
  }
  doc.moveTo(leftPt, rowPt).lineTo(rightPt, rowPt).moveTo(columnPt, topPt).lineTo(columnPt, bottomPt).stroke();
  doc.font('text').fontSize(8).fillColor(ink);
  doc.text(formatLength(widthIn), leftPt, rowPt + 3, {
    width: widthIn * pointsPerIn,
    align: 'center',
    lineBreak: false,
  });
  doc.text(formatLength(heightIn), columnPt + 6, (topPt + bottomPt) / 2 - 4, { width: 60, lineBreak: false });
}
