import { type TissueSite, missedWords, siteWords } from '../../shared-types/tissue.ts'
import type { AnimalView, SiteView } from '../../shared-types/views/animal.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { sentence } from './sentence.ts'

const siteKeys: Record<TissueSite, string> = { left: 'Alt+L', right: 'Alt+R', obex: 'Alt+X' }

/** Every tissue taken here and how it stands; each can be gone back to. */
export function SiteList(props: {
  animal: AnimalView
  now: TissueSite | null
  onGo: (site: TissueSite) => void
}) {
  return (
    <ol className="site-list">
      {props.animal.sites.map((site) => (
        <li key={site.site} aria-current={site.site === props.now ? 'step' : undefined}>
          <Button keyHint={siteKeys[site.site]} onPress={() => props.onGo(site.site)}>
            <span className="site-name">{sentence(siteWords[site.site])}</span>
            <SiteState site={site} isNow={site.site === props.now} />
          </Button>
        </li>
      ))}
    </ol>
  )
}

function SiteState({ site, isNow }: { readonly site: SiteView; readonly isNow: boolean }) {
  if (site.bag) return <Badge shape="fine">sealed</Badge>
  if (isNow) return <Badge shape="soon">now</Badge>
  if (site.missed) return <Badge shape="idle">{missedWords[site.missed.reason]}</Badge>
  return <Badge shape="idle">to take</Badge>
}
