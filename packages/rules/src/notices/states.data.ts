import { type Basis, type Source, text } from '../kernel/index.ts';
import type { ContentItem, ContentRule, StateProfile } from './change-content.ts';

/** The day the sources below were last looked at. Most were read as excerpts of stored pages, not in full. */
const CHECKED_ON = '2026-11-25';

const source = (id: string, title: string, section: string, edition: string, basis: Basis): Source => ({
  id,
  title,
  section,
  edition,
  basis,
});
const law = (from: Source, ...anyOf: ContentItem[]): ContentRule => ({ anyOf, weight: 'law', source: from });
const care = (from: Source, ...anyOf: ContentItem[]): ContentRule => ({ anyOf, weight: 'care', source: from });

const THREE_PARTS = source(
  'change-order-three-parts',
  'Note on two common general conditions: a change order is signed agreement on work, price and time',
  'change orders',
  'as read',
  'second-hand',
);
const PRUDENCE = source(
  'change-content-practice',
  'What a careful written change carries',
  'all states',
  'none',
  'common-practice',
);

/** What changes commonly carry, whatever the state. */
export const COMMON_CONTENT: readonly ContentRule[] = [
  care(THREE_PARTS, 'in-writing'),
  care(THREE_PARTS, 'signed-by-all'),
  care(PRUDENCE, 'signed-before-work'),
  care(THREE_PARTS, 'scope'),
  care(THREE_PARTS, 'amount'),
  care(PRUDENCE, 'payment-effect'),
  care(THREE_PARTS, 'finish-effect'),
  care(PRUDENCE, 'copy-to-owner'),
];

const CA_CHANGES = source(
  'ca-bpc-7159.6',
  'California Business and Professions Code',
  '7159.6(a)',
  'as amended 2005',
  'published',
);
const CA_CONTRACTS = source(
  'ca-bpc-7159',
  'California Business and Professions Code, as a courts course and a clause sample quote it',
  '7159(c)(5), (e)(3)',
  'as quoted',
  'second-hand',
);
const NY_CONTRACTS = source(
  'ny-gbl-771',
  'New York General Business Law',
  '771(1)',
  'version of 2021-10-29',
  'published',
);
const PA_CONTRACTS = source(
  'pa-73-ps-517.7',
  'Pennsylvania Home Improvement Consumer Protection Act, 73 P.S.',
  '517.7(a)',
  'text effective 2014-10-22',
  'published',
);
const MA_CONTRACTS = source(
  'ma-142a',
  'Massachusetts General Laws chapter 142A, as the state and a law firm describe it',
  'contract terms',
  'as read',
  'second-hand',
);
const MA_CHANGES = source(
  'ma-142a-changes',
  'Massachusetts chapter 142A: a change taken to need what its contract needs',
  'changes, not found in print',
  'none',
  'memory',
);
const MD_CONTRACTS = source(
  'md-br-8-501',
  'Maryland Business Regulation Article',
  '8-501',
  'effective 2016-07-01',
  'published',
);
const MD_NOTICE = source(
  'md-mhic-notice',
  'Maryland Home Improvement Commission, notice to contractors',
  'contracts',
  'as read',
  'published',
);
const NJ_CHANGES = source(
  'nj-njac-13-45a-16.2',
  'New Jersey Administrative Code, as a law firm describes it',
  '13:45A-16.2',
  'May 2023 note',
  'second-hand',
);

export const STATE_PROFILES: readonly StateProfile[] = [
  {
    state: 'CA',
    name: 'California',
    checkedOn: CHECKED_ON,
    verified: true,
    rules: [
      law(CA_CONTRACTS, 'in-writing'),
      law(CA_CONTRACTS, 'signed-by-all'),
      law(CA_CONTRACTS, 'signed-before-work'),
      law(CA_CHANGES, 'scope'),
      law(CA_CHANGES, 'amount'),
      law(CA_CHANGES, 'payment-effect', 'finish-effect'),
      law(CA_CONTRACTS, 'payment-effect'),
    ],
    notes: [
      text(
        'Section 7159.6 says a change that lacks this is not enforceable against the buyer, and that it does not bar recovery that prevents unjust enrichment.',
        'La sección 7159.6 dice que un cambio sin esto no se puede hacer valer contra el comprador, y que eso no impide recuperar lo que evita un enriquecimiento injusto.',
      ),
      text(
        'A down payment may be at most $1,000 or 10%, whichever is less (7159(d)(8)(C), as quoted); a change is no way around it.',
        'El pago inicial puede ser de $1,000 o 10%, lo que sea menos (7159(d)(8)(C), según se cita); un cambio no sirve para evitarlo.',
      ),
    ],
  },
  {
    state: 'NY',
    name: 'New York',
    checkedOn: CHECKED_ON,
    verified: true,
    rules: [law(NY_CONTRACTS, 'in-writing'), law(NY_CONTRACTS, 'signed-by-all')],
    notes: [
      text(
        'Section 771 names dates, work, materials and price for the contract, and asks for a writing signed by all parties for every amendment.',
        'La sección 771 nombra fechas, trabajo, materiales y precio para el contrato, y pide un escrito firmado por todas las partes para cada enmienda.',
      ),
    ],
  },
  {
    state: 'PA',
    name: 'Pennsylvania',
    checkedOn: CHECKED_ON,
    verified: true,
    rules: [
      law(PA_CONTRACTS, 'in-writing'),
      law(PA_CONTRACTS, 'signed-by-all'),
      law(PA_CONTRACTS, 'scope'),
      law(PA_CONTRACTS, 'amount'),
    ],
    notes: [
      text(
        'Work by time and material: the total may not pass the written estimate by more than 10% without a signed change order (as the attorney general describes it).',
        'Trabajo por tiempo y material: el total no puede pasar el estimado escrito en más de 10% sin una orden de cambio firmada (según lo describe el fiscal general).',
      ),
    ],
  },
  {
    state: 'MA',
    name: 'Massachusetts',
    checkedOn: CHECKED_ON,
    verified: false,
    rules: [
      care(MA_CHANGES, 'in-writing'),
      care(MA_CHANGES, 'signed-by-all'),
      care(MA_CONTRACTS, 'signed-before-work'),
      care(MA_CHANGES, 'scope'),
      care(MA_CHANGES, 'amount'),
      care(MA_CHANGES, 'payment-effect'),
    ],
    notes: [],
  },
  {
    state: 'MD',
    name: 'Maryland',
    checkedOn: CHECKED_ON,
    verified: false,
    rules: [
      care(MD_CONTRACTS, 'in-writing'),
      care(MD_CONTRACTS, 'signed-by-all'),
      care(MD_CONTRACTS, 'scope'),
      care(MD_CONTRACTS, 'amount'),
      care(MD_CONTRACTS, 'finish-effect'),
      care(MD_NOTICE, 'copy-to-owner'),
    ],
    notes: [],
  },
  {
    state: 'NJ',
    name: 'New Jersey',
    checkedOn: CHECKED_ON,
    verified: true,
    rules: [law(NJ_CHANGES, 'in-writing')],
    notes: [
      text(
        'For contracts over $500, changes too must be in writing; the consumer fraud law may triple damages and add fees.',
        'En contratos de más de $500, también los cambios deben estar por escrito; la ley de fraude al consumidor puede triplicar los daños y sumar honorarios.',
      ),
    ],
  },
];
