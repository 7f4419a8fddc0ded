import { decimal, type Text, text } from '../kernel/index.ts';
import { covers, disjoint, disjointSf, type Ground, grow, type Rect, snapToFraming } from '../places/extents.ts';
import { FRAMING } from '../places/framing.ts';
import { type Drawn, extentOf, type FindingTakeOff, has, type Placed, type WorkLine } from './drawn.ts';
import type { Extent } from './operations.data.ts';
import { countNails, layOutPanels, type NailSchedule, panelArea } from './panel-layout.ts';
import { SHEET_SF } from './sheets.ts';
import { byPhase, type TakeOffLine } from './take-off.ts';
import { memberWork } from './unite-members.ts';

/** The least nailing of a panel wall, counted until the approved schedule is typed in. */
export const ASSUMED_SCHEDULE: NailSchedule = { edgeSpacingIn: 6, fieldSpacingIn: 12 };

/** `from stud to stud` */
function fromFraming({ kind }: Ground): Text {
  const [en, es] = [FRAMING[kind].en.toLowerCase(), FRAMING[kind].es.toLowerCase()];
  return text(`from ${en} to ${en}`, `de ${es} a ${es}`);
}

function panelWork(drawn: readonly Drawn[], ground: Ground, place: string): Placed & { area: readonly Rect[] } {
  const stoodFor = new Set<TakeOffLine>();
  const replacing = drawn.filter((one) => has(one, 'panel'));
  if (replacing.length === 0) return { lines: [], stoodFor, area: [] };
  const layout = layOutPanels(
    replacing.flatMap((one) => one.extents),
    ground,
  );
  const mended = drawn.filter((one) => !has(one, 'panel') && (has(one, 'panel-nails') || has(one, 'panel-blocking')));
  const covered = mended.filter((one) => one.extents.every((rect) => covers(layout.area, rect)));
  const schedules = replacing.flatMap((one) => one.schedule ?? []);
  const tightest = (name: keyof NailSchedule) => Math.min(...schedules.map((one) => one[name]));
  const schedule = schedules.length
    ? { edgeSpacingIn: tightest('edgeSpacingIn'), fieldSpacingIn: tightest('fieldSpacingIn') }
    : ASSUMED_SCHEDULE;
  const nails = layout.pieces.reduce(
    (sum, piece) => sum + piece.count * countNails(piece, schedule, ground.framingSpacingIn),
    0,
  );
  const sf = decimal(layout.panelSf);
  const spaced = `${decimal(schedule.edgeSpacingIn)} in / ${decimal(schedule.fieldSpacingIn)} in`;
  const amounts: Partial<Record<Extent, readonly [number, Text, boolean]>> = {
    panel: [
      layout.sheets * SHEET_SF,
      text(`${layout.sheets} whole sheets cover ${sf} SF.`, `${layout.sheets} hojas enteras cubren ${sf} pies².`),
      false,
    ],
    'panel-off': [
      layout.panelSf,
      text(`${sf} SF ${fromFraming(ground).en}.`, `${sf} pies² ${fromFraming(ground).es}.`),
      false,
    ],
    'panel-nails': [
      nails,
      schedules.length
        ? text(`Edges / framing between at ${spaced}.`, `Bordes / estructura entre ellos a ${spaced}.`)
        : text(`At ${spaced}, assumed: set it from the plans.`, `A ${spaced}, supuesto: ajústelo a los planos.`),
      schedules.length === 0,
    ],
    'panel-blocking': [
      layout.blockingFt,
      text('Edges off the plates or rims.', 'Bordes fuera de las soleras o los bordes.'),
      false,
    ],
  };
  const lines = Object.entries(amounts).flatMap(([extent, [quantity, how, assumed]]): WorkLine[] => {
    const from = replacing.flatMap(({ lines, finding }) =>
      lines.filter((line) => extentOf(line) === extent && !line.set).map((line) => ({ line, finding })),
    );
    for (const { line } of from) stoodFor.add(line);
    const [first] = from;
    if (!first || quantity === 0) return [];
    const findings = [...from.map(({ finding }) => finding), ...(extent === 'panel-nails' ? namesOf(covered) : [])];
    return [{ ...first.line, quantity, how, assumed, for: [...new Set(findings)], place, area: layout.area }];
  });
  // A panel that is replaced is nailed anew, so that mending its nails or its edge falls away.
  for (const one of covered)
    for (const line of one.lines)
      if (!line.set && ['panel-nails', 'panel-blocking'].includes(extentOf(line) ?? '')) stoodFor.add(line);
  return { lines, stoodFor, area: layout.area };
}

const namesOf = (list: readonly FindingTakeOff[]): string[] => list.map((one) => one.finding);

/** What is stripped for one finding: its extents with room to work, and the whole of a panel it replaces, from framing to framing. */
function openedFor(one: Drawn, ground: Ground): Rect[] {
  const extents = one.extents.map((rect) => snapToFraming(grow(rect, one.reachIn ?? 0, ground), ground));
  return has(one, 'panel') ? [...extents, ...panelArea(one.extents, ground)] : extents;
}

/**
 * The opening of a place: the union of what is drawn, or the largest amount without a drawing where that is more; what
 * a template measured elsewhere comes on top.
 */
function openingWork(all: readonly FindingTakeOff[], drawn: readonly Drawn[], ground: Ground, place: string): Placed {
  const stoodFor = new Set<TakeOffLine>();
  const wanted = all.flatMap((one) =>
    one.lines.filter((line) => extentOf(line) === 'opening').map((line) => ({ one, line })),
  );
  const openedBy = new Map<Drawn, readonly Rect[]>();
  const openedOnce = (one: Drawn) => {
    const opened = openedBy.get(one) ?? openedFor(one, ground);
    openedBy.set(one, opened);
    return opened;
  };
  const lines = [...new Set(wanted.map(({ line }) => line.operation))].map((operation): WorkLine => {
    const asked = wanted.filter(({ line }) => line.operation === operation);
    for (const { line } of asked) stoodFor.add(line);
    const shown = asked.filter(({ one, line }) => line.assumed && drawn.includes(one as Drawn));
    const area = disjoint([...new Set(shown.map(({ one }) => one as Drawn))].flatMap(openedOnce));
    const drawnSf = disjointSf(area);
    const typed = asked.filter(({ one, line }) => line.set || (line.assumed && !drawn.includes(one as Drawn)));
    const largest = typed.reduce<TakeOffLine | undefined>(
      (most, { line }) => (most && most.quantity >= line.quantity ? most : line),
      undefined,
    );
    const elsewhereSf = asked
      .filter(({ line }) => !line.set && !line.assumed)
      .reduce((sum, { line }) => sum + line.quantity, 0);
    const first = (asked[0] as (typeof asked)[number]).line;
    const typedWins = largest !== undefined && largest.quantity > drawnSf;
    const baseSf = typedWins ? largest.quantity : drawnSf;
    const sf = decimal(baseSf);
    const { en, es } = fromFraming(ground);
    const drawnHow = text(`${sf} SF opened, ${en}.`, `${sf} pies² abiertos, ${es}.`);
    const how = typedWins ? largest.how : drawnSf > 0 ? drawnHow : first.how;
    return {
      ...first,
      quantity: baseSf + elsewhereSf,
      how,
      assumed: typedWins && largest.assumed,
      for: [...new Set(asked.map(({ one }) => one.finding))],
      place,
      ...(area.length > 0 && { area }),
    };
  });
  return { lines, stoodFor };
}

function sharingKey({ finding, place }: FindingTakeOff, line: TakeOffLine): string {
  if (line.sharedPer === 'visit') return line.operation;
  if (line.sharedPer === 'place') return `${line.operation} @ ${place}`;
  return `${line.operation} @ ${place} # ${finding}`;
}

/**
 * Unites the take-offs of several findings. Work shared per place or visit is counted once, with the largest amount any
 * finding asks for. Where the place has sizes (`grounds`) and a finding is drawn on it, openings are the exact union,
 * panels are laid out in whole sheets, and a member in two findings is worked on once: replace beats sister beats
 * treat. An amount the estimator set stays. The order of the findings changes no amount.
 */
export function uniteTakeOffs(
  takeOffs: readonly FindingTakeOff[],
  grounds: ReadonlyMap<string, Ground> = new Map(),
): WorkLine[] {
  const stoodFor = new Set<TakeOffLine>();
  const worked: WorkLine[] = [];
  for (const [place, ground] of grounds) {
    const here = takeOffs.filter((one) => one.place === place);
    const drawn = here.filter((one): one is Drawn => (one.extents?.length ?? 0) > 0);
    const parts = [
      panelWork(drawn, ground, place),
      openingWork(here, drawn, ground, place),
      memberWork(drawn, ground, place),
    ];
    for (const part of parts) {
      worked.push(...part.lines);
      for (const line of part.stoodFor) stoodFor.add(line);
    }
  }
  const united = new Map<string, WorkLine>();
  for (const one of takeOffs)
    for (const line of one.lines) {
      if (stoodFor.has(line)) continue;
      const key = sharingKey(one, line);
      const before = united.get(key);
      const largest = before && before.quantity >= line.quantity ? before : line;
      const findings = [...new Set([...(before?.for ?? []), one.finding])];
      const place = line.sharedPer === 'visit' ? {} : { place: one.place };
      united.set(key, { ...largest, for: findings, ...place });
    }
  return [...worked, ...united.values()].sort(byPhase);
}
