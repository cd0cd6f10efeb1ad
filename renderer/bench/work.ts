/** What comes next on an animal: shown, not decided; the desk has the last word on each step. */
import type { TissueSite } from '../../shared-types/tissue.ts'
import type { AnimalView, SiteView } from '../../shared-types/views/animal.ts'

export type Stage =
  | { readonly is: 'kit' }
  | { readonly is: 'site'; readonly site: SiteView }
  | { readonly is: 'finish' }
  | { readonly is: 'stopped' }

/** Neither bagged nor said to be missing. */
export function isOpen(site: SiteView): boolean {
  return site.bag === null && site.missed === null
}

/**
 * The step at hand: the site somebody went to, else kit, then each open site, then finish. Where the hunter
 * does not agree any more there is only a bag to discard.
 */
export function stageOf(animal: AnimalView, chosen: TissueSite | null): Stage {
  const site = animal.sites.find((each) => each.site === chosen)
  if (animal.facts.consent === 'refused')
    return site?.bag ? { is: 'site', site } : { is: 'stopped' }
  if (site) return { is: 'site', site }
  const open = animal.sites.find(isOpen)
  if (!open) return { is: 'finish' }
  return animal.kitOpened ? { is: 'site', site: open } : { is: 'kit' }
}
