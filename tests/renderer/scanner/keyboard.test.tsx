import { act, fireEvent, render, screen } from '@testing-library/react'
import { useState } from 'react'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { Button } from '../../../renderer/parts/button.tsx'
import { Choice } from '../../../renderer/parts/choice.tsx'
import { NumberEntry } from '../../../renderer/parts/number-entry.tsx'
import { Panel } from '../../../renderer/parts/panel.tsx'
import { TextEntry } from '../../../renderer/parts/text-entry.tsx'
import { listenToKeyboard } from '../../../renderer/scanner/keyboard.ts'
import { ScanStrip } from '../../../renderer/scanner/scan-strip.tsx'
import { useScan, useScanFallback } from '../../../renderer/scanner/scans.ts'
import { sayDone, sayRefused } from '../../../renderer/scanner/strip.ts'

let stop: () => void
beforeEach(() => {
  vi.useFakeTimers()
  stop = listenToKeyboard()
})
afterEach(() => {
  stop()
  vi.useRealTimers()
})

/** One key on whatever has the focus, `at` milliseconds; a text field takes the character. */
function key(name: string, at: number): void {
  const target = document.activeElement ?? document.body
  const event = new KeyboardEvent('keydown', { key: name, bubbles: true, cancelable: true })
  Object.defineProperty(event, 'timeStamp', { value: at })
  fireEvent(target, event)
  if (event.defaultPrevented || name.length > 1 || !(target instanceof HTMLInputElement)) return
  fireEvent.change(target, { target: { value: target.value + name } })
}

function keys(text: string, start: number, gap: number): void {
  for (const [place, name] of [...text].entries()) key(name, start + place * gap)
  key('Enter', start + text.length * gap)
}

const label = '26KRVA0042L7'

function Desk(props: { onScan: (text: string) => void; onEnter: () => void; takesScan?: boolean }) {
  const [text, setText] = useState('')
  useScan(props.onScan)
  return (
    <TextEntry
      label="Tag"
      autoFocus
      takesScan={props.takesScan}
      value={text}
      onChange={setText}
      onEnter={props.onEnter}
    />
  )
}

test('a scan is handed over whole, and the field it landed in is as the person left it', () => {
  const onScan = vi.fn()
  const onEnter = vi.fn()
  render(<Desk onScan={onScan} onEnter={onEnter} />)
  key('T', 0)
  key('4', 200)
  keys(label, 1000, 4)
  expect(onScan).toHaveBeenCalledExactlyOnceWith(label)
  expect(screen.getByLabelText<HTMLInputElement>('Tag').value).toBe('T4')
  expect(onEnter).not.toHaveBeenCalled()
})

test('a real label that comes in pieces is handed over whole, and leaves no piece in the field', () => {
  const onScan = vi.fn()
  render(<Desk onScan={onScan} onEnter={() => {}} />)
  const real: string = '26KRVA0042KN'
  for (const [place, name] of [...real].entries())
    key(name, 1000 + place * 4 + (place > 3 ? 60 : 0))
  key('Enter', 1000 + 12 * 4 + 60)
  expect(onScan).toHaveBeenCalledExactlyOnceWith(real)
  expect(screen.getByLabelText<HTMLInputElement>('Tag').value).toBe('')
})

/** The first characters of a label, a long pause, and the rest with its Enter. */
function brokenScan(): void {
  const [before, after] = ['26KRVA00'.split(''), '42KN'.split('')]
  for (const [place, name] of before.entries()) key(name, 1000 + place * 4)
  for (const [place, name] of after.entries()) key(name, 1400 + place * 4)
  key('Enter', 1416)
}

test('a scan that a pause breaks where no field has the focus is told, and presses nothing', () => {
  const onPress = vi.fn()
  const onScan = vi.fn()
  render(
    <>
      <Fallback onScan={onScan} />
      <Panel title="Line">
        <Button autoFocus onPress={onPress}>
          Second
        </Button>
      </Panel>
      <ScanStrip />
    </>,
  )
  act(brokenScan)
  expect(screen.getByRole('alert').textContent).toContain('That scan came in pieces')
  expect(screen.getByRole('alert').textContent).toContain('Scan it again.')
  expect(onScan).not.toHaveBeenCalled()
  expect(onPress).not.toHaveBeenCalled()
})

test('broken in a field, its characters are there to see, and Enter is the field’s own', () => {
  const onEnter = vi.fn()
  render(<Desk onScan={() => {}} onEnter={onEnter} />)
  brokenScan()
  expect(screen.getByLabelText<HTMLInputElement>('Tag').value).toBe('26KRVA0042KN')
  expect(onEnter).toHaveBeenCalledOnce()
})

test('typing by hand is left alone, Enter included', () => {
  const onScan = vi.fn()
  const onEnter = vi.fn()
  render(<Desk onScan={onScan} onEnter={onEnter} />)
  keys('T-20001', 0, 90)
  expect(onScan).not.toHaveBeenCalled()
  expect(onEnter).toHaveBeenCalledOnce()
  expect(screen.getByLabelText<HTMLInputElement>('Tag').value).toBe('T-20001')
})

test('a field for foreign barcodes keeps a tag that is scanned, but not one of our labels', async () => {
  // A label with a right check character, made by the numbering itself.
  const { DeskId, bagNumber } = await import('../../../shared-types/sample-number.ts')
  const ours = bagNumber(DeskId.parse('26KRVA'), 42, 'L')
  const onScan = vi.fn()
  render(<Desk onScan={onScan} onEnter={() => {}} takesScan />)
  keys('WY20260815', 0, 4)
  expect(screen.getByLabelText<HTMLInputElement>('Tag').value).toBe('WY20260815')
  expect(onScan).not.toHaveBeenCalled()
  keys(ours, 5000, 4)
  expect(screen.getByLabelText<HTMLInputElement>('Tag').value).toBe('WY20260815')
  expect(onScan).toHaveBeenCalledExactlyOnceWith(ours)
})

function Fallback(props: { onScan: (text: string) => void }) {
  useScanFallback(props.onScan)
  return null
}

function Picky() {
  useScan(() => 'not-mine')
  return null
}

test('a scan that the screen does not know goes to the window, which says what it is', () => {
  const onScan = vi.fn()
  render(
    <>
      <Picky />
      <Fallback onScan={onScan} />
    </>,
  )
  keys(label, 0, 4)
  expect(onScan).toHaveBeenCalledExactlyOnceWith(label)
})

test('a single key presses its button only while the focus is in the same panel', () => {
  const onPress = vi.fn()
  render(
    <>
      <Panel title="Line">
        <Button keyHint="s" onPress={onPress}>
          Story
        </Button>
        <button type="button">row</button>
      </Panel>
      <button type="button">elsewhere</button>
    </>,
  )
  screen.getByText('elsewhere').focus()
  key('s', 0)
  vi.advanceTimersByTime(100)
  expect(onPress).not.toHaveBeenCalled()
  screen.getByText('row').focus()
  key('s', 1000)
  vi.advanceTimersByTime(100)
  expect(onPress).toHaveBeenCalledOnce()
})

test('the characters of a scan press no single keys on their way', () => {
  const onPress = vi.fn()
  const onScan = vi.fn()
  render(
    <>
      <Fallback onScan={onScan} />
      <Panel title="Line">
        <Button keyHint="2" autoFocus onPress={onPress}>
          Second
        </Button>
      </Panel>
    </>,
  )
  keys(label, 0, 4)
  vi.advanceTimersByTime(100)
  expect(onPress).not.toHaveBeenCalled()
  expect(onScan).toHaveBeenCalledOnce()
})

test('a function key works from anywhere, but never behind an open dialog', () => {
  const behind = vi.fn()
  const inside = vi.fn()
  const { rerender } = render(
    <Button keyHint="F6" onPress={behind}>
      Kits
    </Button>,
  )
  key('F6', 0)
  expect(behind).toHaveBeenCalledOnce()
  rerender(
    <>
      <Button keyHint="F6" onPress={behind}>
        Kits
      </Button>
      <div data-dialog data-keys>
        <Button keyHint="1" autoFocus onPress={inside}>
          First
        </Button>
      </div>
    </>,
  )
  key('F6', 1000)
  key('1', 2000)
  vi.advanceTimersByTime(100)
  expect(behind).toHaveBeenCalledOnce()
  expect(inside).toHaveBeenCalledOnce()
})

test('a button that cannot be pressed says why, to the eye and to a screen reader', () => {
  const onPress = vi.fn()
  render(
    <Button isDisabled why="not your role" onPress={onPress}>
      Assign
    </Button>,
  )
  const button = screen.getByRole('button', { name: /Assign/ })
  fireEvent.click(button)
  expect(onPress).not.toHaveBeenCalled()
  const words = document.getElementById(button.getAttribute('aria-describedby') ?? '')
  expect(words?.textContent).toBe('not your role')
})

test('a tile is picked by the key shown on it', () => {
  const onChange = vi.fn()
  render(
    <Choice
      label="Sex"
      autoFocus
      options={[
        { value: 'male', label: 'male', key: 'm' },
        { value: 'female', label: 'female', key: 'f' },
      ]}
      value={null}
      onChange={onChange}
    />,
  )
  key('f', 0)
  vi.advanceTimersByTime(100)
  expect(onChange).toHaveBeenCalledExactlyOnceWith('female')
})

test('a key that no tile of the group has is said, and a key that one has is not', () => {
  render(
    <>
      <Choice
        label="Sex"
        options={[{ value: 'female', label: 'female', key: 'f' }]}
        value={null}
        onChange={() => {}}
        autoFocus
      />
      <ScanStrip />
    </>,
  )
  key('q', 0)
  act(() => void vi.advanceTimersByTime(200))
  expect(screen.getByRole('alert').textContent).toContain('Q is no key of “Sex”.')
  act(() => sayDone('Something else.'))
  key('f', 1000)
  act(() => void vi.advanceTimersByTime(200))
  expect(screen.getByRole('alert').textContent).toBe('')
})

test('a number with a slip stays where it was typed, in the groups of the label; a good one goes', () => {
  const onNumber = vi.fn()
  render(<NumberEntry label="Bag" onNumber={onNumber} />)
  const input = screen.getByLabelText<HTMLInputElement>('Bag')
  fireEvent.change(input, { target: { value: '26krva0042l9' } })
  fireEvent.keyDown(input, { key: 'Enter' })
  expect(onNumber).not.toHaveBeenCalled()
  expect(input.value).toBe('26-KRV-A0042-L-9')
  expect(screen.getByText(/does not fit the others/)).toBeDefined()
  fireEvent.change(input, { target: { value: '26-KRV-A0042-K-N' } })
  fireEvent.keyDown(input, { key: 'Enter' })
  expect(onNumber).toHaveBeenCalledExactlyOnceWith('26-KRV-A0042-K-N')
  expect(input.value).toBe('')
})

test('a number that the desk refuses comes back in its groups, to be compared with the label', () => {
  render(
    <NumberEntry
      label="Bag"
      onNumber={() =>
        sayRefused({ code: 'wrong-label', say: 'That is a kit label.', next: 'Scan.' })
      }
    />,
  )
  const input = screen.getByLabelText<HTMLInputElement>('Bag')
  fireEvent.change(input, { target: { value: '26krva0042kn' } })
  act(() => {
    fireEvent.keyDown(input, { key: 'Enter' })
  })
  expect(input.value).toBe('26-KRV-A0042-K-N')
})

test('a wrong label is told by words of its own, and not as any other refusal', () => {
  render(<ScanStrip />)
  act(() => sayRefused({ code: 'another-station', say: 'That is of station ABC.', next: 'Ask.' }))
  expect(screen.getByRole('alert').textContent).toContain('Wrong label. That is of station ABC.')
  act(() => sayRefused({ code: 'cooler-full', say: 'It is full.', next: 'Take another.' }))
  expect(screen.getByRole('alert').textContent).toContain('Not done. It is full.')
})

test('in a dialog a key that means one thing works wherever in it the focus is', () => {
  const onPick = vi.fn()
  const choice = (label: string, pressed: string) => (
    <Choice
      label={label}
      options={[{ value: 'torn', label: 'torn', key: pressed }]}
      value={null}
      onChange={onPick}
    />
  )
  render(
    <>
      <Panel title="Behind">{choice('Behind', 'b')}</Panel>
      <div data-dialog>
        <button type="button">Close</button>
        {choice('Why', '5')}
        {choice('How', 'x')}
        {choice('Else', 'x')}
      </div>
    </>,
  )
  const press = (name: string, at: number) => {
    screen.getByRole('button', { name: 'Close' }).focus()
    key(name, at)
    act(() => void vi.advanceTimersByTime(200))
  }
  press('5', 0)
  expect(onPick).toHaveBeenCalledTimes(1)
  press('b', 1000)
  press('x', 2000)
  expect(onPick).toHaveBeenCalledTimes(1)
})
