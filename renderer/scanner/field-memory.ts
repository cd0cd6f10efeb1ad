/** Takes a scan's characters back out of the field they happened to land in. */
type TextField = HTMLInputElement | HTMLTextAreaElement

/** Whether keys typed here write text. */
export function isTextField(element: Element | null): element is TextField {
  if (element instanceof HTMLTextAreaElement) return true
  return (
    element instanceof HTMLInputElement &&
    !['radio', 'checkbox', 'button', 'submit', 'range', 'file', 'color'].includes(element.type)
  )
}

/** Remembers a field as it was; the answer puts it back. */
export function remember(element: Element | null): () => void {
  if (!isTextField(element)) return () => {}
  const { value } = element
  return () => write(element, value)
}

/** React listens to `input` and compares with the value it set itself, so the setter below it is used. */
function write(field: TextField, value: string): void {
  if (field.value === value) return
  const prototype =
    field instanceof HTMLTextAreaElement
      ? HTMLTextAreaElement.prototype
      : HTMLInputElement.prototype
  Object.getOwnPropertyDescriptor(prototype, 'value')?.set?.call(field, value)
  field.dispatchEvent(new Event('input', { bubbles: true }))
}
