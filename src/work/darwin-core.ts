// The room as a Darwin Core archive.
import {summaryOf} from '../climate/course-summary.ts';
import {daySummaries} from '../climate/day-summaries.ts';
import type {LivedWarmth} from '../exchange/darwin-core/facts.ts';
import {type LicenceName, licences} from '../exchange/darwin-core/licences.ts';
import {writeOutput} from '../exchange/output-file.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {coursesOf} from './courses.ts';
import {type Desk, openDesk} from './desk.ts';
import type {Session} from './session.ts';

export interface ArchiveWishes {
  /** Default: what is reared, and in which room. */
  readonly title?: string | undefined;
  /** Who answers for the data. Default: who asks. */
  readonly creator?: string | undefined;
  readonly email?: string | undefined;
  readonly licence?: LicenceName | undefined;
}

/** As `teneral export darwin-core` answers. */
export interface ArchiveAnswer {
  readonly file: string;
  readonly rows: Readonly<Record<string, number>>;
  readonly licence: LicenceName | null;
}

/** @throws Refusal where the file cannot be written */
export async function exportDarwinCore(
  session: Session,
  file: string,
  {title, creator = session.by, email, licence}: ArchiveWishes,
): Promise<ArchiveAnswer> {
  const desk = await openDesk(session, 'all');
  const {state, civil, now, room} = desk;
  const [{identifiersIn}, {darwinCoreArchive}] = await Promise.all([
    import('../exchange/darwin-core/identifiers.ts'),
    import('../exchange/darwin-core/archive.ts'),
  ]);
  const idOf = identifiersIn(room, state.history[0]);
  const warmth = await warmthOfLots(desk);
  const facts = {state, civil, idOf, warmth, licence: licence && licences[licence].url};
  const dataset = {
    id: idOf({kind: 'dataset'}),
    title: title ?? `Insects and arachnids reared in ${room.name}`,
    creator,
    email,
    licence,
    day: civil.dayOf(now),
    samples: [...state.samples.values()],
  };
  const {bytes, rows} = darwinCoreArchive(facts, dataset, now);
  await writeOutput([{path: file, content: bytes}], async () => {});
  return {file, rows, licence: licence ?? null};
}

/** The temperature that every lot lived through; nothing for one of which none is known. */
async function warmthOfLots(desk: Desk): Promise<Map<string, LivedWarmth>> {
  const {state, now} = desk;
  const lots = [...state.lots.values()];
  const warmth = new Map<string, LivedWarmth>();
  for (const {code, stays, startedAt, closed} of lots) {
    const [fromDays, toDays] = [startedAt / MS_PER_DAY, (closed?.at ?? now) / MS_PER_DAY];
    if (toDays <= fromDays) continue;
    const span = {fromDays, nowDays: toDays, toDays};
    const course = await coursesOf(desk, fromDays)(stays, span);
    const [lived] = daySummaries(course, [fromDays, toDays]);
    if (lived?.minimumC == null || lived.meanC === null || lived.maximumC === null) continue;
    const {minimumC, meanC, maximumC} = lived;
    warmth.set(code, {minimumC, meanC, maximumC, basis: summaryOf(course, toDays).basis});
  }
  return warmth;
}
