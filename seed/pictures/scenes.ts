import { arrow, board, frame, nailHead, randomOf, steel, tape } from './paint.ts';

const studs = (spacingPx: number, tone = 0.35, from = 40): string =>
  Array.from({ length: Math.floor((1240 - from) / spacingPx) + 1 }, (_, at) =>
    board({ x: from + at * spacingPx, y: 150, width: 62, height: 660 }, { tone }),
  ).join('');

/** An open wall seen from across the room: sill, studs, double top plate. */
const wall = (more = '', tone = 0.4): string =>
  frame(
    `${studs(240, tone)}${board({ x: 0, y: 800, width: 1280, height: 62 }, { tone: 0.55 })}${board({ x: 0, y: 92, width: 1280, height: 60 }, { tone })}${board({ x: 0, y: 34, width: 1280, height: 60 }, { tone })}<rect y="862" width="1280" height="98" fill="#7b7872"/>${more}`,
  );

/** A nut with a rod that ends inside it. */
const nutAndRod = (x: number, y: number, size: number): string => `
  <rect x="${x - size * 0.32}" y="${y + size * 0.7}" width="${size * 0.64}" height="${size * 2.4}" fill="url(#zinc)" stroke="#333" stroke-width="3"/>
  <path d="${Array.from({ length: 16 }, (_, at) => `M${x - size * 0.32} ${y + size * (0.8 + at * 0.14)}l${size * 0.64} ${size * 0.05}`).join('')}" stroke="#44494d" stroke-width="4"/>
  <path d="M${x - size} ${y}h${size * 2}l${size * 0.12} ${size * 0.4}l-${size * 0.12} ${size * 0.4}h-${size * 2}l-${size * 0.12}-${size * 0.4}z" fill="#a9aeb1" stroke="#2f3336" stroke-width="4"/>
  <path d="M${x - size * 0.4} ${y}v${size * 0.8}M${x + size * 0.4} ${y}v${size * 0.8}" stroke="#5b6064" stroke-width="4"/>
  <ellipse cx="${x}" cy="${y + 2}" rx="${size * 0.36}" ry="${size * 0.1}" fill="#121212"/>`;

export const rodInNut = (): string =>
  frame(`${board({ x: 120, y: 0, width: 300, height: 960 }, { tone: 0.45 })}${steel({ x: 420, y: 90, width: 60, height: 700 })}${steel({ x: 420, y: 560, width: 420, height: 62 })}
  ${[180, 280, 380, 480].map((y) => nailHead(450, y)).join('')}${nutAndRod(640, 420, 150)}${tape(820, 330, 400, 96, 8)}${arrow(560, 380, 20)}<rect y="880" width="1280" height="80" fill="#8a867f"/>`);

export const holdDownWall = (): string =>
  wall(`${steel({ x: 100, y: 620, width: 34, height: 170 })}${arrow(330, 700, 180)}`);

/** Nail heads of a panel along a joint over a stud; the seed decides which are driven too deep. */
export function panelNails(): string {
  const random = randomOf(41);
  const rows = Array.from({ length: 11 }, (_, at) => {
    const y = 60 + at * 84;
    return (
      nailHead(560 + random() * 10, y, random() > 0.55 ? 1 : 0) +
      nailHead(706 + random() * 26, y + 30, random() > 0.7 ? 0.7 : 0)
    );
  });
  const missed = [220, 610].map((y) => nailHead(636, y)).join('');
  return frame(
    `${board({ x: 0, y: 0, width: 632, height: 960 }, { tone: 0.12 })}${board({ x: 642, y: 0, width: 638, height: 960 }, { tone: 0.16 })}<rect x="631" width="12" height="960" fill="#15100a"/>${rows.join('')}${missed}${tape(740, 96, 780, 84, 90)}`,
    '#3a2c1e',
  );
}

export const panelWall = (): string =>
  wall(`${board({ x: 300, y: 150, width: 420, height: 650 }, { tone: 0.12, lengthwise: 'y' })}${board({ x: 726, y: 150, width: 410, height: 650 }, { tone: 0.16, lengthwise: 'y' })}
  ${Array.from({ length: 8 }, (_, at) => nailHead(706, 190 + at * 78) + nailHead(744, 210 + at * 78)).join('')}`);

/** A doubled plate notched for a drain pipe. */
export const cutPlate = (): string =>
  frame(`${studs(300, 0.4)}${board({ x: 0, y: 210, width: 1280, height: 92 }, { tone: 0.4 })}${board({ x: 0, y: 116, width: 1280, height: 92 }, { tone: 0.36 })}
  <path d="M520 110h220v150h-220z" fill="#17110b"/><rect x="548" width="164" height="960" fill="#e8e6df" stroke="#77746c" stroke-width="4"/><rect x="560" width="34" height="960" fill="#fff" opacity=".5"/>${tape(470, 320, 330, 64)}${arrow(470, 200, 0)}`);

/** A beam whose end hardly reaches the post. */
export const beamSeat = (): string =>
  frame(`${board({ x: 700, y: 470, width: 210, height: 490 }, { tone: 0.5, lengthwise: 'y' })}${steel({ x: 680, y: 440, width: 250, height: 30 })}${board({ x: -20, y: 150, width: 760, height: 288 }, { tone: 0.4 })}
  <rect x="740" y="150" width="18" height="288" fill="#0f0b07"/>${board({ x: 960, y: 120, width: 340, height: 330 }, { tone: 0.3 })}${tape(640, 500, 300, 74)}${arrow(660, 600, -60)}`);

export const beamRoom = (): string =>
  frame(
    `${board({ x: 0, y: 240, width: 1280, height: 120 }, { tone: 0.45 })}${[60, 230, 400, 570, 740, 910, 1080].map((x) => board({ x, y: 60, width: 54, height: 180 }, { tone: 0.35, lengthwise: 'y' })).join('')}${board({ x: 900, y: 360, width: 96, height: 460 }, { tone: 0.5, lengthwise: 'y' })}<rect y="820" width="1280" height="140" fill="#6f6b65"/>${arrow(860, 420, 20)}`,
  );

/** A hanger that is wider than its joist. */
export const wideHanger = (): string =>
  frame(`${board({ x: 0, y: 90, width: 1280, height: 420 }, { tone: 0.35 })}${steel({ x: 500, y: 120, width: 300, height: 420 })}<rect x="540" y="110" width="220" height="400" fill="#0f0b07"/>${board({ x: 560, y: 100, width: 150, height: 396 }, { tone: 0.25, lengthwise: 'y' })}
  ${[170, 270, 370].map((y) => nailHead(520, y) + nailHead(782, y)).join('')}${tape(540, 560, 240, 92)}${arrow(900, 300, 180)}`);

/** Sawn joists and I-joists side by side under one floor. */
export const joistLine = (): string =>
  frame(`<path d="M0 170C200 166 330 150 480 150S800 176 960 172 1200 150 1280 152V120H0z" fill="#b08a57" stroke="#4a3417" stroke-width="3"/>
  ${[60, 380, 700, 1020].map((x) => board({ x, y: 172, width: 84, height: 520 }, { tone: 0.3, lengthwise: 'y' })).join('')}
  ${[220, 860].map((x) => `${board({ x: x - 20, y: 152, width: 130, height: 66 }, { tone: 0.15 })}${board({ x: x + 30, y: 216, width: 28, height: 410 }, { tone: 0.1, lengthwise: 'y' })}${board({ x: x - 20, y: 624, width: 130, height: 66 }, { tone: 0.15 })}`).join('')}
  ${board({ x: 0, y: 694, width: 1280, height: 110 }, { tone: 0.5 })}${tape(200, 830, 900, 88)}`);

/** A beam end that went soft where it touches the masonry. */
export const rottenBeam = (): string =>
  frame(`<rect x="820" width="460" height="960" fill="#8d8a84"/><path d="M820 120H1280M820 300H1280M820 480H1280M820 660H1280M820 840H1280M1000 0V120M1150 120V300M960 300V480M1120 480V660" stroke="#5d5a55" stroke-width="7"/>
  ${board({ x: 0, y: 330, width: 900, height: 300 }, { tone: 0.5 })}<g filter="url(#rot)"><path d="M560 560C640 500 760 470 900 460V640H520z" fill="#1e150d"/><path d="M660 540C740 520 820 500 900 500V600H640z" fill="#4b3a26"/></g>${tape(520, 660, 380, 78)}${arrow(600, 440, 40)}`);

/** A window stool with old paint in scales. */
export function oldPaint(): string {
  const random = randomOf(77);
  const flakes = Array.from({ length: 90 }, () => {
    const [x, y, size] = [random() * 1200 + 40, 560 + random() * 300, 12 + random() * 34];
    return `<path d="M${x} ${y}l${size} ${-size * 0.4}l${size * 0.5} ${size * 0.8}l${-size} ${size * 0.4}z" fill="${random() > 0.5 ? '#8f7a55' : '#5e6f66'}" stroke="#3d3427" stroke-width="2"/>`;
  });
  return frame(
    `<rect x="150" y="40" width="980" height="470" fill="#b7cbd6"/><path d="M640 40V510M150 270H1130" stroke="#dcd9cf" stroke-width="44"/><rect x="110" y="0" width="1060" height="540" fill="none" stroke="#e4e1d6" stroke-width="80"/><rect y="540" width="1280" height="420" fill="#d9d5c7"/>${flakes.join('')}${arrow(420, 720, 0)}`,
    '#cfcabd',
  );
}

export const repairedPlate = (): string =>
  frame(
    `${studs(300, 0.4)}${board({ x: 0, y: 210, width: 1280, height: 92 }, { tone: 0.4 })}${board({ x: 0, y: 116, width: 1280, height: 92 }, { tone: 0.36 })}<rect x="548" width="164" height="960" fill="#e8e6df" stroke="#77746c" stroke-width="4"/>${steel({ x: 270, y: 136, width: 720, height: 62 })}${[300, 350, 400, 450, 790, 840, 890, 940].map((x) => nailHead(x, 166)).join('')}`,
  );
