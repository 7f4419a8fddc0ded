import type {
  EstimateContent,
  FindingContext,
  KeptLink,
  KeptSegment,
  LocationKind,
  PhotoStage,
  Rectangle,
  Role,
  StoredLoadPath,
} from '@underlath/contract';
import type { PictureName } from './pictures/scenes.ts';

// Everyone and everything in the stories is invented: people, companies, houses, prices. Addresses end in .example, which
// no one can own (RFC 2606).

/** So many days before today, and the time at the house. */
export interface When {
  readonly daysAgo: number;
  readonly time: string;
}
export const at = (daysAgo: number, time: string): When => ({ daysAgo, time });

export interface DemoPerson {
  readonly role: Role;
  readonly name: string;
  readonly email: string;
  readonly password: string;
}

export interface DemoProject {
  readonly name: string;
  readonly siteAddress: string;
  readonly clientName: string;
  readonly clientEmail: string;
  readonly yearBuilt: number;
  readonly stories: number;
  readonly originalSumCents: number;
  readonly originalDays: number;
  readonly contingencyCents: number;
}

/** The payments make up the original sum; ids are given when they are written. */
export interface DemoTerms {
  readonly retainagePct: number;
  readonly noticeDays: number;
  readonly dayOffDaysAgo: number;
  readonly payments: readonly { readonly key: string; readonly name: string; readonly cents: number }[];
}

export type DemoEntry = { readonly name: string; readonly daysAgo: number } & (
  | { readonly kind: 'payment'; readonly cents: number; readonly settles: string }
  | { readonly kind: 'completed'; readonly cents: number }
  /** All that is still to be done and paid, the changes with it. */
  | { readonly kind: 'rest' }
  | {
      readonly kind: 'allowance';
      readonly allowedCents: number;
      readonly spentCents: number;
      readonly overheadProfitPct: number;
    }
);

export interface DemoPlace {
  readonly key: string;
  readonly in?: string;
  readonly kind: LocationKind;
  readonly name: string;
  readonly widthIn?: number;
  readonly heightIn?: number;
  readonly framingSpacingIn?: number;
  readonly memberDepthIn?: number;
  readonly storiesAbove?: number;
  readonly openings?: (Rectangle & { name: string })[];
}

export interface DemoPhoto {
  readonly picture: PictureName;
  readonly caption: string;
  readonly stage: PhotoStage;
}
export const found = (picture: PictureName, caption: string): DemoPhoto => ({ picture, caption, stage: 'found' });

export interface DemoFinding {
  readonly key: string;
  readonly place: string;
  readonly checkId: string;
  readonly title: string;
  readonly note: string;
  readonly seen: When;
  readonly extent: Rectangle;
  readonly inputs: Record<string, unknown>;
  readonly context?: FindingContext;
  readonly photos: readonly DemoPhoto[];
  /** False: it stays judged, without a price. */
  readonly priced?: boolean;
  /** What the estimator typed beside the suggested repair. */
  readonly byHand?: Partial<Omit<EstimateContent, 'choices'>>;
  readonly repaired?: DemoRepair;
}

/** What was done about it, what it took, and, where it was measured again, what was measured then. */
export interface DemoRepair {
  readonly on: When;
  readonly photos: readonly DemoPhoto[];
  readonly took: readonly { operation: string; quantity: number; hours: number; costCents: number; note: string }[];
  readonly measuredAgain?: { readonly on: When; readonly inputs: Record<string, unknown> };
}

/** Notices that went out by another way than from here; a finding that none names still waits for its own. */
export interface DemoNotice {
  readonly findings: readonly string[];
  readonly on: When;
  readonly method: 'letter' | 'in-person';
  readonly text: string;
}

/** A change order: made, and as far as the story goes sent, asked about and answered. */
export interface DemoOrder {
  readonly findings: readonly string[];
  readonly made: When;
  readonly headline: { readonly en: string; readonly es: string };
  readonly sent?: When;
  readonly question?: { readonly on: When; readonly text: string };
  readonly reply?: { readonly on: When; readonly text: string };
  /** `only`: the findings that are approved, where not all of them are. */
  readonly approved?: { readonly on: When; readonly only?: readonly string[]; readonly reason?: string };
}

type DemoLink = Pick<KeptLink, 'name' | 'role' | 'state'> &
  Partial<Omit<KeptLink, 'findingIds' | 'photoId'>> & {
    /** Keys of its findings. */
    readonly findings?: readonly string[];
    /** The finding whose first photo shows it sound. */
    readonly photoOf?: string;
  };

export interface DemoLoadPath extends Pick<StoredLoadPath, 'name' | 'kind' | 'demandLb' | 'capacitiesFrom'> {
  readonly place: string;
  readonly drawn: When;
  readonly segments: readonly (Omit<KeptSegment, 'links'> & { readonly links: readonly DemoLink[] })[];
}

/** One house from the contract on, told in what happened on which day. */
export interface Story {
  readonly project: DemoProject;
  readonly startDaysAgo: number;
  readonly terms: DemoTerms;
  readonly entries: readonly DemoEntry[];
  readonly places: readonly DemoPlace[];
  readonly findings: readonly DemoFinding[];
  readonly loadPaths: readonly DemoLoadPath[];
  readonly notices: readonly DemoNotice[];
  readonly orders: readonly DemoOrder[];
}

export const company = {
  name: 'Kestle & Wrayburn Remodeling',
  details: {
    licenseNumber: 'INVENTED-2291',
    phone: '(555) 010-0187',
    email: 'office@kestlewrayburn.example',
    address: '3 Sail Loft Yard, Corran Landing, NY 00000',
    state: 'NY',
  },
};
/** The company began here before the first of its two stories. */
export const companySince = at(121, '09:00:00');

export const owner: DemoPerson = {
  role: 'owner',
  name: 'Sunniva Kestle',
  email: 'sunniva@kestlewrayburn.example',
  password: 'caulk the seams before rain',
};
export const estimator: DemoPerson = {
  role: 'estimator',
  name: 'Idris Wrayburn',
  email: 'idris@kestlewrayburn.example',
  password: 'story pole against the jamb',
};
export const crew: DemoPerson = {
  role: 'crew',
  name: 'Lázaro Mendibil',
  email: 'lazaro@kestlewrayburn.example',
  password: 'one pencil behind each ear',
};
