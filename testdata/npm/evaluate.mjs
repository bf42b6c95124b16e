// Reads one expression a line and writes one answer a line: {"si": number}, or
// {"refused": why} where mathjs does not take it.
import { create, all } from 'mathjs'
import { createInterface } from 'node:readline'

const math = create(all)

function answer(text) {
  try {
    const value = math.evaluate(text)
    const si = typeof value === 'number' ? value : value.toSI().toJSON().value
    return Number.isFinite(si) ? { si } : { refused: 'no finite number' }
  } catch (err) {
    return { refused: err.message }
  }
}

for await (const line of createInterface({ input: process.stdin })) {
  console.log(JSON.stringify(answer(line)))
}
