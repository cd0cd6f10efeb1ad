/** A refusal told where it belongs: at the field at fault, or above the button when no field is. */
import type { Refusal } from '../../shared-types/result.ts'

/** What a field shows of a refusal: only its own. */
export function saidAt(refusal: Refusal | undefined, field: string): string | undefined {
  return refusal?.field === field ? `${refusal.say} ${refusal.next}` : undefined
}

/** What is left to show of a refusal where `fields` show their own. */
export function saidElsewhere(
  refusal: Refusal | undefined,
  fields: readonly string[],
): Refusal | undefined {
  return refusal?.field !== undefined && fields.includes(refusal.field) ? undefined : refusal
}
