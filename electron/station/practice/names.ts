/** Invented people. Any likeness is chance. */
import type { Chance } from './random.ts'

const given =
  'Ada Bram Cora Dario Edda Falk Greta Hollis Ines Joren Kaya Lorne Mabel Nils Oona Perry Quinn Runa Soren Tilda Ulla Vance Wren Yorick'.split(
    ' ',
  )
const family =
  'Ashwander Birkemoor Caddowell Dunmarrow Elderquist Fennivar Garrowby Hexwater Illstone Jarnegan Kestermill Lowdray Marrowend Nettlefen Oxmarsh Pellamy Quernfield Rookhaven Saltmarrow Tarnbeck Underlow Vannetson Wickerlane Yarrowdale'.split(
    ' ',
  )

/** A name that others may have too. */
export function inventedName(chance: Chance): string {
  return `${chance.oneOf(given)} ${chance.oneOf(family)}`
}

/** So many different names, at most 576. */
export function inventedCast(chance: Chance, count: number): string[] {
  const all = given.flatMap((first) => family.map((last) => `${first} ${last}`))
  return chance.shuffled(all).slice(0, count)
}
