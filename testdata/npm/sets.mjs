// What other programs read of sets: documents against the schemas, tables as
// RFC 4180 has them, and QR codes. It takes one JSON request on standard
// input and answers in JSON.
import { readFileSync } from "node:fs";
import Ajv from "ajv";
import jsQR from "jsqr";

const request = JSON.parse(readFileSync(0, "utf8"));

const ajv = new Ajv({ allErrors: true, allowUnionTypes: true });
const faults = request.documents.map(({ schema, text }) => {
  const check = ajv.compile(JSON.parse(schema));
  return check(JSON.parse(text)) ? "" : ajv.errorsText(check.errors);
});

// A reader of RFC 4180 written from its grammar in section 2.
function table(text) {
  const rows = [];
  let row = [], cell = "", quoted = false;
  for (let i = text.charCodeAt(0) === 0xfeff ? 1 : 0; i < text.length; i++) {
    const c = text[i];
    if (quoted) {
      if (c !== '"') cell += c;
      else if (text[i + 1] === '"') { cell += '"'; i++; }
      else quoted = false;
    } else if (c === '"') quoted = true;
    else if (c === ",") { row.push(cell); cell = ""; }
    else if (c === "\r" && text[i + 1] === "\n") { row.push(cell); rows.push(row); row = []; cell = ""; i++; }
    else cell += c;
  }
  return rows;
}

// A module of a code is drawn as four by four pixels.
const texts = request.codes.map(({ side, runs }) => {
  const scale = 4, width = side * scale;
  const data = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [x, y, n] of runs)
    for (let py = y * scale; py < (y + 1) * scale; py++)
      for (let px = x * scale; px < (x + n) * scale; px++) data.fill(0, (py * width + px) * 4, (py * width + px) * 4 + 3);
  return jsQR(data, width, width)?.data ?? "";
});

process.stdout.write(JSON.stringify({ faults, tables: request.tables.map(table), texts }));
