import {
  type ShearWallEdition,
  stiffnessShare,
  TWO_COLUMN_ASD_SOURCE,
  TWO_COLUMN_LRFD_SOURCE,
  TWO_COLUMN_SHARE,
  WIDE_FRAMING_SOURCE,
} from '../sdpws-common/edition.ts';
import { PANEL_TABLE_SOURCE } from '../sdpws-common/shear-walls.data.ts';

/** SDPWS 2008: two columns, and 2b/h for seismic loads only. */
export const SDPWS_2008: ShearWallEdition = {
  nominals: (row, load) => (load === 'seismic' ? row.seismicPlf : row.windPlf),
  tableSource: PANEL_TABLE_SOURCE,
  designShare: TWO_COLUMN_SHARE,
  methodSource: { asd: TWO_COLUMN_ASD_SOURCE, lrfd: TWO_COLUMN_LRFD_SOURCE },
  aspectFactor: (aspect, load) => (load === 'seismic' ? stiffnessShare(aspect) : 1),
  aspectSource: {
    id: 'sdpws-2008-4.3.4.1',
    title: 'SDPWS, 2b/h for narrow walls, seismic only',
    edition: '2008',
    section: '4.3.4.1',
    basis: 'memory',
  },
  wideFraming: { overPlf: 700, source: WIDE_FRAMING_SOURCE },
};
