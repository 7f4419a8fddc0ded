import type { Source } from '../../kernel/index.ts';
import { type ShearWallEdition, slenderFactor, stiffnessShare } from '../sdpws-common/edition.ts';
import { PANEL_TABLE_2021_SOURCE } from '../sdpws-common/shear-walls.data.ts';

const METHOD_SOURCE: Source = {
  id: 'sdpws-2021-4.1.4',
  title: 'SDPWS, nominal to design',
  edition: '2021',
  section: '4.1.4',
  basis: 'second-hand',
};

/** SDPWS 2021: one column v_n; seismic over 2.8, wind over 2.0; LRFD 0.50 and 0.80. */
export const SDPWS_2021: ShearWallEdition = {
  nominals: (row) => row.windPlf,
  tableSource: PANEL_TABLE_2021_SOURCE,
  designShare: { asd: { seismic: 1 / 2.8, wind: 1 / 2 }, lrfd: { seismic: 0.5, wind: 0.8 } },
  methodSource: { asd: METHOD_SOURCE, lrfd: METHOD_SOURCE },
  aspectFactor: (aspect, _load, shareByCapacity) => (shareByCapacity ? stiffnessShare(aspect) : slenderFactor(aspect)),
  aspectSource: {
    id: 'sdpws-2021-4.3.3.2',
    title: 'SDPWS, narrow walls',
    edition: '2021',
    section: '4.3.3.2, 4.3.5.5.1',
    basis: 'second-hand',
  },
  insideHoldDown: {
    factor: 0.92,
    source: {
      id: 'sdpws-2021-4.3a-fn10',
      title: 'SDPWS, 10d nails with the hold-down inside the end post (STRUCTURE magazine)',
      edition: '2021',
      section: 'Table 4.3A footnote 10',
      basis: 'second-hand',
    },
  },
  wideFraming: {
    overPlf: 980,
    source: {
      id: 'sdpws-2021-4.3.7.1',
      title: 'SDPWS, 3x framing at abutting panels',
      edition: '2021',
      section: '4.3.7.1(5)',
      basis: 'second-hand',
    },
  },
};
