// Run by own-node.test.ts: which Node runs it, what it was given, and an exit code of its own.
console.log(process.version.slice(1, 3), ...process.argv.slice(2))
process.exitCode = 3
