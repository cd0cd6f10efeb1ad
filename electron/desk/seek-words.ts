/** What is found, in words. */
export const seekWords = {
  animal: 'Animal {called}',
  kit: 'Kit {called}',
  bag: 'Bag {called}',
  cooler: 'Cooler {name}',
  person: '{name}',
  handoff: 'Handoff {called}',
  tag: 'Tag {tag}',
  hunter: 'Hunter {hunter}',
  several: '{count} animals: {animals}',
  one: 'animal {animals}',
  none: 'no animal',
  of: '{animal}: {say}',
} as const
