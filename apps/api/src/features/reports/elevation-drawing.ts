import { type DocumentItem, opening, type Severity } from '@underlath/contract';
import { formatLength } from '@underlath/rules';
import {
  type ElevationMark,
  type ElevationPlace,
  JOIST_END_IN,
  layOutElevation,
  type SizedPlace,
  sized,
} from '@underlath/rules/places';
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

/** The place as it was frozen in the letter, in the form the drawing takes; null when it has no size. */
const drawnPlace = (place: Place): SizedPlace | null =>
  sized<ElevationPlace>({ ...place, openings: place.openings.flatMap((each) => opening.safeParse(each).data ?? []) });

/** Points the drawing takes on paper, dimensions included; null when the place has no size. */
export function elevationHeight(place: Place, widthPt: number): number | null {
  const drawn = drawnPlace(place);
  return drawn && (drawn.heightIn + aboveIn(drawn)) * scaleOf(drawn, widthPt) + 2 * dimensionPt;
}

/** What is shown above a place: joist ends over a beam. */
const aboveIn = ({ kind, framingSpacingIn }: SizedPlace): number =>
  kind === 'beam-line' && framingSpacingIn ? JOIST_END_IN : 0;

const scaleOf = (place: SizedPlace, widthPt: number): number =>
  Math.min((widthPt - 2 * dimensionPt) / place.widthIn, drawingHeightPt / (place.heightIn + aboveIn(place)));

/** Inches of the house that one inch of paper stands for. */
export const paperScale = (place: Place, widthPt: number): number | null => {
  const drawn = drawnPlace(place);
  return drawn && Math.round(72 / scaleOf(drawn, widthPt));
};

/** Draws a wall (or a floor in plan, or a beam) to scale as the screens do, with its hatched findings. */
export function drawElevation(
  doc: PDFKit.PDFDocument,
  at: { leftPt: number; topPt: number; widthPt: number },
  place: Place,
  items: readonly Pick<DocumentItem, 'number' | 'extent' | 'severity'>[],
): void {
  const drawn = drawnPlace(place);
  if (!drawn) return;
  const pointsPerIn = scaleOf(drawn, at.widthPt);
  const topPt = at.topPt + 6 + aboveIn(drawn) * pointsPerIn;
  const frame = { leftPt: at.leftPt, topPt, pointsPerIn, heightIn: drawn.heightIn };
  doc.save();
  const marks = layOutElevation(drawn);
  for (const mark of marks) if (mark.part !== 'outline') paint(doc, frame, mark);
  for (const item of items) if (item.extent) drawFinding(doc, frame, item.extent, item);
  for (const mark of marks) if (mark.part === 'outline') paint(doc, frame, mark);
  drawDimensions(doc, frame, drawn.widthIn, drawn.heightIn);
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

const thin = '#6b7278';

function paint(doc: PDFKit.PDFDocument, frame: Frame, { part, rect }: ElevationMark): void {
  const shape = box(doc, frame, rect);
  if (part === 'member') shape.lineWidth(0.35).stroke(thin);
  else if (part === 'plate') shape.lineWidth(0.35).fillAndStroke('#ffffff', thin);
  else if (part === 'outline') shape.lineWidth(1.4).stroke(ink);
  else shape.lineWidth(0.8).fillAndStroke('#ffffff', ink);
  if (part === 'opening') crossOut(doc, frame, rect);
}

/** Nothing stands in an opening. */
function crossOut(doc: PDFKit.PDFDocument, { leftPt, topPt, pointsPerIn, heightIn }: Frame, rect: Rect): void {
  const x = (xIn: number) => leftPt + xIn * pointsPerIn;
  const y = (yIn: number) => topPt + (heightIn - yIn) * pointsPerIn;
  const [rightIn, topIn] = [rect.xIn + rect.widthIn, rect.yIn + rect.heightIn];
  doc.moveTo(x(rect.xIn), y(rect.yIn)).lineTo(x(rightIn), y(topIn));
  doc.moveTo(x(rect.xIn), y(topIn)).lineTo(x(rightIn), y(rect.yIn));
  doc.lineWidth(0.35).stroke(thin);
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
