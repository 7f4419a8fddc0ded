import type { Source } from '../../kernel/index.ts';
import type { Grade, PanelNail, Thickness } from '../sdpws-common/shear-walls.data.ts';

export const IBC_PANEL_SOURCE: Source = {
  id: 'ibc-2306.3',
  title: 'IBC allowable shear of panel walls (780 CMR text; APA B360P 2011 Table 29)',
  edition: 'before the 40% wind increase',
  section: 'Table 2306.3',
  basis: 'published',
};

type IbcRow = readonly [Grade, Thickness, PanelNail, readonly [number, number, number, number]];

/** Allowable shear, plf, at edge nails 6, 4, 3 and 2 in: the same tests as SDPWS 4.3A, printed on its own. */
export const IBC_PANEL_ROWS: readonly IbcRow[] = [
  ['structural-1', '3/8', '8d', [230, 360, 460, 610]],
  ['structural-1', '7/16', '8d', [255, 395, 505, 670]],
  ['structural-1', '15/32', '8d', [280, 430, 550, 730]],
  ['structural-1', '15/32', '10d', [340, 510, 665, 870]],
  ['sheathing', '5/16', '6d', [180, 270, 350, 450]],
  ['sheathing', '3/8', '6d', [200, 300, 390, 510]],
  ['sheathing', '3/8', '8d', [220, 320, 410, 530]],
  ['sheathing', '7/16', '8d', [240, 350, 450, 585]],
  ['sheathing', '15/32', '8d', [260, 380, 490, 640]],
  ['sheathing', '15/32', '10d', [310, 460, 600, 770]],
  ['sheathing', '19/32', '10d', [340, 510, 665, 870]],
];
