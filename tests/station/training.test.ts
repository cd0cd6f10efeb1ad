import { expect, test } from 'vitest'
import { takesSamples, trainingLacked, trainingNeeded } from '../../electron/station/training.ts'
import { factsOf } from '../support/station.ts'
import { person, sampler } from './records.ts'

const skinned = { presented: 'head-only', faults: ['skinned'] } as const

test('deer ask for deer training; elk and moose, whose heads are bigger, for their own', () => {
  expect(trainingNeeded(factsOf({ species: 'white-tailed-deer' }))).toEqual(['deer'])
  expect(trainingNeeded(factsOf({ species: 'mule-deer' }))).toEqual(['deer'])
  expect(trainingNeeded(factsOf({ species: 'elk' }))).toEqual(['elk-and-moose'])
  expect(trainingNeeded(factsOf({ species: 'moose' }))).toEqual(['elk-and-moose'])
})

test('a head skinned for the taxidermist asks for that training besides', () => {
  const facts = factsOf({ head: { ...skinned, faults: ['skinned'] } })
  expect(trainingNeeded(facts)).toEqual(['deer', 'skinned-heads'])
  expect(trainingLacked(sampler, facts)).toEqual(['skinned heads'])
  expect(trainingLacked(person('sampler', 2, { training: [] }), facts)).toEqual([
    'deer',
    'skinned heads',
  ])
})

test('samplers and leads with some training take samples; nobody else, and nobody who left', () => {
  expect(takesSamples(sampler)).toBe(true)
  expect(takesSamples(person('lead'))).toBe(true)
  expect(takesSamples(person('sampler', 2, { training: [] }))).toBe(false)
  expect(takesSamples(person('volunteer', 3, { training: ['deer'] }))).toBe(false)
  expect(takesSamples(person('office', 4, { training: ['deer'] }))).toBe(false)
  expect(takesSamples(person('sampler', 2, { active: false }))).toBe(false)
})
