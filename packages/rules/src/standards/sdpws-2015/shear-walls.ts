import {
  type ShearWallEdition,
  slenderFactor,
  stiffnessShare,
  TWO_COLUMN_ASD_SOURCE,
  TWO_COLUMN_LRFD_SOURCE,
  TWO_COLUMN_SHARE,
  WIDE_FRAMING_SOURCE,
} from '../sdpws-common/edition.ts';
import { PANEL_TABLE_SOURCE } from '../sdpws-common/shear-walls.data.ts';

/** SDPWS 2015: two columns; narrow walls take 1.25 - 0.125 h/b for both loads, or 2b/h where a line shares by capacity. */
export const SDPWS_2015: ShearWallEdition = {
  nominals: (row, load) => (load === 'seismic' ? row.seismicPlf : row.windPlf),
  tableSource: PANEL_TABLE_SOURCE,
  designShare: TWO_COLUMN_SHARE,
  methodSource: { asd: TWO_COLUMN_ASD_SOURCE, lrfd: TWO_COLUMN_LRFD_SOURCE },
  aspectFactor: (aspect, _load, shareByCapacity) => (shareByCapacity ? stiffnessShare(aspect) : slenderFactor(aspect)),
  aspectSource: {
    id: 'sdpws-2015-4.3.4',
    title: 'SDPWS, narrow walls as STRUCTURE magazine of July 2015 sums it up',
    edition: '2015',
    section: '4.3.4, Table 4.3.4',
    basis: 'second-hand',
  },
  wideFraming: { overPlf: 700, source: WIDE_FRAMING_SOURCE },
};
