/** Who may do what: each command, what it does in words, and the roles that may give it. */
import type { CommandName } from '../../shared-types/desk-api.ts'
import type { Role } from '../../shared-types/person.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'

interface Authority {
  /** Completes "A volunteer may not ...". */
  readonly deed: string
  /** `anyone`: also before anybody has signed in. */
  readonly roles: readonly Role[] | 'anyone'
}

const lead = ['lead'] as const
const benchCrew = ['lead', 'sampler'] as const
const crew = ['lead', 'sampler', 'volunteer'] as const
const desk = ['lead', 'volunteer', 'office'] as const

/** The station's division of work. A lead may do everything; nobody is refused without a reason. */
export const authority: Readonly<Record<CommandName, Authority>> = {
  'shelf.open': { deed: 'open a station log', roles: 'anyone' },
  'shelf.shut': { deed: 'put the station log away', roles: 'anyone' },
  'station.setUp': { deed: 'set up a station', roles: 'anyone' },
  'practice.open': { deed: 'open a practice day', roles: 'anyone' },
  'practice.live': { deed: 'practise', roles: 'anyone' },
  'practice.pace': { deed: 'set the pace of a practice', roles: 'anyone' },
  'practice.end': { deed: 'end a practice', roles: 'anyone' },
  'person.signIn': { deed: 'sign in', roles: 'anyone' },
  'person.lock': { deed: 'lock the desk', roles: 'anyone' },
  'person.here': { deed: 'stay signed in', roles: 'anyone' },
  'backup.choose': { deed: 'choose where backups go', roles: lead },
  'backup.stop': { deed: 'stop the backups', roles: lead },
  'backup.now': { deed: 'make a backup', roles: ['lead', 'sampler', 'volunteer', 'office'] },
  'backup.drill': { deed: 'try a backup', roles: ['lead', 'office'] },
  'backup.restore': { deed: 'bring a backup back', roles: 'anyone' },
  'desk.moveOut': { deed: 'move the desk to another laptop', roles: lead },
  'desk.takeOver': { deed: 'take a desk over', roles: 'anyone' },
  'contacts.setPassphrase': { deed: 'set the passphrase of the contacts', roles: lead },
  'contacts.unlock': { deed: 'unlock the contacts', roles: ['lead', 'office'] },
  'contacts.purge': { deed: 'erase contacts', roles: lead },
  'tour.take': { deed: 'be shown round', roles: 'anyone' },
  'light.choose': { deed: 'choose the light', roles: 'anyone' },
  'person.add': { deed: 'add people to the crew', roles: lead },
  'person.change': { deed: 'change a person of the crew', roles: lead },
  'person.setPin': { deed: 'set a PIN', roles: ['lead', 'sampler', 'volunteer', 'office'] },
  'shift.plan': { deed: 'plan shifts', roles: lead },
  'duty.change': { deed: 'change who is on duty', roles: crew },
  'settings.change': { deed: 'change the station settings', roles: lead },
  'day.open': { deed: 'open a day', roles: lead },
  'day.reopen': { deed: 'reopen a closed day', roles: lead },
  'day.close': { deed: 'close the day', roles: lead },
  'clock.accept': { deed: "accept the laptop's clock", roles: lead },
  'animal.checkIn': { deed: 'check animals in', roles: crew },
  'animal.amend': { deed: 'correct an animal', roles: desk },
  'animal.assign': { deed: 'assign animals', roles: benchCrew },
  'animal.putBack': { deed: 'put an animal back in the line', roles: benchCrew },
  'animal.leave': { deed: 'record that a hunter left', roles: crew },
  'wait.tell': { deed: 'tell hunters their wait', roles: crew },
  'suggestion.setAside': { deed: 'set suggestions aside', roles: lead },
  'air.read': { deed: 'record the air temperature', roles: crew },
  'animal.finish': { deed: 'finish an animal', roles: benchCrew },
  'slip.takeBack': {
    deed: 'take back what they did',
    roles: ['lead', 'sampler', 'volunteer', 'office'],
  },
  'kit.open': { deed: 'open a kit on an animal', roles: benchCrew },
  'tissue.check': { deed: 'judge tissue', roles: benchCrew },
  'tissue.miss': { deed: 'record tissue as not taken', roles: benchCrew },
  'bag.seal': { deed: 'seal a bag', roles: benchCrew },
  'bag.discard': { deed: 'discard a bag', roles: benchCrew },
  'bag.place': { deed: 'put bags into a cooler', roles: crew },
  'bag.takeOut': { deed: 'take a bag out of a cooler', roles: benchCrew },
  'kits.move': { deed: 'move kits', roles: crew },
  'kit.spoil': { deed: 'record a spoiled kit', roles: crew },
  'labels.printKits': { deed: 'print kit labels', roles: crew },
  'labels.printBadge': { deed: 'print a badge', roles: crew },
  'labels.goOn': { deed: 'print labels', roles: crew },
  'stock.describe': { deed: 'describe label stocks', roles: crew },
  'stock.retire': { deed: 'take a label stock off the table', roles: crew },
  'printing.choose': { deed: 'choose printers', roles: crew },
  'printing.offset': { deed: 'set up printers', roles: crew },
  'printing.stop': { deed: 'stop the printer', roles: crew },
  'printing.goOn': { deed: 'go on printing', roles: crew },
  'printing.calibrate': { deed: 'set up printers', roles: crew },
  'labels.printCooler': { deed: 'print a cooler label', roles: crew },
  'label.reprint': { deed: 'reprint labels', roles: crew },
  'label.void': { deed: 'void labels', roles: crew },
  'cooler.open': { deed: 'open a cooler', roles: benchCrew },
  'cooler.read': { deed: 'record a temperature', roles: crew },
  'logger.import': { deed: "take in a logger's readings", roles: crew },
  'cooler.seal': { deed: 'seal a cooler', roles: benchCrew },
  'seal.break': { deed: 'break a seal', roles: lead },
  'count.enter': { deed: 'enter counts', roles: crew },
  'count.scan': { deed: 'count coolers', roles: crew },
  'handover.write': { deed: 'write the handover note', roles: lead },
  'variance.explain': { deed: 'explain a variance', roles: lead },
  'station.explain': { deed: 'explain a variance of the station', roles: lead },
  'station.close': { deed: 'close the station', roles: lead },
  'cooler.keep': { deed: 'record how a cooler is kept', roles: crew },
  'handoff.begin': { deed: 'begin a handoff', roles: lead },
  'cooler.scanOut': { deed: 'scan coolers out', roles: crew },
  'handoff.callOff': { deed: 'call a handoff off', roles: lead },
  'merge.begin': { deed: 'merge station logs', roles: 'anyone' },
  'merge.cancel': { deed: 'stop a merge', roles: 'anyone' },
  'office.setUp': { deed: 'set up an office', roles: 'anyone' },
  'coverage.plan': { deed: 'set what coverage is judged by', roles: ['lead', 'office'] },
  'outlines.supply': { deed: 'supply outlines of units', roles: ['lead', 'office'] },
  'discrepancy.settle': { deed: 'settle discrepancies', roles: ['lead', 'office'] },
  'handoff.class': { deed: 'choose how a handoff is classed', roles: lead },
  'handoff.pack': { deed: 'answer the packing checklist', roles: crew },
  'handoff.correct': { deed: 'correct a signed manifest', roles: lead },
  'receipt.count': { deed: 'enter a counter-scan', roles: ['lead', 'office'] },
  'results.bring': { deed: 'bring laboratory files in', roles: ['lead', 'office'] },
  'results.import': { deed: 'read laboratory results in', roles: ['lead', 'office'] },
  'results.settle': { deed: 'settle rows of a laboratory file', roles: ['lead', 'office'] },
  'results.settleAll': { deed: 'settle rows of a laboratory file', roles: ['lead', 'office'] },
  'results.setRules': { deed: 'set the rules for results', roles: ['lead', 'office'] },
  'hunter.tell': { deed: 'record that hunters were told', roles: ['lead', 'office'] },
  'result.followUp': { deed: 'follow a detection up', roles: ['lead', 'office'] },
  'handoff.sign': { deed: 'sign a handoff', roles: lead },
}

/** Whether a role may give a command at all; its own rule may still refuse. */
export function mayGive(role: Role, name: CommandName): boolean {
  const { roles } = authority[name]
  return roles === 'anyone' || roles.includes(role)
}

/** The commands of a role, for screens that mark what is not theirs. */
export function commandsOf(role: Role): CommandName[] {
  return (Object.keys(authority) as CommandName[]).filter((name) => mayGive(role, name))
}

const whoItIs: Record<Role, string> = {
  lead: 'a station lead',
  sampler: 'a sampler',
  volunteer: 'a volunteer',
  office: 'someone of the office',
}

/** Refuses `sign-in-first` or `role-may-not`. */
export function checkAuthority(role: Role | null, name: CommandName): Result<null> {
  const { deed, roles } = authority[name]
  if (roles === 'anyone') return granted(null)
  if (role === null)
    return refused('sign-in-first', 'Nobody is signed in at this window.', 'Sign in with your PIN.')
  if (roles.includes(role)) return granted(null)
  return refused(
    'role-may-not',
    `${capital(whoItIs[role])} may not ${deed}.`,
    `Ask ${roles.map((each) => whoItIs[each]).join(' or ')} to do it, with their own PIN.`,
  )
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
