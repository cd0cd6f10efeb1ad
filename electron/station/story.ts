/** What an entry says, in one plain sentence: the lines of an animal's story and of an export. */
import { ageWords, noSampleWords, outcomeWords, speciesWords } from '../../shared-types/animal.ts'
import { varianceWords } from '../../shared-types/close.ts'
import { keptByWords } from '../../shared-types/cooler.ts'
import { discrepancyWords, settleWords } from '../../shared-types/discrepancy.ts'
import type { KnownEntry } from '../../shared-types/entry.ts'
import { followUpWords, resultWords, toldByWords } from '../../shared-types/laboratory-result.ts'
import { voidWords } from '../../shared-types/label.ts'
import { stockWords } from '../../shared-types/label-stock.ts'
import { roleWords } from '../../shared-types/person.ts'
import { unreachable } from '../../shared-types/result.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import { keepingWords } from '../../shared-types/station.ts'
import { checkWords, keptWords, missedWords, siteWords } from '../../shared-types/tissue.ts'
import { transportWords } from '../../shared-types/transport.ts'
import { accountWords } from './kit-ledger.ts'
import { itemWords } from './reconcile.ts'
import { stationItemWords } from './station-close.ts'

/** `nameOf` gives the name of a person or cooler for its number. */
export function sayEntry(entry: KnownEntry, nameOf: (number: string) => string): string {
  const { kind, body } = entry
  switch (kind) {
    case 'station.set-up':
      return `Station ${body.name} set up${body.practice ? ' for practice' : ''}.`
    case 'office.set-up':
      return `Office ${body.name} took up the merged log.`
    case 'settings.changed':
      return 'Station settings changed.'
    case 'clock.accepted':
      return 'Clock accepted although the log had a later time.'
    case 'desk.moved-out':
      return 'Desk handed over to another laptop.'
    case 'desk.taken-over':
      return body.was === 'moved'
        ? `Desk taken up again after a move${because(body.reason)}.`
        : `Desk taken over from a lost laptop${because(body.reason)}.`
    case 'contacts.passphrase-set':
      return 'Passphrase set for the contacts.'
    case 'contacts.purged':
      return `${several(body.contacts, 'contact')} up to ${body.upTo} erased.`
    case 'person.added':
      return `${body.name} joined the crew as ${roleWords[body.role]}.`
    case 'person.changed':
      return `${body.name}: ${body.active ? roleWords[body.role] : 'no longer works here'}.`
    case 'pin.set':
      return `PIN set for ${nameOf(body.person)}.`
    case 'person.signed-in':
      return `${nameOf(body.person)} signed in.`
    case 'shift.planned':
      return `Shift of ${nameOf(body.person)} on ${body.date}: ${body.from} to ${body.to}.`
    case 'duty.changed':
      return `${nameOf(body.person)} is ${body.duty === 'on' ? 'on duty' : body.duty === 'break' ? 'on a break' : 'off duty'}.`
    case 'day.opened':
      return `Day ${body.date} opened with ${several(body.kits, 'kit')} and ${several(body.blankLabels, 'blank label')} delivered.`
    case 'day.closed':
      return `Day ${body.date} closed by ${nameOf(body.lead)}${body.second ? ` and ${nameOf(body.second)}` : ` alone${because(body.aloneBecause)}`}.`
    case 'day.reopened':
      return `Day ${body.date} reopened: ${body.reason}.`
    case 'station.variance-explained':
      return `Station ${body.station}, ${stationItemWords(body.item, nameOf)}: variance of ${signed(body.counted - body.expected)} explained: ${varianceWords[body.reason]}${because(body.words)}.`
    case 'station.closed':
      return `Station ${body.station} closed for ${body.date} over ${several(body.desks.length, 'desk')} by ${nameOf(body.lead)}${body.second ? ` and ${nameOf(body.second)}` : ` alone${because(body.aloneBecause)}`}.`
    case 'handover.written':
      return `Handover note of ${body.date}: “${body.words}”.`
    case 'kits.moved':
      return `${several(body.count, 'kit')} moved: ${accountWords(body.from, nameOf)} → ${accountWords(body.to, nameOf)}${because(body.reason)}.`
    case 'kit.numbered':
      return `Labels of kit ${grouped(body.kit)} printed${body.animal ? ' for this animal' : ', reserved'}.`
    case 'kit.brought':
      return `Kit ${grouped(body.kit)} of another desk brought here.`
    case 'kit.opened':
      return `Kit ${grouped(body.kit)} opened by ${nameOf(body.sampler)}.`
    case 'kit.spoiled':
      return `Kit ${grouped(body.kit)} spoiled: ${body.reason}.`
    case 'labels.printed':
      return `${several(body.labels.length, 'label')} printed.`
    case 'labels.resumed':
      return `Printing went on ${body.last ? `after label ${grouped(body.last)}` : 'from the first label'}${body.ruined === 0 ? '' : `; ${several(body.ruined, 'label')} came out ruined`}.`
    case 'stock.described':
      return `Label stock: ${stockWords(body.stock)}.`
    case 'stock.retired':
      return `Label stock no longer used: ${stockWords(body.stock)}.`
    case 'label.voided':
      return `Label ${grouped(body.number)}, copy ${body.copy}, void: ${voidWords[body.reason]}${because(body.words)}.`
    case 'animal.checked-in':
      return `Checked in: ${speciesWords[body.facts.species]}, ${body.facts.sex}, ${ageWords[body.facts.age]}${body.noSample ? `; not to be sampled: ${noSampleWords[body.noSample]}` : ''}.`
    case 'animal.amended':
      return `Facts corrected: ${body.reason}.`
    case 'animal.assigned':
      return `Assigned to ${nameOf(body.sampler)}.`
    case 'animal.put-back':
      return `Put back in the line: ${body.reason}.`
    case 'animal.left':
      return `Hunter left: ${body.reason}.`
    case 'animal.struck-out':
      return 'Check-in struck out: it was a slip.'
    case 'animal.finished':
      return `Finished by ${nameOf(body.sampler)}: ${outcomeWords[body.outcome]}.`
    case 'animal.outcome-changed':
      return `Outcome is now ${outcomeWords[body.outcome]}, after a bag was discarded.`
    case 'wait.told':
      return `Hunter told a wait of ${body.lowMinutes} to ${body.highMinutes} minutes.`
    case 'suggestion.overridden':
      return body.instead === null
        ? `Suggestion for ${nameOf(body.sampler)} set aside.`
        : `Suggested to ${nameOf(body.sampler)}, who was given animal ${grouped(body.instead)} instead.`
    case 'air.read':
      return `Air at the line read at ${body.celsius} °C.`
    case 'tissue.checked':
      return `${capital(siteWords[body.site])} looked at: ${checkWords[body.check]}${body.sizeMm === null ? '' : `, ${body.sizeMm} mm`}.`
    case 'tissue.missed':
      return `${capital(siteWords[body.site])} not taken: ${missedWords[body.reason]}${because(body.words)}.`
    case 'tissue.reopened':
      return `${capital(siteWords[body.site])} open again: what was recorded was a slip.`
    case 'bag.sealed':
      return `${capital(siteWords[body.site])} sealed in bag ${grouped(body.bag)}, ${keptWords[body.kept]}.`
    case 'bag.discarded':
      return `Bag ${grouped(body.bag)} discarded: ${body.reason}.`
    case 'bag.placed':
      return `Bag ${grouped(body.bag)} put into cooler ${nameOf(body.cooler)}.`
    case 'bag.taken-out':
      return `Bag ${grouped(body.bag)} taken out of cooler ${nameOf(body.cooler)}: ${body.reason}.`
    case 'cooler.opened':
      return `Cooler ${body.name} opened, kept ${keepingWords[body.keeping]}.`
    case 'cooler.read':
      return `Cooler ${nameOf(body.cooler)} read at ${body.celsius} °C${body.excursion ? ', outside its limits' : ''}.`
    case 'cooler.logger-read':
      return `Cooler ${nameOf(body.cooler)}: ${several(body.readings.length, 'reading')} of a logger taken in from ${body.file}.`
    case 'cooler.kept':
      return `Cooler ${nameOf(body.cooler)} kept ${keptByWords[body.kept]}: ${body.where}.`
    case 'cooler.sealed':
      return `Cooler ${nameOf(body.cooler)} sealed with ${body.seal}, ${several(body.bags, 'bag')} inside.`
    case 'seal.broken':
      return `Seal ${body.seal} of cooler ${nameOf(body.cooler)} broken: ${body.reason}.`
    case 'count.entered':
      return `${itemWords(body.item, nameOf)}: ${body.counted} counted.`
    case 'variance.explained':
      return `${itemWords(body.item, nameOf)}: variance of ${signed(body.counted - body.expected)} explained: ${varianceWords[body.reason]}${because(body.words)}.`
    case 'handoff.begun':
      return `Handoff ${grouped(body.handoff)} begun for ${body.destination}.`
    case 'cooler.scanned-out':
      return `Cooler ${nameOf(body.cooler)} scanned out: seal ${body.seal}, ${several(body.counted, 'bag')}, ${body.celsius} °C.`
    case 'handoff.called-off':
      return `Handoff ${grouped(body.handoff)} called off: ${body.reason}.`
    case 'handoff.signed':
      return `Handoff ${grouped(body.handoff)} signed: ${several(body.manifest.bags, 'bag')} given to ${body.manifest.courier.name}.`
    case 'handoff.classed':
      return `Handoff ${grouped(body.handoff)} classed with ${body.agreedWith}: ${transportWords[body.transport]}.`
    case 'handoff.packed':
      return `Packing of handoff ${grouped(body.handoff)}: ${several(body.answers.length, 'step')} answered${because(body.words)}.`
    case 'handoff.corrected':
      return `Manifest ${grouped(body.handoff)} corrected${because(body.manifest.corrections.at(-1)?.reason ?? '')}.`
    case 'receipt.counted':
      return `Handoff ${grouped(body.handoff)} counted by ${body.receivedBy}: ${several(body.bags.length, 'bag')}.`
    case 'slip.taken-back':
      return `Taken back within a minute: entry ${body.seq} of desk ${body.desk}.`
    case 'coverage.planned':
      return 'What coverage is judged by was set.'
    case 'outline.supplied':
      return `Outline of unit ${body.unit} supplied.`
    case 'discrepancy.settled':
      return `${discrepancyWords[body.kind]}: ${settleWords[body.choice]}${because(body.words)}.`
    case 'results.read':
      return `Results of ${body.laboratory} read in from ${body.file}: ${body.taken} taken, ${body.known} known, ${body.doubts.length} in doubt.`
    case 'results.row-settled':
      return `Line ${body.line} of a laboratory file ${body.settlement === 'taken' ? 'taken' : 'left out'}${because(body.words)}.`
    case 'results.rules-set':
      return 'Rules for results set.'
    case 'result.reported':
      return `Bag ${grouped(body.bag)}: ${resultWords[body.word]}${body.method === '' ? '' : ` by ${body.method}`}${body.tested === null ? '' : ` on ${body.tested}`}, ${body.laboratory}.`
    case 'result.followed-up':
      return `${followUpWords[body.step]}${because(body.words)}.`
    case 'hunter.told':
      return `Hunter told “${resultWords[body.word]}” ${toldByWords[body.how]} on ${body.on}${because(body.words)}.`
    default:
      return unreachable(kind)
  }
}

function because(words: string): string {
  return words === '' ? '' : ` (${words})`
}

function several(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`
}

function signed(variance: number): string {
  return variance < 0 ? `−${-variance}` : `+${variance}`
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
