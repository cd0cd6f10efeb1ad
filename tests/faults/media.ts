/** Disks that are full, write-protected, or pulled out. */
import { spawnSync } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

export function newFolder(): string {
  return mkdtempSync(join(tmpdir(), 'duskline-fault-'))
}

function mount(...args: string[]): boolean {
  return spawnSync('mount', args).status === 0
}

/** A disk in memory of so many KiB; undefined where this user may not mount one. */
export function smallDisk(kib: number): string | undefined {
  if (process.platform !== 'linux') return undefined
  const folder = newFolder()
  if (mount('-t', 'tmpfs', '-o', `size=${kib}k`, 'tmpfs', folder)) return folder
  rmSync(folder, { recursive: true })
  return undefined
}

/** Write-protects a small disk, or a folder where the user is not root; false if neither goes. */
export function protect(folder: string): boolean {
  if (process.getuid?.() === 0) return mount('-o', 'remount,ro', folder)
  chmodSync(folder, 0o555)
  return true
}

/** Pulls a small disk out while it is in use: open files stay, the folder is empty at once. */
export function pull(folder: string): void {
  spawnSync('umount', ['--lazy', folder])
}

export function clearAway(folder: string): void {
  if (process.getuid?.() === 0) spawnSync('umount', ['--lazy', '--quiet', folder])
  else chmodSync(folder, 0o755)
  rmSync(folder, { recursive: true, force: true })
}
