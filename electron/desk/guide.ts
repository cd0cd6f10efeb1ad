/** The one-page guide of a role, for the wall of the tent. */
import { type GuideFor, guides } from '../../shared-types/help/guides.ts'
import { granted } from '../../shared-types/result.ts'
import type { PdfFile } from '../../shared-types/views/common.ts'
import { writeGuide } from '../print/guide.ts'
import type { QueryHandlers } from './call.ts'
import { paperOf, pdfFile } from './pdf.ts'

/** The paper is that of a station's part of the world. */
export async function guideFile(role: GuideFor, zone: string, now: number): Promise<PdfFile> {
  return pdfFile(`guide-${role}.pdf`, await writeGuide(guides[role], paperOf(zone), now))
}

export const guideQueries = {
  guide: async ({ station, now }, { role }) => granted(await guideFile(role, station.zone, now)),
} satisfies Partial<QueryHandlers>
